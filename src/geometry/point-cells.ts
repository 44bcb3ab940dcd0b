import { bucketMask, hashRow, type Points } from './near-pairs.js';

/** A cell that holds more points than this is sorted by place, and divided where its places are more. */
const CROWD = 32;
/** Points whose surroundings tell the density. */
const SAMPLES = 16;
/** Side of a cell as a share of the median over the samples of the distance to the eighth nearest point. */
const SIDE_SHARE = 1.1;
const NEIGHBOURS = 8;
/** Cells are made larger by this factor while, of so many looked at, a greater share is alone. */
const COARSER = 8;
const LOOKED_AT = 256;
const MOST_ALONE = 0.02;
/** Numbers of cells stay below 2^40 along each axis, where neighbouring ones are still distinct. */
const FINEST = 2 ** -40;

/**
 * Points in the cubic cells of a grid; only cells with points exist. Filled once, then only read.
 *
 * Where more than 32 points share a cell they are ordered by place, and a cell with more than 32 places has
 * `finer` cells of its own. So no cell holds many places, whatever the points are: a list of which a part
 * is in another unit, for instance.
 */
export class PointCells {
  side: number;
  /** Least and greatest coordinates of the points. */
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
  cellCount = 0;
  /** Points of cell `c`: `items` from `starts[c]` to before `starts[c + 1]`, by index, in a crowd by place first. */
  readonly starts: Int32Array;
  readonly items: Int32Array;
  /** Behind the last point at the place of `items[k]`, in crowds only. */
  readonly placeEnds: Int32Array | undefined;
  readonly finer = new Map<number, PointCells>();
  /** Heights of cells that hold points: floors lie apart, and what is between them need not be looked at. */
  readonly layers = new Set<number>();
  private readonly mask: number;
  private readonly slots: Int32Array;
  /** First point of each cell, which tells where the cell is. */
  private readonly firsts: Int32Array;

  /** @param list indexes of the points, in ascending order, all with finite coordinates */
  constructor(
    readonly points: Points,
    list: Int32Array,
    mostSide = Number.POSITIVE_INFINITY,
  ) {
    [this.low, this.high] = boundsOf(points, list);
    const extent = Math.max(...this.high.map((high, axis) => high - this.low[axis]));
    this.side = Math.max(Math.min(SIDE_SHARE * spacingOf(points, list), mostSide), extent * FINEST) || 1;
    this.mask = bucketMask(list.length);
    this.slots = new Int32Array(this.mask + 1);
    this.firsts = new Int32Array(list.length);
    const cellOf = new Int32Array(list.length);
    this.enterAll(list, cellOf);
    while (this.cellCount > 1 && this.side * COARSER <= mostSide && this.areManyAlone()) {
      this.side *= COARSER;
      this.enterAll(list, cellOf);
    }
    this.starts = new Int32Array(this.cellCount + 1);
    for (const cell of cellOf) this.starts[cell + 1]++;
    for (let cell = 0; cell < this.cellCount; cell++) this.starts[cell + 1] += this.starts[cell];
    this.items = new Int32Array(list.length);
    const ends = this.starts.slice();
    for (let k = 0; k < list.length; k++) this.items[ends[cellOf[k]]++] = list[k];
    for (let cell = 0; cell < this.cellCount; cell++) {
      if (this.starts[cell + 1] - this.starts[cell] <= CROWD) continue;
      this.placeEnds ??= new Int32Array(list.length);
      this.sortCrowd(cell, this.placeEnds);
    }
  }

  /** Number of the cell at a place of the grid, or -1 where it holds no points. */
  cellAt(cx: number, cy: number, cz: number): number {
    const { slots, mask } = this;
    for (let slot = slotOf(cx, cy, cz) & mask; ; slot = (slot + 1) & mask) {
      const cell = slots[slot];
      if (cell < 0 || this.isAt(cell, cx, cy, cz)) return cell;
    }
  }

  /** Which cell of an axis a coordinate is in. */
  along(axis: 0 | 1 | 2, coordinate: number): number {
    return Math.floor((coordinate - this.low[axis]) / this.side);
  }

  /** A point of a cell. */
  firstOf(cell: number): number {
    return this.firsts[cell];
  }

  private enterAll(list: Int32Array, cellOf: Int32Array): void {
    this.slots.fill(-1);
    this.layers.clear();
    this.cellCount = 0;
    for (let k = 0; k < list.length; k++) cellOf[k] = this.enter(list[k]);
  }

  /**
   * Whether the cells are too small for a good part of the points: of a few, spread over all, so many have
   * no cell with points beside them. What is then too large for the others is divided.
   */
  private areManyAlone(): boolean {
    const step = Math.max(1, Math.floor(this.cellCount / LOOKED_AT));
    let looked = 0;
    let alone = 0;
    for (let cell = 0; cell < this.cellCount; cell += step, looked++) if (this.isAlone(cell)) alone++;
    return alone > looked * MOST_ALONE;
  }

  private isAlone(cell: number): boolean {
    const { x, y, z } = this.points;
    const first = this.firsts[cell];
    const [cx, cy, cz] = [this.along(0, x[first]), this.along(1, y[first]), this.along(2, z[first])];
    for (let dz = -1; dz <= 1; dz++) {
      if (!this.layers.has(cz + dz)) continue;
      for (let dy = -1; dy <= 1; dy++)
        for (let dx = -1; dx <= 1; dx++) {
          const beside = this.cellAt(cx + dx, cy + dy, cz + dz);
          if (beside >= 0 && beside !== cell) return false;
        }
    }
    return true;
  }

  private enter(point: number): number {
    const { x, y, z } = this.points;
    const cx = this.along(0, x[point]);
    const cy = this.along(1, y[point]);
    const cz = this.along(2, z[point]);
    let slot = slotOf(cx, cy, cz) & this.mask;
    for (; this.slots[slot] >= 0; slot = (slot + 1) & this.mask) {
      if (this.isAt(this.slots[slot], cx, cy, cz)) return this.slots[slot];
    }
    this.layers.add(cz);
    this.firsts[this.cellCount] = point;
    this.slots[slot] = this.cellCount;
    return this.cellCount++;
  }

  private isAt(cell: number, cx: number, cy: number, cz: number): boolean {
    const { x, y, z } = this.points;
    const first = this.firsts[cell];
    return this.along(0, x[first]) === cx && this.along(1, y[first]) === cy && this.along(2, z[first]) === cz;
  }

  private sortCrowd(cell: number, placeEnds: Int32Array): void {
    const { x, y, z } = this.points;
    const [start, end] = [this.starts[cell], this.starts[cell + 1]];
    const byIndex = this.items.slice(start, end);
    // An array rather than its typed sister: its sort is linear where all lie at one place.
    const byPlace = Array.from(byIndex).sort((a, b) => x[a] - x[b] || y[a] - y[b] || z[a] - z[b]);
    this.items.set(byPlace, start);
    let places = 0;
    for (let k = end - 1, placeEnd = end; k >= start; k--) {
      const [a, b] = [this.items[k], k + 1 < end ? this.items[k + 1] : -1];
      if (b < 0 || x[a] !== x[b] || y[a] !== y[b] || z[a] !== z[b]) {
        placeEnd = k + 1;
        places++;
      }
      placeEnds[k] = placeEnd;
    }
    if (places > CROWD) this.finer.set(cell, new PointCells(this.points, byIndex, this.side / 2));
  }
}

function slotOf(cx: number, cy: number, cz: number): number {
  const h = hashRow(cy, cz) + Math.imul(cx, 0x9e3779b1);
  return h ^ (h >>> 15);
}

function boundsOf({ x, y, z }: Points, list: Int32Array): [[number, number, number], [number, number, number]] {
  let [lowX, lowY, lowZ] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [highX, highY, highZ] = [-lowX, -lowY, -lowZ];
  for (const i of list) {
    lowX = Math.min(lowX, x[i]);
    lowY = Math.min(lowY, y[i]);
    lowZ = Math.min(lowZ, z[i]);
    highX = Math.max(highX, x[i]);
    highY = Math.max(highY, y[i]);
    highZ = Math.max(highZ, z[i]);
  }
  return [
    [lowX, lowY, lowZ],
    [highX, highY, highZ],
  ];
}

/**
 * How far points lie apart, 0 where they are all at one place: the median over a few points, spread over
 * the list, of the distance along the farthest axis to the eighth nearest point at another place. Cells of
 * that side hold two points of a floor, one of a volume, four of a row.
 */
function spacingOf(points: Points, list: Int32Array): number {
  const spacings: number[] = [];
  for (let sample = 0; sample < SAMPLES && list.length > 0; sample++) {
    const spacing = spacingAbout(points, list, list[Math.floor(((sample + 0.5) * list.length) / SAMPLES)]);
    if (spacing > 0) spacings.push(spacing);
  }
  return spacings.length > 0 ? spacings.sort((a, b) => a - b)[spacings.length >> 1] : 0;
}

/** Distance to the eighth nearest point at another place, or to the farthest where there are fewer. */
function spacingAbout({ x, y, z }: Points, list: Int32Array, i: number): number {
  const nearest = new Float64Array(NEIGHBOURS).fill(Number.POSITIVE_INFINITY);
  for (const j of list) {
    const distance = Math.max(Math.abs(x[i] - x[j]), Math.abs(y[i] - y[j]), Math.abs(z[i] - z[j]));
    if (distance >= nearest[NEIGHBOURS - 1] || distance === 0) continue;
    let k = NEIGHBOURS - 1;
    for (; k > 0 && nearest[k - 1] > distance; k--) nearest[k] = nearest[k - 1];
    nearest[k] = distance;
  }
  return nearest.findLast(Number.isFinite) ?? 0;
}
