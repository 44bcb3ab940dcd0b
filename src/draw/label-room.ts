import type { PaperBox } from './plan-view.js';

const CELL_MM = 4;

/** Boxes on paper that are taken, so that the next label finds room beside them. */
export class LabelRoom {
  private readonly cells = new Map<number, PaperBox[]>();

  constructor(private readonly paper: PaperBox) {}

  take(box: PaperBox): void {
    for (const key of this.keys(box)) {
      const cell = this.cells.get(key);
      if (cell === undefined) this.cells.set(key, [box]);
      else cell.push(box);
    }
  }

  /** Whether a box lies on the paper and on nothing that is taken. */
  isFree(box: PaperBox): boolean {
    const { left, top, right, bottom } = this.paper;
    if (box.left < left || box.top < top || box.right > right || box.bottom > bottom) return false;
    for (const key of this.keys(box)) {
      for (const other of this.cells.get(key) ?? []) {
        if (box.left < other.right && box.right > other.left && box.top < other.bottom && box.bottom > other.top)
          return false;
      }
    }
    return true;
  }

  /** Takes the first box that is free; gives its number, or -1. */
  takeFirst(boxes: readonly PaperBox[]): number {
    const found = boxes.findIndex((box) => this.isFree(box));
    if (found >= 0) this.take(boxes[found]);
    return found;
  }

  private *keys({ left, top, right, bottom }: PaperBox): Generator<number> {
    for (let x = Math.floor(left / CELL_MM); x <= Math.floor(right / CELL_MM); x++) {
      for (let y = Math.floor(top / CELL_MM); y <= Math.floor(bottom / CELL_MM); y++) yield x * 1000 + y;
    }
  }
}

/** Box of a text of that width about its middle. */
export function boxAbout([x, y]: readonly [number, number], width: number, height: number): PaperBox {
  return { left: x - width / 2, top: y - height / 2, right: x + width / 2, bottom: y + height / 2 };
}
