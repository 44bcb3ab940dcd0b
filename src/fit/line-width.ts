import { centred, type PlanPoints } from './plan-points.js';

/** How far points reach along a line, and how far they keep from it. */
export interface LineWidth {
  /** Direction of the line, from -90 to 90, anticlockwise from x. */
  angleDeg: number;
  /** From the first to the last point along the line. */
  length: number;
  /** Greatest distance of a point from the line. */
  greatestDistance: number;
  /** Mean squared distance from the centroid along the line and across it. */
  varianceAlong: number;
  varianceAcross: number;
}

/**
 * The line with the least sum of squared distances from the points of a plan: through the centroid along
 * the greater principal axis of the scatter (K. Pearson, "On lines and planes of closest fit to systems of
 * points in space", 1901). Lengths in the unit of the points. Where the scatter has no direction, as that
 * of a square, every line is as good and it is the one along x.
 *
 * @returns undefined without points
 */
export function lineWidth(points: PlanPoints): LineWidth | undefined {
  const { x, y } = centred(points);
  const count = x.length;
  if (count === 0) return undefined;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let k = 0; k < count; k++) {
    xx += x[k] * x[k];
    xy += x[k] * y[k];
    yy += y[k] * y[k];
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  let [first, last, away, alongSq, acrossSq] = [0, 0, 0, 0, 0];
  for (let k = 0; k < count; k++) {
    const along = cos * x[k] + sin * y[k];
    const across = cos * y[k] - sin * x[k];
    first = Math.min(first, along);
    last = Math.max(last, along);
    away = Math.max(away, Math.abs(across));
    alongSq += along * along;
    acrossSq += across * across;
  }
  return {
    angleDeg: (angle * 180) / Math.PI,
    length: last - first,
    greatestDistance: away,
    varianceAlong: alongSq / count,
    varianceAcross: acrossSq / count,
  };
}
