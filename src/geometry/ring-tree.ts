import { orient2d } from 'robust-predicates';
import { distanceToRing, insideRing, type Ring } from './ring.js';

/** Edges of a leaf. */
const LEAF = 8;
/** Rings of no more corners are gone through as they are. */
const FEW_CORNERS = 32;

const made = new WeakMap<Ring, RingTree>();

/** The same as {@link insideRing}; of a ring of many corners few edges are looked at. */
export function isInsideRing(ring: Ring, u: number, v: number): boolean {
  return ring.u.length <= FEW_CORNERS ? insideRing(ring, u, v) : treeOf(ring).isInside(u, v);
}

/** The same as {@link distanceToRing}; of a ring of many corners few edges are looked at. */
export function ringDistance(ring: Ring, u: number, v: number): number {
  return ring.u.length <= FEW_CORNERS ? distanceToRing(ring, u, v) : treeOf(ring).distance(u, v);
}

function treeOf(ring: Ring): RingTree {
  const known = made.get(ring) ?? new RingTree(ring);
  made.set(ring, known);
  return known;
}

/**
 * The edges of a ring, halved again and again in their order, each part with its box. Made once, never changed.
 *
 * It answers as the functions over all edges do, to the last bit. A point costs about the logarithm of the corners,
 * besides the edges that lie about as near to it as the nearest one.
 */
export class RingTree {
  /** Edges looked at since the tree was made. */
  tests = 0;
  /** Least u, least v, greatest u, greatest v of the nodes of a binary tree: the children of node k are 2k + 1 and 2k + 2. */
  private readonly nodes: Float64Array;
  private leastSq = Number.POSITIVE_INFINITY;

  constructor(private readonly ring: Ring) {
    const count = ring.u.length;
    let depth = 1;
    while (LEAF * 2 ** (depth - 1) < count) depth++;
    this.nodes = new Float64Array(4 * 2 ** depth);
    if (count > 0) this.build(0, 0, count);
  }

  /** Whether a point lies inside; see {@link insideRing}. */
  isInside(u: number, v: number): boolean {
    return this.crossings(0, 0, this.ring.u.length, u, v);
  }

  /** Distance of a point from the nearest edge. */
  distance(u: number, v: number): number {
    this.leastSq = Number.POSITIVE_INFINITY;
    this.approach(0, 0, this.ring.u.length, u, v);
    return Math.sqrt(this.leastSq);
  }

  /** Edge k runs to corner k from the one before it. */
  private before(k: number): number {
    return k === 0 ? this.ring.u.length - 1 : k - 1;
  }

  private build(node: number, low: number, high: number): void {
    const { u, v } = this.ring;
    const box = this.nodes.subarray(node * 4, node * 4 + 4);
    box.fill(Number.POSITIVE_INFINITY, 0, 2).fill(Number.NEGATIVE_INFINITY, 2);
    const add = (k: number) => {
      box[0] = Math.min(box[0], u[k]);
      box[1] = Math.min(box[1], v[k]);
      box[2] = Math.max(box[2], u[k]);
      box[3] = Math.max(box[3], v[k]);
    };
    add(this.before(low));
    for (let k = low; k < high; k++) add(k);
    if (high - low <= LEAF) return;
    const middle = (low + high) >> 1;
    this.build(2 * node + 1, low, middle);
    this.build(2 * node + 2, middle, high);
  }

  /** Whether an odd number of the edges of a node crosses the ray from a point along u. */
  private crossings(node: number, low: number, high: number, pu: number, pv: number): boolean {
    const { nodes, ring } = this;
    const { u, v } = ring;
    const n = node * 4;
    if (nodes[n + 2] < pu || nodes[n + 3] <= pv || nodes[n + 1] > pv) return false;
    // Edges that all lie beyond the point cross the ray as often as they change sides, which their ends tell.
    if (nodes[n] > pu) return v[this.before(low)] > pv !== v[high - 1] > pv;
    if (high - low > LEAF) {
      const middle = (low + high) >> 1;
      const first = this.crossings(2 * node + 1, low, middle, pu, pv);
      return first !== this.crossings(2 * node + 2, middle, high, pu, pv);
    }
    let isOdd = false;
    for (let k = low, j = this.before(low); k < high; j = k++) {
      if (v[k] > pv === v[j] > pv) continue;
      this.tests++;
      if (orient2d(u[j], v[j], u[k], v[k], pu, pv) > 0 === v[j] > v[k]) isOdd = !isOdd;
    }
    return isOdd;
  }

  private approach(node: number, low: number, high: number, pu: number, pv: number): void {
    if (high - low > LEAF) {
      const middle = (low + high) >> 1;
      const [a, b] = [2 * node + 1, 2 * node + 2];
      const [toA, toB] = [this.boxSq(a, pu, pv), this.boxSq(b, pu, pv)];
      if (toA <= toB && !(toA > this.leastSq)) this.approach(a, low, middle, pu, pv);
      if (!(toB > this.leastSq)) this.approach(b, middle, high, pu, pv);
      if (!(toA <= toB) && !(toA > this.leastSq)) this.approach(a, low, middle, pu, pv);
      return;
    }
    const { u, v } = this.ring;
    for (let k = low, j = this.before(low); k < high; j = k++) {
      this.tests++;
      const eu = u[k] - u[j];
      const ev = v[k] - v[j];
      const lengthSq = eu * eu + ev * ev;
      const t = lengthSq > 0 ? Math.max(0, Math.min(1, ((pu - u[j]) * eu + (pv - v[j]) * ev) / lengthSq)) : 0;
      const du = pu - u[j] - t * eu;
      const dv = pv - v[j] - t * ev;
      this.leastSq = Math.min(this.leastSq, du * du + dv * dv);
    }
  }

  /** Square of the distance to the box of a node, less what rounding may add to it. */
  private boxSq(node: number, pu: number, pv: number): number {
    const { nodes } = this;
    const n = node * 4;
    const du = Math.max(nodes[n] - pu, 0, pu - nodes[n + 2]);
    const dv = Math.max(nodes[n + 1] - pv, 0, pv - nodes[n + 3]);
    return (du * du + dv * dv) * (1 - 1e-12);
  }
}
