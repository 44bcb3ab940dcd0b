import { distanceToRing, insideRing, type Ring } from './ring.js';
import { gapsBetween, type Stretch } from './stretch.js';

/**
 * Whether all of `inner` lies inside `outer`, on it, or at most `slackMm` outside of it.
 *
 * Both rings are simple and in the same plane; `slackMm` is more than 0. Every edge of `inner` is cut
 * where it comes within the slack of `outer`; what lies between such stretches is wholly inside or wholly
 * outside and one point of it tells. Corners alone would not do: an edge may leave the ring between two
 * of them. The cost is the product of the corners.
 */
export function isRingInRing(inner: Ring, outer: Ring, slackMm: number): boolean {
  const { u, v } = inner;
  for (let j = u.length - 1, k = 0; k < u.length; j = k++) {
    const du = u[k] - u[j];
    const dv = v[k] - v[j];
    for (const [from, to] of gapsBetween(stretchesNear(outer, slackMm, u[j], v[j], u[k], v[k]))) {
      const middle = from + (to - from) / 2;
      const pu = u[j] + middle * du;
      const pv = v[j] + middle * dv;
      // The ends of stretches are rounded, so that a sliver between two of them may lie within the slack.
      if (!insideRing(outer, pu, pv) && distanceToRing(outer, pu, pv) > slackMm) return false;
    }
  }
  return true;
}

/** Where the edge from `a` to `b` lies within `near` of an edge of a ring. */
function stretchesNear(ring: Ring, near: number, au: number, av: number, bu: number, bv: number): Stretch[] {
  const { u, v } = ring;
  const found: Stretch[] = [];
  for (let k = 0, j = u.length - 1; k < u.length; j = k++) {
    if (Math.max(u[j], u[k]) + near < Math.min(au, bu) || Math.min(u[j], u[k]) - near > Math.max(au, bu)) continue;
    if (Math.max(v[j], v[k]) + near < Math.min(av, bv) || Math.min(v[j], v[k]) - near > Math.max(av, bv)) continue;
    const stretch = stretchNear(near, au - u[j], av - v[j], bu - au, bv - av, u[k] - u[j], v[k] - v[j]);
    if (stretch !== undefined) found.push(stretch);
  }
  return found;
}

/**
 * Where `r + t d` lies within `near` of the edge from the origin to `e`: a disc about each end and a
 * rectangle along the edge. The three make one convex figure, so the hull of their stretches is exact.
 */
function stretchNear(
  near: number,
  ru: number,
  rv: number,
  du: number,
  dv: number,
  eu: number,
  ev: number,
): Stretch | undefined {
  const length = Math.hypot(eu, ev);
  let [from, to] = widened(Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, inDisc(near, ru, rv, du, dv));
  [from, to] = widened(from, to, inDisc(near, ru - eu, rv - ev, du, dv));
  if (length > 0) {
    const across = inBand(-near, near, (eu * rv - ev * ru) / length, (eu * dv - ev * du) / length);
    const along = inBand(0, length, (eu * ru + ev * rv) / length, (eu * du + ev * dv) / length);
    [from, to] = widened(from, to, [Math.max(across[0], along[0]), Math.min(across[1], along[1])]);
  }
  from = Math.max(from, 0);
  to = Math.min(to, 1);
  return from <= to ? [from, to] : undefined;
}

function widened(from: number, to: number, by: Stretch): Stretch {
  return by[0] <= by[1] ? [Math.min(from, by[0]), Math.max(to, by[1])] : [from, to];
}

const NOWHERE: Stretch = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
const EVERYWHERE: Stretch = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];

/** Where `r + t d` lies within a distance of the origin. */
function inDisc(near: number, ru: number, rv: number, du: number, dv: number): Stretch {
  const speedSq = du * du + dv * dv;
  if (speedSq === 0) return ru * ru + rv * rv <= near * near ? EVERYWHERE : NOWHERE;
  const aside = (ru * dv - rv * du) ** 2 / speedSq;
  if (aside > near * near) return NOWHERE;
  const middle = -(ru * du + rv * dv) / speedSq;
  const half = Math.sqrt((near * near - aside) / speedSq);
  return [middle - half, middle + half];
}

/** Where `at + t step` lies from `low` to `high`. */
function inBand(low: number, high: number, at: number, step: number): Stretch {
  if (step === 0) return at >= low && at <= high ? EVERYWHERE : NOWHERE;
  const first = (low - at) / step;
  const second = (high - at) / step;
  return first < second ? [first, second] : [second, first];
}
