import { BoxTree } from './box-tree.js';
import type { Ring } from './ring.js';

/** So many rings are told apart by their boxes one by one. */
const FEW_RINGS = 8;

/** Rings of one plane, of which few are looked at for a point. Made once, never changed. */
export class RingSet {
  private readonly boxes: Float64Array;
  private readonly tree: BoxTree | undefined;
  private readonly found: Int32Array;

  /** @param margin how far beside a ring a point still counts as near it, in the unit of the rings */
  constructor(
    readonly rings: readonly Ring[],
    margin: number,
  ) {
    this.boxes = new Float64Array(rings.length * 6);
    rings.forEach((ring, k) => {
      const least = (column: Float64Array) => column.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
      const most = (column: Float64Array) => column.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
      const { u, v } = ring;
      this.boxes.set([least(u) - margin, least(v) - margin, 0, most(u) + margin, most(v) + margin, 0], k * 6);
    });
    this.tree = rings.length > FEW_RINGS ? new BoxTree(this.boxes) : undefined;
    this.found = new Int32Array(rings.length);
  }

  /** Number of the first ring near a point that `accept` takes; -1 where there is none. */
  first(u: number, v: number, accept: (ring: Ring, u: number, v: number) => boolean): number {
    const { rings, found } = this;
    const count = this.near(u, v);
    let first = -1;
    for (let at = 0; at < count; at++) {
      const k = found[at];
      if ((first < 0 || k < first) && accept(rings[k], u, v)) first = k;
    }
    return first;
  }

  /** Number of the last ring near a point that `accept` takes; -1 where there is none. */
  last(u: number, v: number, accept: (ring: Ring, u: number, v: number) => boolean): number {
    const { rings, found } = this;
    const count = this.near(u, v);
    let last = -1;
    for (let at = 0; at < count; at++) {
      const k = found[at];
      if (k > last && accept(rings[k], u, v)) last = k;
    }
    return last;
  }

  /** Writes the numbers of the rings whose boxes hold a point to the front of `found`. */
  private near(u: number, v: number): number {
    const { boxes, found, tree, rings } = this;
    if (tree !== undefined) return tree.meeting(u, v, 0, u, v, 0, found, rings.length);
    let count = 0;
    for (let k = 0; k < rings.length; k++) {
      const b = k * 6;
      if (u >= boxes[b] && u <= boxes[b + 3] && v >= boxes[b + 1] && v <= boxes[b + 4]) found[count++] = k;
    }
    return count;
  }
}
