import { misspelling } from '../../model/misspelling.js';
import type { Rule } from '../rule.js';

export const unknownMember: Rule = {
  id: 'unknown-member',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'A member has a name that AHX does not know.',
  why: 'A misspelt member is otherwise lost without a word: the depth of the type is drilled, not the one that was meant.',
  mend: 'Correct the name. An addition of your own goes under `ext`, named by a URI.',
  data: { member: 'the name', nearest: 'the nearest name that is known; absent when none is near' },
  message: ({ member, nearest }) =>
    `AHX has no member "${member}" here.${nearest === undefined ? '' : ` Did you mean "${nearest}"?`}`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "diametre": 12 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "diameter": 12 }\n]',
  },
  fix(_data, { tokens, pointer, holder, knownNames }) {
    const name = misspelling(tokens[tokens.length - 1] ?? '', knownNames());
    if (name === undefined || typeof holder !== 'object' || holder === null || Object.hasOwn(holder, name))
      return undefined;
    const path = `${pointer.slice(0, pointer.lastIndexOf('/'))}/${name}`;
    return { patch: [{ op: 'move', from: pointer, path }] };
  },
};
