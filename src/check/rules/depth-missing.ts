import { judgeKinds } from '../judge-kinds.js';
import type { Rule } from '../rule.js';
import { isToBeMade, TYPE_BROKEN } from '../to-be-made.js';

export const depthMissing: Rule = {
  id: 'depth-missing',
  class: 'data',
  severity: { 'for-review': 'warning', 'for-drilling': 'error', 'for-closeout': 'error' },
  since: '0.1',
  stage: 'completeness',
  title: 'A blind hole has no depth.',
  why: 'The crew cannot set the depth stop and guesses from the anchor at hand. Nobody can check whether the hole meets a tendon or comes out on the far side.',
  mend: 'Ask the trade for the depth in the approval of the anchor, and give it to the hole type.',
  data: { holeType: 'id of the hole type' },
  message: ({ holeType }) => `Neither the blind hole nor its type "${holeType}" has a depth.`,
  causeMessage: ({ holeType }) => `Blind holes of type "${holeType}" have no depth, and neither has the type.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10 }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60 }\n]',
  },
  checkSite(site, run) {
    judgeKinds(site, run, ({ type, hasDepth, holeType: name }) => {
      if (type === undefined) return { leftOut: TYPE_BROKEN };
      if (type.form !== 'blind' || !isToBeMade(type)) return undefined;
      if (hasDepth || type.depth !== undefined) return 'passed';
      const holeType = site.types.id(name);
      return { finding: { data: { holeType }, cause: `${name}` } };
    });
  },
};
