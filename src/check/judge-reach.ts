import type { HoleType } from '../generated/layout.js';
import { along, dot, type Vec3 } from '../geometry/vector.js';
import { judgeHoles } from './judge-holes.js';
import type { OfKind } from './judge-kinds.js';
import type { Kind } from './kinds.js';
import type { LeastThickness } from './least-thickness.js';
import type { SiteRun } from './run.js';
import { NO_HEIGHT, type Site } from './site.js';
import { LEVEL_SINE, type Surface } from './surface.js';

/** What all holes of a kind have in common that are judged by how deep they go. */
export interface Reaching {
  kind: Kind;
  surface: Surface;
  axis: Vec3;
  /** Component of the axis square to the face. */
  slope: number;
  /** Depth of the type; NaN where holes have their own. */
  depth: number;
}

/** What a rule says that judges holes by how deep they go. */
export interface ReachRule {
  /** Whether the rule is about holes of a type; those of a broken type are left out. */
  isMeant(type: HoleType, kind: Kind): boolean;
  /** The thickness of the concrete at the ends of a hole; `end` is `p` itself where the hole is square to the face. */
  leastAt(surface: Surface, p: Vec3, end: Vec3): LeastThickness | undefined;
  /** Judges by the depth square to the face, mm. */
  judge(of: Reaching, reach: number, least: LeastThickness): OfKind;
}

/** Judges holes by how deep they go, square to the face, and the least thickness of the concrete at their ends. */
export function judgeReach(site: Site, run: SiteRun, { isMeant, leastAt, judge }: ReachRule): void {
  judgeHoles<Reaching>(
    site,
    run,
    (kind) => {
      if (kind.type !== undefined && !isMeant(kind.type, kind)) return undefined;
      const common = sameForAll(site, kind);
      if ('leftOut' in common) return common;
      const { surface, depth, slope } = common;
      return surface.even === undefined || Number.isNaN(depth)
        ? { each: common }
        : judge(common, depth * slope, { thickness: surface.even, at: 'point' });
    },
    (i, common) => {
      const depth = Number.isNaN(common.depth) ? site.depth(i) : common.depth;
      const { surface, axis } = common;
      const p = site.point(i);
      const least = leastAt(surface, p, axis === surface.inward ? p : along(p, axis, depth));
      return least === undefined ? { leftOut: 'thickness not known' } : judge(common, depth * common.slope, least);
    },
  );
}

function sameForAll(site: Site, kind: Kind): Reaching | { leftOut: string } {
  const { type, surface, axis, first } = kind;
  if (type === undefined) return { leftOut: 'record of its hole type broken' };
  if (surface === undefined || axis === undefined)
    return { leftOut: site.whyNoSurface(first) ?? 'substrate without a face' };
  const depth = kind.hasDepth ? Number.NaN : type.depth;
  if (depth === undefined) return { leftOut: 'depth not known' };
  if (surface.isVertical && !kind.hasHeight) return { leftOut: NO_HEIGHT };
  const slope = dot(axis, surface.inward);
  if (!(slope > LEVEL_SINE)) return { leftOut: 'axis does not point into the concrete' };
  return { kind, surface, axis, slope, depth };
}
