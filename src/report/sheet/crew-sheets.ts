import type { Drawing } from '../../draw/primitive.js';
import { sheetBand } from './sheet-band.js';
import { LINE_MM, type SheetBlock, stacked } from './sheet-block.js';
import { CAPS, type SheetCaps, TIGHT_CAPS } from './sheet-caps.js';
import type { SheetContext } from './sheet-context.js';
import { type SheetSubject, sheetHead } from './sheet-head.js';
import { MOST_KEYS } from './sheet-keys.js';
import { type ListRow, listHead, listRow, numberColumnMm } from './sheet-list.js';
import { MARGIN_MM, SHEET_PAPERS, type SheetPaper } from './sheet-paper.js';
import type { SheetRow } from './sheet-row.js';
import { findingsBlock, footBlock, leftOutBlock, workBlock } from './text-blocks.js';
import { type SheetTexts, sheetTexts } from './sheet-texts.js';

/** One side of paper, and what stands on it as text. */
export interface CrewSheet {
  readonly number: number;
  readonly drawing: Drawing;
  readonly rows: readonly SheetRow[];
  readonly texts: SheetTexts;
}

/** More room than this a row does not take, mm. */
const MOST_GROWTH_MM = 4;
/** By this much the band with the plan grows at most, mm. */
const MOST_EXTRA_MM = 70;

/**
 * Lays rows out on sheets, each one side of paper, in their order. Type never shrinks below what is readable at arm's
 * length: what finds no room goes on the next sheet, and each sheet stands by itself. Levels are not mixed, and groups
 * are parted only where one is too large for a sheet.
 */
export function crewSheets(
  rows: readonly SheetRow[],
  subject: SheetSubject,
  context: SheetContext,
  paper: SheetPaper,
): CrewSheet[] {
  const layouts = packed(rows, (some) => sheetLayout(some, subject, context, paper, CAPS)).map((some) => {
    const layout = sheetLayout(some, subject, context, paper, CAPS);
    if (layout.spareMm < 0) return sheetLayout(some, subject, context, paper, TIGHT_CAPS);
    // What rows do not take makes the plan larger.
    const free = layout.spareMm - some.length * MOST_GROWTH_MM;
    return free <= 0 ? layout : sheetLayout(some, subject, context, paper, CAPS, Math.min(free, MOST_EXTRA_MM));
  });
  return layouts.map((layout, k) => layout.sheet(k + 1, layouts.length));
}

/** Rows divided so that each part finds room on a sheet; a single row is always let through. */
function packed(
  rows: readonly SheetRow[],
  layoutOf: (rows: readonly SheetRow[]) => { spareMm: number; hasRoomForKeys: boolean },
): SheetRow[][] {
  const sheets: SheetRow[][] = [];
  let current: SheetRow[] = [];
  const fits = (some: readonly SheetRow[]) => {
    const { spareMm, hasRoomForKeys } = layoutOf(some);
    return spareMm >= 0 && hasRoomForKeys;
  };
  const flush = () => {
    if (current.length > 0) sheets.push(current);
    current = [];
  };
  for (const unit of groupsOf(rows)) {
    if (current.length > 0 && current[0].hole.level !== unit[0].hole.level) flush();
    if (fits([...current, ...unit])) {
      current.push(...unit);
      continue;
    }
    flush();
    for (const row of unit) {
      if (current.length > 0 && !fits([...current, row])) flush();
      current.push(row);
    }
  }
  flush();
  return sheets;
}

/** Rows of one group that follow each other; a row without a group is one by itself. */
function groupsOf(rows: readonly SheetRow[]): SheetRow[][] {
  const units: SheetRow[][] = [];
  for (const row of rows) {
    const last = units.at(-1);
    const { group } = row.hole.hole;
    const isSame = last !== undefined && group !== undefined && last[0].hole.hole.group === group;
    if (isSame && last[0].hole.level === row.hole.level) last.push(row);
    else units.push([row]);
  }
  return units;
}

interface SheetLayout {
  /** Room that is left; below zero where it is not one side. */
  readonly spareMm: number;
  readonly hasRoomForKeys: boolean;
  sheet(number: number, count: number): CrewSheet;
}

function sheetLayout(
  rows: readonly SheetRow[],
  subject: SheetSubject,
  context: SheetContext,
  paper: SheetPaper,
  caps: SheetCaps,
  extraMm = 0,
): SheetLayout {
  const size = SHEET_PAPERS[paper];
  const box = { left: MARGIN_MM, width: size.width - 2 * MARGIN_MM };
  const { words } = context;
  const texts = sheetTexts(rows, subject, context);
  const head = sheetHead(subject, context, box, caps);
  const band = sheetBand(rows, context, box, caps, extraMm);
  const work = stacked([workBlock(texts, context, box, caps), findingsBlock(texts, context, box, caps)]);
  const listBox = { ...box, numberMm: numberColumnMm(subject.toDrill) };
  const titles = listHead(listBox, words, context.lengths.unitBeside);
  const list = rows.map((row) => listRow(row, listBox, words, caps));
  const foot = footBlock(texts, context, box, caps);
  const parts = [head, band, work, titles, foot];
  const isCut = [...parts, ...list].some((part) => part.isCut);
  // What the plan leaves out is known when it is drawn; it has a line in any case.
  const known = [...texts.leftOut, ...(isCut ? [words.cut] : [])];
  const noteMm = Math.min(
    leftOutBlock(known, context, box, caps).heightMm + LINE_MM['look-up'],
    caps.leftOut * LINE_MM['look-up'] + 0.8,
  );
  const listMm = list.reduce((sum, { leastHeightMm }) => sum + leastHeightMm, 0);
  const usedMm = parts.reduce((sum, { heightMm }) => sum + heightMm, 0) + listMm + ABOVE_FOOT.heightMm + noteMm;
  const spareMm = size.height - 2 * MARGIN_MM - usedMm;
  const sheet = (number: number, count: number): CrewSheet => {
    const growth = Math.max(0, Math.min(MOST_GROWTH_MM, spareMm / rows.length));
    const plan = band.draw(MARGIN_MM + head.heightMm);
    const leftOut = [...texts.leftOut, ...plan.leftOut, ...(isCut ? [words.cut] : [])];
    const last = stacked([foot, leftOutBlock(leftOut, context, box, caps)]);
    const below = MARGIN_MM + head.heightMm + band.heightMm;
    const children = [
      ...head.drawWith(MARGIN_MM, number, count),
      ...plan.primitives,
      ...stacked([work, titles, ...list.map((row) => grown(row, growth)), ABOVE_FOOT, last]).draw(below),
    ];
    const label = `${subject.title}, ${words.sheetOf(number, count)}`;
    const drawing = { width: size.width, height: size.height, label, children };
    return { number, drawing, rows, texts: { ...texts, leftOut } };
  };
  const hasRoomForKeys = Math.max(texts.substrates.length, texts.moves.length, texts.symbols.length) <= MOST_KEYS;
  return { spareMm, hasRoomForKeys, sheet };
}

/** A row as a block, higher than it must be. */
function grown({ leastHeightMm, isCut, draw }: ListRow, growthMm: number): SheetBlock {
  const heightMm = leastHeightMm + growthMm;
  return { heightMm, isCut, draw: (top) => draw(top, heightMm) };
}

/** Room between the list and what one looks up. */
const ABOVE_FOOT: SheetBlock = { heightMm: 1.5, isCut: false, draw: () => [] };
