import { EdgeGrid } from '../geometry/edge-grid.js';
import type { Vec3 } from '../geometry/vector.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { type Surface, uOn, vOn } from './surface.js';

/** The edges of an outline that are said to be movement joints; undefined where there are none. */
export function jointsOf(surface: Surface | undefined): Joint | undefined {
  const kinds = surface?.substrate.outline?.edges;
  return surface?.outline !== undefined && kinds?.includes('movement-joint') ? new Joint(surface) : undefined;
}

/** The movement joints of one outline, in the plane of its face. */
export class Joint {
  readonly substrate: string;
  private readonly grid: EdgeGrid;
  /** For each edge of the grid its number in the outline. */
  private readonly numbers: readonly number[];

  constructor(private readonly surface: Surface) {
    this.substrate = surface.substrate.id;
    const { u, v } = surface.outline ?? { u: new Float64Array(0), v: new Float64Array(0) };
    const kinds = surface.substrate.outline?.edges ?? [];
    const numbers = kinds.flatMap((kind, k) => (kind === 'movement-joint' && k < u.length ? [k] : []));
    const column = (of: Float64Array, step: number) => Float64Array.from(numbers, (k) => of[(k + step) % of.length]);
    this.numbers = numbers;
    const edges = { fromU: column(u, 0), fromV: column(v, 0), toU: column(u, 1), toV: column(v, 1) };
    this.grid = new EdgeGrid(edges, 2 * LENGTH_SLACK_MM);
  }

  /**
   * The first edge that the segment between two points crosses, seen along the normal of the face; or -1.
   * Both points lie off its line by more than the slack, on different sides. Millimetres, site frame.
   */
  between(p: Vec3, q: Vec3): number {
    const { surface, grid, numbers } = this;
    const [pu, pv, qu, qv] = [uOn(surface, p), vOn(surface, p), uOn(surface, q), vOn(surface, q)];
    let found = -1;
    grid.visit(Math.min(pu, qu), Math.min(pv, qv), Math.max(pu, qu), Math.max(pv, qv), (edge) => {
      if ((found < 0 || numbers[edge] < found) && this.isCrossed(edge, pu, pv, qu, qv)) found = numbers[edge];
    });
    return found;
  }

  private isCrossed(edge: number, pu: number, pv: number, qu: number, qv: number): boolean {
    const { fromU, fromV, toU, toV } = this.grid.edges;
    const length = Math.hypot(toU[edge] - fromU[edge], toV[edge] - fromV[edge]);
    const du = (toU[edge] - fromU[edge]) / length;
    const dv = (toV[edge] - fromV[edge]) / length;
    const pAside = du * (pv - fromV[edge]) - dv * (pu - fromU[edge]);
    const qAside = du * (qv - fromV[edge]) - dv * (qu - fromU[edge]);
    const isApart = Math.min(pAside, qAside) < -LENGTH_SLACK_MM && Math.max(pAside, qAside) > LENGTH_SLACK_MM;
    if (!isApart) return false;
    const t = pAside / (pAside - qAside);
    const along = du * (pu + t * (qu - pu) - fromU[edge]) + dv * (pv + t * (qv - pv) - fromV[edge]);
    return along >= -LENGTH_SLACK_MM && along <= length + LENGTH_SLACK_MM;
  }
}
