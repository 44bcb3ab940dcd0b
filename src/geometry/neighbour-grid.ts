import { AXES, CellRings, slopOf } from './cell-rings.js';
import type { Points } from './near-pairs.js';
import { PointCells } from './point-cells.js';

/** Returned by a search that was stopped before it was sure. */
export const GAVE_UP = -2;
/** Cells that a search may look into for each distance that it may compute. */
const LOOKS_PER_TEST = 8;

/**
 * A fixed grid over points in space for questions about the surroundings of one of them.
 *
 * The side of a cell comes from the points: 1.1 times the median, over 16 of them spread over the list, of
 * the distance to the eighth nearest one along the farthest axis, which puts two or three points of a
 * floor into a cell; then eight times as much as long as more than one cell in fifty has no cell with
 * points beside it. Cells that hold many places then are divided in the same way.
 *
 * Points for which `skip` is not 0 and points with a coordinate that is no number are not in it. Points at
 * one place cost one distance together, and one call for each refusal. Building is linear in the points,
 * n log n where many cells are crowded.
 */
export class NeighbourGrid {
  /** Distances computed so far. */
  tests = 0;
  private readonly cells: PointCells;

  constructor(
    private readonly points: Points,
    skip: Uint8Array,
  ) {
    const { count, x, y, z } = points;
    const list = new Int32Array(count);
    let length = 0;
    for (let i = 0; i < count; i++)
      if (skip[i] === 0 && x[i] - x[i] === 0 && y[i] - y[i] === 0 && z[i] - z[i] === 0) list[length++] = i;
    this.cells = new PointCells(points, list.subarray(0, length));
  }

  /**
   * The nearest other point at most `radius` from point `i` that `accept` takes, of equally near ones the
   * one with the lowest index; -1 where there is none. Point `i` may itself be left out of the grid.
   *
   * Cells are looked into in growing rings about the point until nothing nearer can be in the next, so the
   * cost hangs on the density and not on the radius. `accept` is asked only about points nearer than what
   * it took before, in no order that is promised. Where the points are in another order the answer is the
   * same, except that a search may then give up where it did not.
   *
   * @param mostTests most distances and refusals, and an eighth of the most cells looked into; beyond that
   *   the answer is {@link GAVE_UP}
   */
  nearest(
    i: number,
    radius: number,
    accept: (j: number, distance: number) => boolean,
    mostTests = Number.POSITIVE_INFINITY,
  ): number {
    const search = new NearestSearch(this.points, i, radius, accept, mostTests);
    if (this.cells.cellCount > 0) search.seek(this.cells);
    this.tests += search.tests;
    return search.hasGivenUp ? GAVE_UP : search.best;
  }

  /** Visits the other points at most `radius` from point `i` once each, in no order that is promised. */
  within(i: number, radius: number, visit: (j: number, distance: number) => void): void {
    if (radius >= 0 && this.cells.cellCount > 0) this.visitCells(this.cells, i, radius, visit);
  }

  private visitCells(cells: PointCells, i: number, radius: number, visit: (j: number, distance: number) => void): void {
    const { x, y, z } = this.points;
    const from = [0, 0, 0];
    const to = [0, 0, 0];
    let boxes = 1;
    for (const axis of AXES) {
      const at = [x, y, z][axis][i];
      const reach = radius * (1 + 1e-9) + slopOf(cells, axis, at);
      from[axis] = Math.max(0, cells.along(axis, at - reach));
      to[axis] = Math.min(cells.along(axis, cells.high[axis]), cells.along(axis, at + reach));
      boxes *= Math.max(0, to[axis] - from[axis] + 1);
    }
    if (!(boxes > 0)) return;
    if (boxes > 2 * cells.cellCount) {
      for (let cell = 0; cell < cells.cellCount; cell++) this.visitCell(cells, cell, i, radius, visit);
      return;
    }
    for (let cz = from[2]; cz <= to[2]; cz++) {
      if (!cells.layers.has(cz)) continue;
      for (let cy = from[1]; cy <= to[1]; cy++)
        for (let cx = from[0]; cx <= to[0]; cx++) this.visitCell(cells, cells.cellAt(cx, cy, cz), i, radius, visit);
    }
  }

  private visitCell(
    cells: PointCells,
    cell: number,
    i: number,
    radius: number,
    visit: (j: number, distance: number) => void,
  ): void {
    if (cell < 0) return;
    const finer = cells.finer.get(cell);
    if (finer !== undefined) {
      this.visitCells(finer, i, radius, visit);
      return;
    }
    const { x, y, z } = this.points;
    for (let k = cells.starts[cell]; k < cells.starts[cell + 1]; k++) {
      const j = cells.items[k];
      if (j === i) continue;
      this.tests++;
      const distanceSq = (x[i] - x[j]) ** 2 + (y[i] - y[j]) ** 2 + (z[i] - z[j]) ** 2;
      if (distanceSq <= radius * radius) visit(j, Math.sqrt(distanceSq));
    }
  }
}

/** One search for the nearest accepted point. */
class NearestSearch {
  best = -1;
  hasGivenUp = false;
  tests = 0;
  private bestSq: number;
  private looks = 0;
  private readonly x: number;
  private readonly y: number;
  private readonly z: number;

  constructor(
    private readonly points: Points,
    private readonly i: number,
    radius: number,
    private readonly accept: (j: number, distance: number) => boolean,
    private readonly mostTests: number,
  ) {
    this.x = points.x[i];
    this.y = points.y[i];
    this.z = points.z[i];
    const isPlace = Number.isFinite(this.x) && Number.isFinite(this.y) && Number.isFinite(this.z);
    // No distance is at most a number that is none.
    this.bestSq = isPlace && radius >= 0 ? radius * radius : Number.NaN;
  }

  /** Looks into cells, ring after ring about the one that is nearest to the point. */
  seek(cells: PointCells): void {
    const rings = new CellRings(cells, [this.x, this.y, this.z]);
    for (let ring = 0; !this.hasGivenUp && rings.leastSq(ring) <= this.bestSq; ring++) {
      if (rings.boxesUpTo(ring) > 4 * cells.cellCount + 32) {
        for (let cell = 0; cell < cells.cellCount; cell++)
          if (rings.ringOf(cell) >= ring && rings.cellSq(cell) <= this.bestSq) this.look(cells, cell);
        return;
      }
      this.lookInto(cells, rings, ring);
    }
  }

  private lookInto(cells: PointCells, rings: CellRings, ring: number): void {
    const [hx, hy, hz] = rings.home;
    const [mx, my, mz] = rings.last;
    for (let cz = Math.max(0, hz - ring); cz <= Math.min(mz, hz + ring); cz++) {
      const zSq = rings.gapSq(2, cz);
      if (zSq > this.bestSq || !cells.layers.has(cz)) continue;
      for (let cy = Math.max(0, hy - ring); cy <= Math.min(my, hy + ring); cy++) {
        const yzSq = zSq + rings.gapSq(1, cy);
        if (yzSq > this.bestSq) continue;
        const isWhole = Math.abs(cz - hz) === ring || Math.abs(cy - hy) === ring;
        const step = isWhole ? 1 : 2 * ring;
        for (let cx = hx - ring; cx <= hx + ring; cx += step) {
          if (cx < 0 || cx > mx || yzSq + rings.gapSq(0, cx) > this.bestSq) continue;
          if (this.hasGivenUp) return;
          this.look(cells, cells.cellAt(cx, cy, cz));
        }
      }
    }
  }

  private look(cells: PointCells, cell: number): void {
    if (++this.looks > LOOKS_PER_TEST * this.mostTests) this.hasGivenUp = true;
    if (cell < 0 || this.hasGivenUp) return;
    const finer = cells.finer.get(cell);
    if (finer !== undefined) {
      this.seek(finer);
      return;
    }
    const { x, y, z } = this.points;
    const { items, placeEnds, starts } = cells;
    const end = starts[cell + 1];
    for (let k = starts[cell]; k < end; k++) {
      const j = items[k];
      if (j === this.i) continue;
      if (++this.tests > this.mostTests) {
        this.hasGivenUp = true;
        return;
      }
      const distanceSq = (this.x - x[j]) ** 2 + (this.y - y[j]) ** 2 + (this.z - z[j]) ** 2;
      if (distanceSq < this.bestSq || (distanceSq === this.bestSq && (this.best < 0 || j < this.best))) {
        if (!this.accept(j, Math.sqrt(distanceSq))) continue;
        this.best = j;
        this.bestSq = distanceSq;
      }
      // The others at this place are as far and come later.
      if (placeEnds !== undefined && placeEnds[k] > 0) k = placeEnds[k] - 1;
    }
  }
}
