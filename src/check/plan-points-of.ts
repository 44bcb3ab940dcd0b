import type { PlanPointsWithHeights } from '../fit/plan-symmetry.js';
import type { UsedPoint } from './control-sets.js';

/** Control points as the fits take them. Millimetres. */
export function planPointsOf(points: readonly UsedPoint[]): PlanPointsWithHeights {
  return { x: points.map(({ x }) => x), y: points.map(({ y }) => y), z: points.map(({ z }) => z) };
}
