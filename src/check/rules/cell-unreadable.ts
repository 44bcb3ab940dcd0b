import type { Rule } from '../rule.js';

export const cellUnreadable: Rule = {
  id: 'cell-unreadable',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'table',
  title: 'A cell does not hold what its column is for.',
  why: 'The hole of this row has no place or size; it was left out.',
  mend: 'Correct the cell, or the unit of the column in the profile.',
  data: { column: 'name of the column, where it is known', expected: 'what is expected, in words', found: 'the cell' },
  message: ({ column, expected, found }) =>
    `The cell${column === undefined ? '' : ` in column "${column}"`} must be ${expected}; it is "${found}".`,
  example: {
    form: 'table',
    bad: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,25OO,3000,HGR-10\n',
    good: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,2500,3000,HGR-10\n',
  },
};
