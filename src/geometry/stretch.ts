/** A stretch of a segment as parameters, 0 at its start and 1 at its end. */
export type Stretch = readonly [from: number, to: number];

/** What stretches leave of a whole segment, in order. Stretches may overlap and stick out; they are sorted in place. */
export function gapsBetween(stretches: Stretch[]): Stretch[] {
  const gaps: Stretch[] = [];
  let at = 0;
  for (const [from, to] of stretches.sort((a, b) => a[0] - b[0])) {
    if (from > at) gaps.push([at, Math.min(from, 1)]);
    at = Math.max(at, to);
    if (at >= 1) return gaps;
  }
  gaps.push([at, 1]);
  return gaps;
}
