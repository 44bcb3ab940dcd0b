import type { Primitive } from './primitive.js';
import { shortened, wrapped } from './text-width.js';

/** A line of the legend. */
export interface LegendEntry {
  /** What stands for the thing, drawn about 0, 0 in a box 9 mm wide and 3 mm high. */
  readonly sample: readonly Primitive[];
  readonly text: string;
}

/** An entry with its place: mm from the left and the top of the legend. */
export interface PlacedEntry {
  readonly sample: readonly Primitive[];
  readonly lines: readonly string[];
  readonly x: number;
  readonly y: number;
}

/** The legend in columns. */
export interface PlacedLegend {
  readonly entries: readonly PlacedEntry[];
  readonly height: number;
}

/** Sizes, mm: least width of a column, height of an entry and of each further line of it, type, room for the sample. */
export const LEGEND = { columnWidth: 46, rowHeight: 4.3, lineHeight: 2.9, type: 2.3, sample: 11 } as const;
/** Longer texts are cut: a name may be as long as a page. */
const MOST_LINES = 3;

/** Puts the entries into as many columns as the width allows, as even as they go; long texts on several lines. */
export function placeLegend(entries: readonly LegendEntry[], width: number): PlacedLegend {
  const columns = Math.max(1, Math.floor(width / LEGEND.columnWidth));
  const columnWidth = width / columns;
  const most = columnWidth - LEGEND.sample - 2;
  const set = entries.map(({ sample, text }) => {
    const lines = linesOf(text, most);
    return { sample, lines, height: LEGEND.rowHeight + (lines.length - 1) * LEGEND.lineHeight };
  });
  // The least height is that at which no entry is too many for the last column.
  const total = set.reduce((sum, { height }) => sum + height, 0);
  let height = Math.max(total / columns, ...set.map((one) => one.height));
  while (columnsAt(set, height) > columns) height += LEGEND.lineHeight / 2;
  let [column, y] = [0, 0];
  const placed = set.map((one): PlacedEntry => {
    if (y > 0 && y + one.height > height + SLACK) [column, y] = [column + 1, 0];
    const entry = { sample: one.sample, lines: one.lines, x: column * columnWidth, y };
    y += one.height;
    return entry;
  });
  return { entries: placed, height };
}

/** Sums of heights are not exact. */
const SLACK = 1e-6;

function columnsAt(set: readonly { readonly height: number }[], most: number): number {
  let [columns, y] = [1, 0];
  for (const { height } of set) {
    if (y > 0 && y + height > most + SLACK) [columns, y] = [columns + 1, 0];
    y += height;
  }
  return columns;
}

function linesOf(text: string, most: number): string[] {
  const lines = wrapped(text, LEGEND.type, most);
  if (lines.length <= MOST_LINES) return lines.length === 0 ? [''] : lines;
  const kept = lines.slice(0, MOST_LINES - 1);
  return [...kept, shortened(lines.slice(MOST_LINES - 1).join(' '), LEGEND.type, most)];
}
