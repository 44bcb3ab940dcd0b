import { ringDistance } from '../../geometry/ring-tree.js';
import { openingAt } from '../opening-at.js';
import type { Rule } from '../rule.js';
import { NO_HEIGHT, type Site } from '../site.js';
import { isIn, type Surface, uOn, vOn } from '../surface.js';

export const outsideSubstrate: Rule = {
  id: 'outside-substrate',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole lies beside the concrete that it names.',
  why: 'The crew finds an opening, an edge or another slab where the hole should be.',
  mend: 'Move the hole onto the substrate, name the substrate that it lies on, or correct the outline.',
  data: {
    substrate: 'id of the substrate',
    where: '`outside` the outline or in an `opening`',
    distance: 'distance to the nearest edge, mm',
    opening: 'index of the opening from 0; only in one',
  },
  message: ({ substrate, where, distance }, say) =>
    where === 'opening'
      ? `The hole lies in an opening of substrate "${substrate}", ${say.length(distance)} from its edge.`
      : `The hole lies ${say.length(distance)} outside substrate "${substrate}".`,
  causeMessage: ({ substrate, where }) =>
    where === 'opening'
      ? `Holes lie in an opening of substrate "${substrate}".`
      : `Holes lie outside substrate "${substrate}".`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [10000.1, 1000, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [9990, 1000, 3000] }\n]',
  },
  checkSite(site, run) {
    for (let i = 0; i < site.holeCount; i++) {
      const surface = site.surface(i);
      const p = site.point(i);
      if (surface?.outline === undefined || site.out[i] !== 0 || Number.isNaN(p[2])) {
        run.leftOut(whyNot(site, i, surface));
        continue;
      }
      run.judged(1);
      const found = off(surface, uOn(surface, p), vOn(surface, p));
      if (found === undefined) continue;
      const data = { substrate: surface.substrate.id, ...found };
      const cause = `${data.substrate} ${found.where} ${found.opening ?? ''}`;
      run.atHole(i, { member: 'point', data, cause });
    }
  },
};

function whyNot(site: Site, i: number, surface: Surface | undefined): string {
  const why = site.whyOut(i) ?? site.whyNoSurface(i);
  if (why !== undefined) return why;
  return surface?.outline === undefined ? 'substrate without an outline' : NO_HEIGHT;
}

function off(
  surface: Surface,
  u: number,
  v: number,
): { where: string; distance: number; opening?: number } | undefined {
  const { outline, openings } = surface;
  if (outline !== undefined && !isIn(outline, u, v)) return { where: 'outside', distance: ringDistance(outline, u, v) };
  const opening = openingAt(surface, u, v);
  return opening < 0 ? undefined : { where: 'opening', distance: ringDistance(openings[opening], u, v), opening };
}
