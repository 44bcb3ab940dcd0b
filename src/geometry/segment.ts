import { along, dot, subtract, type Vec3 } from './vector.js';

/** Distance of a point from the segment `a`-`b`. */
export function distancePointSegment(p: Vec3, a: Vec3, b: Vec3): number {
  const d = subtract(b, a);
  const lengthSq = dot(d, d);
  const t = lengthSq > 0 ? clamp(dot(subtract(p, a), d) / lengthSq) : 0;
  const r = subtract(p, along(a, d, t));
  return Math.sqrt(dot(r, r));
}

/**
 * Distance of the segments `a`-`b` and `c`-`d`, either of which may be a point (after C. Ericson,
 * "Real-Time Collision Detection", 2005, section 5.1.9).
 */
export function distanceSegmentSegment(a: Vec3, b: Vec3, c: Vec3, d: Vec3): number {
  const e = subtract(b, a);
  const f = subtract(d, c);
  const r = subtract(a, c);
  const ee = dot(e, e);
  const ff = dot(f, f);
  if (ee === 0) return distancePointSegment(a, c, d);
  if (ff === 0) return distancePointSegment(c, a, b);
  const ef = dot(e, f);
  const er = dot(e, r);
  const fr = dot(f, r);
  const denominator = ee * ff - ef * ef;
  // Parallel segments: any point of the first serves as a start, the clamping below does the rest.
  let s = denominator > 1e-12 * ee * ff ? clamp((ef * fr - er * ff) / denominator) : 0;
  let t = (ef * s + fr) / ff;
  if (t < 0 || t > 1) {
    t = clamp(t);
    s = clamp((ef * t - er) / ee);
  }
  const gap = subtract(along(a, e, s), along(c, f, t));
  return Math.sqrt(dot(gap, gap));
}

function clamp(t: number): number {
  return Math.max(0, Math.min(1, t));
}
