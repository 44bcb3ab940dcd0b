import { PlanBox } from './plan-box.js';
import type { Ring } from './ring.js';

/** Cells along each side: enough that few of many outlines share one, few enough to be filled at once. */
const SIDE = 64;
const NONE: readonly number[] = [];

/**
 * Rings of a plane sorted into the cells that their boxes touch, so that a point is compared with few of many.
 *
 * Built once in time of the cells that the boxes cover, at most 64 by 64 for each ring; a look-up takes constant time.
 */
export class RingCells {
  private readonly all = new PlanBox();
  private readonly cells: number[][] = [];

  /** @param rings undefined for numbers that have none */
  constructor(rings: readonly (Ring | undefined)[]) {
    const { all } = this;
    const boxes = rings.map((ring) => {
      if (ring === undefined) return undefined;
      const box = new PlanBox();
      for (let k = 0; k < ring.u.length; k++) box.add(ring.u[k], ring.v[k]);
      all.add(box.xLow, box.yLow);
      all.add(box.xHigh, box.yHigh);
      return box;
    });
    boxes.forEach((box, ring) => {
      if (box === undefined) return;
      for (let row = this.row(box.yLow); row <= this.row(box.yHigh); row++) {
        for (let column = this.column(box.xLow); column <= this.column(box.xHigh); column++) {
          const cell = row * SIDE + column;
          this.cells[cell] ??= [];
          this.cells[cell].push(ring);
        }
      }
    });
  }

  /** Numbers of the rings near a point, in order; no other ring holds it. */
  near(u: number, v: number): readonly number[] {
    if (this.all.distanceTo(u, v) > 0) return NONE;
    return this.cells[this.row(v) * SIDE + this.column(u)] ?? NONE;
  }

  private column(u: number): number {
    return cellAt(u, this.all.xLow, this.all.xHigh);
  }

  private row(v: number): number {
    return cellAt(v, this.all.yLow, this.all.yHigh);
  }
}

/** The cell of a coordinate between two ends. */
function cellAt(at: number, low: number, high: number): number {
  return high > low ? Math.min(SIDE - 1, Math.floor(((at - low) / (high - low)) * SIDE)) : 0;
}
