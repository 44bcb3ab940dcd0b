import { collections } from '../generated/schema-tables.js';
import { changedMembers, type MembersChanged, memberChange, memberNames } from './changed-members.js';
import { isRecord, memberOf, type Rec } from './records.js';
import { sameValue } from './same-value.js';

/** What is compared on its own, what says which revision it is, and what only editors read. */
const apart = new Set<string>([...collections, 'revision', 'parent', '$schema']);

/** Members of two headers that differ, the members of an object one by one, such as `frame/name`. */
export function headerChanges(before: Rec, after: Rec): MembersChanged {
  const found: MembersChanged = { members: [], others: [] };
  for (const member of memberNames(before, after)) {
    if (apart.has(member)) continue;
    const [from, to] = [memberOf(before, member), memberOf(after, member)];
    const isObject = isRecord(from) && isRecord(to) && member !== 'ext';
    const changed = isObject ? changedMembers(from, to) : changedMembers({ [member]: from }, { [member]: to });
    for (const list of ['members', 'others'] as const) {
      for (const change of changed[list]) {
        found[list].push(isObject ? { ...change, member: `${member}/${change.member}` } : change);
      }
    }
  }
  const [from, to] = [memberOf(before, 'id'), memberOf(after, 'id')];
  if (!sameValue(from, to, 'id')) found.members.unshift(memberChange('id', from, to));
  return found;
}
