import type { Group } from '../generated/layout.js';
import { cross, dot, type Vec3 } from '../geometry/vector.js';
import type { RecordPlace } from './joint.js';
import type { SiteRun } from './run.js';
import type { Site } from './site.js';
import { LEVEL_SINE } from './surface.js';

/** A group of a site with the holes that name it. */
export interface GroupWithMembers {
  group: Group;
  place: RecordPlace;
  /** In the order of the document. */
  members: Int32Array;
}

/**
 * The groups of a site that a rule is about, with their members. Groups that are broken or have a broken member
 * are left out and counted.
 *
 * @param isWanted whether the rule is about a group with so many members
 */
export function* groupsOf(
  site: Site,
  run: SiteRun,
  isWanted: (group: Group, members: number) => boolean,
): Generator<GroupWithMembers> {
  const { groups } = site;
  if (groups.count === 0) return;
  const { starts, items } = membersOf(site);
  for (let name = 0; name < groups.count; name++) {
    const place = groups.places[name];
    const members = items.subarray(starts[name], starts[name + 1]);
    if (place === undefined || members.length === 0) continue;
    const group = groups.records[name];
    if (group === undefined) run.leftOut('record of the group broken');
    else if (isWanted(group, members.length)) {
      const out = members.find((i) => site.out[i] !== 0);
      if (out === undefined) yield { group, place, members };
      else run.leftOut(`a member is not judged (${site.whyOut(out)})`);
    }
  }
}

/** The holes by number of the group that they name, in `items` from `starts` of the number to before that of the next. */
function membersOf({ groups, holeCount }: Site): { starts: Int32Array; items: Int32Array } {
  const starts = new Int32Array(groups.count + 1);
  for (let i = 0; i < holeCount; i++) {
    const name = groups.nameOf(i);
    if (name >= 0) starts[name + 1]++;
  }
  for (let name = 0; name < groups.count; name++) starts[name + 1] += starts[name];
  const items = new Int32Array(starts[groups.count]);
  const ends = starts.slice();
  for (let i = 0; i < holeCount; i++) {
    const name = groups.nameOf(i);
    if (name >= 0) items[ends[name]++] = i;
  }
  return { starts, items };
}

/** The direction into the concrete that the faces of all members share, a unit vector; undefined where there is none. */
export function commonInward(site: Site, members: Int32Array): Vec3 | undefined {
  const first = site.surface(members[0]);
  if (first === undefined) return undefined;
  for (const i of members) {
    const own = site.surface(i);
    if (own === undefined) return undefined;
    if (own === first) continue;
    const apart = cross(own.inward, first.inward);
    if (dot(own.inward, first.inward) < 0 || Math.hypot(...apart) > LEVEL_SINE) return undefined;
  }
  return first.inward;
}
