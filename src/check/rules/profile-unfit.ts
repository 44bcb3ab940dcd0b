import type { Rule } from '../rule.js';

export const profileUnfit: Rule = {
  id: 'profile-unfit',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'table',
  title: 'The column profile contradicts itself or lacks something.',
  why: 'A table cannot be read with a profile that does not say what a column is, or in which unit.',
  mend: 'Mend the profile at the place given.',
  data: { member: 'JSON Pointer into the profile', problem: 'what is wrong, as a sentence' },
  message: ({ member, problem }) => `The column profile does not fit (${member}): ${problem}`,
  example: {
    form: 'profile',
    bad: '"columns": [\n  { "column": "Id", "field": "id" },\n  { "column": "East", "field": "x" },\n  { "column": "North", "field": "y", "unit": "mm" },\n  { "column": "Height", "field": "z", "unit": "mm" }\n]',
    good: '"columns": [\n  { "column": "Id", "field": "id" },\n  { "column": "East", "field": "x", "unit": "mm" },\n  { "column": "North", "field": "y", "unit": "mm" },\n  { "column": "Height", "field": "z", "unit": "mm" }\n]',
  },
};
