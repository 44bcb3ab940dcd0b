import type { LayoutChanges, MemberChange, NamedHole } from '../../events/layout-changes.js';
import type { Hole } from '../../generated/layout.js';
import { printable } from '../../model/printable.js';
import type { SheetLengths } from './sheet-lengths.js';
import type { SheetWords } from './sheet-words.js';

/** What is other with a hole than in the revision before. Printable. */
export interface RowChange {
  readonly text: string;
}

/** What differs from the revision before, and which of the holes that are gone would be on these sheets. */
export interface SheetParent {
  readonly changes: LayoutChanges;
  readonly takenOut: readonly NamedHole[];
}

/** More tags than this of holes that were taken out are counted. */
const MOST_TAKEN_OUT = 40;

/** What differs from the revision before, as sheets show it. */
export class SheetChanges {
  private readonly texts = new Map<string, string[]>();
  private readonly redefined: Readonly<Record<'holeTypes' | 'groups' | 'substrates', Map<string, string>>>;
  private readonly revision: string;

  constructor(
    private readonly parent: SheetParent,
    private readonly words: SheetWords,
    lengths: SheetLengths,
  ) {
    const { changes } = parent;
    this.revision = printable(changes.before.revision);
    const say = ({ id }: NamedHole, text: string) => {
      const known = this.texts.get(id);
      if (known === undefined) this.texts.set(id, [text]);
      else known.push(text);
    };
    for (const hole of changes.added) say(hole, words.changeNew);
    for (const hole of changes.moved) say(hole, words.changeMoved(lengths.distance(hole.distance)));
    for (const hole of changes.respecified) say(hole, words.changeRespecified(this.namesOf(hole.members)));
    for (const hole of changes.renumbered) {
      say(hole, words.changeTag(hole.from === undefined ? undefined : printable(hole.from)));
    }
    const redefinedIn = (collection: string) =>
      new Map(
        changes.redefined
          .filter((one) => one.collection === collection && one.state === 'changed')
          .map(({ id, members }) => [id, words.changeRedefined(printable(id), this.namesOf(members))]),
      );
    this.redefined = {
      holeTypes: redefinedIn('holeTypes'),
      groups: redefinedIn('groups'),
      substrates: redefinedIn('substrates'),
    };
  }

  /** Undefined for a hole that is as it was. */
  ofHole({ id, holeType, group, substrate }: Hole): RowChange | undefined {
    const { holeTypes, groups, substrates } = this.redefined;
    const all = [
      ...(this.texts.get(id) ?? []),
      ...[holeTypes.get(holeType), groups.get(group ?? ''), substrates.get(substrate ?? '')].filter(
        (text) => text !== undefined,
      ),
    ];
    return all.length === 0 ? undefined : { text: this.words.changed(this.revision, all.join('; ')) };
  }

  /** What a sheet says of the revision before: how many of its holes differ, and which are gone. */
  ofSheet(rows: readonly { readonly number: number; readonly change: RowChange | undefined }[]): string[] {
    const { words, revision } = this;
    const numbers = rows.filter(({ change }) => change !== undefined).map(({ number }) => number);
    return [words.changesOfSheet(revision, numbers.join(', ')), ...this.takenOutInWords()];
  }

  private takenOutInWords(): string[] {
    const { takenOut } = this.parent;
    if (takenOut.length === 0) return [];
    const names = takenOut.slice(0, MOST_TAKEN_OUT).map(({ id, tag }) => printable(tag ?? id));
    const rest = takenOut.length - names.length;
    return [this.words.takenOut(this.revision, names.join(', '), rest)];
  }

  private namesOf(members: readonly MemberChange[]): string {
    return [...new Set(members.map(({ member }) => this.words.members[member] ?? printable(member)))].join(', ');
  }
}
