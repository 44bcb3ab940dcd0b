import type { Rule } from '../rule.js';

export const wrongCount: Rule = {
  id: 'wrong-count',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'An array or object has too few or too many parts.',
  why: 'A point with one coordinate is no point.',
  mend: 'Write as many parts as are expected.',
  data: { expected: 'the number of parts in words', found: 'the number of parts' },
  message: ({ expected, found }) =>
    `Here must be ${expected} ${expected === 'at least 1' || expected === 'at most 1' ? 'part' : 'parts'}; there ${found === 1 ? 'is' : 'are'} ${found}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "axis": [0, 1] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "axis": [0, 0, 1] }\n]',
  },
};
