import type { Rule } from '../rule.js';

export const quoteNotClosed: Rule = {
  id: 'quote-not-closed',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'table',
  title: 'A quoted cell is never closed.',
  why: 'All rows behind the opening quote would be one cell.',
  mend: 'Close the quote, or double a quote that is part of the text.',
  data: { found: 'the beginning of the cell', linesInside: 'number of line ends behind the quote' },
  message: ({ linesInside }) =>
    `The quote that opens here is never closed; the ${linesInside} ${linesInside === 1 ? 'line' : 'lines'} behind it were not read.`,
  example: {
    form: 'table',
    bad: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\n"H-2,1000,2500,3000,HGR-10\n',
    good: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\n"H-2",1000,2500,3000,HGR-10\n',
  },
};
