/** More candidates than this are not searched: among thousands of names some are always near. */
const MOST_CANDIDATES = 2000;
/** Longer words are not searched for. */
const LONGEST_WORD = 200;

/**
 * The candidate that a misspelt word most likely means, or undefined when none is near.
 *
 * Distance of Damerau and Levenshtein in its restricted form (a swap of neighbours counts one), blind to
 * case; near is at most a third of the length of the longer word, and at least one. Among more than 2000
 * candidates none is named.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const folded = word.toLowerCase();
  let best: string | undefined;
  let seen = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    if (++seen > MOST_CANDIDATES) return undefined;
    const allowed = Math.max(1, Math.floor(Math.max(word.length, candidate.length) / 3));
    if (Math.abs(word.length - candidate.length) > allowed) continue;
    const most = Math.min(allowed, least - 1);
    const distance = editDistance(folded, candidate.toLowerCase(), most);
    if (distance > most) continue;
    least = distance;
    best = candidate;
  }
  return best;
}

/** Room for words whose small letters are more than their capitals. */
const rows = [0, 1, 2].map(() => new Int32Array(4 * LONGEST_WORD));

/**
 * The distance of two texts of at most 200 units (see {@link nearest}, but case counts) if it is at most `most`;
 * else some number above.
 */
export function editDistance(a: string, b: string, most: number): number {
  let [before, above, row] = rows;
  for (let j = 0; j <= b.length; j++) above[j] = j;
  let leastAbove = 0;
  for (let i = 1; i <= a.length; i++) {
    const letter = a.charCodeAt(i - 1);
    row[0] = i;
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const other = b.charCodeAt(j - 1);
      let steps = Math.min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (letter === other ? 0 : 1));
      if (i > 1 && j > 1 && letter === b.charCodeAt(j - 2) && a.charCodeAt(i - 2) === other)
        steps = Math.min(steps, before[j - 2] + 1);
      row[j] = steps;
      if (steps < least) least = steps;
    }
    // A swap reaches back two rows; nothing gets smaller from further up.
    if (least > most && leastAbove > most) return most + 1;
    leastAbove = least;
    [before, above, row] = [above, row, before];
  }
  return above[b.length];
}
