import type { Change, Position } from '../generated/layout.js';
import type { Collection } from '../generated/schema-tables.js';

/** What differs between two revisions of a layout. Values are those of the layouts, not copies. */
export interface LayoutChanges {
  before: RevisionName;
  after: RevisionName;
  /** Whether `parent` of the later layout names the earlier one, by layout id and revision label; its digest is not looked at. */
  parent: 'matches' | 'differs' | 'absent';
  /** Holes that are in both. */
  paired: number;
  /** Holes that are in both and for which nothing below is listed; their definitions may have changed. */
  unchanged: number;
  /** Holes of the later layout alone, in its order. */
  added: AddedHole[];
  /** Holes of the earlier layout alone, in its order. */
  removed: RemovedHole[];
  /** Added holes that name a removed one in `replaces`: how the two differ. Both are also in `added` and `removed`. */
  replaced: ReplacedHole[];
  moved: MovedHole[];
  /** Type, size, depth, tolerance, axis, substrate, allowance, far side. */
  respecified: ChangedHole[];
  /** Trade, level, area, group, role in the group. */
  reassigned: ChangedHole[];
  /** Tag. */
  renumbered: RenumberedHole[];
  /** Definitions that are new, gone or other, by collection in the order of the schema. */
  redefined: ChangedDefinition[];
  /** Members of the header, such as `title` or `frame/heightDatum`; not `revision`, `parent` and `changes`. */
  header: MemberChange[];
  /** What no kind of change is about: `note`, `ext`, `origin`, `replaces`, and members that AHX does not know. */
  others: OtherChange[];
  /** There where holes were given new ids: they are paired by place and are neither added nor removed. */
  newIds?: NewIds;
  /** What `changes` of the later layout declares. */
  declared: DeclaredChanges;
}

/** Which revision of which layout. */
export interface RevisionName {
  layout: string;
  revision: string;
  holes: number;
}

/** A hole in a list of changes. */
export interface NamedHole {
  /** Id in the later layout, or in the earlier one for a hole that was removed. */
  id: string;
  /** Id in the earlier layout where it is another one. */
  was?: string;
  /** Tag, from the same layout as the id. */
  tag?: string;
}

/** One difference of a hole, and whether it was declared. */
export interface HoleDifference extends NamedHole {
  /** Whether a declared change of this kind names the hole, by either id. */
  isDeclared: boolean;
}

export interface AddedHole extends HoleDifference {
  /** Id of the removed hole that it takes the place of. */
  replaces?: string;
}

export interface RemovedHole extends HoleDifference {
  /** Ids of the added holes that take its place. */
  replacedBy?: string[];
}

export interface ReplacedHole extends NamedHole {
  was: string;
  /** Absent where both lie at one place. */
  move?: Move;
  /** Members that differ, by name; `point` is in `move`. */
  members: MemberChange[];
}

export interface MovedHole extends HoleDifference, Move {}

/** From where to where, millimetres in the site frame. */
export interface Move {
  from: Position;
  to: Position;
  deltaX: number;
  deltaY: number;
  /** Absent where a height is not known. */
  deltaZ?: number;
  /** Distance in space, or in plan where a height is not known. */
  distance: number;
  /** There where the height is known in one layout only. */
  height?: 'now-known' | 'now-unknown';
}

export interface ChangedHole extends HoleDifference {
  members: MemberChange[];
}

export interface RenumberedHole extends HoleDifference {
  from?: string;
  to?: string;
}

/** A member with another value. */
export interface MemberChange {
  member: string;
  /** Absent where the earlier record has none. For a member that a hole takes over from its group, type or substrate: the value that holds. */
  from?: unknown;
  /** Absent where the later record has none. */
  to?: unknown;
}

/** A definition that was added, removed or changed. */
export interface ChangedDefinition {
  collection: Collection;
  id: string;
  state: 'added' | 'removed' | 'changed';
  /** What was changed; empty for one that was added or removed. */
  members: MemberChange[];
  /**
   * Holes that refer to it: of the later layout, or of the earlier one where the definition was removed. For
   * keep-outs, bores and control those of its substrate or level, for buildings and grids those of their levels,
   * for packages those in them. Absent where nothing says which holes it is for.
   */
  holes?: number;
  /**
   * How many of these holes declared changes of the kind `redefined` name. Absent where there are no holes, and
   * for definitions that holes name and that are new or gone: the holes show that themselves.
   */
  isDeclared?: 'for-all' | 'for-some' | 'for-none';
}

/** Members of a record that no kind of change is about. */
export interface OtherChange {
  /** `header` for the members of the layout itself; its id is then that of the later layout. */
  collection: Collection | 'header';
  id: string;
  members: MemberChange[];
}

/** Holes that carry new ids, as after an export that numbers anew. */
export interface NewIds {
  /** Trades for which it is so, in the order of their first holes in the later layout. All counts are of their holes. */
  trades: string[];
  holesBefore: number;
  holesAfter: number;
  /** Ids that both layouts have. */
  sharedIds: number;
  /** `sharedIds` as a share of the lesser number of holes. */
  sharedRate: number;
  /** Holes paired by place. */
  matched: number;
  /** `matched` as a share of the lesser number of holes that no id pairs. */
  matchRate: number;
  /** Which id became which, in the order of the later layout. */
  mapping: { before: string; after: string }[];
}

/** Declared changes, held against what differs. */
export interface DeclaredChanges {
  /** Number of declared changes. */
  count: number;
  /** Declared changes that are none, wholly or for some of their holes. */
  notFound: DeclaredNotFound[];
}

export interface DeclaredNotFound {
  /** Index in `changes` of the later layout. */
  index: number;
  kind: Change['kind'];
  /** Holes named for which nothing of this kind was found; empty for a change that names no hole. */
  holes: string[];
}
