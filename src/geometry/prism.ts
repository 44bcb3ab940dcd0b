import { insideRing, type Ring } from './ring.js';
import { distanceSegmentSegment } from './segment.js';
import { along, cross, dot, squareTo, subtract, unit, type Vec3 } from './vector.js';

/** A flat ring pushed along a vector, made ready for distances. Build with {@link newPrism}. */
export interface Prism {
  base: readonly Vec3[];
  extrude: Vec3;
  /** Unit normal of the base. */
  normal: Vec3;
  u: Vec3;
  v: Vec3;
  ring: Ring;
  /** Component of `extrude` along `normal`. */
  rise: number;
}

/** Makes a prism ready, or returns undefined where it has no volume. Lengths in one unit. */
export function newPrism(base: readonly Vec3[], extrude: Vec3): Prism | undefined {
  const normal = unit(newellNormal(base));
  if (normal === undefined) return undefined;
  const rise = dot(extrude, normal);
  if (rise === 0) return undefined;
  const u = squareTo(normal);
  const v = cross(normal, u);
  const local = base.map((point) => subtract(point, base[0]));
  const ring = { u: Float64Array.from(local, (p) => dot(p, u)), v: Float64Array.from(local, (p) => dot(p, v)) };
  return { base, extrude, normal, u, v, ring, rise };
}

/** Distance of the segment `a`-`b` from the prism; 0 where they touch or the segment lies inside. */
export function distanceToPrism(prism: Prism, a: Vec3, b: Vec3): number {
  if (holds(prism, a) || holds(prism, b) || pierces(prism, a, b)) return 0;
  let least = Number.POSITIVE_INFINITY;
  const { base, extrude } = prism;
  for (let k = 0, j = base.length - 1; k < base.length; j = k++) {
    const top = along(base[k], extrude, 1);
    const topBefore = along(base[j], extrude, 1);
    least = Math.min(
      least,
      distanceSegmentSegment(a, b, base[j], base[k]),
      distanceSegmentSegment(a, b, topBefore, top),
      distanceSegmentSegment(a, b, base[k], top),
      distanceToSide(base[j], base[k], extrude, a),
      distanceToSide(base[j], base[k], extrude, b),
    );
  }
  return Math.min(least, distanceToCaps(prism, a), distanceToCaps(prism, b));
}

/** Whether a point lies in the prism: slid along the extrusion into the plane of the base, it lies in the ring. */
function holds(prism: Prism, p: Vec3): boolean {
  const r = subtract(p, prism.base[0]);
  const t = dot(r, prism.normal) / prism.rise;
  if (t < 0 || t > 1) return false;
  const slid = along(r, prism.extrude, -t);
  return insideRing(prism.ring, dot(slid, prism.u), dot(slid, prism.v));
}

/** Whether the segment goes through a cap or a side although both of its ends lie outside. */
function pierces(prism: Prism, a: Vec3, b: Vec3): boolean {
  const { base, normal, extrude, rise } = prism;
  const d = subtract(b, a);
  const slope = dot(d, normal);
  const height = dot(subtract(a, base[0]), normal);
  for (const level of slope === 0 ? [] : [0, rise]) {
    const t = (level - height) / slope;
    if (t < 0 || t > 1) continue;
    const hit = subtract(subtract(along(a, d, t), along([0, 0, 0], extrude, level / rise)), base[0]);
    if (insideRing(prism.ring, dot(hit, prism.u), dot(hit, prism.v))) return true;
  }
  for (let k = 0, j = base.length - 1; k < base.length; j = k++) {
    const edge = subtract(base[k], base[j]);
    const n = cross(edge, extrude);
    const across = dot(d, n);
    if (across === 0) continue;
    const t = dot(subtract(base[j], a), n) / across;
    if (t < 0 || t > 1) continue;
    const hit = subtract(along(a, d, t), base[j]);
    const q = dot(hit, normal) / rise;
    const s = dot(subtract(hit, along([0, 0, 0], extrude, q)), edge) / dot(edge, edge);
    if (q >= 0 && q <= 1 && s >= 0 && s <= 1) return true;
  }
  return false;
}

/** Distance to a side where the foot of the point lies in it, else infinite: the edges give the rest. */
function distanceToSide(from: Vec3, to: Vec3, extrude: Vec3, p: Vec3): number {
  const edge = subtract(to, from);
  const n = unit(cross(edge, extrude));
  if (n === undefined) return Number.POSITIVE_INFINITY;
  const r = subtract(p, from);
  const distance = dot(r, n);
  const foot = along(r, n, -distance);
  const [q, s] = parts(foot, extrude, edge);
  return q >= 0 && q <= 1 && s >= 0 && s <= 1 ? Math.abs(distance) : Number.POSITIVE_INFINITY;
}

/** `p` as `q e + s f`, for `p` in the plane of `e` and `f`. */
function parts(p: Vec3, e: Vec3, f: Vec3): [number, number] {
  const ee = dot(e, e);
  const ff = dot(f, f);
  const ef = dot(e, f);
  const determinant = ee * ff - ef * ef;
  const pe = dot(p, e);
  const pf = dot(p, f);
  return [(pe * ff - pf * ef) / determinant, (pf * ee - pe * ef) / determinant];
}

function distanceToCaps(prism: Prism, p: Vec3): number {
  const r = subtract(p, prism.base[0]);
  const height = dot(r, prism.normal);
  let least = Number.POSITIVE_INFINITY;
  for (const level of [0, prism.rise]) {
    const foot = subtract(along(r, prism.normal, level - height), along([0, 0, 0], prism.extrude, level / prism.rise));
    if (insideRing(prism.ring, dot(foot, prism.u), dot(foot, prism.v)))
      least = Math.min(least, Math.abs(height - level));
  }
  return least;
}

/** Normal of a ring by Newell's method: right for rings that are not quite flat. */
export function newellNormal(points: readonly Vec3[]): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let k = 0, j = points.length - 1; k < points.length; j = k++) {
    const a = points[j];
    const b = points[k];
    x += (a[1] - b[1]) * (a[2] + b[2]);
    y += (a[2] - b[2]) * (a[0] + b[0]);
    z += (a[0] - b[0]) * (a[1] + b[1]);
  }
  return [x, y, z];
}
