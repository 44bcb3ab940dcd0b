import { BoxTree } from './box-tree.js';
import { bucketMask, hashRow } from './near-pairs.js';

/** A box in more cells than this, and boxes beyond this many entries of cells, are kept in a tree. */
const MOST_CELLS_OF_BOX = 20_000;
const MOST_ENTRIES = 2_000_000;
/** A search in more cells than this, or in one with more boxes, asks the tree of all boxes instead. */
const MOST_CELLS_OF_SEARCH = 64;
const CROWD = 64;

/**
 * Boxes by place, for very many small searches: a grid of cells, and trees for what a grid is bad at, which is boxes and
 * searches of many cells and crowds in one cell.
 */
export class BoxGrid {
  private readonly all: BoxTree;
  private readonly large: BoxTree;
  /** Numbers of the large boxes. */
  private readonly largeOf: Int32Array;
  private readonly starts: Int32Array;
  private readonly items: Int32Array;
  private readonly mask: number;
  /** For each box the search that found it last: cells share boxes, and buckets share cells. */
  private readonly seen: Float64Array;
  private searches = 0;

  /**
   * @param boxes six numbers a box: least x, y, z, then greatest
   * @param side of a cell: somewhat larger than most searches, so that one looks into one or two
   */
  constructor(
    private readonly boxes: Float64Array,
    private readonly side: number,
  ) {
    const count = boxes.length / 6;
    this.all = new BoxTree(boxes);
    this.seen = new Float64Array(count);
    const large: number[] = [];
    let entries = 0;
    for (let box = 0; box < count; box++) {
      const cells = this.cellsOf(box);
      if (cells > MOST_CELLS_OF_BOX || entries + cells > MOST_ENTRIES) large.push(box);
      else entries += cells;
    }
    this.largeOf = Int32Array.from(large);
    this.large = new BoxTree(Float64Array.from(large.flatMap((box) => [...boxes.subarray(box * 6, box * 6 + 6)])));
    this.mask = bucketMask(entries);
    this.starts = new Int32Array(this.mask + 2);
    this.items = new Int32Array(entries);
    const isLarge = new Uint8Array(count);
    for (const box of large) isLarge[box] = 1;
    const each = (visit: (bucket: number, box: number) => void) => {
      for (let box = 0; box < count; box++) if (isLarge[box] === 0) this.forCells(box, visit);
    };
    each((bucket) => this.starts[bucket + 1]++);
    for (let bucket = 0; bucket <= this.mask; bucket++) this.starts[bucket + 1] += this.starts[bucket];
    const ends = this.starts.slice();
    each((bucket, box) => {
      this.items[ends[bucket]++] = box;
    });
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
    const { boxes, side, starts, items, mask, seen } = this;
    const cx0 = Math.floor(x0 / side);
    const cx1 = Math.floor(x1 / side);
    const cy0 = Math.floor(y0 / side);
    const cy1 = Math.floor(y1 / side);
    const cz0 = Math.floor(z0 / side);
    const cz1 = Math.floor(z1 / side);
    const cells = (cx1 - cx0 + 1) * (cy1 - cy0 + 1) * (cz1 - cz0 + 1);
    // Also where a number is none.
    if (!(cells <= MOST_CELLS_OF_SEARCH)) return this.all.meeting(x0, y0, z0, x1, y1, z1, found, most);
    const search = ++this.searches;
    let count = 0;
    if (this.largeOf.length > 0) {
      count = this.large.meeting(x0, y0, z0, x1, y1, z1, found, most);
      for (let k = 0; k < count; k++) found[k] = this.largeOf[found[k]];
      if (count < 0) return -1;
    }
    for (let cz = cz0; cz <= cz1; cz++) {
      for (let cy = cy0; cy <= cy1; cy++) {
        const row = hashRow(cy, cz);
        for (let cx = cx0; cx <= cx1; cx++) {
          const bucket = (row + cx) & mask;
          const end = starts[bucket + 1];
          let k = starts[bucket];
          if (end - k > CROWD) return this.all.meeting(x0, y0, z0, x1, y1, z1, found, most);
          for (; k < end; k++) {
            const box = items[k];
            if (seen[box] === search) continue;
            seen[box] = search;
            const b = box * 6;
            if (x1 < boxes[b] || x0 > boxes[b + 3] || y1 < boxes[b + 1] || y0 > boxes[b + 4]) continue;
            if (z1 < boxes[b + 2] || z0 > boxes[b + 5]) continue;
            if (count === most) return -1;
            found[count++] = box;
          }
        }
      }
    }
    return count;
  }

  private cellsOf(box: number): number {
    let cells = 1;
    for (let k = 0; k < 3; k++)
      cells *=
        Math.floor(this.boxes[box * 6 + k + 3] / this.side) - Math.floor(this.boxes[box * 6 + k] / this.side) + 1;
    return cells;
  }

  private forCells(box: number, visit: (bucket: number, box: number) => void): void {
    const cell = (k: number) => Math.floor(this.boxes[box * 6 + k] / this.side);
    const x1 = cell(3);
    for (let cz = cell(2); cz <= cell(5); cz++) {
      for (let cy = cell(1); cy <= cell(4); cy++) {
        const row = hashRow(cy, cz);
        for (let cx = cell(0); cx <= x1; cx++) visit((row + cx) & this.mask, box);
      }
    }
  }
}
