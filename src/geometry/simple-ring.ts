import { orient2d } from 'robust-predicates';
import { cornersInOrder, edgesMeet, faultOfEdges, type SweepWork } from './edge-sweep.js';
import type { Ring } from './ring.js';

/**
 * Why a ring is not simple. Edge `k` runs from corner `k` to the next one.
 *
 * - `no-area`: fewer than three corners, all on one line, or a coordinate is no number; both numbers are 0
 * - `repeats-point`: edge `edge` has no length; `other` is the edge after it
 * - `crosses`: the edges go through each other
 * - `touches`: they have points in common and do not go through each other: a corner on an edge, a place
 *   that is passed twice, a stretch that is run along twice, a spike
 */
export interface RingFault {
  kind: 'crosses' | 'touches' | 'repeats-point' | 'no-area';
  edge: number;
  other: number;
}

/** Up to so many corners, comparing all edges with all is quicker than a sweep. */
const FEW = 40;

/**
 * The first fault of a closed ring, or undefined for a simple one. Exact: no rounding makes or hides a fault.
 *
 * First is a ring without area, then the first repeated point, then the first edge, walking from corner
 * 0, that meets an earlier one: `other` with the lowest `edge` that it meets. The cost is n log n for a
 * simple ring and at most n log² n for any other.
 *
 * @param work its `tests` grows by the number of comparisons
 */
export function ringFault(ring: Ring, work: SweepWork = { tests: 0 }): RingFault | undefined {
  const { u, v } = ring;
  const count = u.length;
  if (!hasArea(ring)) return { kind: 'no-area', edge: 0, other: 0 };
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count;
    if (u[k] === u[next] && v[k] === v[next]) return { kind: 'repeats-point', edge: k, other: next };
  }
  if (count > FEW) {
    const edges = fewestThatMeet(ring, work);
    return edges === undefined ? undefined : faultWithEarlier(ring, edges - 1, work);
  }
  for (let other = 1; other < count; other++) {
    const fault = faultWithEarlier(ring, other, work);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** Whether the corners are numbers and not all on one line. */
function hasArea({ u, v }: Ring): boolean {
  let far = 0;
  let isOff = false;
  for (let k = 0; k < u.length; k++) {
    if (!Number.isFinite(u[k]) || !Number.isFinite(v[k])) return false;
    if (far === 0 && (u[k] !== u[0] || v[k] !== v[0])) far = k;
    isOff ||= far > 0 && orient2d(u[0], v[0], u[far], v[far], u[k], v[k]) !== 0;
  }
  return isOff;
}

/** The least number of first edges among which two meet, by halving. */
function fewestThatMeet(ring: Ring, work: SweepWork): number | undefined {
  const corners = cornersInOrder(ring);
  let high = ring.u.length;
  if (!edgesMeet(ring, corners, high, work)) return undefined;
  let low = 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (edgesMeet(ring, corners, middle, work)) high = middle;
    else low = middle;
  }
  return high;
}

function faultWithEarlier(ring: Ring, other: number, work: SweepWork): RingFault | undefined {
  for (let edge = 0; edge < other; edge++) {
    work.tests++;
    const kind = faultOfEdges(ring, edge, other);
    if (kind !== undefined) return { kind, edge, other };
  }
  return undefined;
}
