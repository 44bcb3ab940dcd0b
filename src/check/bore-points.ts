import { NeighbourGrid } from '../geometry/neighbour-grid.js';
import { MOST_TESTS } from './hole-points.js';
import type { SiteBore } from './site-bores.js';

/** Some bores as points. */
export class BorePoints {
  /** The bores, and behind them the place that is asked about. */
  private readonly points: { count: number; x: Float64Array; y: Float64Array; z: Float64Array };
  private readonly grid: NeighbourGrid;
  private readonly place: number;

  /** @param heightOf a bore; NaN for one that is not among them */
  constructor(bores: readonly SiteBore[], heightOf: (bore: SiteBore) => number) {
    const column = (of: (bore: SiteBore) => number) => Float64Array.from([...bores.map(of), Number.NaN]);
    this.place = bores.length;
    this.points = {
      count: bores.length + 1,
      x: column(({ point }) => point[0]),
      y: column(({ point }) => point[1]),
      z: column(heightOf),
    };
    this.grid = new NeighbourGrid(this.points, new Uint8Array(bores.length + 1));
  }

  /** Number of the nearest bore that `accept` takes, as of `NeighbourGrid.nearest`. */
  nearest(
    x: number,
    y: number,
    z: number,
    radius: number,
    accept: (bore: number, distance: number) => boolean,
  ): number {
    const { points, place } = this;
    points.x[place] = x;
    points.y[place] = y;
    points.z[place] = z;
    return this.grid.nearest(place, radius, accept, MOST_TESTS);
  }
}
