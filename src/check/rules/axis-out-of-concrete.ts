import { judgeKinds } from '../judge-kinds.js';
import type { Rule } from '../rule.js';
import { angleInWords, slantDeg } from '../slant.js';
import { isInto } from '../surface.js';

export const axisOutOfConcrete: Rule = {
  id: 'axis-out-of-concrete',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'The axis of a hole does not point into the concrete.',
  why: 'Nobody can drill it: the hole would run along the face or away from it. Mostly the axis was taken the wrong way round, or the hole stands on the wrong substrate.',
  mend: 'Turn the axis round, leave it out where the hole is square to the face, or name the substrate that is drilled.',
  needs: 'An axis of the hole and a substrate with a face.',
  data: {
    substrate: 'id of the substrate',
    slantDeg: 'angle between the axis and the direction into the concrete, degrees',
  },
  message: ({ substrate, slantDeg }) =>
    `The axis does not point into substrate "${substrate}": it is ${angleInWords(slantDeg)} away from the direction into the concrete.`,
  causeMessage: ({ substrate }) => `Axes of holes do not point into substrate "${substrate}".`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "axis": [0, 0, -1] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "axis": [0, 0, 1] }\n]',
  },
  checkSite(site, run) {
    judgeKinds(site, run, ({ axis, surface, first }) => {
      if (axis === undefined || axis === surface?.inward) return undefined;
      if (surface === undefined) return { leftOut: site.whyNoSurface(first) ?? 'substrate without a face' };
      if (isInto(surface, axis)) return 'passed';
      const { id: substrate } = surface.substrate;
      return { finding: { member: 'axis', data: { substrate, slantDeg: slantDeg(surface, axis) }, cause: substrate } };
    });
  },
};
