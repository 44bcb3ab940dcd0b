import { PlanBox } from '../geometry/plan-box.js';

/** Points that lie far from all others. */
export interface FewFar {
  /** Their indexes, ascending. */
  far: number[];
  /** The box around the others. */
  box: PlanBox;
}

/** Finds the few points of a set that lie far from all others in plan, in one pass over the set. */
export class FewFarFinder {
  /** Points that were added. */
  count = 0;
  /** The outermost points to the left, right, below and above, the farthest first. */
  private readonly outermost: number[][] = [[], [], [], []];

  /**
   * @param x coordinates of the points by index
   * @param most how many points may be called far, at most
   * @param slack of comparisons, in the unit of the coordinates
   */
  constructor(
    private readonly x: Float64Array,
    private readonly y: Float64Array,
    private readonly most: number,
    private readonly slack: number,
  ) {}

  add(i: number): void {
    this.count++;
    for (let side = 0; side < 4; side++) this.keep(side, i);
  }

  /**
   * The points that lie farther from the box around all others than its longer side is long; undefined
   * where there are none, or more than `limit`, which is not above the `most` of the finder.
   */
  find(limit: number): FewFar | undefined {
    const { outermost } = this;
    if (this.count <= 4 * limit) return undefined;
    // Without the outermost ones of each side the box holds no far point, or far points are too many.
    const core = this.boxOf((list) => list[limit]);
    const candidates = new Set(outermost.flatMap((list) => list.slice(0, limit)));
    let far = [...candidates].filter((i) => this.isFar(core, i));
    while (far.length > 0 && far.length <= limit) {
      const box = this.boxOf((list) => list.find((i) => !far.includes(i)) as number);
      const still = far.filter((i) => this.isFar(box, i));
      if (still.length === far.length) return { far: far.sort((a, b) => a - b), box };
      far = still;
    }
    return undefined;
  }

  /** Keeps a point if it is one of the outermost `most` + 1 of a side. */
  private keep(side: number, i: number): void {
    const list = this.outermost[side];
    const { most } = this;
    const value = this.inwardOf(side, i);
    if (list.length > most && value >= this.inwardOf(side, list[most])) return;
    let k = Math.min(list.length, most);
    for (; k > 0 && value < this.inwardOf(side, list[k - 1]); k--) list[k] = list[k - 1];
    list[k] = i;
  }

  /** A coordinate that grows from a side inward. */
  private inwardOf(side: number, i: number): number {
    const value = side < 2 ? this.x[i] : this.y[i];
    return side % 2 === 0 ? value : -value;
  }

  private boxOf(pick: (list: readonly number[]) => number): PlanBox {
    const [left, right, below, above] = this.outermost.map(pick);
    const box = new PlanBox();
    box.add(this.x[left], this.y[below]);
    box.add(this.x[right], this.y[above]);
    return box;
  }

  private isFar(box: PlanBox, i: number): boolean {
    return box.longerSide > 0 && box.distanceTo(this.x[i], this.y[i]) > box.longerSide + this.slack;
  }
}
