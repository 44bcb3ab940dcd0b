import type {
  ChangedHole,
  HoleDifference,
  LayoutChanges,
  MemberChange,
  Move,
  NamedHole,
} from '../../events/layout-changes.js';
import type { ChangesPhrases, HtmlPhrases } from './html-phrases.js';
import { type Content, html, type Markup } from './markup.js';
import { displayOf, type HtmlReportParts, lengthsOf, type ReportedLayout, unitName } from './reported-layout.js';
import { exactly, formOf, type LengthForm, type SayLength, saidPair } from './said-values.js';
import { breakable, section, table } from './table.js';

/** More rows of a table than this are counted. */
const MOST_ROWS = 300;

/** How changes are written. */
interface Writing {
  readonly phrases: HtmlPhrases;
  readonly words: ChangesPhrases;
  readonly say: SayLength;
  /** Name of the unit of lengths. */
  readonly unit: string;
  /** Which members of a layout are lengths. */
  readonly form: LengthForm;
}

/** What differs from the revision before, and what the layouts declare without one to hold it against. */
export function changesSection(parts: HtmlReportParts): Markup | undefined {
  const { layouts, language, changes = [], uncompared = [] } = parts;
  const { changes: words } = language.html;
  const compared = new Set(changes.map(({ after }) => after.layout));
  const rest = layouts.filter(({ model }) => !compared.has(String(model.header.id)));
  const declared = (isUnread: boolean) =>
    rest
      .filter(({ model }) => uncompared.includes(String(model.header.id)) === isUnread)
      .flatMap((layout) => declaredBy(layout, language.html).map(([, ...cells]) => [layout.model.header.id, ...cells]));
  return section(
    'changes',
    words.heading,
    changes.map((one) => against(one, parts)),
    uncompared.map((id) => html`<p>${words.uncompared(id)}</p>\n`),
    table(words.declaredUnread, words.declaredHeads, declared(true)),
    table(words.declaredOnly, words.declaredHeads, declared(false)),
  );
}

/** Number, kind, holes, reason and question of each declared change. */
function declaredBy({ model }: ReportedLayout, { changes: words, choice }: HtmlPhrases): Content[][] {
  return model
    .collection('changes')
    .records.flatMap((change, k): Content[][] =>
      change === undefined
        ? []
        : [
            [
              words.change(k + 1),
              choice(change.kind),
              listed(change.holes ?? [], words),
              change.reason,
              change.question,
            ],
          ],
    );
}

function against(changes: LayoutChanges, parts: HtmlReportParts): Markup {
  const { layouts, language, lengthForm } = parts;
  const phrases = language.html;
  const words = phrases.changes;
  const display = displayOf(layouts);
  const writing: Writing = {
    phrases,
    words,
    say: lengthsOf(display),
    unit: unitName(display, phrases),
    form: lengthForm,
  };
  const { before, after, parent, paired, unchanged, newIds } = changes;
  const declared = layouts
    .filter(({ model }) => model.header.id === after.layout)
    .flatMap((layout) => declaredBy(layout, phrases));
  return html`<h3>${words.revisions(after.layout, before.revision, after.revision)}</h3>
<p>${words.numbers(before.holes, after.holes, paired, unchanged)} ${words.parent[parent]}</p>
${newIds && html`<p><b>${words.newIds(newIds.trades.join(', '))}</b> ${words.knownAgain(newIds.matched, newIds.sharedIds)}</p>\n`}${table(
  words.declared,
  words.declaredHereHeads,
  declared,
)}
${holesThatDiffer(changes, writing)}${otherDifferences(changes, writing)}`;
}

function holesThatDiffer(changes: LayoutChanges, writing: Writing): Markup[] {
  const { words, unit, form } = writing;
  const mark = ({ isDeclared }: HoleDifference) => words.isDeclared[isDeclared ? 'for-all' : 'for-none'];
  const ofHole = formOf(form, 'holes');
  const otherMembers = (hole: ChangedHole) => [
    name(hole, words),
    memberChanges(hole.members, ofHole, writing),
    mark(hole),
  ];
  return [
    rows(words, words.moved(unit), words.movedHeads, changes.moved, (hole) => [
      name(hole, words),
      ...moveCells(hole, writing),
      mark(hole),
    ]),
    rows(words, words.added, words.addedHeads, changes.added, (hole) => [name(hole, words), hole.replaces, mark(hole)]),
    rows(words, words.removed, words.removedHeads, changes.removed, (hole) => [
      name(hole, words),
      hole.replacedBy?.join(', '),
      mark(hole),
    ]),
    rows(words, words.respecified(unit), words.memberHeads, changes.respecified, otherMembers),
    rows(words, words.reassigned, words.memberHeads, changes.reassigned, otherMembers),
    rows(words, words.renumbered, words.renumberedHeads, changes.renumbered, (hole) => [
      name(hole, words),
      hole.from,
      hole.to,
      mark(hole),
    ]),
  ];
}

function otherDifferences({ redefined, header, declared }: LayoutChanges, writing: Writing): Markup[] {
  const { words, unit, phrases, form } = writing;
  return [
    rows(words, words.redefined(unit), words.redefinedHeads, redefined, (one) => [
      `${one.collection} ${one.id}`,
      words.states[one.state],
      memberChanges(one.members, formOf(form, one.collection), writing),
      one.holes,
      one.isDeclared && words.isDeclared[one.isDeclared],
    ]),
    rows(words, words.header, words.headerHeads, header, (one) => [one.member, memberChanges([one], form, writing)]),
    rows(words, words.notFound, words.notFoundHeads, declared.notFound, ({ index, kind, holes }) => [
      words.change(index + 1),
      // A declaration that is broken may have none.
      kind && phrases.choice(kind),
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

/** From, to, by and distance of a move; with millimetres where it is too small to be seen in the unit of the project. */
function moveCells(move: Move, { words, say: usual }: Writing): string[] {
  const cells = (say: SayLength) => [
    place(move.from, words, say),
    place(move.to, words, say),
    by(move, say),
    say(move.distance),
  ];
  const [from, to, ...rest] = cells(usual);
  return from === to ? cells(exactly(usual)) : [from, to, ...rest];
}

function place(position: readonly number[], words: ChangesPhrases, say: SayLength): string {
  return position.map(say).join(', ') + (position.length === 2 ? `, ${words.asFound}` : '');
}

function by({ deltaX, deltaY, deltaZ }: Move, say: SayLength): string {
  return [deltaX, deltaY, ...(deltaZ === undefined ? [] : [deltaZ])].map(say).join(', ');
}

/** @param form of the record that has the members */
function memberChanges(list: readonly MemberChange[], form: LengthForm, { words, say }: Writing): Markup[] {
  return list.map(({ member, from, to }) => {
    // A member of a member of the header is told with its path.
    const ofMember = member.split('/').reduce(formOf, form);
    const [a, b] = saidPair([from, to], ofMember, say, words.noValue);
    return html`<div>${member}: ${breakable(a)} → ${breakable(b)}</div>`;
  });
}

function listed(ids: readonly string[], words: ChangesPhrases): string {
  const shown = ids.slice(0, 20).join(', ');
  return ids.length > 20 ? `${shown} ${words.moreIds(ids.length - 20)}` : shown;
}
