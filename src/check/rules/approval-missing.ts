import { judgeTypes, typesInUse } from '../judge-types.js';
import type { Rule } from '../rule.js';

/** Principles of what is set into drilled concrete without a product that has an approval, or may have none. */
const WITHOUT_APPROVAL: ReadonlySet<string> = new Set(['none', 'cast-in', 'other']);

export const approvalMissing: Rule = {
  id: 'approval-missing',
  class: 'data',
  severity: { 'for-review': 'off', 'for-drilling': 'warning', 'for-closeout': 'warning' },
  since: '0.1',
  stage: 'control',
  title: 'The type of a post-installed anchor names no approval.',
  why: 'Bit, depth, cleaning and distances come from the approval of the product. Without it nobody can look them up on the lift, nor show later by what they were judged.',
  mend: 'Ask the trade for the approval and name it with number and edition.',
  accept: 'When the designer of the fixing answers for it without an approval, and says so in the submittal.',
  data: { holeType: 'id of the hole type', principle: 'principle of the anchor' },
  message: ({ holeType, principle }) => `Hole type "${holeType}" (${principle} anchor) names no approval.`,
  causeMessage: () => 'Hole types for post-installed anchors name no approval.',
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60 }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "approval": { "number": "INV-0001", "edition": "2025" } }\n]',
  },
  checkSite(site, run) {
    const used = typesInUse(site);
    judgeTypes(site, run, { readsLengths: false }, (type) => {
      const { id, principle, made, purpose, approval } = type;
      if (WITHOUT_APPROVAL.has(principle) || made === 'cast-in' || purpose === 'existing') return undefined;
      if (!used.has(type)) return undefined;
      return approval === undefined ? { finding: { data: { holeType: id, principle }, cause: '' } } : 'passed';
    });
  },
};
