import type { Rule } from '../rule.js';

export const numberOutOfRange: Rule = {
  id: 'number-out-of-range',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'JSON',
  title: 'A number is larger than any double.',
  why: 'It is read as infinite, and nothing can be computed with it.',
  mend: 'Write the number that was meant.',
  data: { written: 'the number as written' },
  message: ({ written }) => `The number ${written} is larger than any number that programs can hold.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 1e400 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 60 }\n]',
  },
};
