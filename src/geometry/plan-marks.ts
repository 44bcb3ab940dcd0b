import { bucketMask, hashRow } from './near-pairs.js';

/** Cells that one box may mark; one that touches more marks all. */
const MOST_CELLS = 10_000;

/**
 * Marked places of a plan, to be asked very often: whether a place may lie in one of some boxes.
 *
 * It may say so of a place that lies in none; it never says the other way round.
 */
export class PlanMarks {
  private readonly marks: Uint8Array;
  private readonly mask: number;
  private isAll = false;

  /**
   * @param side of a cell, best about the size of a box
   * @param boxes number of boxes that will be marked
   */
  constructor(
    private readonly side: number,
    boxes: number,
  ) {
    this.mask = bucketMask(16 * boxes);
    this.marks = new Uint8Array(this.mask + 1);
  }

  /** Marks a box. */
  mark(lowX: number, lowY: number, highX: number, highY: number): void {
    const [x0, x1] = [Math.floor(lowX / this.side), Math.floor(highX / this.side)];
    const [y0, y1] = [Math.floor(lowY / this.side), Math.floor(highY / this.side)];
    if (!((x1 - x0 + 1) * (y1 - y0 + 1) <= MOST_CELLS)) {
      this.isAll = true;
      return;
    }
    for (let cy = y0; cy <= y1; cy++)
      for (let cx = x0; cx <= x1; cx++) this.marks[(hashRow(cy, 0) + cx) & this.mask] = 1;
  }

  /** Whether a place may lie in a box. */
  mayBeIn(x: number, y: number): boolean {
    const { side } = this;
    return this.isAll || this.marks[(hashRow(Math.floor(y / side), 0) + Math.floor(x / side)) & this.mask] !== 0;
  }
}
