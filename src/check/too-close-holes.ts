import { NeighbourGrid, GAVE_UP } from '../geometry/neighbour-grid.js';
import { type HolePoints, MOST_TESTS } from './hole-points.js';
import { findTooCloseByBands } from './near-by-bands.js';
import { NearestOther } from './nearest-other.js';
import type { Site } from './site.js';
import type { SpacingLimits } from './spacing-limits.js';

/** Members of a group that are compared each with each. */
const FEW_MEMBERS = 32;

/** For each hole the nearest one that is closer to it than it may be. */
export class TooCloseHoles {
  readonly found: NearestOther;
  /** Holes whose search was given up and found nothing. */
  readonly givenUp = new Set<number>();
  /** 1 for each hole whose limits are not known. */
  readonly isUnknown: Uint8Array;

  constructor(
    private readonly site: Site,
    private readonly limits: SpacingLimits,
  ) {
    this.found = new NearestOther(site.holeCount);
    this.isUnknown = limits.unknown();
  }

  /** Judges two holes that do not coincide. */
  judge(i: number, j: number, distance: number): void {
    if (this.isUnknown[i] !== 0 || this.isUnknown[j] !== 0 || !this.limits.areTooClose(i, j, distance)) return;
    this.found.keep(i, j, distance);
    this.found.keep(j, i, distance);
  }

  /** Looks for each hole apart, where too many lie together for all pairs; returns the distances that were computed. */
  search(holes: HolePoints): number {
    const { limits, isUnknown, found, givenUp, site } = this;
    if (limits.largest === 0) return 0;
    for (let i = 0; i < site.holeCount; i++) if (isUnknown[i] !== 0) holes.skip[i] = 1;
    const giveUp = (i: number) => givenUp.add(i);
    const tests = this.searchGroups(holes) + findTooCloseByBands(site, holes, limits, found, giveUp);
    for (const i of givenUp) if (found.of(i) >= 0) givenUp.delete(i);
    return tests;
  }

  /** Gives the holes that cannot be told apart from an earlier one what follows from that. */
  follow(leaderOf: Int32Array, { points }: HolePoints): void {
    const { found, givenUp } = this;
    if (found.isEmpty && givenUp.size === 0) return;
    leaderOf.forEach((leader, i) => {
      if (leader < 0 || this.site.out[i] !== 0 || Number.isNaN(points.z[i])) return;
      if (found.of(leader) >= 0) found.set(i, found.of(leader), found.distanceOf(leader));
      else if (givenUp.has(leader)) givenUp.add(i);
    });
  }

  /** Compares the members of groups that have a spacing of their own. */
  private searchGroups(holes: HolePoints): number {
    const { limits, site } = this;
    const members = new Map<number, number[]>();
    for (let i = 0; i < site.holeCount; i++) {
      const group = holes.has(i) ? limits.spacedGroup(i) : -1;
      if (group < 0) continue;
      const known = members.get(group);
      if (known === undefined) members.set(group, [i]);
      else known.push(i);
    }
    let tests = 0;
    for (const group of members.values()) {
      tests += group.length > FEW_MEMBERS ? this.searchGroup(holes, group) : this.compareAll(holes, group);
    }
    return tests;
  }

  private compareAll(holes: HolePoints, group: readonly number[]): number {
    for (let a = 0; a < group.length; a++) {
      for (let b = 0; b < a; b++) {
        const [i, j] = [group[a], group[b]];
        if (holes.mayCompare(i, j)) this.judge(i, j, holes.distance(i, j));
      }
    }
    return (group.length * (group.length - 1)) / 2;
  }

  private searchGroup(holes: HolePoints, group: readonly number[]): number {
    const { limits } = this;
    const of = (column: Float64Array) => Float64Array.from(group, (i) => column[i]);
    const { x, y, z } = holes.points;
    const points = { count: group.length, x: of(x), y: of(y), z: of(z) };
    const grid = new NeighbourGrid(points, new Uint8Array(group.length));
    group.forEach((i, k) => {
      const accept = (other: number, distance: number) =>
        holes.mayCompare(i, group[other]) && limits.areTooClose(i, group[other], distance);
      const other = grid.nearest(k, limits.valueBetween(i, i), accept, MOST_TESTS);
      if (other === GAVE_UP) this.givenUp.add(i);
      else if (other >= 0) this.found.keep(i, group[other], holes.distance(i, group[other]));
    });
    return grid.tests;
  }
}
