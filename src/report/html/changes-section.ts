import type {
  ChangedHole,
  HoleDifference,
  LayoutChanges,
  MemberChange,
  Move,
  NamedHole,
} from '../../events/layout-changes.js';
import { clip } from '../clip.js';
import type { ChangesPhrases, HtmlPhrases } from './html-phrases.js';
import { type Content, html, type Markup } from './markup.js';
import { displayOf, type HtmlReportParts, lengthsOf, unitName } from './reported-layout.js';
import { section, table } from './table.js';

/** More rows of a table than this are counted. */
const MOST_ROWS = 300;
const LONGEST_VALUE = 120;
/** Members of holes and types that are lengths. */
const LENGTHS = /^(diameter|depth|embedment|thickness|standoff|elevation|finishedFloor|structuralTop)$/;

/** What differs from the revision before, and what the layouts declare without one to hold it against. */
export function changesSection(parts: HtmlReportParts): Markup | undefined {
  const { layouts, language, changes = [] } = parts;
  const { changes: words, choice } = language.html;
  const compared = new Set(changes.map(({ after }) => after.layout));
  const declared = layouts.flatMap(({ model }) =>
    compared.has(String(model.header.id))
      ? []
      : model
          .collection('changes')
          .records.flatMap((change): Content[][] =>
            change === undefined
              ? []
              : [
                  [
                    model.header.id,
                    choice(change.kind),
                    listed(change.holes ?? [], words),
                    change.reason,
                    change.question,
                  ],
                ],
          ),
  );
  return section(
    'changes',
    words.heading,
    changes.map((one) => against(one, parts)),
    table(words.declaredOnly, words.declaredHeads, declared),
  );
}

function against(changes: LayoutChanges, { layouts, language: { html: phrases } }: HtmlReportParts): Markup {
  const { changes: words } = phrases;
  const display = displayOf(layouts);
  const { before, after, parent, paired, unchanged, newIds } = changes;
  return html`<h3>${words.revisions(after.layout, before.revision, after.revision)}</h3>
<p>${words.numbers(before.holes, after.holes, paired, unchanged)} ${words.parent[parent]}</p>
${newIds && html`<p><b>${words.newIds(newIds.trades.join(', '))}</b> ${words.knownAgain(newIds.matched, newIds.sharedIds)}</p>\n`}
${holesThatDiffer(changes, words, lengthsOf(display), unitName(display, phrases))}${otherDifferences(changes, phrases, lengthsOf(display))}`;
}

function holesThatDiffer(
  changes: LayoutChanges,
  words: ChangesPhrases,
  say: (mm: number) => string,
  unit: string,
): Markup[] {
  const mark = ({ isDeclared }: HoleDifference) => words.isDeclared[isDeclared ? 'for-all' : 'for-none'];
  const otherMembers = (hole: ChangedHole) => [name(hole, words), memberChanges(hole.members, words, say), mark(hole)];
  return [
    rows(words, words.moved(unit), words.movedHeads, changes.moved, (hole) => [
      name(hole, words),
      place(hole.from, words, say),
      place(hole.to, words, say),
      by(hole, say),
      say(hole.distance),
      mark(hole),
    ]),
    rows(words, words.added, words.addedHeads, changes.added, (hole) => [name(hole, words), hole.replaces, mark(hole)]),
    rows(words, words.removed, words.removedHeads, changes.removed, (hole) => [
      name(hole, words),
      hole.replacedBy?.join(', '),
      mark(hole),
    ]),
    rows(words, words.respecified, words.memberHeads, changes.respecified, otherMembers),
    rows(words, words.reassigned, words.memberHeads, changes.reassigned, otherMembers),
    rows(words, words.renumbered, words.renumberedHeads, changes.renumbered, (hole) => [
      name(hole, words),
      hole.from,
      hole.to,
      mark(hole),
    ]),
  ];
}

function otherDifferences(
  { redefined, header, declared }: LayoutChanges,
  { changes: words, choice }: HtmlPhrases,
  say: (mm: number) => string,
): Markup[] {
  return [
    rows(words, words.redefined, words.redefinedHeads, redefined, (one) => [
      `${one.collection} ${one.id}`,
      words.states[one.state],
      memberChanges(one.members, words, say),
      one.holes,
      one.isDeclared && words.isDeclared[one.isDeclared],
    ]),
    rows(words, words.header, words.headerHeads, header, (one) => [one.member, memberChanges([one], words, say)]),
    rows(words, words.notFound, words.notFoundHeads, declared.notFound, ({ index, kind, holes }) => [
      words.change(index + 1),
      // A declaration that is broken may have none.
      kind && choice(kind),
      listed(holes, words),
    ]),
  ];
}

function rows<T>(
  words: ChangesPhrases,
  caption: string,
  heads: readonly string[],
  list: readonly T[],
  cells: (one: T) => readonly Content[],
): Markup {
  const rest = list.length - MOST_ROWS;
  return html`${table(`${caption}: ${list.length}`, heads, list.slice(0, MOST_ROWS).map(cells))}${
    rest > 0 && html`<p>${words.more(rest)}</p>\n`
  }`;
}

function name({ id, was, tag }: NamedHole, words: ChangesPhrases): string {
  const own = tag === undefined || tag === id ? id : `${tag} (${id})`;
  return was === undefined ? own : words.was(own, was);
}

function place(position: readonly number[], words: ChangesPhrases, say: (mm: number) => string): string {
  return position.map(say).join(', ') + (position.length === 2 ? `, ${words.asFound}` : '');
}

function by({ deltaX, deltaY, deltaZ }: Move, say: (mm: number) => string): string {
  return [deltaX, deltaY, ...(deltaZ === undefined ? [] : [deltaZ])].map(say).join(', ');
}

function memberChanges(list: readonly MemberChange[], words: ChangesPhrases, say: (mm: number) => string): Markup[] {
  const value = (member: string, given: unknown): string => {
    if (given === undefined) return words.noValue;
    if (typeof given === 'number' && LENGTHS.test(member)) return say(given);
    return clip(typeof given === 'string' ? given : (JSON.stringify(given) ?? ''), LONGEST_VALUE);
  };
  return list.map(({ member, from, to }) => html`<div>${member}: ${value(member, from)} → ${value(member, to)}</div>`);
}

function listed(ids: readonly string[], words: ChangesPhrases): string {
  const shown = ids.slice(0, 20).join(', ');
  return ids.length > 20 ? `${shown} ${words.moreIds(ids.length - 20)}` : shown;
}
