import { newellNormal } from './prism.js';
import type { Ring } from './ring.js';
import { cross, dot, squareTo, subtract, unit, type Vec3 } from './vector.js';

/** A plane with axes: `u`, `v` and `normal` are unit vectors, right-handed. */
export interface PlaneFrame {
  origin: Vec3;
  normal: Vec3;
  u: Vec3;
  v: Vec3;
}

/** The plane through a point, square to a direction; undefined for a direction without length. */
export function planeThrough(origin: Vec3, direction: Vec3): PlaneFrame | undefined {
  const normal = unit(direction);
  if (normal === undefined) return undefined;
  const u = squareTo(normal);
  return { origin, normal, u, v: cross(normal, u) };
}

/**
 * The plane of a ring: through the mean of its corners, square to its normal by Newell's method. Where that
 * has next to no length, as for a ring that crosses itself in the middle, it is square to the widest triangle
 * of the first corner, the one farthest from it and a third. Undefined where the corners lie on one line.
 */
export function planeOf(points: readonly Vec3[]): PlaneFrame | undefined {
  // Normals are products of coordinates: far from the origin they would lose their digits.
  const near = points.map((point) => subtract(point, points[0]));
  const far = longest(near);
  const widest = longest(near.map((point) => cross(far, point)));
  const newell = newellNormal(near);
  const hasNormal = Math.hypot(...newell) > 1e-9 * dot(far, far);
  const mean = (k: 0 | 1 | 2) => points[0][k] + near.reduce((sum, point) => sum + point[k] / near.length, 0);
  return planeThrough([mean(0), mean(1), mean(2)], hasNormal ? newell : widest);
}

function longest(vectors: readonly Vec3[]): Vec3 {
  return vectors.reduce((a, b) => (dot(b, b) > dot(a, a) ? b : a));
}

/** Distance of a point from the plane; positive on the side that the normal points to. */
export function offPlane({ origin, normal }: PlaneFrame, point: Vec3): number {
  return dot(subtract(point, origin), normal);
}

/** The ring of points as it is seen along the normal. */
export function ringOn({ origin, u, v }: PlaneFrame, points: readonly Vec3[]): Ring {
  const local = points.map((point) => subtract(point, origin));
  return { u: Float64Array.from(local, (p) => dot(p, u)), v: Float64Array.from(local, (p) => dot(p, v)) };
}
