import { bucketMask, hashRow } from './near-pairs.js';

/** Parts of cells that all volumes together may touch, for each of them. */
const MOST_PER_VOLUME = 8;
/** A few more, so that small sets need no larger cells. */
const FEW = 50_000;
/** A volume that would touch more cells than this by itself is not in the grid. */
const MOST_OF_ONE = 20_000;

/** Swept volumes as the grid takes them: all points within `radius` of a segment; six numbers a segment. */
export interface SweptVolumes {
  count: number;
  /** x, y, z of one end and of the other, for each volume; a volume with a number that is none is not in the grid. */
  ends: Float64Array;
  radius: Float64Array;
}

/**
 * A fixed grid over swept volumes, to find those that may meet another one.
 *
 * A volume is cut into pieces as long as a cell and lies in the cells that the boxes of its pieces touch. Cells
 * are as large as the volumes are on the average, and larger where these would touch more than eight cells
 * each. Building is linear in the number of volumes.
 */
export class SweptGrid {
  /** Volumes that were looked at so far. */
  tests = 0;
  /** 1 for a volume that is so long or wide that it is not in the grid. */
  readonly isLeftOut: Uint8Array;
  private side: number;
  private readonly mask: number;
  private readonly starts: Int32Array;
  private readonly items: Int32Array;
  private readonly seen: Int32Array;
  private searches = 0;
  private readonly cells = new Int32Array(MOST_OF_ONE);

  /** @param skip 1 for a volume that is not to be in the grid */
  constructor(
    private readonly volumes: SweptVolumes,
    private readonly skip: Uint8Array,
  ) {
    const { count } = volumes;
    this.isLeftOut = new Uint8Array(count);
    this.seen = new Int32Array(count);
    this.mask = bucketMask(count * 2);
    this.side = this.averageSize();
    let total = this.countCells();
    for (; total > MOST_PER_VOLUME * count + FEW; total = this.countCells()) this.side *= 2;
    this.starts = new Int32Array(this.mask + 2);
    for (let i = 0; i < count; i++) {
      const touched = this.isIn(i) ? this.gather(i) : 0;
      for (let k = 0; k < touched; k++) this.starts[this.cells[k] + 1]++;
    }
    for (let bucket = 0; bucket <= this.mask; bucket++) this.starts[bucket + 1] += this.starts[bucket];
    this.items = new Int32Array(total);
    const ends = this.starts.slice(0, this.mask + 1);
    for (let i = 0; i < count; i++) {
      const touched = this.isIn(i) ? this.gather(i) : 0;
      for (let k = 0; k < touched; k++) this.items[ends[this.cells[k]]++] = i;
    }
  }

  /**
   * Visits the volumes of the grid whose boxes meet that of volume `i`, which may itself not be in the grid,
   * once each, in no order that is promised.
   *
   * @param mostTests most volumes that are looked at
   * @returns whether all were
   */
  near(i: number, visit: (j: number) => void, mostTests = Number.POSITIVE_INFINITY): boolean {
    const { cells, seen, items, starts } = this;
    const touched = this.gather(i);
    if (touched < 0) return false;
    const search = ++this.searches;
    let tests = 0;
    for (let c = 0; c < touched; c++) {
      for (let k = starts[cells[c]]; k < starts[cells[c] + 1]; k++) {
        const j = items[k];
        if (seen[j] === search || j === i) continue;
        seen[j] = search;
        if (++tests > mostTests) {
          this.tests += tests;
          return false;
        }
        if (this.boxesMeet(i, j)) visit(j);
      }
    }
    this.tests += tests;
    return true;
  }

  private isIn(i: number): boolean {
    return this.skip[i] === 0 && this.isLeftOut[i] === 0;
  }

  private averageSize(): number {
    const { count, ends, radius } = this.volumes;
    let sum = 0;
    let taken = 0;
    for (let i = 0; i < count; i++) {
      if (this.skip[i] !== 0) continue;
      const at = i * 6;
      const size = Math.sqrt(
        (ends[at + 3] - ends[at]) ** 2 + (ends[at + 4] - ends[at + 1]) ** 2 + (ends[at + 5] - ends[at + 2]) ** 2,
      );
      // A few that are far too large must not make the cells too large for all others.
      if (!(size + radius[i] < 1e5)) continue;
      sum += size + 2 * radius[i];
      taken++;
    }
    return sum > 0 ? sum / taken : 1;
  }

  private countCells(): number {
    let total = 0;
    for (let i = 0; i < this.volumes.count; i++) {
      if (this.skip[i] !== 0) continue;
      const touched = this.gather(i);
      this.isLeftOut[i] = touched < 0 ? 1 : 0;
      if (touched > 0) total += touched;
    }
    return total;
  }

  /** Collects the buckets of the cells that a volume touches; -1 where they are too many or its numbers none. */
  private gather(i: number): number {
    const { cells, side, mask } = this;
    const { ends, radius } = this.volumes;
    const at = i * 6;
    const [ax, ay, az] = [ends[at], ends[at + 1], ends[at + 2]];
    const [dx, dy, dz] = [ends[at + 3] - ax, ends[at + 4] - ay, ends[at + 5] - az];
    const reach = radius[i] * (1 + 1e-9) + 1e-6;
    const perSide = 1 / side;
    const steps = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy + dz * dz) * perSide));
    if (!(steps <= MOST_OF_ONE && reach < side * MOST_OF_ONE)) return -1;
    let count = 0;
    let bx0 = 1;
    let bx1 = 0;
    let by0 = 1;
    let by1 = 0;
    let bz0 = 1;
    let bz1 = 0;
    for (let s = 0; s < steps; s++) {
      const t0 = s / steps;
      const t1 = (s + 1) / steps;
      const x0 = Math.floor((ax + dx * (dx < 0 ? t1 : t0) - reach) * perSide);
      const x1 = Math.floor((ax + dx * (dx < 0 ? t0 : t1) + reach) * perSide);
      const y0 = Math.floor((ay + dy * (dy < 0 ? t1 : t0) - reach) * perSide);
      const y1 = Math.floor((ay + dy * (dy < 0 ? t0 : t1) + reach) * perSide);
      const z0 = Math.floor((az + dz * (dz < 0 ? t1 : t0) - reach) * perSide);
      const z1 = Math.floor((az + dz * (dz < 0 ? t0 : t1) + reach) * perSide);
      if (!(count + (x1 - x0 + 1) * (y1 - y0 + 1) * (z1 - z0 + 1) <= MOST_OF_ONE)) return -1;
      for (let cz = z0; cz <= z1; cz++) {
        for (let cy = y0; cy <= y1; cy++) {
          const row = hashRow(cy, cz);
          const wasRow = cz >= bz0 && cz <= bz1 && cy >= by0 && cy <= by1;
          for (let cx = x0; cx <= x1; cx++) {
            // What the piece before has touched is collected already.
            if (!wasRow || cx < bx0 || cx > bx1) cells[count++] = (row + cx) & mask;
          }
        }
      }
      bx0 = x0;
      bx1 = x1;
      by0 = y0;
      by1 = y1;
      bz0 = z0;
      bz1 = z1;
    }
    return count;
  }

  private boxesMeet(i: number, j: number): boolean {
    const { ends, radius } = this.volumes;
    const a = i * 6;
    const b = j * 6;
    const reach = (radius[i] + radius[j]) * (1 + 1e-9) + 1e-6;
    for (let k = 0; k < 3; k++) {
      if (Math.min(ends[a + k], ends[a + k + 3]) - Math.max(ends[b + k], ends[b + k + 3]) > reach) return false;
      if (Math.min(ends[b + k], ends[b + k + 3]) - Math.max(ends[a + k], ends[a + k + 3]) > reach) return false;
    }
    return true;
  }
}
