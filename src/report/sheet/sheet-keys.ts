/** Short names of concrete and move of a row. */
export interface RowKeys {
  readonly substrate: string;
  readonly move: string;
}

/** Rows as far as keys are made from them. */
interface KeyedRow {
  readonly substrateText: string;
  readonly moveText: string;
  readonly tag: string;
}

/** More than this of one kind do not go on one sheet. */
export const MOST_KEYS = 3;

/** Letters in the order in which they are taken, those that remind of the word first; none of a compass point, an axis or a digit. */
const LETTERS = { substrate: 'CKQUGJFHPRTBDAMVLZ', move: 'MAVZTLUJRPQHGFKDBC' };

/**
 * Names the texts that rows share, in the order in which they come, the same on all sheets of a choice. A letter with
 * which a tag or one of the other names begins is not taken, so that a key is not read as one; where all are, the key
 * stands in brackets.
 */
export function keysOf(rows: readonly KeyedRow[], otherNames: readonly string[]): (row: KeyedRow) => RowKeys {
  const taken = new Set([...rows.map(({ tag }) => tag), ...otherNames].map((name) => name.charAt(0).toUpperCase()));
  const nameOf = (texts: readonly string[], letters: string, usual: string) => {
    const letter = [...letters].find((one) => !taken.has(one));
    const names = new Map([...new Set(texts)].map((text, k) => [text, `${letter ?? `[${usual}`}${k + 1}`]));
    if (letter !== undefined) taken.add(letter);
    return (text: string) => `${names.get(text)}${letter === undefined ? ']' : ''}`;
  };
  const substrate = nameOf(
    rows.map(({ substrateText }) => substrateText),
    LETTERS.substrate,
    'C',
  );
  const move = nameOf(
    rows.map(({ moveText }) => moveText),
    LETTERS.move,
    'M',
  );
  return ({ substrateText, moveText }) => ({ substrate: substrate(substrateText), move: move(moveText) });
}

/** Texts of a sheet behind their keys, in the order in which they come. */
export interface SheetKeys {
  readonly substrates: readonly string[];
  readonly moves: readonly string[];
  readonly symbols: readonly string[];
}

/** Rows that have their keys. */
interface SignedRow extends KeyedRow {
  readonly keys: RowKeys;
  readonly symbolText: string;
}

/** What the keys on a sheet mean. */
export function sheetKeys(rows: readonly SignedRow[]): SheetKeys {
  const distinct = (text: (row: SignedRow) => string) => [...new Set(rows.map(text))];
  return {
    substrates: distinct(({ keys, substrateText }) => `${keys.substrate}: ${substrateText}.`),
    moves: distinct(({ keys, moveText }) => `${keys.move}: ${moveText}`),
    symbols: distinct(({ symbolText }) => symbolText),
  };
}
