import { isPlainSlip, misspelling } from '../../model/misspelling.js';
import { GEOMETRY_MEMBERS } from '../geometry-members.js';
import type { Rule } from '../rule.js';

export const unknownMember: Rule = {
  id: 'unknown-member',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'A member has a name that AHX does not know.',
  why: 'A misspelt member is otherwise lost without a word: what it says is not done, and another value may hold in its place.',
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
    const word = tokens.at(-1) ?? '';
    if (typeof holder !== 'object' || holder === null) return undefined;
    const names = knownNames();
    const name = misspelling(word, names);
    if (name === undefined || Object.hasOwn(holder, name) || timesMeant(holder, names).get(name) !== 1)
      return undefined;
    const path = `${pointer.slice(0, pointer.lastIndexOf('/'))}/${name}`;
    const isSure = !GEOMETRY_MEMBERS.has(name) || isPlainSlip(word, name);
    return { patch: [{ op: 'move', from: pointer, path }], ...(!isSure && { geometry: true }) };
  },
};

const times = new WeakMap<object, ReadonlyMap<string, number>>();

/** How many members of an object each known name may be meant by; worked out once. */
function timesMeant(holder: object, names: readonly string[]): ReadonlyMap<string, number> {
  const before = times.get(holder);
  if (before !== undefined) return before;
  const found = new Map<string, number>();
  for (const word of Object.keys(holder)) {
    const name = names.includes(word) ? undefined : misspelling(word, names);
    if (name !== undefined) found.set(name, (found.get(name) ?? 0) + 1);
  }
  times.set(holder, found);
  return found;
}
