import type { Rule } from '../rule.js';
import { tidyFix } from '../tidy-fix.js';

export const badText: Rule = {
  id: 'bad-text',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'A text does not have the form that it must have.',
  why: 'Ids with blanks at their ends or control characters cannot be told apart by people and get changed by programs on the way.',
  mend: 'Write the text in the form that is expected.',
  data: {
    expected: 'the form in words',
    found: 'the text, or its length',
    member: 'the name, where a name has the wrong form',
  },
  message: ({ expected, found }) => `The text must be ${expected}; it is ${found}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "tag": "FP-1 " }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "tag": "FP-1" }\n]',
  },
  fix: ({ member }, sight) => (member === undefined ? tidyFix(sight) : undefined),
};
