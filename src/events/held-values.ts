import type { Collection } from '../generated/schema-tables.js';
import { idOf, memberOf, type Rec, recordOf, recordsOf, textOf } from './records.js';

/** Where a hole takes a member over from that it does not have itself, in order. */
const takenFrom: Readonly<Record<string, readonly Source[]>> = {
  diameter: ['holeType'],
  depth: ['holeType'],
  depthTolerance: ['holeType'],
  positionTolerance: ['group', 'holeType'],
  moveAllowance: ['group', 'holeType'],
  axis: ['substrate'],
};

type Source = 'holeType' | 'group' | 'substrate';

const collectionOf: Readonly<Record<Source, Collection>> = {
  holeType: 'holeTypes',
  group: 'groups',
  substrate: 'substrates',
};

/** The definitions of one layout from which holes take values over. */
export class HeldValues {
  private readonly records: Record<Source, Map<string, Rec>>;

  constructor(header: Rec) {
    const byId = (source: Source) => firstById(recordsOf(memberOf(header, collectionOf[source])));
    this.records = { holeType: byId('holeType'), group: byId('group'), substrate: byId('substrate') };
  }

  /** The value of a member that holds for a hole: its own, else the one that it takes over. */
  of(hole: Rec, member: string): unknown {
    const own = memberOf(hole, member);
    if (own !== undefined || !Object.hasOwn(takenFrom, member)) return own;
    for (const source of takenFrom[member]) {
      const record = this.records[source].get(textOf(hole, source) ?? '');
      const value =
        record &&
        (member === 'axis' ? memberOf(recordOf(memberOf(record, 'face')), 'inward') : memberOf(record, member));
      if (value !== undefined) return value;
    }
    return undefined;
  }
}

function firstById(records: readonly Rec[]): Map<string, Rec> {
  const found = new Map<string, Rec>();
  for (const record of records) if (!found.has(idOf(record))) found.set(idOf(record), record);
  return found;
}
