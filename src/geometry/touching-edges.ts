import { gapsBetween, type Stretch } from './stretch.js';

/** A segment in a plane. */
export type Segment2D = readonly [fromU: number, fromV: number, toU: number, toV: number];

/** Edges that turn away from a segment by more than 1 in 10 do not run along it, they meet it. */
const STEEPEST = 0.1;

/**
 * The stretches of a segment along which no other segment runs, in order.
 *
 * Another segment, written in either direction, covers the stretch beside it where it lies within
 * `touchMm` of the line of this one. So a part of a long edge counts that turns away slowly, and nothing of
 * one that crosses or meets at a corner. What is left beside or between covered stretches is given where it
 * is longer than `touchMm`: a misfit of corners is no free edge. A segment without length has no
 * stretches. The cost is n log n.
 */
export function uncovered(segment: Segment2D, others: readonly Segment2D[], touchMm: number): Stretch[] {
  const [fromU, fromV, toU, toV] = segment;
  const length = Math.hypot(toU - fromU, toV - fromV);
  if (length === 0) return [];
  const covered: Stretch[] = [];
  for (const other of others) {
    const stretch = stretchBeside(segment, length, other, touchMm);
    if (stretch !== undefined) covered.push(stretch);
  }
  if (covered.length === 0) return [[0, 1]];
  return gapsBetween(covered).filter(([from, to]) => (to - from) * length > touchMm);
}

/** The stretch of a segment beside which another one runs. */
function stretchBeside(segment: Segment2D, length: number, other: Segment2D, touchMm: number): Stretch | undefined {
  const [fromU, fromV, toU, toV] = segment;
  const du = (toU - fromU) / length;
  const dv = (toV - fromV) / length;
  const along = (u: number, v: number) => (u - fromU) * du + (v - fromV) * dv;
  const aside = (u: number, v: number) => (v - fromV) * du - (u - fromU) * dv;
  let start = along(other[0], other[1]);
  let end = along(other[2], other[3]);
  let startAside = aside(other[0], other[1]);
  let endAside = aside(other[2], other[3]);
  if (end < start) [start, end, startAside, endAside] = [end, start, endAside, startAside];
  const slope = (endAside - startAside) / (end - start);
  if (!(Math.abs(slope) <= STEEPEST)) return undefined;
  // Where the other one lies within the band about the line, along the line.
  let [low, high] = [start, end];
  if (slope === 0) {
    if (Math.abs(startAside) > touchMm) return undefined;
  } else {
    const reach = touchMm / Math.abs(slope);
    const crossing = start - startAside / slope;
    low = Math.max(low, crossing - reach);
    high = Math.min(high, crossing + reach);
  }
  const from = Math.max(low / length, 0);
  const to = Math.min(high / length, 1);
  return from < to ? [from, to] : undefined;
}
