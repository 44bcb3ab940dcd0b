import type { HoleType } from '../../generated/layout.js';
import { dot } from '../../geometry/vector.js';
import { BROKEN } from '../near-holes.js';
import type { Rule } from '../rule.js';
import type { RuleRun } from '../run.js';
import type { Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { BROKEN_SUBSTRATE, NO_FACE, NO_SUBSTRATE, type Surface, type Thickness, thicknessAt } from '../surface.js';

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
    backing: 'concrete that must be left beyond the hole, mm',
    side: 'on a composite deck: side of the rib that the thickness was taken from',
    phaseFrom: 'on a composite deck: where the phase of the flutes is known from; absent when it is not known',
  },
  message: ({ substrate, reach, thickness, backing, side, phaseFrom }, say) => {
    const needs =
      Number(backing) > 0
        ? `${say.length(reach)} with the ${say.length(backing)} that must be left`
        : say.length(reach);
    return `The hole needs ${needs}; substrate "${substrate}" is ${say.length(thickness)} thick there${inWords(side, phaseFrom)}.`;
  },
  causeMessage: ({ substrate, thickness, side, phaseFrom }, say) =>
    `Holes need more concrete than the ${say.length(thickness)} of substrate "${substrate}"${inWords(side, phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "depth": 180.1 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "depth": 180 }\n]',
  },
  checkSite(site, run) {
    for (let i = 0; i < site.holeCount; i++) judge(site, i, run);
  },
};

function judge(site: Site, i: number, run: RuleRun): void {
  const type = site.holeType(i);
  if (type?.form === 'through') return;
  const surface = site.surface(i);
  const thickness = surface && thicknessAt(surface, site.point(i));
  const why = whyNot(site, i, surface, type, thickness);
  if (why !== undefined || surface === undefined || type === undefined || thickness === undefined) {
    run.leftOut(why ?? BROKEN);
    return;
  }
  run.judged(1);
  const backing = type.backing?.value ?? 0;
  const reach = site.depth(i) * slopeOf(site, i, surface) + backing;
  if (reach <= thickness.mm + LENGTH_SLACK_MM) return;
  const { side } = thickness;
  const phaseFrom = side === undefined || side === 'unknown' ? undefined : surface.substrate.deck?.phaseFrom;
  const data = {
    substrate: surface.substrate.id,
    reach,
    thickness: thickness.mm,
    backing,
    ...(side && { side }),
    ...(phaseFrom && { phaseFrom }),
  };
  const cause = `${data.substrate} ${type.id} ${thickness.mm} ${side ?? ''}`;
  run.finding({ record: `/holes/${i}`, byte: site.layout.holes.byte[i], hole: i, data, cause });
}

/** Cosine of the angle between the axis and the way into the concrete; 0 where the axis is not known. */
function slopeOf(site: Site, i: number, surface: Surface): number {
  const axis = site.axis(i);
  return axis === undefined ? 0 : dot(axis, surface.inward);
}

function whyNot(
  site: Site,
  i: number,
  surface: Surface | undefined,
  type: HoleType | undefined,
  thickness: Thickness | undefined,
): string | undefined {
  if (site.broken[i] !== 0) return BROKEN;
  if (site.substrateName(i) < 0) return NO_SUBSTRATE;
  if (surface === undefined) return site.substrateIsBroken(i) ? BROKEN_SUBSTRATE : NO_FACE;
  if (Number.isNaN(site.depth(i))) return 'depth not known';
  if (Number.isNaN(site.points.z[i])) return 'height not known on an upright face';
  if (slopeOf(site, i, surface) <= 0) return 'axis does not point into the concrete';
  if (thickness === undefined) return 'thickness not known';
  return type === undefined ? 'record of its hole type broken' : undefined;
}

function inWords(side: unknown, phaseFrom: unknown): string {
  const guess = phaseFrom === 'drawing' ? '; where the flutes lie is known from a drawing only' : '';
  if (side === 'low-flute') return ` over the low flute${guess}`;
  if (side === 'high-flute') return ` over the rib${guess}`;
  return side === 'unknown' ? ' over the rib, which is assumed because it is not known where the flutes lie' : '';
}
