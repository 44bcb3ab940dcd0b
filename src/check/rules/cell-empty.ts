import type { Rule } from '../rule.js';

export const cellEmpty: Rule = {
  id: 'cell-empty',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'table',
  title: 'A cell that must be filled is empty.',
  why: 'The hole of this row is not whole; it was left out.',
  mend: 'Fill the cell, or say in the profile that it is optional.',
  data: { column: 'name of the column' },
  message: ({ column }) => `The cell in column "${column}" is empty. The row was left out.`,
  example: {
    form: 'table',
    bad: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,,3000,HGR-10\n',
    good: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,2500,3000,HGR-10\n',
  },
};
