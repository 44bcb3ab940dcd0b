import type { KeepOut } from '../generated/layout.js';
import { BoxGrid } from '../geometry/box-grid.js';
import { distanceToPrism, newPrism, type Prism } from '../geometry/prism.js';
import { isBeyond, newPrismBounds, type PrismBounds } from '../geometry/prism-bounds.js';
import { distancePointSegment, distanceSegmentSegment } from '../geometry/segment.js';
import type { Vec3 } from '../geometry/vector.js';
import { KeepOutPieces } from './keep-out-pieces.js';

/** Side of a cell, mm: somewhat larger than the reach of most holes, so that one looks into one or two. */
const CELL_MM = 1500;

interface Entry {
  keepOut: KeepOut;
  prism: Prism | undefined;
  bounds: PrismBounds | undefined;
  /** Distance of the middle at which it begins to matter: standoff, position tolerance and radius, mm. */
  reach: number;
}

/** Keep-outs by place. Millimetres, site frame. */
export class KeepOutIndex {
  /** Keep-outs that have a shape that can be judged; the others are passed over. */
  readonly count: number;
  /** Distances computed since the index was made: of segments, points, and edges of prisms. */
  tests = 0;
  private readonly entries: readonly Entry[];
  private readonly pieces: KeepOutPieces;
  private readonly grid: BoxGrid;
  /** Pieces found by the search at hand. */
  private readonly found: Int32Array;

  /** @param most distances that may be computed for all holes together */
  constructor(
    records: readonly (KeepOut | undefined)[],
    private readonly most = Number.POSITIVE_INFINITY,
  ) {
    this.entries = records.flatMap((keepOut) => newEntry(keepOut) ?? []);
    this.count = this.entries.length;
    this.pieces = new KeepOutPieces(
      this.entries.map(({ keepOut }) => keepOut),
      this.entries.map(({ reach }) => reach),
    );
    this.grid = new BoxGrid(this.pieces.boxes, CELL_MM);
    this.found = new Int32Array(this.pieces.owner.length);
  }

  /**
   * Visits the keep-outs near a hole with the clear distance of each, once, in the order of the records. Of a path
   * only the stretches near the hole are looked at.
   *
   * @param p point on the surface
   * @param axis unit vector into the concrete
   * @param depth along the axis
   * @param radius of the hole
   * @returns false, and visits none, where that would take more distances than are left
   */
  near(p: Vec3, axis: Vec3, depth: number, radius: number, visit: (keepOut: KeepOut, clear: number) => void): boolean {
    // In coordinates first: most holes have nothing near them, and vectors would be most of their cost.
    const x = p[0] + depth * axis[0];
    const y = p[1] + depth * axis[1];
    const z = p[2] + depth * axis[2];
    const all = this.grid.meeting(
      Math.min(p[0], x) - radius,
      Math.min(p[1], y) - radius,
      Math.min(p[2], z) - radius,
      Math.max(p[0], x) + radius,
      Math.max(p[1], y) + radius,
      Math.max(p[2], z) + radius,
      this.found,
      Math.min(this.found.length, this.most - this.tests),
    );
    if (all <= 0) return all === 0;
    const end: Vec3 = [x, y, z];
    const count = this.sift(all, p, end, radius);
    if (count < 0) return false;
    const { entries, found } = this;
    const { owner, segment } = this.pieces;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < count; k++) {
      const piece = found[k];
      const entry = entries[owner[piece]];
      const isNextOfSegment = k > 0 && owner[found[k - 1]] === owner[piece] && segment[found[k - 1]] === segment[piece];
      // NaN must come through: Math.min keeps it.
      if (!isNextOfSegment) least = Math.min(least, distance(entry, segment[piece], p, end));
      if (k + 1 < count && owner[found[k + 1]] === owner[piece]) continue;
      const { path, sphere } = entry.keepOut.shape;
      visit(entry.keepOut, least - (path?.radius ?? sphere?.radius ?? 0) - radius);
      least = Number.POSITIVE_INFINITY;
    }
    return true;
  }

  /** Leaves of the pieces in `found` those that may come near a hole, in order; returns their number, or -1 where they are too many. */
  private sift(all: number, a: Vec3, b: Vec3, radius: number): number {
    const { found } = this;
    let count = 0;
    let tests = 0;
    for (let k = 0; k < all; k++) {
      const { bounds, prism, reach } = this.entries[this.pieces.owner[found[k]]];
      tests++;
      if (bounds !== undefined && isBeyond(bounds, a, b, radius + reach + 1)) continue;
      tests += prism?.base.length ?? 0;
      found[count++] = found[k];
    }
    if (tests > this.most - this.tests) return -1;
    this.tests += tests;
    if (count > 1) found.subarray(0, count).sort();
    return count;
  }
}

function newEntry(keepOut: KeepOut | undefined): Entry | undefined {
  if (keepOut === undefined) return undefined;
  const { path, prism: given, sphere } = keepOut.shape;
  const prism = given && newPrism(given.base, given.extrude);
  if (given !== undefined && prism === undefined) return undefined;
  const bounds = prism && newPrismBounds(prism.base, prism.extrude, prism.normal);
  return { keepOut, prism, bounds, reach: distanceThatMatters(keepOut) + (path?.radius ?? sphere?.radius ?? 0) };
}

/** Distance of the segment `a`-`b` from a segment of a path, or from the middle of a sphere, or from a prism. */
function distance({ keepOut: { shape }, prism }: Entry, from: number, a: Vec3, b: Vec3): number {
  if (prism !== undefined) return distanceToPrism(prism, a, b);
  if (shape.sphere !== undefined) return distancePointSegment(shape.sphere.centre, a, b);
  const { points } = shape.path as NonNullable<typeof shape.path>;
  return distanceSegmentSegment(a, b, points[from], points[from + 1]);
}

/** Clear distance of a hole below which there is something to say of it, mm: it may lie that much nearer than drawn. */
export function distanceThatMatters({ standoff, positionTolerance = 0 }: KeepOut): number {
  return standoff + positionTolerance;
}
