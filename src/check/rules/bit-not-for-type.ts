import { lengthAtStart } from '../../units/length-at-start.js';
import { judgeTypes } from '../judge-types.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const bitNotForType: Rule = {
  id: 'bit-not-for-type',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'The bit is of another size than the hole.',
  why: 'The crew takes the bit that is named. An inch bit is near a metric one and not the same: the anchor spins, or does not go in.',
  mend: 'Look the bit up in the approval of the anchor, and correct the bit or the diameter.',
  accept: 'When the approval asks for a bit of another nominal size than the hole.',
  needs: 'A nominal size of the bit that begins with a length and its unit, such as `3/8 in` or `10 mm`.',
  options: {
    most: { what: 'Greatest difference of the two sizes.', unit: 'mm', default: 0.05, least: 0, most: 10 },
  },
  data: {
    holeType: 'id of the hole type',
    nominal: 'nominal size of the bit as written',
    bit: 'that size, mm',
    diameter: 'diameter of the hole type, mm',
  },
  message: ({ holeType, nominal, bit, diameter }, say) =>
    `The bit "${nominal}" of type "${holeType}" is ${say.length(bit)}; the hole is ${say.length(diameter)}.`,
  causeMessage: ({ bit, diameter }, say) =>
    `Hole types name a bit of ${say.length(bit)} for a hole of ${say.length(diameter)}.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "bit": { "nominal": "3/8 in" } }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 9.525, "depth": 60,\n    "bit": { "nominal": "3/8 in" } }\n]',
  },
  checkSite(site, run) {
    const most = run.option('most');
    judgeTypes(site, run, { readsLengths: true }, ({ id, bit, diameter }) => {
      if (bit === undefined) return undefined;
      const size = lengthAtStart(bit.nominal);
      if (size === undefined) return { leftOut: 'nominal size of the bit without a length and unit' };
      if (Math.abs(size - diameter) <= most + LENGTH_SLACK_MM) return 'passed';
      const data = { holeType: id, nominal: bit.nominal, bit: size, diameter };
      return { finding: { member: 'bit/nominal', data, cause: `${size} ${diameter}` } };
    });
  },
};
