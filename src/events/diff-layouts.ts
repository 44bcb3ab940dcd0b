import type { LayoutSource } from '../model/layout-source.js';
import { type HoleKind, kindOfMember } from './compare-holes.js';
import { type ChangeKind, Declarations } from './declared-changes.js';
import { definitionChanges } from './definition-changes.js';
import { headerChanges } from './header-changes.js';
import { holeChanges } from './hole-changes.js';
import type { DeclaredChanges, LayoutChanges, NamedHole, RevisionName } from './layout-changes.js';
import { pairHoles } from './pair-holes.js';
import { idOf, memberOf, type Rec, recordOf, textOf } from './records.js';
import type { Side } from './side.js';

type Found = Omit<LayoutChanges, 'declared'>;

/**
 * What differs between two revisions of a layout.
 *
 * Holes and definitions are known again by their ids; see {@link LayoutChanges} for what is listed where. Lengths
 * compare within 0.0005 mm; the order of members and of records does not matter, that of other arrays does. Nothing
 * is thrown: a value that the schema does not allow is compared as it is.
 *
 * Both layouts are held in memory; the time is linear in their records.
 */
export function diffLayouts(before: LayoutSource, after: LayoutSource): LayoutChanges {
  const [earlier, later] = [sideOf(before), sideOf(after)];
  const declarations = new Declarations(later.header);
  const pairs = pairHoles(earlier.holes, later.holes);
  const header = headerChanges(earlier.header, later.header);
  const holes = holeChanges(earlier, later, pairs, declarations);
  const definitions = definitionChanges(earlier, later, declarations);
  const name = revisionName(later);
  const ofHeader = { collection: 'header' as const, id: name.layout, members: header.others };
  const found: Found = {
    before: revisionName(earlier),
    after: name,
    parent: parentState(later.header, earlier.header),
    ...holes,
    redefined: definitions.redefined,
    header: header.members,
    others: [...(header.others.length > 0 ? [ofHeader] : []), ...definitions.others, ...holes.others],
    ...(pairs.newIds && { newIds: pairs.newIds }),
  };
  return { ...found, declared: heldAgainst(declarations, found, definitions.isFor) };
}

function sideOf(source: LayoutSource): Side {
  return { header: recordOf(source.header), holes: Array.from(source.holes(), recordOf) };
}

function revisionName({ header, holes }: Side): RevisionName {
  const revision = textOf(recordOf(memberOf(header, 'revision')), 'label') ?? '';
  return { layout: idOf(header), revision, holes: holes.length };
}

function parentState(after: Rec, before: Rec): LayoutChanges['parent'] {
  if (memberOf(after, 'parent') === undefined) return 'absent';
  const parent = recordOf(memberOf(after, 'parent'));
  const revision = textOf(recordOf(memberOf(before, 'revision')), 'label');
  const isNamed = textOf(parent, 'layout') === textOf(before, 'id') && textOf(parent, 'revision') === revision;
  return isNamed ? 'matches' : 'differs';
}

function heldAgainst(declarations: Declarations, found: Found, isRedefined: (id: string) => boolean): DeclaredChanges {
  if (declarations.count === 0) return { count: 0, notFound: [] };
  // A hole that was replaced may have been declared by what became of it.
  const replacedAs = (kind: HoleKind) =>
    found.replaced.filter(({ members }) => members.some(({ member }) => kindOfMember(member) === kind));
  const lists: Record<Exclude<ChangeKind, 'redefined'>, readonly NamedHole[]> = {
    added: found.added,
    removed: found.removed,
    moved: [...found.moved, ...found.replaced.filter(({ move }) => move !== undefined)],
    respecified: [...found.respecified, ...replacedAs('respecified')],
    reassigned: [...found.reassigned, ...replacedAs('reassigned')],
    renumbered: [...found.renumbered, ...replacedAs('renumbered')],
  };
  const ids = new Map<string, Set<string>>();
  for (const [kind, holes] of Object.entries(lists)) {
    ids.set(kind, new Set(holes.flatMap(({ id, was }) => (was === undefined ? [id] : [id, was]))));
  }
  return declarations.heldAgainst(
    (kind, id) => (kind === 'redefined' ? isRedefined(id) : ids.get(kind)?.has(id) === true),
    (kind) => (kind === 'redefined' ? found.redefined.length > 0 : (ids.get(kind)?.size ?? 0) > 0),
  );
}
