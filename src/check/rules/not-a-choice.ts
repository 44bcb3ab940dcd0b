import { misspelling } from '../../model/misspelling.js';
import type { Rule } from '../rule.js';
import { unitMeant } from '../unit-spellings.js';

export const notAChoice: Rule = {
  id: 'not-a-choice',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'A value is none of the choices.',
  why: 'Programs act on these words; one that they do not know leaves the hole without a meaning.',
  mend: 'Use one of the choices, letter for letter.',
  data: { choices: 'the choices', found: 'the value', nearest: 'the nearest choice; absent when none is near' },
  message: ({ choices, found, nearest }) =>
    `${found} is none of the choices here.${nearest === undefined ? ` They are: ${(choices as unknown[]).join(', ')}.` : ` Did you mean "${nearest}"?`}`,
  example: {
    form: 'members',
    bad: '"parties": [{ "id": "P-1", "firm": "Example Surveys", "role": "survevor" }]',
    good: '"parties": [{ "id": "P-1", "firm": "Example Surveys", "role": "surveyor" }]',
  },
  fix({ choices }, { pointer: path, value }) {
    const words = Array.isArray(choices) ? choices.filter((choice) => typeof choice === 'string') : [];
    const meant = typeof value === 'string' ? (unitMeant(value, words) ?? misspelling(value, words)) : undefined;
    return meant === undefined ? undefined : { patch: [{ op: 'replace', path, value: meant }] };
  },
};
