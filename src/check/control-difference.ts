import { mayDiffer, planDistance, type SharedPoint } from './shared-control.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** By how much a point differs, and by how much it may. */
export interface ControlDifference {
  what: 'plan' | 'height';
  /** Millimetres. */
  distance: number;
  tolerance: number;
}

/**
 * The point that misses its tolerance by most, of several equal ones the first, and how many miss it.
 *
 * @param otherwise how far a point may differ that has no sigma in both layouts, millimetres
 */
export function worstDifference(
  points: readonly SharedPoint[],
  otherwise: number,
): { worst?: { at: SharedPoint; difference: ControlDifference }; count: number } {
  let worst: { at: SharedPoint; difference: ControlDifference } | undefined;
  let count = 0;
  for (const at of points) {
    const difference = differenceOf(at, otherwise);
    if (difference === undefined) continue;
    count++;
    if (worst === undefined || missed(difference) > missed(worst.difference)) worst = { at, difference };
  }
  return { worst, count };
}

/** The difference that misses its tolerance by more, in plan or in height; undefined where neither does. */
function differenceOf(at: SharedPoint, otherwise: number): ControlDifference | undefined {
  const plan: ControlDifference = {
    what: 'plan',
    distance: planDistance(at),
    tolerance: mayDiffer(at, 'sigmaPlan', otherwise),
  };
  const height: ControlDifference = {
    what: 'height',
    distance: Math.abs(at.later.z - at.earlier.z),
    tolerance: mayDiffer(at, 'sigmaHeight', otherwise),
  };
  const worse = missed(height) > missed(plan) ? height : plan;
  return missed(worse) > LENGTH_SLACK_MM ? worse : undefined;
}

/** By how much a difference is over its tolerance; NaN where a height is not known. */
function missed({ distance, tolerance }: ControlDifference): number {
  return distance - tolerance;
}
