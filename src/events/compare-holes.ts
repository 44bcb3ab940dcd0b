import { memberChange } from './changed-members.js';
import type { HeldValues } from './held-values.js';
import type { MemberChange, Move } from './layout-changes.js';
import { moveBetween, placeOf } from './place-of.js';
import { memberOf, type Rec } from './records.js';
import { sameValue } from './same-value.js';

/** Kinds of changes of the members of a hole. */
export type HoleKind = 'respecified' | 'reassigned' | 'renumbered';

/** What kind of change another value of a member is. */
const kinds: ReadonlyMap<string, HoleKind> = new Map<string, HoleKind>([
  ...['holeType', 'substrate', 'diameter', 'depth', 'depthTolerance'].map(respecified),
  ...['positionTolerance', 'moveAllowance', 'axis', 'above'].map(respecified),
  ...['trade', 'level', 'area', 'group', 'role'].map((member): [string, HoleKind] => [member, 'reassigned']),
  ['tag', 'renumbered'],
]);

function respecified(member: string): [string, HoleKind] {
  return [member, 'respecified'];
}

/** The kind of change that another value of a member is, or undefined where it is none. */
export function kindOfMember(member: string): HoleKind | undefined {
  return kinds.get(member);
}

/** How two records of one hole differ. */
export interface HoleDifferences {
  move?: Move;
  respecified: MemberChange[];
  reassigned: MemberChange[];
  renumbered: MemberChange[];
  others: MemberChange[];
}

/** How two records of one hole differ, ids apart; undefined where they do not. */
export function compareHoles(
  before: Rec,
  after: Rec,
  valuesBefore: HeldValues,
  valuesAfter: HeldValues,
): HoleDifferences | undefined {
  let found: HoleDifferences | undefined;
  for (const member of unequalMembers(before, after)) {
    found ??= { respecified: [], reassigned: [], renumbered: [], others: [] };
    if (member === 'point') {
      const [from, to] = [placeOf(memberOf(before, member)), placeOf(memberOf(after, member))];
      const move = from && to && moveBetween(from, to);
      if (move !== undefined) found.move = move;
      // What is no point has not moved.
      if (from && to) continue;
    }
    const [from, to] = [valuesBefore.of(before, member), valuesAfter.of(after, member)];
    // A value that is now written out, or no longer is, has not changed.
    if (!sameValue(from, to, member)) found[kinds.get(member) ?? 'others'].push(memberChange(member, from, to));
  }
  const isNone =
    found && !found.move && Object.values(found).every((list) => !Array.isArray(list) || list.length === 0);
  return isNone ? undefined : found;
}

function unequalMembers(before: Rec, after: Rec): string[] {
  const unequal: string[] = [];
  for (const member of Object.keys(before)) {
    if (member !== 'id' && !sameValue(before[member], memberOf(after, member), member)) unequal.push(member);
  }
  for (const member of Object.keys(after)) {
    if (after[member] !== undefined && member !== 'id' && !Object.hasOwn(before, member)) unequal.push(member);
  }
  return unequal.sort();
}
