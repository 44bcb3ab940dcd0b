import type { ColumnProfile } from '../../generated/column-profile.js';

const candidates = [
  { name: 'comma', words: 'a comma', pattern: /,/ },
  { name: 'semicolon', words: 'a semicolon', pattern: /;/ },
  { name: 'tab', words: 'a tab', pattern: /\t/ },
  { name: 'blanks', words: 'a run of blanks', pattern: /[ \t]+/ },
] as const;

/**
 * The separator that a header of one cell seems to have, in words: the one at which most names of the
 * profile are found, at least two of them; else the comma, semicolon or tab that gives most cells. Undefined
 * where the header has more cells than one, the profile reads no second column, or nothing separates.
 */
export function otherSeparator(
  profile: ColumnProfile,
  header: readonly string[],
  names: readonly string[],
): string | undefined {
  const wanted = new Set(profile.columns.map(({ column }) => column.trim()));
  if (names.length !== 1 || wanted.size < 2) return undefined;
  // JSON is no table, whatever it is separated by.
  if (/^\s*[{[]/.test(header[0])) return undefined;
  const others = candidates
    .filter(({ name }) => name !== (profile.table?.separator ?? 'comma'))
    .map(({ name, words, pattern }) => {
      const cells = header[0].trim().split(pattern).map(unquoted);
      const found = cells.filter((cell) => wanted.has(cell)).length;
      return { words, found, cells: name === 'blanks' ? 1 : cells.length };
    });
  const byNames = others.sort((a, b) => b.found - a.found)[0];
  if (byNames.found > 1) return byNames.words;
  const byCells = others.sort((a, b) => b.cells - a.cells)[0];
  return byCells.cells > 1 ? byCells.words : undefined;
}

function unquoted(cell: string): string {
  return cell.trim().replace(/^"(.*)"$/, '$1');
}
