import type { Rule } from '../rule.js';

export const rowLength: Rule = {
  id: 'row-length',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'table',
  title: 'A row has more or fewer cells than the others.',
  why: 'Values have most likely slipped into the wrong column.',
  mend: 'Mend the row; a cell with a separator in it must be quoted.',
  data: {
    what: 'what was counted',
    expected: 'number expected, or the greatest one',
    found: 'number found',
    limit: 'true where a limit of the reader was reached',
  },
  message: ({ what, expected, found, limit }) =>
    limit === true
      ? `The row has more than ${expected} ${what}; nothing behind it was read.`
      : `The row has ${found} ${what} where ${expected} are expected; it was left out.`,
  example: {
    form: 'table',
    bad: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,2500\n',
    good: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nH-2,1000,2500,3000,HGR-10\n',
  },
};
