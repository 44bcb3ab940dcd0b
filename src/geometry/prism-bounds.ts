import { along, cross, dot, subtract, unit, type Vec3 } from './vector.js';

/** A box about a prism that is turned like it. */
export interface PrismBounds {
  origin: Vec3;
  axes: readonly [Vec3, Vec3, Vec3];
  /** Least coordinate along each axis, from `origin`, then greatest. */
  least: Float64Array;
  greatest: Float64Array;
}

/** Bounds along the normal of the base, along its longest edge, and across both. */
export function newPrismBounds(base: readonly Vec3[], extrude: Vec3, normal: Vec3): PrismBounds {
  const origin = base[0];
  let edge: Vec3 = [0, 0, 0];
  for (let k = 0, j = base.length - 1; k < base.length; j = k++) {
    const own = subtract(base[k], base[j]);
    if (dot(own, own) > dot(edge, edge)) edge = own;
  }
  const across = unit(cross(normal, edge)) ?? normal;
  const axes = [normal, across, cross(across, normal)] as const;
  const least = new Float64Array(3).fill(Number.POSITIVE_INFINITY);
  const greatest = new Float64Array(3).fill(Number.NEGATIVE_INFINITY);
  for (const corner of base) {
    for (const point of [corner, along(corner, extrude, 1)]) {
      for (let k = 0; k < 3; k++) {
        const at = dot(subtract(point, origin), axes[k]);
        least[k] = Math.min(least[k], at);
        greatest[k] = Math.max(greatest[k], at);
      }
    }
  }
  return { origin, axes, least, greatest };
}

/** Whether the segment `a`-`b` is certainly farther than `distance` from what the bounds hold. */
export function isBeyond({ origin, axes, least, greatest }: PrismBounds, a: Vec3, b: Vec3, distance: number): boolean {
  const fromA = subtract(a, origin);
  const fromB = subtract(b, origin);
  for (let k = 0; k < 3; k++) {
    const atA = dot(fromA, axes[k]);
    const atB = dot(fromB, axes[k]);
    if (Math.max(atA, atB) < least[k] - distance || Math.min(atA, atB) > greatest[k] + distance) return true;
  }
  return false;
}
