import { EdgeGrid } from '../geometry/edge-grid.js';
import { insideRing, type Ring } from '../geometry/ring.js';
import type { Vec3 } from '../geometry/vector.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { type Surface, uOn, vOn } from './surface.js';

/** The edges of an outline that are said to be movement joints; undefined where there are none. */
export function jointsOf(surface: Surface | undefined): OutlineJoints | undefined {
  const kinds = surface?.substrate.outline?.edges;
  const outline = surface?.outline;
  return outline && kinds?.includes('movement-joint') ? new OutlineJoints(surface, outline) : undefined;
}

/** The movement joints of one outline, in the plane of its face. Millimetres, points in the site frame. */
export class OutlineJoints {
  /** Ends of the joints. */
  readonly corners: readonly Vec3[];
  private readonly grid: EdgeGrid;
  /** For each edge of the grid its number in the outline. */
  private readonly numbers: readonly number[];
  /** For each edge of the outline whether it is a joint. */
  private readonly isJoint: readonly boolean[];

  constructor(
    private readonly surface: Surface,
    private readonly outline: Ring,
  ) {
    const { u, v } = outline;
    const kinds = surface.substrate.outline?.edges ?? [];
    this.isJoint = Array.from(u, (_, k) => kinds[k] === 'movement-joint');
    this.numbers = this.isJoint.flatMap((isJoint, k) => (isJoint ? [k] : []));
    const column = (of: Float64Array, step: number) =>
      Float64Array.from(this.numbers, (k) => of[(k + step) % of.length]);
    const edges = { fromU: column(u, 0), fromV: column(v, 0), toU: column(u, 1), toV: column(v, 1) };
    this.grid = new EdgeGrid(edges, 2 * LENGTH_SLACK_MM);
    this.corners = this.numbers.flatMap((k) => [...this.endsOf(k)]);
  }

  get substrate(): string {
    return this.surface.substrate.id;
  }

  /** The two ends of an edge of the outline. */
  endsOf(edge: number): readonly [Vec3, Vec3] {
    const points = this.surface.substrate.outline?.points ?? [];
    return [points[edge], points[(edge + 1) % points.length]];
  }

  /** The joint, by its number in the outline, on which a point lies, seen along the normal of the face; or -1. */
  at(p: Vec3): number {
    const [u, v] = [uOn(this.surface, p), vOn(this.surface, p)];
    const edge = this.grid.nearest(u, v, LENGTH_SLACK_MM, () => true);
    return edge < 0 ? -1 : this.numbers[edge];
  }

  /**
   * The first of the joints that the segment between two points meets where they part these, or -1: the segment between them, seen along the normal of the
   * face, crosses an odd number of joints, or an even one and comes from and goes to other concrete.
   *
   * @param isOwn whether one of the points lies on this concrete by its name
   */
  between(p: Vec3, q: Vec3, isOwn: boolean): number {
    const { surface, grid, numbers, outline } = this;
    const [pu, pv, qu, qv] = [uOn(surface, p), vOn(surface, p), uOn(surface, q), vOn(surface, q)];
    const crossed = new Set<number>();
    let first = -1;
    grid.visit(Math.min(pu, qu), Math.min(pv, qv), Math.max(pu, qu), Math.max(pv, qv), (edge) => {
      const met = this.meets(edge, pu, pv, qu, qv);
      if (met === 'crosses') crossed.add(numbers[edge]);
      if (met !== undefined && (first < 0 || numbers[edge] < first)) first = numbers[edge];
    });
    if (crossed.size === 0) return -1;
    const isBack = crossed.size % 2 === 0 && (isOwn || insideRing(outline, pu, pv) || insideRing(outline, qu, qv));
    return isBack ? -1 : first;
  }

  private meets(edge: number, pu: number, pv: number, qu: number, qv: number): 'crosses' | 'touches' | undefined {
    const { isJoint, numbers } = this;
    const { fromU, fromV, toU, toV } = this.grid.edges;
    const [au, av, bu, bv] = [fromU[edge], fromV[edge], toU[edge], toV[edge]];
    const pAside = aside(au, av, bu, bv, pu, pv);
    const qAside = aside(au, av, bu, bv, qu, qv);
    const isApart = Math.min(pAside, qAside) < -LENGTH_SLACK_MM && Math.max(pAside, qAside) > LENGTH_SLACK_MM;
    if (!isApart) return undefined;
    const fromAside = aside(pu, pv, qu, qv, au, av);
    const toAside = aside(pu, pv, qu, qv, bu, bv);
    const count = isJoint.length;
    const isFromMet = Math.abs(fromAside) <= LENGTH_SLACK_MM;
    const isToMet = Math.abs(toAside) <= LENGTH_SLACK_MM;
    // What meets the very end of a joint crosses it. Where the next edge is a joint too, it crosses one of them or none.
    if (isFromMet && !isJoint[(numbers[edge] + count - 1) % count]) return 'crosses';
    if (isToMet && !isJoint[(numbers[edge] + 1) % count]) return 'crosses';
    if (fromAside >= -LENGTH_SLACK_MM !== toAside >= -LENGTH_SLACK_MM) return 'crosses';
    return isFromMet || isToMet ? 'touches' : undefined;
  }
}

/** How far a point lies to the left of the line from one point to another. */
function aside(fromU: number, fromV: number, toU: number, toV: number, u: number, v: number): number {
  const [du, dv] = [toU - fromU, toV - fromV];
  return (du * (v - fromV) - dv * (u - fromU)) / Math.hypot(du, dv);
}
