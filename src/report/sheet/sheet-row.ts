import { type SymbolLook, symbolLook } from '../../draw/symbol-sign.js';
import { gridDimensionText } from '../../frame/grid-dimension-text.js';
import type { LevelGridlines } from '../../frame/grid-dimensions.js';
import { formatLength } from '../../units/format-length.js';
import type { Finding } from '../../generated/report.js';
import { printable } from '../../model/printable.js';
import { type LayoutRecords, partyInWords } from './layout-records.js';
import { moveInWords } from './move-in-words.js';
import { oneLine } from './one-line.js';
import type { RowChange, SheetChanges } from './sheet-changes.js';
import type { RowFindings, SheetFindings } from './sheet-findings.js';
import type { SheetHole } from './sheet-hole.js';
import type { RowKeys } from './sheet-keys.js';
import type { SheetLengths } from './sheet-lengths.js';
import type { SheetWords } from './sheet-words.js';

/** One line of the list of a sheet. All texts are printable. */
export interface SheetRow {
  readonly hole: SheetHole;
  /** Place among the holes of the choice, from 1; it runs through all sheets. */
  readonly number: number;
  readonly keys: RowKeys;
  readonly tag: string;
  /** Without colour. */
  readonly look: SymbolLook;
  /** What the symbol says, for the key. */
  readonly symbolText: string;
  /** As stamped on the bit or as the project reads lengths, and in mm. */
  readonly bit: readonly [string, string];
  readonly depth: readonly [string, string];
  readonly grid: readonly string[];
  readonly substrateText: string;
  readonly moveText: string;
  /** What has to be said of this hole besides. */
  readonly notes: readonly string[];
  /** What the check says; absent: nothing of weight. */
  readonly findings: RowFindings | undefined;
  /** Findings that the row does not show. */
  readonly hidden: readonly Finding[];
  /** What is other than in the revision before. */
  readonly change: RowChange | undefined;
}

/** What rows are made with. */
export interface RowContext {
  readonly records: LayoutRecords;
  readonly lengths: SheetLengths;
  readonly words: SheetWords;
  readonly findings: SheetFindings;
  readonly changes: SheetChanges | undefined;
  gridlinesOf(level: string | undefined): LevelGridlines;
}

/** From this on a slant is said, degrees. */
const SLANT_DEG = 2;

export function sheetRow(hole: SheetHole, context: RowContext): Omit<SheetRow, 'number' | 'keys'> {
  const { records, lengths, words } = context;
  const trade = records.trades.get(hole.hole.trade);
  const look = { ...symbolLook(trade?.symbol), rgb: undefined };
  const letters = look.letters === undefined ? undefined : printable(look.letters);
  const tradeName = printable(trade?.name ?? hole.hole.trade);
  const mark = [letters, trade?.symbol?.shape, trade?.symbol?.colour].filter((part) => part !== undefined).join(', ');
  return {
    hole,
    tag: printable(hole.hole.tag ?? hole.hole.id),
    look: { ...look, letters },
    symbolText: trade?.symbol === undefined ? words.noSymbol(tradeName) : words.symbol(tradeName, printable(mark)),
    bit: bitOf(hole, context),
    depth: depthOf(hole, context),
    grid: gridOf(hole, context),
    substrateText: substrateOf(hole, context),
    moveText: moveInWords(hole, records.header.frame, lengths, words),
    notes: notesOf(hole, context),
    findings: context.findings.ofHole(hole.hole),
    hidden: context.findings.hiddenOf(hole.hole),
    change: context.changes?.ofHole(hole.hole),
  };
}

function bitOf({ type, diameterMm, isDiameterOfType }: SheetHole, { lengths, words }: RowContext): [string, string] {
  if (diameterMm === undefined) return [words.noDepth, ''];
  const nominal = isDiameterOfType ? type?.bit?.nominal : undefined;
  const size = nominal === undefined ? lengths.size(diameterMm) : printable(nominal);
  const mm = `${formatLength(diameterMm, { unit: 'mm', decimals: 2 })} mm`;
  const core = type?.made === 'cored' ? `${words.core} ` : '';
  // Another size than the one meant must never be the one that is read from afar.
  if (size.startsWith('≈')) return [`${core}${mm}`, size];
  return [`${core}${size}`, size === mm ? '' : mm];
}

function depthOf({ type, depthMm, depthTolerance }: SheetHole, { lengths, words }: RowContext): [string, string] {
  if (type?.form === 'through') return [words.through, ''];
  if (depthMm === undefined) return [words.noDepth, ''];
  if (depthTolerance === undefined) return [lengths.bare(lengths.size(depthMm)), words.noDepthTolerance];
  const [depth, upper, lower] = lengths.depth(depthMm, depthTolerance).map((text) => lengths.bare(text));
  return [depth, `${upper} ${lower}`];
}

function gridOf({ hole: { point }, level }: SheetHole, context: RowContext): string[] {
  const { lengths, words } = context;
  const say = (mm: number) => lengths.bare(lengths.distance(mm));
  const dimensions = context.gridlinesOf(level).of(point[0], point[1]);
  if (dimensions.basis === 'no-grid') return [`x ${say(point[0])}`, `y ${say(point[1])}`];
  const lines = dimensions.lines.map((line) => gridDimensionText({ lines: [line], basis: 'square' }, say, words.grid));
  // What the kind of grid makes of the dimensions stands behind them.
  const plain = gridDimensionText({ ...dimensions, basis: 'square' }, say, words.grid);
  const rest = gridDimensionText(dimensions, say, words.grid).slice(plain.length).trim();
  return [...lines, ...(rest === '' ? [] : [rest])].map(printable);
}

function substrateOf({ substrate, hole, type }: SheetHole, { lengths, words }: RowContext): string {
  if (substrate === undefined) return hole.substrate === undefined ? words.noSubstrate : printable(hole.substrate);
  const { name, id, kind, finishes = [] } = substrate;
  const flutes = kind === 'composite-deck' && type?.flutes !== undefined ? [words.flutes[type.flutes.in]] : [];
  const layers = finishes.map((finish) => words.finish(words.finishes[finish.kind], lengths.size(finish.thickness)));
  return printable([`${name ?? id}: ${words.substrates[kind]}`, ...flutes, ...layers].join(', '));
}

function notesOf({ type, hole, slantDeg }: SheetHole, { records, words }: RowContext): string[] {
  const notes: string[] = [];
  if (type?.form === 'through') {
    const { level, protectedBy, protection, firestop } = hole.above ?? {};
    notes.push(
      words.throughNote(
        level === undefined ? undefined : printable(records.levels.get(level)?.name ?? level),
        protectedBy === undefined ? undefined : partyInWords(records, protectedBy),
        protection === undefined ? undefined : oneLine(protection),
      ),
    );
    if (firestop !== undefined) notes.push(words.firestop(printable(firestop)));
  }
  if (slantDeg >= SLANT_DEG) notes.push(words.slantNote(Math.round(slantDeg)));
  if (hole.note !== undefined) notes.push(oneLine(hole.note));
  return notes;
}
