/** The box around points in plan, its sides along the axes; empty until a point is added. */
export class PlanBox {
  xLow = Number.POSITIVE_INFINITY;
  yLow = Number.POSITIVE_INFINITY;
  xHigh = Number.NEGATIVE_INFINITY;
  yHigh = Number.NEGATIVE_INFINITY;

  add(x: number, y: number): void {
    if (x < this.xLow) this.xLow = x;
    if (x > this.xHigh) this.xHigh = x;
    if (y < this.yLow) this.yLow = y;
    if (y > this.yHigh) this.yHigh = y;
  }

  /** Length from corner to corner. */
  get diagonal(): number {
    return Math.hypot(this.xHigh - this.xLow, this.yHigh - this.yLow);
  }

  /** Length of the longer side. */
  get longerSide(): number {
    return Math.max(this.xHigh - this.xLow, this.yHigh - this.yLow);
  }

  /** Distance from a point to the box; 0 in it. */
  distanceTo(x: number, y: number): number {
    return Math.hypot(Math.max(this.xLow - x, 0, x - this.xHigh), Math.max(this.yLow - y, 0, y - this.yHigh));
  }
}
