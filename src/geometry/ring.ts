import { orient2d } from 'robust-predicates';

/** A closed ring in a plane: `u` and `v` of its corners, the first not repeated. */
export interface Ring {
  u: Float64Array;
  v: Float64Array;
}

/**
 * Whether a point lies inside a ring; points exactly on it may come out either way.
 *
 * Crossings of a ray, counted with the exact sign of the orientation (Shewchuk's adaptive predicate), so
 * that no rounding puts a point on the wrong side of an edge. A ring that crosses itself counts by
 * even-odd.
 */
export function insideRing(ring: Ring, u: number, v: number): boolean {
  const { u: us, v: vs } = ring;
  let isInside = false;
  for (let k = 0, j = us.length - 1; k < us.length; j = k++) {
    if (vs[k] > v === vs[j] > v) continue;
    // orient2d > 0: the point lies to the right of the edge in its own direction (y up).
    const side = orient2d(us[j], vs[j], us[k], vs[k], u, v);
    if (side > 0 === vs[j] > vs[k]) isInside = !isInside;
  }
  return isInside;
}

/** Distance of a point from the nearest edge of a ring, in the unit of the ring. */
export function distanceToRing(ring: Ring, u: number, v: number): number {
  const { u: us, v: vs } = ring;
  let leastSq = Number.POSITIVE_INFINITY;
  for (let k = 0, j = us.length - 1; k < us.length; j = k++) {
    const eu = us[k] - us[j];
    const ev = vs[k] - vs[j];
    const lengthSq = eu * eu + ev * ev;
    const t = lengthSq > 0 ? Math.max(0, Math.min(1, ((u - us[j]) * eu + (v - vs[j]) * ev) / lengthSq)) : 0;
    const du = u - us[j] - t * eu;
    const dv = v - vs[j] - t * ev;
    leastSq = Math.min(leastSq, du * du + dv * dv);
  }
  return Math.sqrt(leastSq);
}

/** Twice the signed area; more than zero for a ring that runs anticlockwise. */
export function signedAreaTwice(ring: Ring): number {
  let sum = 0;
  for (let k = 0, j = ring.u.length - 1; k < ring.u.length; j = k++)
    sum += ring.u[j] * ring.v[k] - ring.u[k] * ring.v[j];
  return sum;
}
