import type { RowKeys } from './sheet-list.js';
import type { SheetRow } from './sheet-row.js';

/** Texts that several rows of a sheet share, under short names, in the order in which they come. */
export interface SheetKeys {
  readonly substrates: readonly string[];
  readonly moves: readonly string[];
  readonly symbols: readonly string[];
  of(row: SheetRow): RowKeys;
}

/** More than this of one kind do not go on one sheet. */
export const MOST_KEYS = 3;

export function sheetKeys(rows: readonly SheetRow[]): SheetKeys {
  const distinct = (text: (row: SheetRow) => string) => [...new Set(rows.map(text))];
  const substrates = distinct(({ substrateText }) => substrateText);
  const moves = distinct(({ moveText }) => moveText);
  return {
    substrates,
    moves,
    symbols: distinct(({ symbolText }) => symbolText),
    of: ({ substrateText, moveText }) => ({
      substrate: `C${substrates.indexOf(substrateText) + 1}`,
      move: `M${moves.indexOf(moveText) + 1}`,
    }),
  };
}
