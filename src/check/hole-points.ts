import type { Points } from '../geometry/near-pairs.js';
import type { Site } from './site.js';

/** Most distances and refusals for one hole in one search; beyond it has too many others near it. */
export const MOST_TESTS = 500;
/** Why a hole is left out whose search was given up. */
export const CROWDED = 'too many holes near it';

/** Height that is known, and height that is not. */
export type HoleHeight = 0 | 1;

/** Some holes of a site as points, so that the distance of two points is that of the holes. */
export class HolePoints {
  constructor(
    private readonly site: Site,
    readonly points: Points,
    /** 1 for a hole that is not among them; those with a coordinate that is no number are not either. */
    readonly skip: Uint8Array,
    /** Whether they are compared in plan: then not those of which both heights are known. */
    readonly isPlan: boolean,
  ) {}

  /** Whether hole `i` is among them. */
  has(i: number): boolean {
    return this.skip[i] === 0 && !Number.isNaN(this.points.z[i]);
  }

  partOf(i: number): HoleHeight {
    return this.isPlan && !this.site.hasHeight(i) ? 1 : 0;
  }

  areCompared(one: HoleHeight, other: HoleHeight): boolean {
    return !this.isPlan || one === 1 || other === 1;
  }

  /** Whether two holes that are among them are compared. */
  mayCompare(i: number, j: number): boolean {
    return !this.isPlan || this.areCompared(this.partOf(i), this.partOf(j));
  }

  /** Distance of two of them, mm. */
  distance(i: number, j: number): number {
    return distanceOf(this.points, i, j);
  }
}

/** Distance of two points. */
export function distanceOf({ x, y, z }: Points, i: number, j: number): number {
  return Math.sqrt((x[i] - x[j]) ** 2 + (y[i] - y[j]) ** 2 + (z[i] - z[j]) ** 2);
}
