import type { Primitive } from '../../draw/primitive.js';
import { printable } from '../../model/printable.js';
import { fitLines, typeWidth } from './fit-lines.js';
import { LINE_MM, RULE, type SheetBlock, textAt, textLines, TYPE_MM } from './sheet-block.js';
import type { SheetCaps } from './sheet-caps.js';
import type { SheetContext } from './sheet-context.js';
import { oneLine } from './one-line.js';

/** What the sheets are about. Texts as the layout has them. */
export interface SheetSubject {
  readonly kind: 'package' | 'area' | 'level';
  readonly id: string;
  readonly title: string;
  readonly date?: string;
  readonly crew?: string;
  /** What must have happened before. */
  readonly prerequisite?: string;
  readonly isOrderGiven: boolean;
  /** Whether others follow those whose order the layout gives. */
  readonly isRestInRows: boolean;
  /** Holes to be drilled, on all sheets. */
  readonly toDrill: number;
  /** Holes where there is nothing to drill, and holes that are named and not there. */
  readonly notToDrill: number;
  readonly unknown: number;
}

const BOX_MM = { width: 50, height: 26.5 };
const TITLE_MM = 7;
const LARGEST_LABEL_MM = 13;
const DAY = /^\d{4}-\d\d-\d\d/;

/** Title, date and crew at the left; the revision in large at the right, with what it supersedes. */
export function sheetHead(
  subject: SheetSubject,
  { records: { header }, words }: SheetContext,
  box: { left: number; width: number },
  caps: SheetCaps,
): SheetBlock & { drawWith(top: number, number: number, count: number): Primitive[] } {
  const { revision, project } = header;
  const width = box.width - BOX_MM.width - 3;
  const title = fitLines(oneLine(subject.title), width, TITLE_MM, caps.title, true);
  const about = fitLines(
    [
      `${words.kinds[subject.kind]} ${printable(subject.id)}`,
      subject.date === undefined ? words.noDate : words.date(printable(subject.date)),
    ].join(' · '),
    width,
    TYPE_MM.work,
    caps.about,
  );
  const issued = DAY.exec(revision.issued ?? '')?.[0];
  const origin = fitLines(
    [
      ...(subject.crew === undefined ? [] : [words.crew(subject.crew)]),
      ...(project === undefined ? [] : [printable(project.name)]),
      printable(header.id),
      ...(issued === undefined ? [] : [words.issued(issued)]),
    ].join(' · '),
    width,
    TYPE_MM['look-up'],
    caps.origin,
  );
  const titleMm = title.lines.length * TITLE_MM * 1.12;
  const aboutTop = titleMm + 0.6;
  const originTop = aboutTop + about.lines.length * LINE_MM.work;
  const supersedes = words.supersedes(revision.supersedes === undefined ? undefined : printable(revision.supersedes));
  const label = printable(revision.label);
  const drawWith = (top: number, number: number, count: number): Primitive[] => [
    ...title.lines.map((text, k) =>
      textAt([box.left, top + TITLE_MM * (0.85 + 1.12 * k)], text, TITLE_MM, { isBold: true }),
    ),
    ...textLines([box.left, top + aboutTop], about.lines, 'work'),
    ...textLines([box.left, top + originTop], origin.lines, 'look-up'),
    ...revisionBox({ left: box.left + box.width - BOX_MM.width, top }, [
      words.revision,
      printable(revision.label),
      supersedes,
      words.sheetOf(number, count),
    ]),
  ];
  return {
    heightMm: Math.max(BOX_MM.height, originTop + origin.lines.length * LINE_MM['look-up']) + 1.5,
    isCut: title.isCut || about.isCut || origin.isCut || isRevisionCut([label, supersedes]),
    draw: (top) => drawWith(top, 1, 1),
    drawWith,
  };
}

function isRevisionCut([label, supersedes]: string[]): boolean {
  const inner = BOX_MM.width - 3;
  return typeWidth(label, TYPE_MM.work, true) > inner || typeWidth(supersedes, TYPE_MM['look-up']) > inner;
}

function revisionBox(
  { left, top }: { left: number; top: number },
  [head, label, supersedes, sheet]: string[],
): Primitive[] {
  const { width, height } = BOX_MM;
  const middle = left + width / 2;
  const inner = width - 3;
  const size = Math.max(Math.min(LARGEST_LABEL_MM, inner / Math.max(typeWidth(label, 1, true), 0.1)), TYPE_MM.work);
  const [large] = fitLines(label, inner, size, 1, true).lines;
  const [below] = fitLines(supersedes, inner, TYPE_MM['look-up'], 1).lines;
  const sheetSize = Math.min(TYPE_MM.work, inner / typeWidth(sheet, 1, true));
  return [
    { kind: 'rect', at: [left, top], width, height, style: { ...RULE, strokeWidth: 0.6 } },
    textAt([left + 1.5, top + 4], head, TYPE_MM['look-up']),
    textAt([middle, top + 9.5 + size * 0.36], large ?? '', size, { anchor: 'middle', isBold: true }),
    textAt([middle, top + 18.6], below ?? '', TYPE_MM['look-up'], { anchor: 'middle' }),
    textAt([middle, top + 24.6], sheet, sheetSize, { anchor: 'middle', isBold: true }),
  ];
}
