import { judgeKinds } from '../judge-kinds.js';
import type { Rule } from '../rule.js';
import { ANGLE_SLACK_DEG, angleInWords, slantDeg } from '../slant.js';
import { TYPE_BROKEN } from '../to-be-made.js';

export const notSquare: Rule = {
  id: 'not-square',
  class: 'site',
  severity: 'warning',
  since: '0.1',
  stage: 'geometry',
  title: 'The axis of a hole is a little off square to the face.',
  why: 'A small slant is seldom meant: a plumb axis on a soffit with a fall, or a face that was turned afterwards. An anchor in a slanting hole bends its rod and sits badly.',
  mend: 'Leave the axis out where the hole is meant square to the face, or correct the face.',
  accept: 'When the hole is meant to slant so little, or to be plumb on a face with a fall.',
  needs: 'An axis of the hole and a substrate with a face.',
  options: {
    limit: {
      what: 'Greatest slant that counts as square, for types without `squarenessDeg`.',
      unit: 'degree',
      default: 0.5,
      least: 0,
      most: 90,
    },
    meant: { what: 'A larger slant than this is taken as meant.', unit: 'degree', default: 5, least: 0, most: 90 },
  },
  data: {
    substrate: 'id of the substrate',
    slantDeg: 'angle between the axis and the direction into the concrete, degrees',
    limitDeg: 'greatest slant that counts as square, degrees',
  },
  message: ({ substrate, slantDeg, limitDeg }) =>
    `The axis slants by ${angleInWords(slantDeg)} from square to the face of substrate "${substrate}"; up to ${angleInWords(limitDeg)} counts as square.`,
  causeMessage: ({ substrate, slantDeg }) =>
    `Axes of holes slant by ${angleInWords(slantDeg)} from square to the face of substrate "${substrate}".`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "axis": [2, 0, 100] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "axis": [0.2, 0, 100] }\n]',
  },
  checkSite(site, run) {
    const meant = run.option('meant');
    judgeKinds(site, run, ({ axis, surface, type, first }) => {
      if (axis === undefined || axis === surface?.inward) return undefined;
      if (surface === undefined) return { leftOut: site.whyNoSurface(first) ?? 'substrate without a face' };
      if (type === undefined) return { leftOut: TYPE_BROKEN };
      const limitDeg = type.squarenessDeg ?? run.option('limit');
      const slant = slantDeg(surface, axis);
      if (slant <= limitDeg + ANGLE_SLACK_DEG || slant > meant + ANGLE_SLACK_DEG) return 'passed';
      const { id: substrate } = surface.substrate;
      const data = { substrate, slantDeg: slant, limitDeg };
      return { finding: { member: 'axis', data, cause: `${substrate} ${type.id} ${slant.toFixed(3)}` } };
    });
  },
};
