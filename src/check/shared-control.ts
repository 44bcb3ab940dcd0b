import { fitPlan, type PlanFit } from '../fit/plan-fit.js';
import { type UsedPoint, usedControl } from './control-sets.js';
import { planPointsOf } from './plan-points-of.js';
import type { InputLayout } from './site-part.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** A control point that two layouts have under one id. */
export interface SharedPoint {
  earlier: UsedPoint;
  later: UsedPoint;
}

/** Two layouts and the control that they share, in the order of the later one. */
export interface SharedControl {
  earlier: InputLayout;
  later: InputLayout;
  points: SharedPoint[];
}

/** Each layout with each before it with which it shares control, in order. */
export function sharedControl(layouts: readonly InputLayout[]): SharedControl[] {
  const control = layouts.map(({ layout }) => usedControl(layout));
  const byIds = control.map((points) => new Map(points.map((point) => [point.record.id, point])));
  return layouts.flatMap((later, l) =>
    layouts.slice(0, l).flatMap((earlier, e) => {
      const points = control[l].flatMap((point) => {
        const same = byIds[e].get(point.record.id);
        return same === undefined ? [] : [{ earlier: same, later: point }];
      });
      return points.length === 0 ? [] : [{ earlier, later, points }];
    }),
  );
}

/** How far the coordinates of one point may differ: three standard deviations of the difference where both have one. */
export function mayDiffer(
  { earlier, later }: SharedPoint,
  sigma: 'sigmaPlan' | 'sigmaHeight',
  otherwise: number,
): number {
  const [a, b] = [earlier.record[sigma], later.record[sigma]];
  return a === undefined || b === undefined ? otherwise : 3 * Math.hypot(a, b);
}

/** Distance in plan of the two places of a point. */
export function planDistance({ earlier, later }: SharedPoint): number {
  return Math.hypot(later.x - earlier.x, later.y - earlier.y);
}

/**
 * Whether the points of one layout are those of another turned over: they fit after a mirror image and do not
 * fit by any turn and shift. At least three points tell; those on a line do not.
 *
 * @param otherwise how far a point may miss that has no sigma in both layouts, millimetres
 */
export function isMirrored(points: readonly SharedPoint[], otherwise: number): boolean {
  if (points.length < 3) return false;
  const from = planPointsOf(points.map(({ earlier }) => earlier));
  const to = planPointsOf(points.map(({ later }) => later));
  const fits = (fit: PlanFit | undefined) =>
    fit !== undefined &&
    points.every((point, k) => {
      const missed = Math.hypot(fit.residuals.x[k], fit.residuals.y[k]);
      return missed <= mayDiffer(point, 'sigmaPlan', otherwise) + LENGTH_SLACK_MM;
    });
  return (
    fits(fitPlan(from, to, { scale: 'fixed', mirror: true })) &&
    !fits(fitPlan(from, to, { scale: 'fixed', mirror: false }))
  );
}
