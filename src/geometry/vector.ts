/** A point or direction, `[x, y, z]`. */
export type Vec3 = readonly [number, number, number];

export function subtract(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** `a + t b` */
export function along(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + t * b[0], a[1] + t * b[1], a[2] + t * b[2]];
}

/** Below this length, numbers have lost digits; times this factor they have none to lose. */
const SHORTEST = 1e-290;
const LENGTHEN = 2 ** 1000;

/** The unit vector, or undefined for a vector without length. */
export function unit(a: Vec3): Vec3 | undefined {
  const length = Math.hypot(a[0], a[1], a[2]);
  if (length > 0 && length < SHORTEST) return unit([a[0] * LENGTHEN, a[1] * LENGTHEN, a[2] * LENGTHEN]);
  return length > 0 && Number.isFinite(length) ? [a[0] / length, a[1] / length, a[2] / length] : undefined;
}

/** A unit vector square to the unit vector `n`: along the x axis where `n` allows it, so that plans stay plans. */
export function squareTo(n: Vec3): Vec3 {
  const axis: Vec3 = Math.abs(n[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  return unit(subtract(axis, along([0, 0, 0], n, dot(axis, n)))) as Vec3;
}
