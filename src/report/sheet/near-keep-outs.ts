import type { KeepOut } from '../../generated/layout.js';
import { distanceToPrism, newPrism } from '../../geometry/prism.js';
import { distanceSegmentSegment } from '../../geometry/segment.js';
import { along, dot, type Vec3 } from '../../geometry/vector.js';
import type { SheetHole } from './sheet-hole.js';

/** A keep-out and how far its shape is from the axis of a hole, mm. */
export interface NearKeepOut {
  readonly index: number;
  readonly distanceMm: number;
}

/**
 * Finds the keep-outs near the axis of a hole, from its surface to its depth. The height of a hole that has none is that
 * of its face. Where it is not known how high a hole begins, which way it goes or how deep, distances are taken in plan,
 * which finds more, not less. Looks at the box of each keep-out once for each hole.
 */
export class NearKeepOuts {
  private readonly boxes: Float64Array;
  private readonly distances: ((a: Vec3, b: Vec3) => number)[];
  private readonly flat: ((a: Vec3, b: Vec3) => number)[];

  constructor(
    keepOuts: readonly KeepOut[],
    private readonly reachMm: number,
  ) {
    this.boxes = new Float64Array(keepOuts.length * 6);
    for (const [k, { shape }] of keepOuts.entries()) this.boxes.set(boxOf(shape), k * 6);
    this.distances = keepOuts.map(({ shape }) => distanceTo(shape));
    this.flat = keepOuts.map(({ shape }) => {
      const parts = flattened(shape).map(distanceTo);
      return (a, b) => parts.reduce((least, distance) => Math.min(least, distance(a, b)), Number.POSITIVE_INFINITY);
    });
  }

  /** In the order of the keep-outs. */
  of(hole: SheetHole): NearKeepOut[] {
    const found: NearKeepOut[] = [];
    const reach = hole.depthMm ?? hole.substrate?.thickness;
    const height = hole.axis === undefined || reach === undefined ? undefined : heightOf(hole);
    const [x, y] = hole.hole.point;
    const a: Vec3 = [x, y, height ?? 0];
    const axis = hole.axis ?? [0, 0, 0];
    const end = along(a, axis, reach ?? 0);
    const b: Vec3 = height === undefined ? [end[0], end[1], 0] : end;
    const { boxes, reachMm } = this;
    for (let k = 0; k < this.distances.length; k++) {
      const at = k * 6;
      if (isFar(a, b, boxes, at, height === undefined ? 2 : 3, reachMm)) continue;
      const distanceMm = (height === undefined ? this.flat : this.distances)[k](a, b);
      if (distanceMm <= reachMm) found.push({ index: k, distanceMm });
    }
    return found;
  }
}

function isFar(a: Vec3, b: Vec3, boxes: Float64Array, at: number, axes: number, reach: number): boolean {
  for (let k = 0; k < axes; k++) {
    if (Math.max(a[k], b[k]) < boxes[at + k] - reach || Math.min(a[k], b[k]) > boxes[at + 3 + k] + reach) return true;
  }
  return false;
}

/** Height of the surface at a hole; undefined where neither it nor a face that is not upright tells. */
function heightOf({ hole: { point }, substrate }: SheetHole): number | undefined {
  if (point.length === 3) return point[2];
  const face = substrate?.face;
  if (face === undefined || Math.abs(face.inward[2]) < 1e-6 * Math.hypot(...face.inward)) return undefined;
  const [x, y] = point;
  return face.point[2] - dot([x - face.point[0], y - face.point[1], 0], face.inward) / face.inward[2];
}

function distanceTo({ path, prism, sphere }: KeepOut['shape']): (a: Vec3, b: Vec3) => number {
  if (sphere !== undefined) {
    return (a, b) => Math.max(0, distanceSegmentSegment(a, b, sphere.centre, sphere.centre) - sphere.radius);
  }
  if (path !== undefined) return (a, b) => Math.max(0, toLine(a, b, path.points) - path.radius);
  const solid = prism && newPrism(prism.base, prism.extrude);
  if (solid !== undefined) return (a, b) => distanceToPrism(solid, a, b);
  return (a, b) => toLine(a, b, prism === undefined ? [] : [...prism.base, prism.base[0]]);
}

function toLine(a: Vec3, b: Vec3, points: readonly Vec3[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < points.length; k++)
    least = Math.min(least, distanceSegmentSegment(a, b, points[k - 1], points[k]));
  return least;
}

/** What together covers a shape as it is seen from above, in the plane z = 0. */
function flattened({ path, prism, sphere }: KeepOut['shape']): KeepOut['shape'][] {
  const flat = ([x, y]: Vec3): [number, number, number] => [x, y, 0];
  if (sphere !== undefined) return [{ sphere: { ...sphere, centre: flat(sphere.centre) } }];
  if (path !== undefined) return [{ path: { ...path, points: path.points.map(flat) as typeof path.points } }];
  if (prism === undefined) return [];
  const base = prism.base.map(flat);
  const top = prism.base.map((p) => flat(along(p, prism.extrude, 1)));
  const sides = base.map((p, k) => [
    base[(k + base.length - 1) % base.length],
    p,
    top[k],
    top[(k + top.length - 1) % top.length],
  ]);
  return [base, top, ...sides].map((ring) => ({ prism: { base: ring as typeof prism.base, extrude: [0, 0, 1] } }));
}

/** Least x, y, z, then greatest. */
function boxOf({ path, prism, sphere }: KeepOut['shape']): number[] {
  const points: readonly Vec3[] =
    path?.points ?? (prism && [...prism.base, ...prism.base.map((p) => along(p, prism.extrude, 1))]) ?? [];
  const all = sphere === undefined ? points : [sphere.centre];
  const radius = path?.radius ?? sphere?.radius ?? 0;
  const low = [0, 1, 2].map((k) => all.reduce((least, p) => Math.min(least, p[k]), Number.POSITIVE_INFINITY) - radius);
  const high = [0, 1, 2].map((k) => all.reduce((most, p) => Math.max(most, p[k]), Number.NEGATIVE_INFINITY) + radius);
  return [...low, ...high];
}
