import { along, dot, type Vec3 } from '../../geometry/vector.js';
import { judgeHoles } from '../judge-holes.js';
import type { OfKind } from '../judge-kinds.js';
import type { Kind } from '../kinds.js';
import type { Rule } from '../rule.js';
import { SIDE, sideData, sideInWords } from '../side-in-words.js';
import { NO_HEIGHT, type Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { LEVEL_SINE, type LeastThickness, leastThickness, type Surface, thicknessAt } from '../surface.js';

export const breaksThrough: Rule = {
  id: 'breaks-through',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A blind hole comes out on the far side of the concrete, or too near to it.',
  why: 'Concrete breaks out above, onto people, floors and services, and the anchor has too little concrete to hold in.',
  mend: 'Use a type with a shorter hole, move the hole to thicker concrete, or make it a through hole with its far side protected.',
  data: {
    substrate: 'id of the substrate',
    reach: 'depth square to the face and the concrete that must be left beyond, mm',
    thickness: 'thickness of the concrete at the hole, mm',
    at: '`point` or `end`: where along the hole the thickness was taken',
    backing: 'concrete that must be left beyond the hole, mm',
    ...SIDE,
  },
  message: ({ substrate, reach, thickness, at, backing, side, phaseFrom }, say) => {
    const needs =
      Number(backing) > 0
        ? `${say.length(reach)} with the ${say.length(backing)} that must be left`
        : say.length(reach);
    const where = at === 'end' ? `where the hole ends${side === undefined ? '' : ','}` : 'there';
    return `The hole needs ${needs}; substrate "${substrate}" is ${say.length(thickness)} thick ${where}${sideInWords(side, phaseFrom)}.`;
  },
  causeMessage: ({ substrate, thickness, side, phaseFrom }, say) =>
    `Holes need more concrete than the ${say.length(thickness)} of substrate "${substrate}"${sideInWords(side, phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "depth": 180.1 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "depth": 180 }\n]',
  },
  checkSite(site, run) {
    judgeHoles(
      site,
      run,
      (kind) => {
        if (kind.type?.form === 'through') return undefined;
        const common = sameForAll(site, kind);
        if ('leftOut' in common) return common;
        const { surface, depth } = common;
        return surface.even === undefined || Number.isNaN(depth)
          ? { each: common }
          : ofReach(common, depth, { thickness: surface.even, at: 'point' });
      },
      (i, common) => {
        const depth = Number.isNaN(common.depth) ? site.depth(i) : common.depth;
        const least = leastOf(site.point(i), depth, common);
        return least === undefined ? { leftOut: 'thickness not known' } : ofReach(common, depth, least);
      },
    );
  },
};

/** What all blind holes of a kind have in common. */
interface Common {
  kind: Kind;
  surface: Surface;
  axis: Vec3;
  /** Component of the axis square to the face. */
  slope: number;
  /** Depth of the type; NaN where holes have their own. */
  depth: number;
}

function sameForAll(site: Site, kind: Kind): Common | { leftOut: string } {
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

function leastOf(p: Vec3, depth: number, { surface, axis }: Common): LeastThickness | undefined {
  if (axis !== surface.inward) return leastThickness(surface, p, along(p, axis, depth));
  const thickness = thicknessAt(surface, p);
  return thickness && { thickness, at: 'point' };
}

function ofReach({ kind, surface, slope }: Common, depth: number, { thickness, at }: LeastThickness): OfKind {
  const backing = kind.type?.backing?.value ?? 0;
  const reach = depth * slope + backing;
  if (reach <= thickness.mm + LENGTH_SLACK_MM) return 'passed';
  const { id: substrate } = surface.substrate;
  const data = { substrate, reach, thickness: thickness.mm, at, backing, ...sideData(thickness, surface) };
  return { finding: { data, cause: `${substrate} ${kind.type?.id} ${thickness.mm} ${thickness.side ?? ''}` } };
}
