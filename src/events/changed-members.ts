import type { MemberChange } from './layout-changes.js';
import { memberOf, type Rec } from './records.js';
import { sameValue } from './same-value.js';

/** Names that say which record it is, not what it says. */
const names = new Set(['id']);
/** Members of definitions and of the header that no software acts on. */
const remarks = new Set(['note', 'ext']);

/** Members of two records that differ: those that mean something, and those that are for people or for others. */
export interface MembersChanged {
  members: MemberChange[];
  others: MemberChange[];
}

/** The members other than `id` in which two records differ, by name. */
export function changedMembers(before: Rec, after: Rec): MembersChanged {
  const changed: MembersChanged = { members: [], others: [] };
  for (const member of memberNames(before, after)) {
    const [from, to] = [memberOf(before, member), memberOf(after, member)];
    if (names.has(member) || sameValue(from, to, member)) continue;
    (remarks.has(member) ? changed.others : changed.members).push(memberChange(member, from, to));
  }
  return changed;
}

/** All names of members of either record, in the order of code units. */
export function memberNames(before: Rec, after: Rec): string[] {
  return [...new Set([...Object.keys(before), ...Object.keys(after)])].sort();
}

/** A change of a member; a value that is not there is left out. */
export function memberChange(member: string, from: unknown, to: unknown): MemberChange {
  const change: MemberChange = { member };
  if (from !== undefined) change.from = from;
  if (to !== undefined) change.to = to;
  return change;
}
