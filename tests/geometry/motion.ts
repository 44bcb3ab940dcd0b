import type { Vec3 } from '../../src/geometry/vector.js';

/** A rigid motion: a turn about a random axis, then a shift. */
export type Motion = (p: Vec3) => Vec3;

/** A point with coordinates between -size and size. */
export function randomPoint(random: () => number, size: number): Vec3 {
  return [(random() * 2 - 1) * size, (random() * 2 - 1) * size, (random() * 2 - 1) * size];
}

/** A random rigid motion, from a random unit quaternion. */
export function randomMotion(random: () => number, shift: number): { move: Motion; turn: Motion } {
  const q = [random() - 0.5, random() - 0.5, random() - 0.5, random() - 0.5];
  const length = Math.hypot(...q);
  const [w, x, y, z] = q.map((part) => part / length);
  const rows = [
    [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
  ];
  const by = randomPoint(random, shift);
  const turn: Motion = (p) => rows.map((row) => row[0] * p[0] + row[1] * p[1] + row[2] * p[2]) as unknown as Vec3;
  const move: Motion = (p) => turn(p).map((part, k) => part + by[k]) as unknown as Vec3;
  return { move, turn };
}
