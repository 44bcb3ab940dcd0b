import { distanceSegmentSegment } from './segment.js';
import type { Vec3 } from './vector.js';

/**
 * Least distance of two swept holes, each given by the ends of its axis and its radius, all in one unit:
 * the distance of the axes less both radii. Less than 0 where they overlap.
 *
 * Exact beside each other. At its ends a hole counts as rounded off by its radius, so that it never comes
 * out farther from another one than the drilled cylinder is; past an end it may come out nearer.
 */
export function distanceSweptHoles(
  from: Vec3,
  to: Vec3,
  radius: number,
  otherFrom: Vec3,
  otherTo: Vec3,
  otherRadius: number,
): number {
  return distanceSegmentSegment(from, to, otherFrom, otherTo) - radius - otherRadius;
}
