import type { Rule } from '../rule.js';

export const duplicateName: Rule = {
  id: 'duplicate-name',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'JSON',
  title: 'An object has two members of one name.',
  why: 'Some parsers keep the first value, some the last: two programs would read two different holes.',
  mend: 'Remove one of the two members.',
  data: { name: 'the name that comes twice' },
  message: ({ name }) =>
    `The member "${name}" comes twice in one object; which of the two values is meant cannot be told.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 60, "depth": 70 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 60 }\n]',
  },
};
