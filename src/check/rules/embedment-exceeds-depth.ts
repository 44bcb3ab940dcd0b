import type { HoleType } from '../../generated/layout.js';
import { judgeHoles } from '../judge-holes.js';
import { judgeTypes, type OfType } from '../judge-types.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { TYPE_BROKEN } from '../to-be-made.js';

export const embedmentExceedsDepth: Rule = {
  id: 'embedment-exceeds-depth',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'The embedment of the anchor is more than the depth of the hole.',
  why: 'The anchor does not go in as far as it must and stands out of the concrete; mostly the two numbers were exchanged.',
  mend: 'Look both up in the approval, and correct the depth or the embedment.',
  data: {
    holeType: 'id of the hole type',
    embedment: 'effective embedment of the anchor, mm',
    depth: 'depth of the hole, mm',
  },
  message: ({ holeType, embedment, depth }, say) =>
    `The anchor of type "${holeType}" goes ${say.length(embedment)} into a hole that is ${say.length(depth)} deep.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "embedment": 65 }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "embedment": 50 }\n]',
  },
  checkSite(site, run) {
    judgeTypes(site, run, { readsLengths: true }, (type) => ofDepth(type, type.depth, 'embedment'));
    judgeHoles<HoleType>(
      site,
      run,
      ({ type, hasDepth }) => {
        if (!hasDepth) return undefined;
        if (type === undefined) return { leftOut: TYPE_BROKEN };
        return type.embedment === undefined ? undefined : { each: type };
      },
      (i, type) => ofDepth(type, site.depth(i), 'depth'),
    );
  },
};

function ofDepth({ id, embedment }: HoleType, depth: number | undefined, member: string): OfType | undefined {
  if (embedment === undefined || depth === undefined) return undefined;
  if (embedment <= depth + LENGTH_SLACK_MM) return 'passed';
  return { finding: { member, data: { holeType: id, embedment, depth }, cause: `${id} ${depth}` } };
}
