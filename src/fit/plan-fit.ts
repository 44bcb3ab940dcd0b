import { centred, type PlanPoints } from './plan-points.js';

/** What a fit may change besides place and direction. */
export interface PlanFitOptions {
  /** `fixed` keeps lengths, `free` fits one factor for all of them. */
  scale: 'fixed' | 'free';
  /** Whether the plan is turned over. Never both: a fit that turns over has to be asked for. */
  mirror: boolean;
}

/**
 * The motion that brings points nearest to others: y is negated where `mirrored`, then the plan is turned
 * about the origin by `angleDeg`, anticlockwise, then scaled, then shifted.
 */
export interface PlanFit {
  /** From -180 to 180. */
  angleDeg: number;
  scale: number;
  shift: readonly [x: number, y: number];
  mirrored: boolean;
  /** Square root of the mean over the points of the squared distance of a moved point from its match. */
  rms: number;
  /** Moved point less its match, for each point. */
  residuals: { x: Float64Array; y: Float64Array };
}

/**
 * The least-squares fit of matched points of a plan, point `k` of `from` to point `k` of `to`.
 *
 * In closed form: about the centroids, the sums of the scalar and of the cross products of the matches
 * give the turn, and their size over the spread the scale. This is the solution of S. Umeyama,
 * "Least-squares estimation of transformation parameters between two point patterns", 1991, written out
 * for the plane; with a free scale it is the similarity of four parameters of surveying. The turn is
 * proper, whatever the points, unless `mirror` is true. So a mirrored plan shows as a bad fit and is never
 * taken for a turn.
 *
 * With two points nothing checks the direction. Where every turn fits as well, as from a square onto its
 * mirror image, the angle is 0.
 *
 * @returns undefined where there is no direction: fewer than two points, or all of one side at one place
 * @throws RangeError where the sides have different numbers of points
 */
export function fitPlan(from: PlanPoints, to: PlanPoints, { scale, mirror }: PlanFitOptions): PlanFit | undefined {
  const count = from.x.length;
  if (to.x.length !== count) throw new RangeError(`${count} points cannot be matched with ${to.x.length}`);
  const a = centred(from);
  const b = centred(to);
  if (!(a.spreadSq > 0 && b.spreadSq > 0)) return undefined;
  const flip = mirror ? -1 : 1;
  let along = 0;
  let across = 0;
  for (let k = 0; k < count; k++) {
    along += a.x[k] * b.x[k] + flip * a.y[k] * b.y[k];
    across += a.x[k] * b.y[k] - flip * a.y[k] * b.x[k];
  }
  const size = Math.hypot(along, across);
  // Below this the sums are what rounding leaves of nothing.
  const hasTurn = size > 1e-12 * Math.sqrt(a.spreadSq * b.spreadSq);
  const factor = scale === 'fixed' ? 1 : size / a.spreadSq;
  const cos = factor * (hasTurn ? along / size : 1);
  const sin = factor * (hasTurn ? across / size : 0);
  const residuals = { x: new Float64Array(count), y: new Float64Array(count) };
  let sumSq = 0;
  for (let k = 0; k < count; k++) {
    residuals.x[k] = cos * a.x[k] - sin * flip * a.y[k] - b.x[k];
    residuals.y[k] = sin * a.x[k] + cos * flip * a.y[k] - b.y[k];
    sumSq += residuals.x[k] ** 2 + residuals.y[k] ** 2;
  }
  const [ax, ay] = a.middle;
  return {
    angleDeg: hasTurn ? (Math.atan2(across, along) * 180) / Math.PI : 0,
    scale: factor,
    shift: [b.middle[0] - (cos * ax - sin * flip * ay), b.middle[1] - (sin * ax + cos * flip * ay)],
    mirrored: mirror,
    rms: Math.sqrt(sumSq / count),
    residuals,
  };
}
