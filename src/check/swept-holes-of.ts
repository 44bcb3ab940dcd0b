import { distanceSweptHoles } from '../geometry/swept-holes.js';
import { along, type Vec3 } from '../geometry/vector.js';
import { type Kind, kindsOf } from './kinds.js';
import type { Site } from './site.js';
import { isDeck, isInto } from './surface.js';

/** The holes of a site as swept volumes: from the point along the axis, round at the ends. Millimetres, site frame. */
export class SweptHoles {
  /** The farthest that any hole reaches from its point; 0 where none can be told. */
  readonly largest: number;
  private readonly kindOf: Int32Array;
  private readonly list: readonly Kind[];
  /** By kind how far its holes reach; NaN where that differs from hole to hole. */
  private readonly reachOf: Float64Array;
  /** By kind why its holes are left out, undefined where they are not or where it differs. */
  private readonly out: readonly (string | undefined)[];

  constructor(private readonly site: Site) {
    const { list, of } = kindsOf(site);
    this.list = list;
    this.kindOf = of;
    this.out = list.map(whyOut);
    this.reachOf = Float64Array.from(list, (kind, k) => {
      if (this.out[k] !== undefined) return 0;
      const { hasDiameter, type } = kind;
      const depth = sweptDepthOf(kind);
      return hasDiameter || depth === undefined || type === undefined ? Number.NaN : depth + type.diameter / 2;
    });
    let largest = 0;
    for (const reach of this.reachOf) if (reach > largest) largest = reach;
    if (this.reachOf.includes(Number.NaN)) {
      for (let i = 0; i < site.holeCount; i++) {
        const reach = Number.isNaN(this.reachOf[of[i]]) ? this.reach(i) : 0;
        if (reach > largest) largest = reach;
      }
    }
    this.largest = largest;
  }

  /** Depth and radius of hole `i` together: nothing of it is farther from its point. 0 where it is left out. */
  reach(i: number): number {
    const reach = this.reachOf[this.kindOf[i]];
    if (!Number.isNaN(reach)) return reach;
    const own = this.site.sweptDepth(i) + this.site.diameter(i) / 2;
    return Number.isNaN(own) ? 0 : own;
  }

  /** Why hole `i` has no swept volume; undefined where it has one. */
  whyOut(i: number): string | undefined {
    const kind = this.kindOf[i];
    const why = this.out[kind];
    if (why !== undefined || !Number.isNaN(this.reachOf[kind])) return why;
    return Number.isNaN(this.site.depth(i)) ? NO_DEPTH : undefined;
  }

  /** Where the axis of hole `i` ends. Only of holes that are not left out. */
  end(i: number): Vec3 {
    return along(this.site.point(i), this.list[this.kindOf[i]].axis as Vec3, this.site.sweptDepth(i));
  }

  /** Clear distance of two holes that are not left out, less than 0 where they run into each other. */
  clear(i: number, j: number): number {
    const { site } = this;
    const radii = [site.diameter(i) / 2, site.diameter(j) / 2];
    return distanceSweptHoles(site.point(i), this.end(i), radii[0], site.point(j), this.end(j), radii[1]);
  }
}

/** How far holes of a kind go from their points, where that is the same for all; see `Site.sweptDepth`. */
export function sweptDepthOf({ hasDepth, type, surface }: Kind): number | undefined {
  const isPlain = !hasDepth && type?.form === 'blind' && (surface === undefined || !isDeck(surface));
  return isPlain ? type.depth : undefined;
}

const NO_DEPTH = 'depth not known';

/** Why no hole of a kind has a swept volume; undefined where some may have. */
function whyOut({ out, type, axis, surface, hasDepth, hasDiameter, hasHeight }: Kind): string | undefined {
  if (out !== undefined) return out;
  if (!hasDepth && type?.depth === undefined && type?.form !== 'through') return NO_DEPTH;
  if (!hasDiameter && type === undefined) return 'diameter not known';
  if (axis === undefined) return 'axis not known';
  if (surface !== undefined && !isInto(surface, axis)) return 'axis does not point into the concrete';
  return hasHeight || (surface !== undefined && !surface.isVertical) ? undefined : 'height not known';
}
