import { orient2d } from 'robust-predicates';
import type { Ring } from './ring.js';

/** What two edges of a ring have in common that they must not. */
export type EdgeFault = 'crosses' | 'touches';

/** Counter of the orientation tests that a search made. */
export interface SweepWork {
  tests: number;
}

/**
 * What is wrong between the edges `i` < `j` of a ring, edge `k` running from corner `k` to the next.
 *
 * Exact, by the sign of Shewchuk's adaptive predicate: `crosses` where each goes from one side of the
 * other to the other side, `touches` where they only have points in common. Neighbours have their corner
 * in common and are at fault where one folds back onto the other. No edge may be without length.
 */
export function faultOfEdges({ u, v }: Ring, i: number, j: number): EdgeFault | undefined {
  const count = u.length;
  const iEnd = i + 1;
  const jEnd = j + 1 === count ? 0 : j + 1;
  if (iEnd === j) return foldsBack(u, v, i, j, jEnd) ? 'touches' : undefined;
  if (jEnd === i) return foldsBack(u, v, j, i, iEnd) ? 'touches' : undefined;
  if (Math.max(u[i], u[iEnd]) < Math.min(u[j], u[jEnd]) || Math.max(u[j], u[jEnd]) < Math.min(u[i], u[iEnd])) return;
  if (Math.max(v[i], v[iEnd]) < Math.min(v[j], v[jEnd]) || Math.max(v[j], v[jEnd]) < Math.min(v[i], v[iEnd])) return;
  const a = orient2d(u[i], v[i], u[iEnd], v[iEnd], u[j], v[j]);
  const b = orient2d(u[i], v[i], u[iEnd], v[iEnd], u[jEnd], v[jEnd]);
  // Both ends strictly on one side; with 0 for both, overlapping boxes make the two meet on their line.
  if ((a > 0 && b > 0) || (a < 0 && b < 0)) return undefined;
  if (a === 0 && b === 0) return 'touches';
  const c = orient2d(u[j], v[j], u[jEnd], v[jEnd], u[i], v[i]);
  const d = orient2d(u[j], v[j], u[jEnd], v[jEnd], u[iEnd], v[iEnd]);
  if ((c > 0 && d > 0) || (c < 0 && d < 0)) return undefined;
  return a === 0 || b === 0 || c === 0 || d === 0 ? 'touches' : 'crosses';
}

/** Whether the edges from corner `a` to `b` and on to `c` go back the way they came. */
function foldsBack(u: Float64Array, v: Float64Array, a: number, b: number, c: number): boolean {
  if (orient2d(u[a], v[a], u[b], v[b], u[c], v[c]) !== 0) return false;
  return u[a] === u[b] ? v[a] > v[b] === v[c] > v[b] : u[a] > u[b] === u[c] > u[b];
}

/** The corners of a ring by u, then v: the order in which a sweep meets them. */
export function cornersInOrder({ u, v }: Ring): Int32Array {
  return Int32Array.from(u, (_, k) => k).sort((a, b) => u[a] - u[b] || v[a] - v[b]);
}

/**
 * Whether any two of the first `edges` edges of a ring are at fault.
 *
 * A line is swept over the edges and only those that are next to each other on it are compared (M. Shamos
 * and D. Hoey, "Geometric intersection problems", 1976), so the cost is n log n for any ring. Points one
 * above the other are met from below, as by a line that leans a hair. No edge may be without length.
 *
 * @param corners from {@link cornersInOrder}
 */
export function edgesMeet(ring: Ring, corners: Int32Array, edges: number, work: SweepWork): boolean {
  const { u, v } = ring;
  const count = u.length;
  const isClosed = edges === count;
  const line = new SweepLine(ring, work);
  let before = -1;
  for (const corner of corners) {
    if (corner > edges) continue;
    if (before >= 0 && u[before] === u[corner] && v[before] === v[corner]) return true;
    before = corner;
    const inward = corner > 0 ? corner - 1 : isClosed ? count - 1 : -1;
    const outward = corner < edges ? corner : -1;
    // What ends goes before what starts: the two share this corner and need not be told apart.
    for (const edge of [inward, outward])
      if (edge >= 0 && line.endOf(edge) === corner && line.remove(edge)) return true;
    for (const edge of [inward, outward])
      if (edge >= 0 && line.startOf(edge) === corner && line.insert(edge)) return true;
  }
  return false;
}

const NONE = -1;

/**
 * The edges on the sweep line from below to above: a treap for finding a place, a chain for neighbours.
 * `insert` and `remove` return whether they came upon a fault.
 */
class SweepLine {
  private root = NONE;
  private readonly lower: Int32Array;
  private readonly upper: Int32Array;
  private readonly parent: Int32Array;
  private readonly below: Int32Array;
  private readonly above: Int32Array;

  constructor(
    private readonly ring: Ring,
    private readonly work: SweepWork,
  ) {
    const size = ring.u.length;
    [this.lower, this.upper, this.parent, this.below, this.above] = Array.from({ length: 5 }, () =>
      new Int32Array(size).fill(NONE),
    );
  }

  /** The corner at which the sweep meets an edge first. */
  startOf(edge: number): number {
    const next = edge + 1 === this.ring.u.length ? 0 : edge + 1;
    return this.isBefore(edge, next) ? edge : next;
  }

  /** The corner at which the sweep leaves an edge. */
  endOf(edge: number): number {
    const next = edge + 1 === this.ring.u.length ? 0 : edge + 1;
    return this.isBefore(edge, next) ? next : edge;
  }

  insert(edge: number): boolean {
    let under = NONE;
    let over = NONE;
    let at = this.root;
    while (at !== NONE) {
      const side = this.sideOf(at, edge);
      if (side === 0) return true;
      if (side > 0) {
        over = at;
        at = this.lower[at];
      } else {
        under = at;
        at = this.upper[at];
      }
    }
    this.hang(edge, under, over);
    return this.isFault(under, edge) || this.isFault(edge, over);
  }

  remove(edge: number): boolean {
    const { lower, upper, below, above } = this;
    while (lower[edge] !== NONE || upper[edge] !== NONE) {
      const isLower = upper[edge] === NONE || (lower[edge] !== NONE && rankOf(lower[edge]) > rankOf(upper[edge]));
      this.lift(isLower ? lower[edge] : upper[edge]);
    }
    this.replace(edge, NONE);
    const under = below[edge];
    const over = above[edge];
    if (under !== NONE) above[under] = over;
    if (over !== NONE) below[over] = under;
    return this.isFault(under, over);
  }

  /** Puts an edge between its neighbours: as a leaf, one of the two having room for it, then up by its rank. */
  private hang(edge: number, under: number, over: number): void {
    const { lower, upper, parent, below, above } = this;
    below[edge] = under;
    above[edge] = over;
    if (under !== NONE) above[under] = edge;
    if (over !== NONE) below[over] = edge;
    lower[edge] = NONE;
    upper[edge] = NONE;
    const isUpper = under !== NONE && upper[under] === NONE;
    parent[edge] = isUpper ? under : over;
    if (isUpper) upper[under] = edge;
    else if (over !== NONE) lower[over] = edge;
    else this.root = edge;
    while (parent[edge] !== NONE && rankOf(edge) > rankOf(parent[edge])) this.lift(edge);
  }

  /** Turns an edge and its parent round. */
  private lift(edge: number): void {
    const { lower, upper, parent } = this;
    const from = parent[edge];
    const [near, far] = lower[from] === edge ? [lower, upper] : [upper, lower];
    const inner = far[edge];
    near[from] = inner;
    if (inner !== NONE) parent[inner] = from;
    this.replace(from, edge);
    far[edge] = from;
    parent[from] = edge;
  }

  /** Lets the parent of one edge hold another one in its stead. */
  private replace(edge: number, by: number): void {
    const { lower, upper, parent } = this;
    const holder = parent[edge];
    if (by !== NONE) parent[by] = holder;
    if (holder === NONE) this.root = by;
    else if (lower[holder] === edge) lower[holder] = by;
    else upper[holder] = by;
  }

  /** More than 0 where `edge`, which starts now, lies below `other`; 0 where it starts on it or runs along it. */
  private sideOf(other: number, edge: number): number {
    const start = this.startOf(edge);
    const otherStart = this.startOf(other);
    return this.side(otherStart, this.endOf(other), otherStart === start ? this.endOf(edge) : start);
  }

  private side(from: number, to: number, p: number): number {
    const { u, v } = this.ring;
    this.work.tests++;
    // orient2d > 0: the point lies to the right, which is below since edges run as the sweep does.
    return orient2d(u[from], v[from], u[to], v[to], u[p], v[p]);
  }

  private isFault(a: number, b: number): boolean {
    if (a === NONE || b === NONE) return false;
    this.work.tests++;
    return faultOfEdges(this.ring, Math.min(a, b), Math.max(a, b)) !== undefined;
  }

  private isBefore(a: number, b: number): boolean {
    const { u, v } = this.ring;
    return u[a] < u[b] || (u[a] === u[b] && v[a] < v[b]);
  }
}

/** A rank for the treap that has nothing to do with the order of edges: its number, scrambled. */
function rankOf(edge: number): number {
  let h = Math.imul(edge + 1, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  return (h ^ (h >>> 13)) >>> 0;
}
