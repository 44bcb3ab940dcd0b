import { distanceToRing, insideRing, type Ring } from './ring.js';
import { type RingAtBox, ringAtBox } from './ring-box.js';

/** Points that a smallest quarter has at most where they lie evenly. */
const IN_SMALLEST = 32;
/** Sides are halved no more often than this, which gives 65,536 smallest quarters. */
const MOST_DEEP = 8;

/** What points are given by {@link PointQuarters.fill}. */
export interface Filling {
  /** For each point its value, or -1 where it has none. */
  readonly values: Int32Array;
  /** For each quarter whether all its points have a value. */
  readonly isFull: Uint8Array;
}

/**
 * Points of a plane sorted into the quarters of a rectangle and the quarters of these, so that those in a ring are
 * found without looking at each: quarters that lie in the ring or beside it are done with at once.
 *
 * A point is in a ring if it is inside and not within `margin` of it. Built in time of the number of points; a
 * ring then costs its corners for each quarter that it goes through.
 */
export class PointQuarters {
  /** Number of quarters and points that were compared with a ring. */
  tests = 0;
  private readonly deep: number;
  /** Indices of the points, those of a quarter one after the other. */
  private readonly order: Int32Array;
  /** Where the points of each smallest quarter begin in `order`, and the end. */
  private readonly starts: Int32Array;
  /** Of each quarter uLow, vLow, uHigh and vHigh of its points: of all, then of those of each depth. */
  private readonly boxes: Float64Array;

  /** @param indices of the points that are sorted, among those that have coordinates */
  constructor(
    private readonly u: Float64Array,
    private readonly v: Float64Array,
    indices: Int32Array,
    private readonly margin: number,
  ) {
    const depth = Math.ceil(Math.log(indices.length / IN_SMALLEST) / Math.log(4));
    this.deep = Math.max(0, Math.min(MOST_DEEP, depth));
    this.starts = new Int32Array(4 ** this.deep + 1);
    this.order = new Int32Array(indices.length);
    this.sort(indices);
    this.boxes = new Float64Array(4 * nodeOf(this.deep + 1, 0));
    this.measure(0, 0);
  }

  /** Whether a ring has any of the points in it. */
  anyIn(ring: Ring, depth = 0, quarter = 0): boolean {
    const [from, to] = this.range(depth, quarter);
    const at = from < to ? this.compare(ring, nodeOf(depth, quarter)) : 'beside';
    if (at !== 'cuts') return at === 'holds';
    if (depth < this.deep) {
      for (let k = 0; k < 4; k++) if (this.anyIn(ring, depth + 1, 4 * quarter + k)) return true;
      return false;
    }
    for (let k = from; k < to; k++) if (this.holds(ring, this.order[k])) return true;
    return false;
  }

  /** @param values one for each point that has coordinates; those that have none yet are -1 */
  newFilling(values: Int32Array): Filling {
    return { values, isFull: new Uint8Array(this.boxes.length / 4) };
  }

  /** Gives a value to all points in a ring that have none. */
  fill(ring: Ring, value: number, filling: Filling, depth = 0, quarter = 0): void {
    const { values, isFull } = filling;
    const node = nodeOf(depth, quarter);
    const [from, to] = this.range(depth, quarter);
    if (from === to) isFull[node] = 1;
    if (isFull[node] === 1) return;
    const at = this.compare(ring, node);
    if (at === 'beside') return;
    let isAll = 1;
    if (at === 'cuts' && depth < this.deep) {
      for (let child = 4 * quarter; child < 4 * quarter + 4; child++) {
        this.fill(ring, value, filling, depth + 1, child);
        isAll &= isFull[nodeOf(depth + 1, child)];
      }
    } else {
      for (let k = from; k < to; k++) {
        const i = this.order[k];
        if (values[i] < 0 && (at === 'holds' || this.holds(ring, i))) values[i] = value;
        if (values[i] < 0) isAll = 0;
      }
    }
    isFull[node] = isAll;
  }

  private compare(ring: Ring, node: number): RingAtBox {
    this.tests++;
    const { boxes, margin } = this;
    // Twice the margin, so that rounding brings no point nearer to the ring than the margin.
    const [uLow, vLow] = [boxes[4 * node] - 2 * margin, boxes[4 * node + 1] - 2 * margin];
    return ringAtBox(ring, uLow, vLow, boxes[4 * node + 2] + 2 * margin, boxes[4 * node + 3] + 2 * margin);
  }

  private holds(ring: Ring, i: number): boolean {
    this.tests++;
    const { u, v, margin } = this;
    return insideRing(ring, u[i], v[i]) && distanceToRing(ring, u[i], v[i]) >= margin;
  }

  /** Places in `order` of the points of a quarter. */
  private range(depth: number, quarter: number): [from: number, to: number] {
    const smallest = 4 ** (this.deep - depth);
    return [this.starts[quarter * smallest], this.starts[(quarter + 1) * smallest]];
  }

  /** Sorts the points by their smallest quarter: counts, then places. */
  private sort(indices: Int32Array): void {
    const { u, v, order, starts } = this;
    const side = 2 ** this.deep;
    const cellU = cells(u, indices, side);
    const cellV = cells(v, indices, side);
    const quarters = new Int32Array(indices.length);
    for (let k = 0; k < indices.length; k++) {
      quarters[k] = spread(cellU[k]) | (spread(cellV[k]) << 1);
      starts[quarters[k] + 1]++;
    }
    for (let k = 1; k < starts.length; k++) starts[k] += starts[k - 1];
    const next = starts.slice();
    for (let k = 0; k < indices.length; k++) order[next[quarters[k]]++] = indices[k];
  }

  /** Finds the box of a quarter and of those in it. */
  private measure(depth: number, quarter: number): void {
    const { u, v, order, boxes } = this;
    let [uLow, vLow] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    let [uHigh, vHigh] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    const add = (u0: number, v0: number, u1: number, v1: number) => {
      if (u0 < uLow) uLow = u0;
      if (v0 < vLow) vLow = v0;
      if (u1 > uHigh) uHigh = u1;
      if (v1 > vHigh) vHigh = v1;
    };
    if (depth < this.deep) {
      for (let child = 4 * quarter; child < 4 * quarter + 4; child++) {
        this.measure(depth + 1, child);
        const at = 4 * nodeOf(depth + 1, child);
        add(boxes[at], boxes[at + 1], boxes[at + 2], boxes[at + 3]);
      }
    } else {
      const [from, to] = this.range(depth, quarter);
      for (let k = from; k < to; k++) add(u[order[k]], v[order[k]], u[order[k]], v[order[k]]);
    }
    boxes.set([uLow, vLow, uHigh, vHigh], 4 * nodeOf(depth, quarter));
  }
}

/** Number of a quarter among those of all depths. */
function nodeOf(depth: number, quarter: number): number {
  return (4 ** depth - 1) / 3 + quarter;
}

/** For each point the number of its cell along an axis that has `side` of them. */
function cells(at: Float64Array, indices: Int32Array, side: number): Int32Array {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const i of indices) {
    if (at[i] < low) low = at[i];
    if (at[i] > high) high = at[i];
  }
  const found = new Int32Array(indices.length);
  if (!(high > low)) return found;
  for (let k = 0; k < found.length; k++)
    found[k] = Math.min(side - 1, Math.floor(((at[indices[k]] - low) / (high - low)) * side));
  return found;
}

/** The eight bits of a number with a nought before each, so that those of two can be woven. */
function spread(cell: number): number {
  let bits = (cell | (cell << 4)) & 0x0f0f;
  bits = (bits | (bits << 2)) & 0x3333;
  return (bits | (bits << 1)) & 0x5555;
}
