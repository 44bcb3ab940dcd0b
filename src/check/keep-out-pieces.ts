import type { KeepOut } from '../generated/layout.js';
import { along, subtract, type Vec3 } from '../geometry/vector.js';

/** A slanting path is cut into pieces about so wide, mm: the box of all of it would hold half the building. */
const CUT_MM = 1000;
/** Most pieces of one segment of a path, and pieces of all shapes beyond which segments are not cut. */
const MOST_CUTS = 1000;
const MOST_PIECES = 500_000;

/** Pieces of keep-outs, each with a box outside of which no hole comes near it. */
export class KeepOutPieces {
  /** Six numbers a piece: least x, y, z, then greatest. */
  readonly boxes: Float64Array;
  /** For each piece the number of its keep-out; in order. */
  readonly owner: Int32Array;
  /** For each piece of a path the number of the point where its segment begins; else 0. */
  readonly segment: Int32Array;

  /** @param reaches for each keep-out the distance from its middle line, its base or its centre at which it begins to matter, mm */
  constructor(keepOuts: readonly KeepOut[], reaches: readonly number[]) {
    const boxes: number[] = [];
    const owner: number[] = [];
    const segment: number[] = [];
    const add = (index: number, from: number, low: Vec3, high: Vec3) => {
      owner.push(index);
      segment.push(from);
      // A hair larger, so that rounding hides nothing.
      const reach = reaches[index] + 1;
      for (let k = 0; k < 3; k++) boxes.push(Math.min(low[k], high[k]) - reach);
      for (let k = 0; k < 3; k++) boxes.push(Math.max(low[k], high[k]) + reach);
    };
    keepOuts.forEach(({ shape: { path, prism, sphere } }, index) => {
      if (sphere !== undefined) add(index, 0, sphere.centre, sphere.centre);
      if (prism !== undefined) add(index, 0, ...boxOf(prism.base, prism.extrude));
      for (let k = 1; k < (path?.points.length ?? 0); k++) {
        const from = path?.points[k - 1] as Vec3;
        const d = subtract(path?.points[k] as Vec3, from);
        const cuts = owner.length < MOST_PIECES ? cutsOf(d) : 1;
        for (let c = 0; c < cuts; c++) add(index, k - 1, along(from, d, c / cuts), along(from, d, (c + 1) / cuts));
      }
    });
    this.boxes = Float64Array.from(boxes);
    this.owner = Int32Array.from(owner);
    this.segment = Int32Array.from(segment);
  }
}

/** How many pieces a segment is cut into: one along an axis, whose box is no wider than itself. */
function cutsOf(d: Vec3): number {
  const sides = d.map(Math.abs).sort((a, b) => a - b);
  return Math.min(MOST_CUTS, Math.max(1, Math.ceil(sides[1] / CUT_MM)));
}

function boxOf(base: readonly Vec3[], extrude: Vec3): [low: Vec3, high: Vec3] {
  const low: [number, number, number] = [...base[0]];
  const high: [number, number, number] = [...base[0]];
  for (const corner of base) {
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k], corner[k], corner[k] + extrude[k]);
      high[k] = Math.max(high[k], corner[k], corner[k] + extrude[k]);
    }
  }
  return [low, high];
}
