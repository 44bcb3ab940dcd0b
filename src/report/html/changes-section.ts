import type { HoleDifference, LayoutChanges, MemberChange, Move, NamedHole } from '../../events/layout-changes.js';
import { clip } from '../clip.js';
import { counted } from '../counted.js';
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
  const { layouts, changes = [] } = parts;
  const compared = new Set(changes.map(({ after }) => after.layout));
  const declared = layouts.flatMap(({ model }) =>
    compared.has(String(model.header.id))
      ? []
      : model
          .collection('changes')
          .records.flatMap((change): Content[][] =>
            change === undefined
              ? []
              : [[model.header.id, change.kind, listed(change.holes ?? []), change.reason, change.question]],
          ),
  );
  return section(
    'changes',
    'Changes',
    changes.map((one) => against(one, parts)),
    table(
      'Changes that a layout declares; the revision before was not at hand to hold them against',
      ['Layout', 'Kind', 'Holes', 'Reason', 'RFI'],
      declared,
    ),
  );
}

function against(changes: LayoutChanges, { layouts }: HtmlReportParts): Markup {
  const display = displayOf(layouts);
  const say = lengthsOf(display);
  const unit = unitName(display);
  const { before, after, parent, paired, unchanged, newIds, declared } = changes;
  const members = (list: readonly MemberChange[]) => list.map((one) => html`<div>${memberChange(one, say)}</div>`);
  return html`<h3>${after.layout}: revision ${before.revision} to ${after.revision}</h3>
<p>${counted(before.holes, 'hole')} before, ${after.holes} now; ${paired} are in both, ${unchanged} of them unchanged. ${PARENT[parent]}</p>
${newIds && html`<p><b>Holes of ${newIds.trades.join(', ')} have new ids:</b> ${newIds.matched} were known again by their places, ${newIds.sharedIds} by their ids.</p>\n`}
${rows(`Moved, ${unit}`, ['Hole', 'From', 'To', 'By', 'Distance', ''], changes.moved, (hole) => [name(hole), place(hole.from, say), place(hole.to, say), by(hole, say), say(hole.distance), mark(hole)])}${rows('Added', ['Hole', 'In place of', ''], changes.added, (hole) => [name(hole), hole.replaces, mark(hole)])}${rows('Removed', ['Hole', 'Replaced by', ''], changes.removed, (hole) => [name(hole), hole.replacedBy?.join(', '), mark(hole)])}${rows('Specified otherwise', ['Hole', 'What', ''], changes.respecified, (hole) => [name(hole), members(hole.members), mark(hole)])}${rows('Assigned otherwise', ['Hole', 'What', ''], changes.reassigned, (hole) => [name(hole), members(hole.members), mark(hole)])}${rows('Tagged otherwise', ['Hole', 'From', 'To', ''], changes.renumbered, (hole) => [name(hole), hole.from, hole.to, mark(hole)])}${rows(
  'Definitions that are new, gone or other',
  ['Definition', 'State', 'What', 'Holes', ''],
  changes.redefined,
  (one) => [
    `${one.collection} ${one.id}`,
    one.state,
    members(one.members),
    one.holes,
    one.isDeclared === undefined ? undefined : DECLARED[one.isDeclared],
  ],
)}${rows('Of the layout itself', ['Member', 'What'], changes.header, (one) => [one.member, members([one])])}${rows(
  'Declared and not found',
  ['Declared change', 'Kind', 'Holes'],
  declared.notFound,
  ({ index, kind, holes }) => [`change ${index + 1}`, kind, listed(holes)],
)}`;
}

const PARENT: Readonly<Record<LayoutChanges['parent'], string>> = {
  matches: 'The layout names the revision before as the one it was made from.',
  differs: 'The layout says that it was made from another revision than the one it is held against here.',
  absent: 'The layout does not say which revision it was made from.',
};

const DECLARED = { 'for-all': 'declared', 'for-some': 'declared for some', 'for-none': 'not declared' } as const;

function rows<T>(
  caption: string,
  heads: readonly string[],
  list: readonly T[],
  cells: (one: T) => readonly Content[],
): Markup {
  const rest = list.length - MOST_ROWS;
  return html`${table(
    `${caption}: ${list.length}`,
    heads.map((head) => head || 'Declared'),
    list.slice(0, MOST_ROWS).map(cells),
  )}${rest > 0 && html`<p>And ${rest} more.</p>\n`}`;
}

function name({ id, was, tag }: NamedHole): string {
  const own = tag === undefined || tag === id ? id : `${tag} (${id})`;
  return was === undefined ? own : `${own}, before ${was}`;
}

function mark({ isDeclared }: HoleDifference): string {
  return isDeclared ? 'declared' : 'not declared';
}

function place(position: readonly number[], say: (mm: number) => string): string {
  return position.map(say).join(', ') + (position.length === 2 ? ', as found' : '');
}

function by({ deltaX, deltaY, deltaZ }: Move, say: (mm: number) => string): string {
  return [deltaX, deltaY, ...(deltaZ === undefined ? [] : [deltaZ])].map(say).join(', ');
}

function memberChange({ member, from, to }: MemberChange, say: (mm: number) => string): string {
  return `${member}: ${value(member, from, say)} → ${value(member, to, say)}`;
}

function value(member: string, given: unknown, say: (mm: number) => string): string {
  if (given === undefined) return 'none';
  if (typeof given === 'number' && LENGTHS.test(member)) return say(given);
  return clip(typeof given === 'string' ? given : (JSON.stringify(given) ?? ''), LONGEST_VALUE);
}

function listed(ids: readonly string[]): string {
  const shown = ids.slice(0, 20).join(', ');
  return ids.length > 20 ? `${shown} and ${ids.length - 20} more` : shown;
}
