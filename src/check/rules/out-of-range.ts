import type { Rule } from '../rule.js';

export const outOfRange: Rule = {
  id: 'out-of-range',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'A number lies outside its limits.',
  why: 'No hole has a depth of zero or less; a value beyond the limits is a mistake of unit or sign.',
  mend: 'Write the value that was meant, in millimetres or degrees.',
  data: { expected: 'the limit in words', found: 'the number' },
  message: ({ expected, found }) => `Here must be ${expected}; there is ${found}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": -60 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 60 }\n]',
  },
};
