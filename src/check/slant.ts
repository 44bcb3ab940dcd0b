import { cross, dot, type Vec3 } from '../geometry/vector.js';
import type { Surface } from './surface.js';

/** Slack of comparisons of angles, in degrees. */
export const ANGLE_SLACK_DEG = 0.00005;

const DEGREES = 180 / Math.PI;

/** Angle between an axis and the direction into the concrete, degrees; exact near 0 and 180 as anywhere else. */
export function slantDeg({ inward }: Surface, axis: Vec3): number {
  const across = cross(axis, inward);
  return Math.atan2(Math.hypot(across[0], across[1], across[2]), dot(axis, inward)) * DEGREES;
}

/** Elevation of a direction over the plane of x and y, degrees. */
export function elevationDeg(axis: Vec3): number {
  return Math.atan2(axis[2], Math.hypot(axis[0], axis[1])) * DEGREES;
}

/** An angle for people. */
export function angleInWords(deg: unknown): string {
  const shown = Number(Number(deg).toFixed(2));
  return `${shown} ${shown === 1 ? 'degree' : 'degrees'}`;
}
