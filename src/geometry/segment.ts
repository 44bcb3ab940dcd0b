import type { Vec3 } from './vector.js';

/** Distance of a point from the segment `a`-`b`. */
export function distancePointSegment(p: Vec3, a: Vec3, b: Vec3): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const dz = b[2] - a[2];
  const rx = p[0] - a[0];
  const ry = p[1] - a[1];
  const rz = p[2] - a[2];
  const lengthSq = dx * dx + dy * dy + dz * dz;
  const t = lengthSq > 0 ? clamp((rx * dx + ry * dy + rz * dz) / lengthSq) : 0;
  const gx = rx - t * dx;
  const gy = ry - t * dy;
  const gz = rz - t * dz;
  return Math.sqrt(gx * gx + gy * gy + gz * gz);
}

/**
 * Distance of the segments `a`-`b` and `c`-`d`, either of which may be a point (after C. Ericson,
 * "Real-Time Collision Detection", 2005, section 5.1.9).
 *
 * Written out in coordinates: it is called for every hole and every keep-out near it, and vectors as
 * arrays would be most of its cost.
 */
export function distanceSegmentSegment(a: Vec3, b: Vec3, c: Vec3, d: Vec3): number {
  const ex = b[0] - a[0];
  const ey = b[1] - a[1];
  const ez = b[2] - a[2];
  const fx = d[0] - c[0];
  const fy = d[1] - c[1];
  const fz = d[2] - c[2];
  const ee = ex * ex + ey * ey + ez * ez;
  const ff = fx * fx + fy * fy + fz * fz;
  if (ee === 0) return distancePointSegment(a, c, d);
  if (ff === 0) return distancePointSegment(c, a, b);
  const rx = a[0] - c[0];
  const ry = a[1] - c[1];
  const rz = a[2] - c[2];
  const ef = ex * fx + ey * fy + ez * fz;
  const er = ex * rx + ey * ry + ez * rz;
  const fr = fx * rx + fy * ry + fz * rz;
  const denominator = ee * ff - ef * ef;
  // Parallel segments: any point of the first serves as a start, the clamping below does the rest. At this
  // limit the angle is 1e-7, which costs at most a ten millionth of the length of the first segment.
  let s = denominator > 1e-14 * ee * ff ? clamp((ef * fr - er * ff) / denominator) : 0;
  let t = (ef * s + fr) / ff;
  if (t < 0 || t > 1) {
    t = clamp(t);
    s = clamp((ef * t - er) / ee);
  }
  const gx = rx + s * ex - t * fx;
  const gy = ry + s * ey - t * fy;
  const gz = rz + s * ez - t * fz;
  return Math.sqrt(gx * gx + gy * gy + gz * gz);
}

function clamp(t: number): number {
  return Math.max(0, Math.min(1, t));
}
