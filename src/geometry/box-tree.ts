/** Items of a leaf. */
const LEAF = 4;

/**
 * Boxes by place: finds those that meet a box without looking at the others.
 *
 * Each half of the boxes goes into a half of the tree, parted at the median of their middles along the longest side,
 * so that a few boxes far away or very many at one place do no harm. Building takes n log n.
 */
export class BoxTree {
  readonly count: number;
  private readonly order: Int32Array;
  /** Boxes of the nodes of a binary tree, as in a heap: the children of node k are 2k + 1 and 2k + 2. */
  private readonly nodes: Float64Array;
  private readonly stack: Int32Array;

  /** @param boxes six numbers a box: least x, y, z, then greatest */
  constructor(private readonly boxes: Float64Array) {
    this.count = boxes.length / 6;
    this.order = Int32Array.from({ length: this.count }, (_, k) => k);
    let depth = 1;
    while (LEAF * 2 ** (depth - 1) < this.count) depth++;
    this.nodes = new Float64Array(6 * 2 ** depth);
    this.stack = new Int32Array(3 * (depth + 1));
    if (this.count > 0) this.build(0, 0, this.count);
  }

  /**
   * Writes the numbers of the boxes that meet a box to the front of `found`, in no order.
   *
   * @param most room in `found` that is used
   * @returns how many they are, or -1 if more than `most`
   */
  meeting(
    x0: number,
    y0: number,
    z0: number,
    x1: number,
    y1: number,
    z1: number,
    found: Int32Array,
    most: number,
  ): number {
    const { boxes, nodes, order, stack } = this;
    if (this.count === 0) return 0;
    let count = 0;
    let top = 0;
    stack[top++] = 0;
    stack[top++] = 0;
    stack[top++] = this.count;
    while (top > 0) {
      const high = stack[--top];
      const low = stack[--top];
      const node = stack[--top];
      const n = node * 6;
      if (x1 < nodes[n] || x0 > nodes[n + 3] || y1 < nodes[n + 1] || y0 > nodes[n + 4]) continue;
      if (z1 < nodes[n + 2] || z0 > nodes[n + 5]) continue;
      if (high - low > LEAF) {
        const middle = (low + high) >> 1;
        stack[top++] = 2 * node + 1;
        stack[top++] = low;
        stack[top++] = middle;
        stack[top++] = 2 * node + 2;
        stack[top++] = middle;
        stack[top++] = high;
        continue;
      }
      for (let k = low; k < high; k++) {
        const b = order[k] * 6;
        if (x1 < boxes[b] || x0 > boxes[b + 3] || y1 < boxes[b + 1] || y0 > boxes[b + 4]) continue;
        if (z1 < boxes[b + 2] || z0 > boxes[b + 5]) continue;
        if (count === most) return -1;
        found[count++] = order[k];
      }
    }
    return count;
  }

  private build(node: number, low: number, high: number): void {
    const { boxes, nodes, order } = this;
    const own = nodes.subarray(node * 6, node * 6 + 6);
    own.fill(Number.POSITIVE_INFINITY, 0, 3).fill(Number.NEGATIVE_INFINITY, 3);
    for (let k = low; k < high; k++) {
      for (let side = 0; side < 3; side++) {
        own[side] = Math.min(own[side], boxes[order[k] * 6 + side]);
        own[side + 3] = Math.max(own[side + 3], boxes[order[k] * 6 + side + 3]);
      }
    }
    if (high - low <= LEAF) return;
    const middle = (low + high) >> 1;
    this.part(low, high - 1, middle, this.longest(low, high));
    this.build(2 * node + 1, low, middle);
    this.build(2 * node + 2, middle, high);
  }

  /** Side along which the middles of boxes lie farthest apart. */
  private longest(low: number, high: number): number {
    let longest = 0;
    let most = -1;
    for (let side = 0; side < 3; side++) {
      let least = Number.POSITIVE_INFINITY;
      let greatest = Number.NEGATIVE_INFINITY;
      for (let k = low; k < high; k++) {
        const middle = this.middle(k, side);
        least = Math.min(least, middle);
        greatest = Math.max(greatest, middle);
      }
      if (greatest - least > most) {
        most = greatest - least;
        longest = side;
      }
    }
    return longest;
  }

  /** Twice the middle of the box at a place of the order. */
  private middle(place: number, side: number): number {
    const b = this.order[place] * 6 + side;
    return this.boxes[b] + this.boxes[b + 3];
  }

  /** Brings the box that would stand at `place` if all were sorted there, no greater one before it (Hoare's selection). */
  private part(from: number, to: number, place: number, side: number): void {
    const { order } = this;
    let low = from;
    let high = to;
    while (high > low) {
      const pivot = this.middle((low + high) >> 1, side);
      let i = low;
      let j = high;
      while (i <= j) {
        while (this.middle(i, side) < pivot) i++;
        while (this.middle(j, side) > pivot) j--;
        if (i > j) break;
        const swapped = order[i];
        order[i++] = order[j];
        order[j--] = swapped;
      }
      if (place <= j) high = j;
      else if (place >= i) low = i;
      else return;
    }
  }
}
