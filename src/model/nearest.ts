/** More candidates than this are not searched: among thousands of names some are always near. */
const MOST_CANDIDATES = 2000;

/**
 * The candidate that a misspelt word most likely means, or undefined when none is near.
 *
 * Distance of Damerau and Levenshtein in its restricted form (a swap of neighbours counts one), blind to
 * case; near is at most a third of the length of the longer word, and at least one. Among more than 2000
 * candidates none is named.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > 200) return undefined;
  let best: string | undefined;
  let seen = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    if (++seen > MOST_CANDIDATES) return undefined;
    const allowed = Math.max(1, Math.floor(Math.max(word.length, candidate.length) / 3));
    if (Math.abs(word.length - candidate.length) > allowed) continue;
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (distance <= allowed && distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(above[j] + 1, row[j - 1] + 1, above[j - 1] + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j], before[j - 2] + 1);
    }
    before = above;
    above = row;
  }
  return above[b.length];
}
