import type { PositionTolerance } from '../../generated/layout.js';
import type { SheetHole } from './sheet-hole.js';

/** What a set-up is checked against. Millimetres. */
export interface CheckLimit {
  readonly limitMm: number;
  /** The tightest plan tolerance of the holes. */
  readonly toleranceMm: number;
}

/** Share of the tolerance that a set-up may use up; the rest is for marking and drilling. A definition of ours. */
const SHARE = 0.5;

/**
 * The check limit of holes that are marked from one set-up: half of their tightest plan tolerance, which is the least
 * of `radius` and of the nearer limit deviations of `along` and `across`. Undefined where none of them has one, and
 * where one leaves nothing to one side.
 */
export function checkLimit(holes: readonly Pick<SheetHole, 'positionTolerance'>[]): CheckLimit | undefined {
  let least = Number.POSITIVE_INFINITY;
  for (const { positionTolerance } of holes) {
    if (positionTolerance !== undefined) least = Math.min(least, planToleranceOf(positionTolerance));
  }
  return least === Number.POSITIVE_INFINITY || least === 0 ? undefined : { limitMm: least * SHARE, toleranceMm: least };
}

function planToleranceOf({ radius, along, across }: PositionTolerance): number {
  const nearer = [along, across].flatMap((limits) =>
    limits === undefined ? [] : [Math.max(0, Math.min(-limits[0], limits[1]))],
  );
  return Math.min(radius ?? Number.POSITIVE_INFINITY, ...nearer);
}
