import { dot } from '../../geometry/vector.js';
import { type Kinds, kindsOf } from '../kinds.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import { NO_HEIGHT, type Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { thicknessAt } from '../surface.js';

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
    const kinds = kindsOf(site);
    for (let i = 0; i < site.holeCount; i++) judge(site, kinds, i, run);
  },
};

function judge(site: Site, kinds: Kinds, i: number, run: SiteRun): void {
  const kind = kinds.at(i);
  const { type, surface, axis } = kind;
  if (type?.form === 'through') return;
  const depth = site.depth(i);
  const slope = surface === undefined || axis === undefined ? 0 : dot(axis, surface.inward);
  const thickness = surface && thicknessAt(surface, site.point(i));
  if (
    kind.out !== undefined ||
    type === undefined ||
    surface === undefined ||
    thickness === undefined ||
    !(depth * slope > 0)
  ) {
    run.leftOut(whyNot(site, i, depth, slope));
    return;
  }
  if (Number.isNaN(site.points.z[i])) {
    run.leftOut(NO_HEIGHT);
    return;
  }
  run.judged(1);
  const backing = type.backing?.value ?? 0;
  const reach = depth * slope + backing;
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
  run.atHole(i, { data, cause: `${data.substrate} ${type.id} ${thickness.mm} ${side ?? ''}` });
}

function whyNot(site: Site, i: number, depth: number, slope: number): string {
  const why = site.whyOut(i) ?? site.whyNoSurface(i);
  if (why !== undefined) return why;
  if (Number.isNaN(depth)) return 'depth not known';
  if (Number.isNaN(site.points.z[i])) return NO_HEIGHT;
  if (slope <= 0) return 'axis does not point into the concrete';
  return site.types.of(i) === undefined ? 'record of its hole type broken' : 'thickness not known';
}

function inWords(side: unknown, phaseFrom: unknown): string {
  const guess = phaseFrom === 'drawing' ? '; where the flutes lie is known from a drawing only' : '';
  if (side === 'low-flute') return ` over the low flute${guess}`;
  if (side === 'high-flute') return ` over the rib${guess}`;
  return side === 'unknown' ? ' over the rib, which is assumed because it is not known where the flutes lie' : '';
}
