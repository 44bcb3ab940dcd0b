import { centred, type PlanPoints } from './plan-points.js';

/** Points of a plan, with heights where they are known; a height that is not is no number. */
export interface PlanPointsWithHeights extends PlanPoints {
  readonly z?: ArrayLike<number>;
}

/**
 * The turns about their centroid, other than none, that put a set of points onto itself within a
 * tolerance: degrees above 0 and below 360, in order. Where every point has a height, points that
 * change places must agree in it too. Tolerance and points in one unit.
 *
 * A turn of finite order moves the points off the centre in circles of equally many (the orbits of a cyclic
 * group that acts freely), so only the whole multiples of 360 / n are tried, n without the points at the
 * centre. Most fail at the first point. The cost is n² log n at most, where few points lie one above
 * the other. Empty where the whole set is no larger than the tolerance.
 */
export function turnsOntoItself(points: PlanPointsWithHeights, tolerance: number): number[] {
  const set = newTurnable(points, tolerance);
  const { count } = set;
  if (!(set.farthest > set.tolerance)) return [];
  let central = 0;
  for (let k = 0; k < count; k++) if (Math.hypot(set.x[k], set.y[k]) <= set.tolerance) central++;
  const turns = new Set<number>();
  // Within the tolerance of the centre it is open whether a point is on it.
  for (let moving = count - central; moving <= count; moving++) {
    for (let k = 1; k < moving; k++) {
      const angleDeg = (360 * k) / moving;
      const isTurn = 2 * set.farthest * Math.sin((Math.PI * k) / moving) > 2 * set.tolerance;
      if (isTurn && fitsTurned(set, angleDeg)) turns.add(angleDeg);
    }
  }
  return [...turns].sort((a, b) => a - b);
}

/** Points about their centroid, the farthest first, made ready for finding one near a place. */
interface Turnable {
  count: number;
  x: Float64Array;
  y: Float64Array;
  z: Float64Array | undefined;
  farthest: number;
  /** A hair more than was asked for, so that rounding does not tell. */
  tolerance: number;
  /** Numbers of the points by x, and these x. */
  byX: Int32Array;
  sortedX: Float64Array;
  taken: Uint8Array;
}

function newTurnable(points: PlanPointsWithHeights, tolerance: number): Turnable {
  const middle = centred(points);
  const count = middle.x.length;
  const far = Float64Array.from(middle.x, (x, k) => Math.hypot(x, middle.y[k]));
  const order = Int32Array.from(far, (_, k) => k).sort((a, b) => far[b] - far[a]);
  const x = Float64Array.from(order, (k) => middle.x[k]);
  const y = Float64Array.from(order, (k) => middle.y[k]);
  const z = Float64Array.from(order, (k) => points.z?.[k] ?? Number.NaN);
  const byX = Int32Array.from(order, (_, k) => k).sort((a, b) => x[a] - x[b]);
  const farthest = count > 0 ? far[order[0]] : 0;
  return {
    count,
    x,
    y,
    z: z.every(Number.isFinite) ? z : undefined,
    farthest,
    tolerance: tolerance + farthest * 1e-12,
    byX,
    sortedX: Float64Array.from(byX, (k) => x[k]),
    taken: new Uint8Array(count),
  };
}

/** Whether each turned point has a point of its own within the tolerance: the nearest that no other took. */
function fitsTurned(set: Turnable, angleDeg: number): boolean {
  const angle = (angleDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  set.taken.fill(0);
  for (let k = 0; k < set.count; k++) {
    const partner = nearestFree(set, cos * set.x[k] - sin * set.y[k], sin * set.x[k] + cos * set.y[k], set.z?.[k]);
    if (partner < 0) return false;
    set.taken[partner] = 1;
  }
  return true;
}

function nearestFree({ x, y, z, byX, sortedX, taken, tolerance }: Turnable, px: number, py: number, pz = 0): number {
  let best = -1;
  let bestSq = tolerance * tolerance;
  for (let k = firstFrom(sortedX, px - tolerance); k < byX.length && sortedX[k] <= px + tolerance; k++) {
    const j = byX[k];
    if (taken[j] !== 0 || (z !== undefined && Math.abs(z[j] - pz) > tolerance)) continue;
    const distanceSq = (x[j] - px) ** 2 + (y[j] - py) ** 2;
    if (distanceSq < bestSq || (best < 0 && distanceSq === bestSq)) {
      best = j;
      bestSq = distanceSq;
    }
  }
  return best;
}

/** Place of the first value of a sorted list that is not less than `value`. */
function firstFrom(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
