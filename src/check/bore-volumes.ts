import { SweptGrid, type SweptVolumes } from '../geometry/swept-grid.js';
import { distanceSweptHoles } from '../geometry/swept-holes.js';
import { along, type Vec3 } from '../geometry/vector.js';
import { MOST_TESTS } from './hole-points.js';
import type { SiteBore } from './site-bores.js';

/** What an unknown size of a bore is taken to be at most, mm. */
export interface MostSizes {
  depth: number;
  diameter: number;
}

/** A swept volume: a segment and a radius, mm. */
export interface Volume {
  from: Vec3;
  to: Vec3;
  radius: number;
}

/** The bores as swept volumes: the least that each can be, and the most that it is taken to be. */
export class BoreVolumes {
  /** The most that each bore is taken to be, and behind them the volume that is asked about. */
  private readonly most: SweptVolumes;
  private readonly grid: SweptGrid;
  private readonly asked: number;

  constructor(
    private readonly bores: readonly SiteBore[],
    private readonly sizes: MostSizes,
  ) {
    this.asked = bores.length;
    this.most = {
      count: bores.length + 1,
      ends: new Float64Array(6 * (bores.length + 1)),
      radius: new Float64Array(bores.length + 1),
    };
    bores.forEach((bore, k) => {
      this.enter(k, mostOf(bore, sizes));
    });
    const skip = new Uint8Array(bores.length + 1);
    skip[this.asked] = 1;
    this.grid = new SweptGrid(this.most, skip);
  }

  /** Volume that a bore fills at most: its box and radius are what the search goes by. */
  mostOf(k: number): Volume {
    return mostOf(this.bores[k], this.sizes);
  }

  /** Whether a bore is so large that it is not in the search. */
  isLeftOut(k: number): boolean {
    return this.grid.isLeftOut[k] !== 0;
  }

  /**
   * Visits the bores near a volume with the clear distance: the most and the least that it can be.
   *
   * @returns whether all were
   */
  near(volume: Volume, visit: (k: number, clearMost: number, clearLeast: number) => void): boolean {
    this.enter(this.asked, volume);
    return this.grid.near(
      this.asked,
      (k) => {
        const clearLeast = clear(volume, this.mostOf(k));
        if (clearLeast < 0) visit(k, this.clear(volume, k), clearLeast);
      },
      MOST_TESTS,
    );
  }

  /** Clear distance of a volume and the least that a bore can be. */
  clear(volume: Volume, k: number): number {
    return clear(volume, leastOf(this.bores[k]));
  }

  private enter(k: number, { from, to, radius }: Volume): void {
    this.most.ends.set(from, 6 * k);
    this.most.ends.set(to, 6 * k + 3);
    this.most.radius[k] = radius;
  }
}

function clear(a: Volume, b: Volume): number {
  return distanceSweptHoles(a.from, a.to, a.radius, b.from, b.to, b.radius);
}

function leastOf({ bore: { depth = 0, diameter = 0 }, point, axis }: SiteBore): Volume {
  return { from: point, to: axis === undefined ? point : along(point, axis, depth), radius: diameter / 2 };
}

/** Without an axis a bore may go anywhere from its point. */
function mostOf({ bore, point, axis }: SiteBore, sizes: MostSizes): Volume {
  const depth = bore.depth ?? sizes.depth;
  const radius = (bore.diameter ?? sizes.diameter) / 2;
  return axis === undefined
    ? { from: point, to: point, radius: depth + radius }
    : { from: point, to: along(point, axis, depth), radius };
}
