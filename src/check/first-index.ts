/**
 * The first of the indices below `count` that has been reached, or `count`; by halving, in about log2(count)
 * looks.
 *
 * @param isReached false up to some index, true from there on
 */
export function firstIndex(count: number, isReached: (index: number) => boolean): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (isReached(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
