import { nearPairs, type Points } from '../geometry/near-pairs.js';
import { BROKEN, type Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { COINCIDENT_MM, SpacingLimits } from './spacing-limits.js';

/** How many holes a search for neighbours took in, and why it left out the others. */
export interface NearHoles {
  count: number;
  leftOut: [reason: string, count: number][];
  /** 1 for each hole that was left out. */
  isLeftOut: Uint8Array;
  /**
   * For each hole the first one of its kind at exactly its place, which was visited for it; -1 where it was
   * visited itself. Absent where no place is crowded.
   */
  leaderOf?: Int32Array;
  /** Distances that were computed. */
  tests: number;
}

/** More holes than this in one bucket are looked at for holes at one place first. */
const CROWD = 64;

type Visit = (i: number, j: number, distance: number) => void;

/**
 * Visits each pair of holes at most `radius` mm apart once, `j < i`.
 *
 * Holes that both have a height are compared in space. A hole whose height is "on the surface as found"
 * is compared in plan, and only with holes on the same substrate: on ten floors the same plan position
 * is normal, and on a wall it says nothing.
 */
export function nearHoles(site: Site, radius: number, visit: Visit): NearHoles {
  const known = found.get(site) ?? new FoundPairs(site);
  found.set(site, known);
  known.visit(radius, visit);
  return known.summary;
}

const found = new WeakMap<Site, FoundPairs>();
/** More pairs than this are looked for anew each time rather than kept. */
const MOST_PAIRS = 2_000_000;

/** The pairs of a site that matter to any rule, found by one search. */
class FoundPairs {
  readonly summary: NearHoles;
  private readonly reach: number;
  private readonly first: number[] = [];
  private readonly second: number[] = [];
  private readonly distance: number[] = [];

  constructor(private readonly site: Site) {
    this.reach = Math.max(COINCIDENT_MM + LENGTH_SLACK_MM, new SpacingLimits(site).largest);
    this.summary = search(site, this.reach, (i, j, distance) => {
      if (this.first.length > MOST_PAIRS) return;
      this.first.push(i);
      this.second.push(j);
      this.distance.push(distance);
    });
  }

  visit(radius: number, visit: Visit): void {
    const { first, second, distance } = this;
    if (radius > this.reach || first.length > MOST_PAIRS) {
      search(this.site, radius, visit);
      return;
    }
    for (let k = 0; k < first.length; k++) if (distance[k] <= radius) visit(first[k], second[k], distance[k]);
  }
}

function search(site: Site, radius: number, visit: Visit): NearHoles {
  const { count, x, y } = site.points;
  const isLeftOut = site.out.slice();
  const out = new Map<string, number>();
  for (let i = 0; i < count; i++) {
    if (isLeftOut[i] === 0) continue;
    isLeftOut[i] = 1;
    const why = site.whyOut(i) ?? BROKEN;
    out.set(why, (out.get(why) ?? 0) + 1);
  }
  const broken = [...out.values()].reduce((sum, n) => sum + n, 0);
  const followers = new Followers(site);
  let tests = followers.seek({ count, x, y, z: site.ownHeights }, isLeftOut.slice(), radius, visit);
  const leftOut: [string, number][] = [...out];
  if (!site.hasUnknownHeights)
    return { count: count - broken, leftOut, isLeftOut, leaderOf: followers.leaderOf, tests };

  // One storey for each substrate, far apart, keeps holes of different substrates out of each other's sight.
  const storey = new Float64Array(count).fill(Number.NaN);
  let placeless = 0;
  for (let i = 0; i < count; i++) {
    if (isLeftOut[i] !== 0) continue;
    const name = site.substrates.nameOf(i);
    if (name >= 0 && site.substrates.records[name] !== undefined && site.surfaces[name]?.isVertical !== true) {
      storey[i] = name * Math.max(radius * 10, 10_000);
    } else if (!site.hasHeight(i)) {
      placeless++;
      isLeftOut[i] = 1;
    }
  }
  tests += followers.seek({ count, x, y, z: storey }, isLeftOut.slice(), radius, (i, j, distance) => {
    if (!site.hasHeight(i) || !site.hasHeight(j)) visit(i, j, distance);
  });
  leftOut.push(['height not known, and no substrate to compare in plan', placeless]);
  return { count: count - broken - placeless, leftOut, isLeftOut, leaderOf: followers.leaderOf, tests };
}

/**
 * Holes that no rule about two holes can tell apart from an earlier one: same place, trade, type,
 * substrate and group. Where a place is crowded they are not visited, and share what is found of the
 * first. A list without coordinates has all its holes at one place; each pair of them would be looked at.
 */
class Followers {
  leaderOf: Int32Array | undefined;

  constructor(private readonly site: Site) {}

  /** Visits the pairs of `points`, of followers none. Points with a height that is no number are not in it. */
  seek(points: Points, skip: Uint8Array, radius: number, visit: Visit): number {
    this.leaderOf?.forEach((leader, i) => {
      if (leader >= 0) skip[i] = 1;
    });
    const tests = nearPairs(points, skip, radius, visit, CROWD);
    if (tests >= 0) return tests;
    this.find(points.z, skip);
    return nearPairs(points, skip, radius, visit);
  }

  private find(z: Float64Array, skip: Uint8Array): void {
    const { site } = this;
    const { x, y } = site.points;
    const leaderOf = this.leaderOf ?? new Int32Array(site.holeCount).fill(-1);
    const first = new Map<string, number>();
    for (let i = 0; i < site.holeCount; i++) {
      if (skip[i] !== 0 || Number.isNaN(z[i])) continue;
      const kind = [site.trades, site.types, site.substrates, site.groups].map((joint) => joint.nameOf(i));
      const key = `${x[i]} ${y[i]} ${site.ownHeights[i]} ${kind.join(' ')}`;
      const leader = first.get(key);
      if (leader === undefined) first.set(key, i);
      else {
        leaderOf[i] = leader;
        skip[i] = 1;
      }
    }
    this.leaderOf = leaderOf;
  }
}
