import { GAVE_UP, NeighbourGrid } from '../geometry/neighbour-grid.js';
import { type HolePoints, MOST_TESTS } from './hole-points.js';
import { NearestOther } from './nearest-other.js';
import type { Site } from './site.js';
import { COINCIDENT_REACH_MM } from './spacing-limits.js';

/** For each hole the one before it in the document at its place; one of its own trade rather than a nearer one. */
export class CoincidentHoles {
  readonly found: NearestOther;
  /** Holes whose search was given up and found nothing. */
  readonly givenUp = new Set<number>();

  constructor(private readonly site: Site) {
    this.found = new NearestOther(site.holeCount);
  }

  isSameTrade(i: number, j: number): boolean {
    return this.site.trades.nameOf(i) === this.site.trades.nameOf(j);
  }

  /** Keeps hole `j`, which is before hole `i`, if it is worse than the one that was found before. */
  keep(i: number, j: number, distance: number): void {
    const before = this.found.of(i);
    const isSame = this.isSameTrade(i, j);
    const wasSame = before >= 0 && this.isSameTrade(i, before);
    if (isSame === wasSame) this.found.keep(i, j, distance);
    else if (isSame || before < 0) this.found.set(i, j, distance);
  }

  /** Looks for each hole apart, where too many lie together for all pairs; returns the distances that were computed. */
  search(holes: HolePoints): number {
    const { points, skip } = holes;
    const grid = new NeighbourGrid(points, skip);
    const first: number[] = [];
    for (let i = 0; i < points.count; i++) {
      if (!holes.has(i)) continue;
      // The first ones have so few before them that a search would mostly meet later ones.
      if (first.length < MOST_TESTS) {
        for (const j of first) this.judge(holes, i, j);
        first.push(i);
      } else this.searchFor(holes, grid, i);
    }
    return grid.tests + (first.length * (first.length - 1)) / 2;
  }

  private judge(holes: HolePoints, i: number, j: number): void {
    const distance = holes.distance(i, j);
    if (distance <= COINCIDENT_REACH_MM && holes.mayCompare(i, j)) this.keep(i, j, distance);
  }

  private searchFor(holes: HolePoints, grid: NeighbourGrid, i: number): void {
    const isAny = (j: number) => j < i && holes.mayCompare(i, j);
    const isOwn = (j: number) => this.isSameTrade(i, j) && isAny(j);
    for (const accept of [isOwn, isAny]) {
      const other = grid.nearest(i, COINCIDENT_REACH_MM, accept, MOST_TESTS);
      if (other >= 0) this.keep(i, other, holes.distance(i, other));
      if (other === GAVE_UP && this.found.of(i) < 0) this.givenUp.add(i);
      if (other !== -1) return;
    }
  }

  /** Gives the holes that cannot be told apart from an earlier one what follows from that. */
  follow(leaderOf: Int32Array, { points }: HolePoints): void {
    leaderOf.forEach((leader, i) => {
      if (leader < 0 || this.site.out[i] !== 0 || Number.isNaN(points.z[i])) return;
      const first = this.found.of(leader);
      const isSame = first >= 0 && this.found.distanceOf(leader) === 0 && this.isSameTrade(leader, first);
      this.found.set(i, isSame ? first : leader, 0);
    });
  }
}
