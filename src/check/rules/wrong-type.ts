import { jsonTypeFix } from '../json-type-fix.js';
import type { Rule } from '../rule.js';

export const wrongType: Rule = {
  id: 'wrong-type',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'A value is of the wrong type.',
  why: 'A program that expects a number cannot compute with a text, and one that guesses may guess a wrong unit.',
  mend: 'Write the value as the type that is expected; an absent value is left out, not `null`.',
  data: { expected: 'the type that is expected', found: 'the type that is there' },
  message: ({ expected, found }) => `Here must be ${expected}, not ${found}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": "60" }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 60 }\n]',
  },
  fix: ({ expected }, sight) => jsonTypeFix(expected, sight),
};
