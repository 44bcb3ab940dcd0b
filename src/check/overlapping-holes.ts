import { nearPairs } from '../geometry/near-pairs.js';
import { SweptGrid } from '../geometry/swept-grid.js';
import { CROWDED, distanceOf, MOST_TESTS } from './hole-points.js';
import { leadersOf } from './leaders.js';
import { NearestOther } from './nearest-other.js';
import type { Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { COINCIDENT_REACH_MM, type SpacingLimits } from './spacing-limits.js';
import { SweptHoles } from './swept-holes-of.js';

const TOO_LARGE = 'so long or wide that it meets too many others';

/** For each hole the one that it runs into the farthest, unless the two coincide or are closer than their limit. */
export class OverlappingHoles {
  readonly found: NearestOther;
  /** Holes whose points are farther apart than this do not meet; 0 where no hole has a volume. */
  readonly reach: number;
  /** Whether all pairs within that reach were judged. */
  isFound = false;
  private readonly swept: SweptHoles;
  private readonly given = new Map<number, string>();

  /** @param limits absent: no other rule speaks of holes that are closer than their limit */
  constructor(
    private readonly site: Site,
    private readonly limits: SpacingLimits | undefined,
  ) {
    this.found = new NearestOther(site.holeCount);
    this.swept = new SweptHoles(site);
    this.reach = 2 * this.swept.largest;
  }

  /** Why hole `i` is not judged; undefined where it is. */
  whyOut(i: number): string | undefined {
    return this.swept.whyOut(i) ?? (this.given.size === 0 ? undefined : this.given.get(i));
  }

  /** @param distance of the two points */
  judge(i: number, j: number, distance: number): void {
    const { swept } = this;
    if (distance >= swept.reach(i) + swept.reach(j)) return;
    if (swept.whyOut(i) !== undefined || swept.whyOut(j) !== undefined) return;
    const clear = swept.clear(i, j);
    if (clear >= -LENGTH_SLACK_MM || this.isSaid(i, j)) return;
    this.found.keep(i, j, clear);
    this.found.keep(j, i, clear);
  }

  /** Finds them unless that was done already; returns the distances that were computed. */
  searchOnce(crowd: number): number {
    if (this.isFound || this.reach === 0) return 0;
    this.isFound = true;
    const { points, holeCount } = this.site;
    const skip = Uint8Array.from({ length: holeCount }, (_, i) => (this.swept.whyOut(i) === undefined ? 0 : 1));
    const judge = (i: number, j: number, distance: number) => this.judge(i, j, distance);
    const tests = nearPairs(points, skip, this.reach, judge, crowd);
    if (tests >= 0) return tests;
    const leaderOf = leadersOf(this.site);
    for (let i = 0; i < holeCount; i++) if (leaderOf[i] >= 0) skip[i] = 1;
    const again = this.searchGrid(skip);
    for (let i = 0; i < holeCount; i++) this.follow(i, leaderOf[i]);
    return again;
  }

  private searchGrid(skip: Uint8Array): number {
    const { swept, site } = this;
    const { points, holeCount } = site;
    const ends = new Float64Array(holeCount * 6);
    const radius = new Float64Array(holeCount);
    for (let i = 0; i < holeCount; i++) {
      if (skip[i] !== 0) continue;
      ends.set(site.point(i), i * 6);
      ends.set(swept.end(i), i * 6 + 3);
      radius[i] = site.diameter(i) / 2;
    }
    const grid = new SweptGrid({ count: holeCount, ends, radius }, skip);
    let self = 0;
    const visit = (j: number) => this.judge(self, j, distanceOf(points, self, j));
    for (let i = 0; i < holeCount; i++) {
      if (skip[i] !== 0) continue;
      self = i;
      if (grid.isLeftOut[i] !== 0) this.given.set(i, TOO_LARGE);
      else if (!grid.near(i, visit, MOST_TESTS)) this.given.set(i, CROWDED);
    }
    for (const i of this.given.keys()) if (this.found.of(i) >= 0) this.given.delete(i);
    return grid.tests;
  }

  private follow(i: number, leader: number): void {
    if (leader < 0 || this.swept.whyOut(i) !== undefined) return;
    const why = this.given.get(leader);
    if (this.found.of(leader) >= 0) this.found.set(i, this.found.of(leader), this.found.distanceOf(leader));
    else if (why !== undefined) this.given.set(i, why);
  }

  /** Whether another rule already speaks of the two: they coincide, or are closer than their limit. */
  private isSaid(i: number, j: number): boolean {
    const distance = this.spacing(i, j);
    return distance <= COINCIDENT_REACH_MM || this.limits?.areTooClose(i, j, distance) === true;
  }

  /** The distance at which two holes are judged for their spacing, mm; Infinity where they are not. */
  spacing(i: number, j: number): number {
    const { site } = this;
    const { x, y } = site.points;
    if (site.hasHeight(i) && site.hasHeight(j)) return distanceOf(site.points, i, j);
    const isOneFace = site.planSubstrate(i) >= 0 && site.planSubstrate(i) === site.planSubstrate(j);
    return isOneFace ? Math.hypot(x[i] - x[j], y[i] - y[j]) : Number.POSITIVE_INFINITY;
  }
}
