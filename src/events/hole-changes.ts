import { compareHoles, type HoleDifferences } from './compare-holes.js';
import type { Declarations } from './declared-changes.js';
import { HeldValues } from './held-values.js';
import type { LayoutChanges, NamedHole, RenumberedHole } from './layout-changes.js';
import type { HolePairs } from './pair-holes.js';
import { idOf, type Rec, textOf } from './records.js';
import type { Side } from './side.js';

type ListsOfHoles = Pick<
  LayoutChanges,
  | 'paired'
  | 'unchanged'
  | 'added'
  | 'removed'
  | 'replaced'
  | 'moved'
  | 'respecified'
  | 'reassigned'
  | 'renumbered'
  | 'others'
>;

/** What differs in the holes of two layouts, and what of it is declared. Linear. */
export function holeChanges(before: Side, after: Side, pairs: HolePairs, declarations: Declarations): ListsOfHoles {
  const changes = new HoleChanges(before, after, declarations);
  changes.compare(pairs);
  changes.pairReplaced(pairs);
  changes.noteUnpaired(pairs);
  return changes.lists;
}

class HoleChanges {
  readonly lists: ListsOfHoles = {
    paired: 0,
    unchanged: 0,
    added: [],
    removed: [],
    replaced: [],
    moved: [],
    respecified: [],
    reassigned: [],
    renumbered: [],
    others: [],
  };
  private readonly valuesBefore: HeldValues;
  private readonly valuesAfter: HeldValues;

  constructor(
    private readonly before: Side,
    private readonly after: Side,
    private readonly declarations: Declarations,
  ) {
    this.valuesBefore = new HeldValues(before.header);
    this.valuesAfter = new HeldValues(after.header);
  }

  compare(pairs: HolePairs): void {
    this.after.holes.forEach((hole, j) => {
      if (pairs.before[j] < 0) return;
      this.lists.paired++;
      const earlier = this.before.holes[pairs.before[j]];
      const differences = compareHoles(earlier, hole, this.valuesBefore, this.valuesAfter);
      if (differences === undefined) this.lists.unchanged++;
      else this.note(nameOf(hole, earlier), differences);
    });
  }

  pairReplaced({ replaced }: HolePairs): void {
    for (const [i, j] of replaced) {
      const [earlier, later] = [this.before.holes[i], this.after.holes[j]];
      const differences = compareHoles(earlier, later, this.valuesBefore, this.valuesAfter);
      const { move, respecified = [], reassigned = [], renumbered = [] } = differences ?? {};
      const members = [...respecified, ...reassigned, ...renumbered].sort((a, b) => (a.member < b.member ? -1 : 1));
      this.lists.replaced.push({ ...nameOf(later), was: idOf(earlier), ...(move && { move }), members });
    }
  }

  noteUnpaired(pairs: HolePairs): void {
    const { before, after, declarations, lists } = this;
    const replacedBy = new Map<number, string[]>();
    const replaces = new Map<number, string>();
    for (const [i, j] of pairs.replaced) {
      const ids = replacedBy.get(i) ?? [];
      replacedBy.set(i, ids);
      ids.push(idOf(after.holes[j]));
      replaces.set(j, idOf(before.holes[i]));
    }
    after.holes.forEach((hole, j) => {
      if (pairs.before[j] >= 0) return;
      const replaced = replaces.get(j);
      const isDeclared = declarations.has('added', idOf(hole));
      lists.added.push({ ...nameOf(hole), isDeclared, ...(replaced !== undefined && { replaces: replaced }) });
    });
    before.holes.forEach((hole, i) => {
      if (pairs.after[i] >= 0) return;
      const ids = replacedBy.get(i);
      const isDeclared = declarations.has('removed', idOf(hole));
      lists.removed.push({ ...nameOf(hole), isDeclared, ...(ids && { replacedBy: ids }) });
    });
  }

  private note(name: NamedHole, { move, respecified, reassigned, renumbered, others }: HoleDifferences): void {
    const { declarations, lists } = this;
    const { id, was } = name;
    if (move) lists.moved.push({ ...name, isDeclared: declarations.has('moved', id, was), ...move });
    if (respecified.length > 0) {
      lists.respecified.push({ ...name, isDeclared: declarations.has('respecified', id, was), members: respecified });
    }
    if (reassigned.length > 0) {
      lists.reassigned.push({ ...name, isDeclared: declarations.has('reassigned', id, was), members: reassigned });
    }
    for (const { from, to } of renumbered) lists.renumbered.push(this.renumbered(name, from, to));
    if (others.length > 0) lists.others.push({ collection: 'holes', id, members: others });
  }

  private renumbered(name: NamedHole, from: unknown, to: unknown): RenumberedHole {
    const hole: RenumberedHole = { ...name, isDeclared: this.declarations.has('renumbered', name.id, name.was) };
    if (typeof from === 'string') hole.from = from;
    if (typeof to === 'string') hole.to = to;
    return hole;
  }
}

function nameOf(hole: Rec, earlier: Rec = hole): NamedHole {
  const name: NamedHole = { id: idOf(hole) };
  const [was, tag] = [idOf(earlier), textOf(hole, 'tag')];
  if (was !== name.id) name.was = was;
  if (tag !== undefined) name.tag = tag;
  return name;
}
