import { editDistance } from './nearest.js';

/** Words of fewer letters are too near to other words. */
const SHORTEST = 4;
/** From so many letters on two mistakes are taken for mistakes. */
const LONG = 8;

/**
 * The candidate that a word can only mean, which asks for more than {@link nearest} does: a difference in
 * case, blanks, hyphens, underscores and dots alone; or one mistake (two from eight letters on) behind the
 * first letter in a word of four letters or more, with no other candidate as near. People seldom mistake the
 * first letter, and words that differ in it are mostly other words, such as bored and cored.
 */
export function misspelling(word: string, candidates: readonly string[]): string | undefined {
  const plain = folded(word);
  const same = candidates.filter((candidate) => folded(candidate) === plain);
  if (same.length > 0) return same.length === 1 ? same[0] : undefined;
  if (word.length < SHORTEST || word.length > 100) return undefined;
  const small = word.toLowerCase();
  const most = word.length < LONG ? 1 : 2;
  let best: string[] = [];
  let least = most;
  for (const candidate of candidates) {
    const other = candidate.toLowerCase();
    if (Math.abs(other.length - small.length) > most) continue;
    const distance = editDistance(small, other, most);
    if (distance > least) continue;
    best = distance < least ? [candidate] : [...best, candidate];
    least = distance;
  }
  const [one] = best;
  return best.length === 1 && isSameStart(small, one.toLowerCase()) ? one : undefined;
}

function folded(word: string): string {
  return word.toLowerCase().replace(/[\s_.-]/g, '');
}

/** Whether the first letters are the same, or the first two are swapped. */
function isSameStart(a: string, b: string): boolean {
  return a[0] === b[0] || (a[0] === b[1] && a[1] === b[0]);
}
