import type { ColumnProfile } from '../../generated/column-profile.js';
import { columnNumber } from '../../model/table-profile.js';

const candidates = [
  { name: 'comma', words: 'a comma', pattern: /,/ },
  { name: 'semicolon', words: 'a semicolon', pattern: /;/ },
  { name: 'tab', words: 'a tab', pattern: /\t/ },
  { name: 'blanks', words: 'a run of blanks', pattern: /[ \t]+/ },
] as const;

/**
 * The separator that a header of one cell seems to have, in words: the one at which most names of the
 * profile are found, at least two of them. Undefined where the header has more cells than one, the profile
 * reads no second column, or no other separator does better.
 */
export function otherSeparator(
  profile: ColumnProfile,
  header: readonly string[],
  names: readonly string[],
): string | undefined {
  const wanted = new Set(profile.columns.map(({ column }) => column.trim()));
  if (names.length !== 1 || wanted.size < 2) return undefined;
  const byNumber = [...wanted].every((name) => columnNumber(name) !== undefined);
  let best: string | undefined;
  let most = 1;
  for (const { name, words, pattern } of candidates) {
    if (name === (profile.table?.separator ?? 'comma')) continue;
    const cells = header[0].trim().split(pattern).map(unquoted);
    const found = byNumber ? cells.length : cells.filter((cell) => wanted.has(cell)).length;
    if (found > most) [best, most] = [words, found];
  }
  return best;
}

function unquoted(cell: string): string {
  return cell.trim().replace(/^"(.*)"$/, '$1');
}
