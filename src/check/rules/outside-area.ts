import { distanceToRing } from '../../geometry/ring.js';
import { kindsOf } from '../kinds.js';
import { planRing } from '../plan-ring.js';
import type { Rule } from '../rule.js';
import { AREA_BROKEN } from '../site-areas.js';
import type { Site } from '../site.js';
import { isIn, uOn, vOn } from '../surface.js';

export const outsideArea: Rule = {
  id: 'outside-area',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'completeness',
  title: 'A hole lies outside of the area that it names.',
  why: 'Work is given out and stopped by area: the hole goes to the wrong crew or shift, and a condition of the area where it really lies is overlooked.',
  mend: 'Name the area in which the hole lies, or correct its outline.',
  accept: 'When the area is meant for its organisation alone and its outline is only a sketch.',
  needs: 'An area with an outline.',
  data: { area: 'id of the area', distance: 'distance to its outline in plan, mm' },
  message: ({ area, distance }, say) => `The hole lies ${say.length(distance)} outside area "${area}" in plan.`,
  causeMessage: ({ area }) => `Holes that name area "${area}" lie outside of it in plan.`,
  example: {
    form: 'members',
    bad: '"areas": [{ "id": "A-1", "name": "Pour 1", "outline": [[0, 0], [4900, 0], [4900, 9000], [0, 9000]] }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "area": "A-1", "point": [5000, 5000] }\n]',
    good: '"areas": [{ "id": "A-1", "name": "Pour 1", "outline": [[0, 0], [5000, 0], [5000, 9000], [0, 9000]] }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "area": "A-1", "point": [5000, 5000] }\n]',
  },
  checkSite(site, run) {
    const { areas } = site;
    const { list, of } = kindsOf(site);
    const rings = areas.records.map((area) => planRing(area?.outline));
    const ringOf = list.map(({ out, area, count }) => {
      if (area < 0 || (areas.records[area] !== undefined && rings[area] === undefined)) return undefined;
      const why = out ?? (rings[area] === undefined ? AREA_BROKEN : undefined);
      if (why === undefined) run.judged(count);
      else run.leftOut(why, count);
      return why === undefined ? rings[area] : undefined;
    });
    if (ringOf.every((ring) => ring === undefined)) return;
    const { x, y } = site.points;
    for (let i = 0; i < site.holeCount; i++) {
      const ring = ringOf[of[i]];
      if (ring === undefined || isIn(ring, x[i], y[i]) || isBesideConcrete(site, i)) continue;
      const { area } = list[of[i]];
      const data = { area: areas.id(area), distance: distanceToRing(ring, x[i], y[i]) };
      run.atHole(i, { member: 'point', data, cause: `${area}` });
    }
  },
};

/** Whether outside-substrate says of a hole that it is at a wrong place. */
function isBesideConcrete(site: Site, i: number): boolean {
  const surface = site.surface(i);
  const p = site.point(i);
  if (surface?.outline === undefined || Number.isNaN(p[2])) return false;
  return !isIn(surface.outline, uOn(surface, p), vOn(surface, p));
}
