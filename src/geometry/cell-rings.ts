import type { PointCells } from './point-cells.js';

export const AXES = [0, 1, 2] as const;

/** More than rounding can move a coordinate across the border of a cell. */
export function slopOf(cells: PointCells, axis: 0 | 1 | 2, at: number): number {
  return (cells.high[axis] - cells.low[axis] + Math.abs(at - cells.low[axis])) * 2 ** -49;
}

/** The rings of cells about a point, clipped to the cells that a grid has, and how near they can come. */
export class CellRings {
  /** The cell of the point, or for a point outside of the grid the one that is nearest. */
  readonly home: readonly [number, number, number];
  readonly last: readonly [number, number, number];
  private readonly slop: number;

  constructor(
    private readonly cells: PointCells,
    private readonly at: readonly [number, number, number],
  ) {
    const { high } = cells;
    this.last = [cells.along(0, high[0]), cells.along(1, high[1]), cells.along(2, high[2])];
    const home = (axis: 0 | 1 | 2) => Math.max(0, Math.min(this.last[axis], cells.along(axis, at[axis])));
    this.home = [home(0), home(1), home(2)];
    this.slop = Math.max(slopOf(cells, 0, at[0]), slopOf(cells, 1, at[1]), slopOf(cells, 2, at[2]));
  }

  /** Square of the least distance that points in a slice of cells across an axis can have. */
  gapSq(axis: 0 | 1 | 2, slice: number): number {
    const at = this.at[axis] - this.cells.low[axis];
    const { side } = this.cells;
    const gap = Math.max(slice * side - at, at - (slice + 1) * side) * (1 - 1e-14) - this.slop;
    return gap > 0 ? gap * gap : 0;
  }

  cellSq(cell: number): number {
    const [cx, cy, cz] = this.placeOf(cell);
    return this.gapSq(0, cx) + this.gapSq(1, cy) + this.gapSq(2, cz);
  }

  ringOf(cell: number): number {
    const [cx, cy, cz] = this.placeOf(cell);
    return Math.max(Math.abs(cx - this.home[0]), Math.abs(cy - this.home[1]), Math.abs(cz - this.home[2]));
  }

  /** Square of the least distance that points in a ring or beyond can have; no number where there are no such cells. */
  leastSq(ring: number): number {
    const [x, y, z] = this.home;
    // Of each axis the home slice is the nearest one; about a point outside of the grid that counts for much.
    const homeSq = this.gapSq(0, x) + this.gapSq(1, y) + this.gapSq(2, z);
    if (ring === 0) return homeSq;
    let least = Number.POSITIVE_INFINITY;
    let hasCells = false;
    for (const axis of AXES) {
      const others = homeSq - this.gapSq(axis, this.home[axis]);
      for (const slice of [this.home[axis] - ring, this.home[axis] + ring]) {
        if (slice < 0 || slice > this.last[axis]) continue;
        hasCells = true;
        least = Math.min(least, others + this.gapSq(axis, slice));
      }
    }
    return hasCells ? least * (1 - 1e-14) : Number.NaN;
  }

  /** How many places for cells there are in a ring and the ones before it. */
  boxesUpTo(ring: number): number {
    let boxes = 1;
    for (const axis of AXES) {
      const width = Math.min(this.last[axis], this.home[axis] + ring) - Math.max(0, this.home[axis] - ring) + 1;
      boxes *= axis === 2 ? Math.min(width, this.cells.layers.size) : width;
    }
    return boxes;
  }

  private placeOf(cell: number): [number, number, number] {
    const { x, y, z } = this.cells.points;
    const first = this.cells.firstOf(cell);
    return [this.cells.along(0, x[first]), this.cells.along(1, y[first]), this.cells.along(2, z[first])];
  }
}
