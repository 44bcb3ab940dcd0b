/** Points of a plane, along and across, one after the other. */
export type Flat = ArrayLike<number>;

/** Which hand of a pattern a group of points has. */
export type Hand = 'declared' | 'mirrored' | 'both' | 'neither';

/**
 * Whether points fit a pattern as it is declared, or with its second coordinate turned over.
 *
 * Both lists have as many points and begin at the same one, to which all others are taken. With
 * `isTurnFree` the pattern is first turned about it so that the sum of the squared deviations becomes least.
 * To fit is to have no point farther than `tolerance` from its place.
 */
export function handOf(points: Flat, pattern: Flat, tolerance: number, isTurnFree: boolean): Hand {
  const isDeclared = worstDeviation(points, pattern, 1, isTurnFree) <= tolerance;
  const isMirrored = worstDeviation(points, pattern, -1, isTurnFree) <= tolerance;
  if (isDeclared) return isMirrored ? 'both' : 'declared';
  return isMirrored ? 'mirrored' : 'neither';
}

/** Whether a pattern differs from its mirror image by so much that points which fit the one cannot fit the other. */
export function showsHand(pattern: Flat, tolerance: number, isTurnFree: boolean): boolean {
  return worstDeviation(pattern, pattern, -1, isTurnFree) > 2 * tolerance;
}

/** Greatest distance of a point from its place in the pattern. */
function worstDeviation(points: Flat, pattern: Flat, hand: 1 | -1, isTurnFree: boolean): number {
  let inLine = 0;
  let square = 0;
  for (let k = 2; isTurnFree && k < pattern.length; k += 2) {
    const along = pattern[k] - pattern[0];
    const across = hand * (pattern[k + 1] - pattern[1]);
    inLine += along * (points[k] - points[0]) + across * (points[k + 1] - points[1]);
    square += along * (points[k + 1] - points[1]) - across * (points[k] - points[0]);
  }
  // The turn that makes the sum of a · R b greatest, which is the one with the least squares.
  const length = Math.hypot(inLine, square);
  const cos = length > 0 ? inLine / length : 1;
  const sin = length > 0 ? square / length : 0;
  let worst = 0;
  for (let k = 2; k < pattern.length; k += 2) {
    const along = pattern[k] - pattern[0];
    const across = hand * (pattern[k + 1] - pattern[1]);
    const du = points[k] - points[0] - (cos * along - sin * across);
    const dv = points[k + 1] - points[1] - (sin * along + cos * across);
    worst = Math.max(worst, Math.hypot(du, dv));
  }
  return worst;
}
