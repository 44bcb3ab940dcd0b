import { type Collection, identified } from '../generated/schema-tables.js';
import { changedMembers } from './changed-members.js';
import type { MemberChange, OtherChange } from './layout-changes.js';
import { pairById } from './pair-by-id.js';
import { idOf, memberOf, type Rec, recordsOf } from './records.js';

/** A definition that is new, gone or other. */
export interface Redefinition {
  collection: Collection;
  state: 'added' | 'removed' | 'changed';
  members: MemberChange[];
  /** As it is in the later layout, or was in the earlier where it is gone. */
  record: Rec;
}

/** Definitions of two headers that differ, by collection, those of the later layout first; and remarks about them. */
export function redefinitions(before: Rec, after: Rec): { found: Redefinition[]; others: OtherChange[] } {
  const found: Redefinition[] = [];
  const others: OtherChange[] = [];
  for (const collection of identified) {
    if (collection === 'holes') continue;
    const [earlier, later] = [before, after].map((header) => recordsOf(memberOf(header, collection)));
    const pairs = pairById(earlier, later);
    later.forEach((record, j) => {
      const i = pairs.before[j];
      if (i < 0) {
        found.push({ collection, state: 'added', members: [], record });
        return;
      }
      const changed = changedMembers(earlier[i], record);
      if (changed.members.length > 0) found.push({ collection, state: 'changed', members: changed.members, record });
      if (changed.others.length > 0) others.push({ collection, id: idOf(record), members: changed.others });
    });
    earlier.forEach((record, i) => {
      if (pairs.after[i] < 0) found.push({ collection, state: 'removed', members: [], record });
    });
  }
  return { found, others };
}
