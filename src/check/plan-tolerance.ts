import type { PositionTolerance } from '../generated/shared.js';
import type { Kind } from './kinds.js';
import type { Site } from './site.js';

/** Why a hole is left out whose tolerance is not known because a record that decides cannot be read. */
export const TOLERANCE_BROKEN = 'record of its group or type broken';

/**
 * How far a hole may lie from its target, millimetres: the least of the radius and of half the widths along and
 * across; NaN where the tolerance says nothing of the plan.
 */
function narrowest({ radius = Number.NaN, along, across }: PositionTolerance): number {
  let least = radius;
  for (const limits of [along, across]) {
    if (limits === undefined) continue;
    const half = (limits[1] - limits[0]) / 2;
    if (!(half >= least)) least = half;
  }
  return least;
}

/**
 * The plan tolerance of hole `i`: that of the hole, its group or its type, the first there is, whole.
 *
 * @param kind of the hole; where it has neither a tolerance of its own nor a group all its holes have the same
 * @returns NaN where there is none, undefined where a record that decides is broken
 */
export function planTolerance(site: Site, kind: Kind, i: number): number | undefined {
  if (kind.hasTolerance) {
    const { layout, firstHole } = kind.part;
    return narrowest(layout.holes.positionToleranceOf(i - firstHole) ?? {});
  }
  if (kind.hasGroup) {
    const group = site.groups.of(i);
    if (group === undefined) return undefined;
    if (group.positionTolerance !== undefined) return narrowest(group.positionTolerance);
  }
  if (kind.type === undefined) return undefined;
  return kind.type.positionTolerance === undefined ? Number.NaN : narrowest(kind.type.positionTolerance);
}

/** Whether all holes of a kind have one plan tolerance. */
export function hasOneTolerance({ hasTolerance, hasGroup }: Kind): boolean {
  return !hasTolerance && !hasGroup;
}
