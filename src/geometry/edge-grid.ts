/** Edges in a plane, edge `k` from `(fromU, fromV)` to `(toU, toV)`. */
export interface Edges {
  fromU: Float64Array;
  fromV: Float64Array;
  toU: Float64Array;
  toV: Float64Array;
}

/** Most cells of a grid, and the least: few edges need cells as well, so that most of a floor has none in it. */
const MOST_CELLS = 16_384;
const LEAST_CELLS = 256;

/**
 * Edges by place, in the unit of their coordinates. Made once, never changed.
 *
 * A grid of square cells, about four for each edge, over the box of all edges. An edge stands in every cell
 * that it comes within `margin` of. Building costs the cells that the edges run through.
 */
export class EdgeGrid {
  readonly count: number;
  /** Number of cells. */
  readonly cells: number;
  /** Distances computed since the grid was made. */
  tests = 0;
  /** Distance that {@link nearest} found last. */
  distance = Number.POSITIVE_INFINITY;
  private readonly lowU: number;
  private readonly lowV: number;
  private readonly side: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly starts: Int32Array;
  private readonly items: Int32Array;

  constructor(
    readonly edges: Edges,
    private readonly margin: number,
  ) {
    const { fromU, fromV, toU, toV } = edges;
    this.count = fromU.length;
    let [lowU, lowV, highU, highV] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let k = 0; k < this.count; k++) {
      lowU = Math.min(lowU, fromU[k], toU[k]);
      lowV = Math.min(lowV, fromV[k], toV[k]);
      highU = Math.max(highU, fromU[k], toU[k]);
      highV = Math.max(highV, fromV[k], toV[k]);
    }
    this.lowU = lowU - 2 * margin;
    this.lowV = lowV - 2 * margin;
    const width = Math.max(highU - lowU, 0) + 4 * margin;
    const height = Math.max(highV - lowV, 0) + 4 * margin;
    const wanted = Math.min(Math.max(this.count * 4, LEAST_CELLS), MOST_CELLS);
    this.side = Math.max(Math.sqrt((width * height) / wanted), Math.max(width, height) / wanted) || 1;
    this.columns = Math.max(1, Math.ceil(width / this.side));
    this.rows = Math.max(1, Math.ceil(height / this.side));
    this.cells = this.columns * this.rows;
    this.starts = new Int32Array(this.cells + 1);
    for (let k = 0; k < this.count; k++) this.run(k, (cell) => this.starts[cell + 1]++);
    for (let cell = 0; cell < this.cells; cell++) this.starts[cell + 1] += this.starts[cell];
    this.items = new Int32Array(this.starts[this.cells]);
    const next = this.starts.slice();
    for (let k = 0; k < this.count; k++)
      this.run(k, (cell) => {
        this.items[next[cell]++] = k;
      });
  }

  /** Number of the cell of a point; -1 for one that lies farther than the margin from the box of all edges. */
  cellOf(u: number, v: number): number {
    const column = Math.floor((u - this.lowU) / this.side);
    const row = Math.floor((v - this.lowV) / this.side);
    return column >= 0 && column < this.columns && row >= 0 && row < this.rows ? row * this.columns + column : -1;
  }

  /** Whether no edge comes within the margin of a cell. */
  isEmpty(cell: number): boolean {
    return this.starts[cell] === this.starts[cell + 1];
  }

  /**
   * The nearest edge at most `within` from a point that `accept` takes, of equally near ones the first; or -1.
   * Its distance is then in {@link distance}. Looks at the edges of the cells within reach, or at all edges
   * where those cells are more than the edges.
   */
  nearest(u: number, v: number, within: number, accept: (edge: number) => boolean): number {
    const { side, columns, rows, starts, items, count } = this;
    // Written out: it is called for every hole, and a visitor would be made anew for each.
    const c0 = Math.max(0, Math.floor((u - within - this.lowU) / side));
    const c1 = Math.min(columns - 1, Math.floor((u + within - this.lowU) / side));
    const r0 = Math.max(0, Math.floor((v - within - this.lowV) / side));
    const r1 = Math.min(rows - 1, Math.floor((v + within - this.lowV) / side));
    let found = -1;
    let leastSq = within * within;
    const isAll = (c1 - c0 + 1) * (r1 - r0 + 1) > count + 16;
    for (let row = isAll ? r1 : r0; row <= r1 && c0 <= c1; row++) {
      const begin = isAll ? 0 : starts[row * columns + c0];
      const end = isAll ? count : starts[row * columns + c1 + 1];
      // The cells of a row stand one behind the other.
      for (let at = begin; at < end; at++) {
        const edge = isAll ? at : items[at];
        if (!accept(edge)) continue;
        const distanceSq = this.distanceSq(edge, u, v);
        if (distanceSq > leastSq || (distanceSq === leastSq && found >= 0 && edge >= found)) continue;
        leastSq = distanceSq;
        found = edge;
      }
    }
    this.distance = found < 0 ? Number.POSITIVE_INFINITY : Math.sqrt(leastSq);
    return found;
  }

  /** Visits all edges that may come into a box; some more than once, some that do not. */
  visit(lowU: number, lowV: number, highU: number, highV: number, take: (edge: number) => void): void {
    const { columns, rows, starts, items } = this;
    const [c0, c1] = this.span(lowU, highU, this.lowU, columns);
    const [r0, r1] = this.span(lowV, highV, this.lowV, rows);
    if ((c1 - c0 + 1) * (r1 - r0 + 1) > this.count + 16) {
      for (let edge = 0; edge < this.count; edge++) take(edge);
      return;
    }
    for (let row = r0; row <= r1; row++) {
      if (c0 > c1) return;
      for (let at = starts[row * columns + c0]; at < starts[row * columns + c1 + 1]; at++) take(items[at]);
    }
  }

  private distanceSq(edge: number, u: number, v: number): number {
    const { fromU, fromV, toU, toV } = this.edges;
    this.tests++;
    const eu = toU[edge] - fromU[edge];
    const ev = toV[edge] - fromV[edge];
    const ru = u - fromU[edge];
    const rv = v - fromV[edge];
    const lengthSq = eu * eu + ev * ev;
    const t = lengthSq > 0 ? Math.max(0, Math.min(1, (ru * eu + rv * ev) / lengthSq)) : 0;
    const du = ru - t * eu;
    const dv = rv - t * ev;
    return du * du + dv * dv;
  }

  /** First and last cell of a range along one axis; the last one is below the first where there is none. */
  private span(low: number, high: number, from: number, count: number): [number, number] {
    const first = Math.max(0, Math.floor((low - from) / this.side));
    return [first, Math.min(count - 1, Math.floor((high - from) / this.side))];
  }

  /** Calls `take` for each cell that an edge comes within the margin of, row by row. */
  private run(edge: number, take: (cell: number) => void): void {
    const { margin, side, columns, rows, lowV } = this;
    const { fromU, fromV, toU, toV } = this.edges;
    const [au, av, bu, bv] = [fromU[edge], fromV[edge], toU[edge], toV[edge]];
    const [r0, r1] = this.span(Math.min(av, bv) - margin, Math.max(av, bv) + margin, lowV, rows);
    for (let row = r0; row <= r1; row++) {
      // Where the edge lies within the row and its margin, as parameters.
      const bottom = (lowV + row * side - margin - av) / (bv - av);
      const top = (lowV + (row + 1) * side + margin - av) / (bv - av);
      const isLevel = bv === av;
      const t0 = isLevel ? 0 : Math.max(0, Math.min(bottom, top));
      const t1 = isLevel ? 1 : Math.min(1, Math.max(bottom, top));
      const [u0, u1] = [au + t0 * (bu - au), au + t1 * (bu - au)];
      const [c0, c1] = this.span(Math.min(u0, u1) - margin, Math.max(u0, u1) + margin, this.lowU, columns);
      for (let column = c0; column <= c1; column++) take(row * columns + column);
    }
  }
}
