import { type Hand, handOf, showsHand } from '../fit/pattern-hand.js';
import type { Group } from '../generated/layout.js';
import { along as shifted, cross, dot, squareTo, subtract, unit, type Vec3 } from '../geometry/vector.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** Tolerance of a pattern that has none, mm. */
const USUAL_TOLERANCE_MM = 5;

const UP: Vec3 = [0, 0, 1];

type Patterned = Group & Required<Pick<Group, 'pattern'>>;

/** Groups that are looked at first. */
const FIRST_GROUPS = 32;

/**
 * Which hand the groups of a layout have whose pattern shows one; none of those with a broken member or
 * with another number of members than their pattern.
 *
 * Where one of the first groups is as declared the others are not looked at: then nothing is mirrored.
 */
export function handsOfGroups(site: Site, part: SitePart): Hand[] {
  const patterns = patternsOf(site, part);
  const first = handsOf(site, part, patterns.slice(0, FIRST_GROUPS));
  return patterns.length <= FIRST_GROUPS || first.some((hand) => hand === 'declared')
    ? first
    : handsOf(site, part, patterns);
}

function patternsOf({ groups }: Site, part: SitePart): [name: number, group: Patterned][] {
  const patterns: [number, Patterned][] = [];
  for (let name = 0; name < groups.count; name++) {
    const group = groups.records[name];
    const { pattern } = group ?? {};
    if (group === undefined || pattern === undefined || pattern.length < 2) continue;
    if (groups.places[name]?.part === part) patterns.push([name, { ...group, pattern }]);
  }
  return patterns;
}

function handsOf(site: Site, { firstHole, layout }: SitePart, patterns: readonly [number, Patterned][]): Hand[] {
  if (patterns.length === 0) return [];
  const members: (number[] | undefined)[] = Array.from({ length: site.groups.count });
  for (const [name] of patterns) members[name] = [];
  for (let i = firstHole; i < firstHole + layout.holes.count; i++) {
    const name = site.groups.nameOf(i);
    if (name >= 0) members[name]?.push(i);
  }
  return patterns.flatMap(([name, group]) => handOfGroup(site, group, members[name] ?? []) ?? []);
}

function handOfGroup(
  site: Site,
  { pattern, patternTolerance, run }: Patterned,
  members: readonly number[],
): Hand | undefined {
  if (members.length !== pattern.length || members.some((i) => site.out[i] !== 0 || site.surface(i)?.isVertical))
    return undefined;
  const inward = site.surface(members[0])?.inward ?? UP;
  const normal: Vec3 = inward[2] < 0 ? [-inward[0], -inward[1], -inward[2]] : inward;
  const direction = run === undefined ? squareTo(normal) : unit(shifted(run, normal, -dot(run, normal)));
  if (direction === undefined) return undefined;
  const across = cross(normal, direction);
  const first = site.point(members[0]);
  const points = members.flatMap((i) => {
    const [dx, dy, dz] = subtract(site.point(i), first);
    // Without a face the plane is that of the plan, where no height counts.
    const off: Vec3 = [dx, dy, Number.isNaN(dz) ? 0 : dz];
    return [dot(off, direction), dot(off, across)];
  });
  const flat = pattern.flat();
  const tolerance = (patternTolerance ?? USUAL_TOLERANCE_MM) + LENGTH_SLACK_MM;
  return showsHand(flat, tolerance, run === undefined) ? handOf(points, flat, tolerance, run === undefined) : undefined;
}
