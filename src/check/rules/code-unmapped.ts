import type { Rule } from '../rule.js';

export const codeUnmapped: Rule = {
  id: 'code-unmapped',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'table',
  title: 'A code is not in the map of the profile.',
  why: 'What the row stands for is not known, so no hole was made of it.',
  mend: 'Add the code to the map of the profile, or to the values that are dropped.',
  data: {
    column: 'name of the column',
    code: 'the code',
    nearest: 'the nearest code of the map with the same digits; absent when none is near',
    count: 'number of rows, where they were left out as the profile asks',
  },
  message: ({ column, code, nearest, count }) =>
    `"${code}" in column "${column}" is not in the map of the profile; ${count === undefined || count === 1 ? 'the row was' : `${count} rows were`} left out.${nearest === undefined ? '' : ` Did you mean "${nearest}"?`}`,
  example: {
    form: 'table',
    bad: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,2500,3000,HGR-99\n',
    good: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,2500,3000,HGR-10\n',
  },
};
