import type { Declarations } from './declared-changes.js';
import { HoleUses, isNamedByHoles, type UseSet, type Uses } from './hole-uses.js';
import type { ChangedDefinition, LayoutChanges } from './layout-changes.js';
import { idOf } from './records.js';
import { type Redefinition, redefinitions } from './redefinitions.js';
import type { Side } from './side.js';

interface DefinitionChanges {
  redefined: ChangedDefinition[];
  others: LayoutChanges['others'];
  /** Whether the hole uses a definition that differs. */
  isFor(id: string): boolean;
}

/** What differs in the definitions of two layouts, for how many holes, and what of it is declared. Linear. */
export function definitionChanges(before: Side, after: Side, declarations: Declarations): DefinitionChanges {
  const { found, others } = redefinitions(before.header, after.header);
  if (found.length === 0) return { redefined: [], others, isFor: () => false };
  const isDeclared = (id: string) => declarations.has('redefined', id);
  const usesAfter = new HoleUses(after.header, after.holes, isDeclared);
  const isAnyGone = found.some(({ state }) => state === 'removed');
  const usesBefore = isAnyGone ? new HoleUses(before.header, before.holes, isDeclared) : undefined;
  const [marksBefore, marksAfter]: UseSet[] = [new Map(), new Map()];
  const redefined = found.map((definition) => {
    const isGone = definition.state === 'removed' && usesBefore !== undefined;
    const uses = isGone ? usesBefore : usesAfter;
    uses.mark(definition.collection, definition.record, isGone ? marksBefore : marksAfter);
    return changedDefinition(definition, uses.of(definition.collection, definition.record));
  });
  const isFor = (id: string) => usesAfter.isMarked(id, marksAfter) || usesBefore?.isMarked(id, marksBefore) === true;
  return { redefined, others, isFor };
}

function changedDefinition({ collection, state, members, record }: Redefinition, uses?: Uses): ChangedDefinition {
  const changed: ChangedDefinition = { collection, id: idOf(record), state, members };
  if (uses === undefined) return changed;
  const isShownByHoles = state !== 'changed' && isNamedByHoles(collection);
  if (uses.holes === 0 || isShownByHoles) return { ...changed, holes: uses.holes };
  const { holes, declared } = uses;
  return { ...changed, holes, isDeclared: declared === 0 ? 'for-none' : declared < holes ? 'for-some' : 'for-all' };
}
