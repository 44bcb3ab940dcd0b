import { editDistance } from './nearest.js';

/** Words of fewer letters are too near to other words. */
const SHORTEST = 4;
/** From so many letters on two mistakes are taken for mistakes. */
const LONG = 8;

/**
 * The candidate that a word can only mean, which asks for more than {@link nearest} does: a difference in
 * case, blanks, hyphens, underscores and dots alone; or one mistake (two from eight letters on) behind the
 * first letter in a word of four letters or more, with no other candidate as near. People seldom mistake the
 * first letter, and words that differ in it are mostly other words, such as bored and cored. Nobody adds or takes
 * a digit by mistake: a second diameter is no diameter.
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
  if (best.length !== 1 || digitsOf(one) !== digitsOf(word)) return undefined;
  return isSameStart(small, one.toLowerCase()) ? one : undefined;
}

/**
 * Whether a misspelt word differs from what is meant by a slip of the hand alone: in case, blanks, hyphens,
 * underscores and dots, or by two neighbouring letters swapped, one typed twice, or one left out before the last. A
 * letter that is another one, or one more at the end, may make another word: axes, points, dept.
 */
export function isPlainSlip(word: string, meant: string): boolean {
  const [a, b] = [folded(word), folded(meant)];
  if (a === b) return true;
  let same = 0;
  while (same < a.length && a[same] === b[same]) same++;
  const isSwapped = a[same] === b[same + 1] && a[same + 1] === b[same] && a.slice(same + 2) === b.slice(same + 2);
  const isLeftOut = same < b.length - 1 && a.slice(same) === b.slice(same + 1);
  const isTwice = same > 0 && a[same] === a[same - 1] && a.slice(same + 1) === b.slice(same);
  return isSwapped || isLeftOut || isTwice;
}

function digitsOf(word: string): string {
  return word.replace(/\P{Nd}/gu, '');
}

function folded(word: string): string {
  return word.toLowerCase().replace(/[\s_.-]/g, '');
}

/** Whether the first letters are the same, or the first two are swapped. */
function isSameStart(a: string, b: string): boolean {
  return a[0] === b[0] || (a[0] === b[1] && a[1] === b[0]);
}
