import { unitSystemOf } from '../draw/scale.js';
import type { LayoutSource } from '../model/layout-source.js';
import { diffLayouts } from '../events/diff-layouts.js';
import type { NamedHole } from '../events/layout-changes.js';
import { type CrewSheet, crewSheets } from '../report/sheet/crew-sheets.js';
import { ENGLISH_SHEET_WORDS } from '../report/sheet/english-sheet-words.js';
import { drillingOrder } from '../report/sheet/drilling-order.js';
import { layoutRecords } from '../report/sheet/layout-records.js';
import { type OtherLayouts, otherLayouts } from '../report/sheet/other-layouts.js';
import type { SheetParent } from '../report/sheet/sheet-changes.js';
import { SheetContext } from '../report/sheet/sheet-context.js';
import type { SheetCheck } from '../report/sheet/sheet-findings.js';
import type { SheetHole } from '../report/sheet/sheet-hole.js';
import { sheetHtml } from '../report/sheet/sheet-html.js';
import { keysOf } from '../report/sheet/sheet-keys.js';
import type { SheetPaper } from '../report/sheet/sheet-paper.js';
import { type SheetRow, sheetRow } from '../report/sheet/sheet-row.js';
import { sheetSvg } from '../report/sheet/sheet-svg.js';
import type { SheetWords } from '../report/sheet/sheet-words.js';
import { belongsTo, chosen, type SheetChoice } from './sheet-choice.js';

export { holesOfChoice, type SheetChoice, type SheetOption, sheetOptions } from './sheet-choice.js';
export type { SheetCheck } from '../report/sheet/sheet-findings.js';
export type { SheetPaper } from '../report/sheet/sheet-paper.js';

/** The sheets of one choice. */
export interface SheetSet {
  readonly sheets: readonly CrewSheet[];
  /** Holes on them. */
  readonly holeCount: number;
  /** Holes of the choice with nothing to drill: cast in, or there already. */
  readonly notToDrill: number;
  /** Holes with an error of the check, and others with a warning; accepted ones left aside. */
  readonly marked: { readonly errors: number; readonly warnings: number };
  readonly paper: SheetPaper;
  /** One HTML file, in pieces. */
  html(): Iterable<string>;
  /** Each sheet as an SVG file of its own. */
  svg(): string[];
}

/** How far around the holes of the sheets those of others are looked for: more than a plan shows, mm. */
const AROUND_MM = 5000;

/** Letter where the project reads feet or inches, else A4. */
export function usualPaper({ header: { display } }: LayoutSource): SheetPaper {
  return unitSystemOf(display) === 'metric' ? 'a4' : 'letter';
}

/** What sheets are made with besides the layout. */
export interface SheetSettings {
  readonly paper?: SheetPaper;
  /** Absent: English. */
  readonly words?: SheetWords;
  /** What a check said of the layout; absent: the sheets say that none was made. */
  readonly check?: SheetCheck;
  /** Sound layouts of the same frame, whose keep-outs, bores and holes are shown too. */
  readonly others?: readonly LayoutSource[];
  /** The revision before; absent: nothing is said of changes. */
  readonly parent?: LayoutSource;
}

/**
 * Crew sheets of a sound layout: each is one side of paper, as many as the holes need. The same layouts, choice and
 * report give the same text. Without a hole to drill there is no sheet.
 *
 * @throws RangeError where the choice names a record that the layout does not have
 */
export function sheetsOf(source: LayoutSource, choice: SheetChoice, settings: SheetSettings = {}): SheetSet {
  const { paper = usualPaper(source), words = ENGLISH_SHEET_WORDS, check, others = [], parent } = settings;
  const records = layoutRecords(source.header);
  const { holes, given, subject } = chosen(source, records, choice);
  const context = new SheetContext(records, words, {
    check,
    parent: parent && againstParent(parent, source, choice),
    others: besides(source, others, holes),
  });
  const levels = [...new Set(holes.map(({ level }) => level))];
  // Levels come as the layout has them; where the package gives an order, as it names them first.
  const order = given > 0 ? levels : [...records.levels.keys()];
  const toDrill = drillingOrder(holes, given, context.rowMm, order, source.header.frame);
  const rows = numbered(
    toDrill.map((hole) => sheetRow(hole, context)),
    (source.header.grids ?? []).flatMap(({ lines }) => lines.map(({ name }) => name)),
  );
  const sheets = crewSheets(rows, subject, context, paper);
  return {
    sheets,
    holeCount: rows.length,
    notToDrill: subject.notToDrill,
    marked: {
      errors: rows.filter(({ findings }) => findings?.state === 'error').length,
      warnings: rows.filter(({ findings }) => findings?.state === 'warning').length,
    },
    paper,
    html: () => sheetHtml(sheets, subject, context, paper),
    svg: () => sheets.map(sheetSvg),
  };
}

/** Rows with numbers and keys that hold for all sheets. */
function numbered(rows: readonly Omit<SheetRow, 'number' | 'keys'>[], gridlines: readonly string[]): SheetRow[] {
  const keys = keysOf(rows, gridlines);
  return rows.map((row, k) => ({ ...row, number: k + 1, keys: keys(row) }));
}

/** What differs from the revision before, and the holes of the choice that it had and that are gone. */
function againstParent(parent: LayoutSource, source: LayoutSource, choice: SheetChoice): SheetParent {
  const changes = diffLayouts(parent, source);
  const before = layoutRecords(parent.header);
  // A package or area that was not there before says nothing of which holes it would have had.
  const isKnown = 'package' in choice ? before.packages.has(choice.package) : true;
  const belongs = isKnown ? belongsTo(before, choice) : () => true;
  const removed = new Map(changes.removed.map((hole) => [hole.id, hole]));
  const takenOut: NamedHole[] = [];
  if (removed.size > 0) {
    for (const hole of parent.holes()) {
      const found = removed.get(hole.id);
      if (found !== undefined && belongs(hole)) takenOut.push(found);
    }
  }
  return { changes, takenOut };
}

/** What lies around the holes of the sheets that is of other layouts, or of other trades of the same one. */
function besides(source: LayoutSource, others: readonly LayoutSource[], holes: readonly SheetHole[]): OtherLayouts {
  const own = new Set(holes.map(({ hole }) => hole.trade));
  const ofOtherTrades = {
    header: source.header,
    *holes() {
      for (const hole of source.holes()) if (!own.has(hole.trade)) yield hole;
    },
  };
  const points = holes.map(({ hole }) => hole.point);
  return otherLayouts(source.header, [ofOtherTrades, ...others], points, AROUND_MM);
}
