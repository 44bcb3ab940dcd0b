import type { Rule } from '../rule.js';

export const missingMember: Rule = {
  id: 'missing-member',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'A member that must be there is missing.',
  why: 'Without it the record cannot be used; it was not judged further.',
  mend: 'Add the member.',
  data: { member: 'the name of the member' },
  message: ({ member }) => `The member "${member}" is missing.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1" }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] }\n]',
  },
};
