import { BoxTree } from '../geometry/box-tree.js';
import { along, cross, dot, subtract, type Vec3 } from '../geometry/vector.js';
import { jointsOf, type OutlineJoints } from './movement-joints.js';
import type { Surface } from './surface.js';
import { ONE_PLANE_SINE } from './touching-outlines.js';

/** How far off the plane of a face the ends of a joint may lie: our own definition. */
const ONE_PLANE_MM = 1;
/** Substrates with joints that are looked at between two points. */
const MOST_NEAR = 64;
/** One list for all points that have none near. */
const NONE: readonly number[] = [];

/** A joint that parts two points. */
export interface PartingJoint {
  /** Id of the substrate. */
  substrate: string;
  /** Of its outline. */
  edge: number;
}

/** The movement joints of all substrates of a site by place. Millimetres, site frame. */
export class SiteJoints {
  /** By number of the substrate. */
  private readonly joints: readonly (OutlineJoints | undefined)[];
  /** Numbers of the substrates that have joints. */
  private readonly numbers: readonly number[];
  private readonly tree: BoxTree;
  private readonly found = new Int32Array(MOST_NEAR);

  constructor(private readonly surfaces: readonly (Surface | undefined)[]) {
    this.joints = surfaces.map(jointsOf);
    this.numbers = this.joints.flatMap((joints, k) => (joints ? [k] : []));
    const boxes = this.numbers.flatMap((k) => boxOf(this.joints[k]?.corners ?? []));
    this.tree = new BoxTree(Float64Array.from(boxes));
  }

  /** Number of substrates that have joints. */
  get count(): number {
    return this.numbers.length;
  }

  /** Whether a substrate has joints. */
  has(substrate: number): boolean {
    return this.joints[substrate] !== undefined;
  }

  /** Whether a point of a substrate lies on a joint of it, or of another one in the plane of its face. */
  isOn(substrate: number, p: Vec3): boolean {
    const own = this.joints[substrate];
    if (own !== undefined && own.at(p) >= 0) return true;
    const near = this.near(substrate, p, p) ?? [];
    return near.some((k) => {
      const edge = this.joints[k]?.at(p) ?? -1;
      return edge >= 0 && this.isInPlane(substrate, k, edge);
    });
  }

  /**
   * The joint that parts point `p` of substrate `a` from point `q` of substrate `b`: one of these substrates, or,
   * between two, one of any other in the plane of their faces. Costs what lies near the segment.
   */
  between(
    a: number,
    p: Vec3,
    b: number,
    q: Vec3,
  ): PartingJoint | 'no joint near' | 'not parted' | 'too many joints near' {
    const own = a === b ? [a] : [b, a];
    for (const k of own) {
      const edge = this.joints[k]?.between(p, q, true) ?? -1;
      if (edge >= 0) return this.parting(k, edge);
    }
    let isNear = own.some((k) => this.has(k));
    for (const face of a === b ? [] : own) {
      const near = this.near(face, p, q);
      if (near === undefined) return 'too many joints near';
      for (const k of near) {
        if (own.includes(k)) continue;
        const edge = this.joints[k]?.between(p, q, false) ?? -1;
        if (edge >= 0 && this.isInPlane(face, k, edge)) return this.parting(k, edge);
        isNear = true;
      }
    }
    return isNear ? 'not parted' : 'no joint near';
  }

  private parting(substrate: number, edge: number): PartingJoint {
    return { substrate: this.joints[substrate]?.substrate ?? '', edge };
  }

  /** Numbers of the substrates with joints about the segment on a face and of its direction; undefined where too many. */
  private near(face: number, p: Vec3, q: Vec3): readonly number[] | undefined {
    const surface = this.surfaces[face];
    if (surface === undefined) return NONE;
    const { inward } = surface;
    const a = onPlane(surface, p);
    const b = p === q ? a : onPlane(surface, q);
    const count = this.tree.meeting(
      Math.min(a[0], b[0]) - ONE_PLANE_MM,
      Math.min(a[1], b[1]) - ONE_PLANE_MM,
      Math.min(a[2], b[2]) - ONE_PLANE_MM,
      Math.max(a[0], b[0]) + ONE_PLANE_MM,
      Math.max(a[1], b[1]) + ONE_PLANE_MM,
      Math.max(a[2], b[2]) + ONE_PLANE_MM,
      this.found,
      MOST_NEAR,
    );
    if (count <= 0) return count < 0 ? undefined : NONE;
    const numbers = Array.from(this.found.subarray(0, count), (k) => this.numbers[k]).sort((k, l) => k - l);
    return numbers.filter((k) => isOneWay(inward, this.surfaces[k]?.inward));
  }

  private isInPlane(face: number, substrate: number, edge: number): boolean {
    const { origin, inward } = this.surfaces[face] as Surface;
    const ends = this.joints[substrate]?.endsOf(edge) ?? [];
    return ends.every((end) => Math.abs(dot(subtract(end, origin), inward)) <= ONE_PLANE_MM);
  }
}

function isOneWay(a: Vec3, b: Vec3 | undefined): boolean {
  return b !== undefined && dot(a, b) > 0 && Math.hypot(...cross(a, b)) <= ONE_PLANE_SINE;
}

function onPlane({ origin, inward }: Surface, p: Vec3): Vec3 {
  return along(p, inward, -dot(subtract(p, origin), inward));
}

/** Least x, y, z, then greatest. */
function boxOf(points: readonly Vec3[]): number[] {
  const low = [0, 1, 2].map((axis) => points.reduce((least, p) => Math.min(least, p[axis]), Number.POSITIVE_INFINITY));
  const high = [0, 1, 2].map((axis) => points.reduce((most, p) => Math.max(most, p[axis]), Number.NEGATIVE_INFINITY));
  return [...low, ...high];
}
