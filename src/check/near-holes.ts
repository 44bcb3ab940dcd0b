import { nearPairs } from '../geometry/near-pairs.js';
import { CoincidentHoles } from './coincident-holes.js';
import { HolePoints } from './hole-points.js';
import { leadersOf } from './leaders.js';
import { OverlappingHoles } from './overlapping-holes.js';
import { BROKEN, type Site } from './site.js';
import { COINCIDENT_REACH_MM, SpacingLimits } from './spacing-limits.js';
import { TooCloseHoles } from './too-close-holes.js';

/** Most holes that a hole may have about it, on the average, to be compared with each of them. */
const CROWD = 32;

const made = new WeakMap<Site, NearHoles>();

/**
 * What the rules about two holes say of the holes of a site; found in one search.
 *
 * @param isSpacingOff whether no rule speaks of holes that are closer than their limit; the same in all calls
 */
export function nearHoles(site: Site, isSpacingOff = false): NearHoles {
  const known = made.get(site) ?? new NearHoles(site, isSpacingOff);
  made.set(site, known);
  return known;
}

/**
 * The search for holes that are near each other.
 *
 * Holes are compared in space, where a height that is "on the surface as found" is taken from the face. On one
 * slab a hole of unknown height is compared in plan besides, whatever height the others were given.
 *
 * As long as few holes are within the largest distance that matters, each pair of them is looked at. Where they
 * are many, holes that cannot be told apart are taken as one, and each of the others looks for its nearest
 * one at fault. So cost and memory stay linear in the number of holes.
 */
export class NearHoles {
  /** Holes that were compared in space or in plan. */
  count = 0;
  /** Why the others were not, and how many. */
  readonly leftOut = new Map<string, number>();
  /** 1 for each hole that was not. */
  readonly isLeftOut: Uint8Array;
  readonly limits: SpacingLimits;
  readonly coincident: CoincidentHoles;
  readonly tooClose: TooCloseHoles;
  readonly overlapping: OverlappingHoles;
  /** Distances that were computed. */
  tests = 0;

  constructor(
    private readonly site: Site,
    isSpacingOff: boolean,
  ) {
    const { count, x, y } = site.points;
    this.isLeftOut = site.out.slice();
    for (let i = 0; i < count; i++) if (this.isLeftOut[i] !== 0) this.leaveOut(i, site.whyOut(i) ?? BROKEN);
    this.limits = new SpacingLimits(site);
    this.coincident = new CoincidentHoles(site);
    this.tooClose = new TooCloseHoles(site, this.limits);
    this.overlapping = new OverlappingHoles(site, isSpacingOff ? undefined : this.limits);
    const skip = this.isLeftOut.slice();
    // A height that is not known is taken from the face; on one slab the distance in plan is never more.
    this.search(new HolePoints(site, site.points, skip, false));
    if (site.hasUnknownHeights) {
      const z = this.storeys();
      this.search(new HolePoints(site, { count, x, y, z }, this.isLeftOut.slice(), true));
    }
    this.tests += this.overlapping.searchOnce(CROWD);
    this.count = count;
    for (const number of this.leftOut.values()) this.count -= number;
  }

  private leaveOut(i: number, why: string): void {
    this.isLeftOut[i] = 1;
    this.leftOut.set(why, (this.leftOut.get(why) ?? 0) + 1);
  }

  /** One storey for each substrate, far apart, keeps holes of different substrates out of each other's sight. */
  private storeys(): Float64Array {
    const { site } = this;
    const apart = Math.max(this.limits.largest * 10, 10_000);
    const storey = new Float64Array(site.holeCount).fill(Number.NaN);
    for (let i = 0; i < site.holeCount; i++) {
      if (this.isLeftOut[i] !== 0) continue;
      const name = site.planSubstrate(i);
      if (name >= 0) storey[i] = name * apart;
      else if (!site.hasHeight(i)) this.leaveOut(i, 'height not known, and no substrate to compare in plan');
    }
    return storey;
  }

  private search(holes: HolePoints): void {
    const { coincident, tooClose, overlapping } = this;
    const radius = Math.max(COINCIDENT_REACH_MM, this.limits.largest);
    const isOverlap = !holes.isPlan && !this.site.hasUnknownHeights;
    const judge = (i: number, j: number, distance: number) => {
      if (!holes.mayCompare(i, j)) return;
      if (distance <= COINCIDENT_REACH_MM) coincident.keep(i, j, distance);
      else if (distance < radius) tooClose.judge(i, j, distance);
    };
    const judgeAll = (i: number, j: number, distance: number) => {
      judge(i, j, distance);
      overlapping.judge(i, j, distance);
    };
    if (isOverlap && this.pairs(holes, Math.max(radius, overlapping.reach), judgeAll)) {
      overlapping.isFound = true;
      return;
    }
    if (this.pairs(holes, radius, judge)) return;
    const leaderOf = leadersOf(this.site);
    leaderOf.forEach((leader, i) => {
      if (leader >= 0) holes.skip[i] = 1;
    });
    if (!this.pairs(holes, radius, judge)) {
      if (!this.pairs(holes, COINCIDENT_REACH_MM, judge)) this.tests += coincident.search(holes);
      this.tests += tooClose.search(holes);
    }
    coincident.follow(leaderOf, holes);
    tooClose.follow(leaderOf, holes);
  }

  /** Visits the pairs within a distance, or none and says so where they are too many. */
  private pairs({ points, skip }: HolePoints, radius: number, visit: (i: number, j: number, d: number) => void) {
    const tests = nearPairs(points, skip, radius, visit, CROWD);
    this.tests += Math.max(0, tests);
    return tests >= 0;
  }
}
