import type { Rule } from '../rule.js';

interface Reason {
  reason: string;
  value?: string;
  count: number;
}

export const rowsLeftOut: Rule = {
  id: 'rows-left-out',
  class: 'format',
  severity: 'info',
  since: '0.1',
  stage: 'table',
  title: 'Rows were left out because the profile says so.',
  why: 'Control and check shots in a list are no holes; that they were left out is said once, with their number.',
  mend: 'Nothing, when these rows are no holes; else correct the filter in the profile.',
  accept: 'Always; it is there to be seen.',
  data: {
    total: 'number of rows',
    reasons: 'why, each with the value that told, the number of rows and the first of them',
  },
  message: ({ total, reasons }) =>
    `${total} ${total === 1 ? 'row was' : 'rows were'} left out as the profile asks: ${(reasons as Reason[]).map(inWords).join(', ')}.`,
  example: {
    form: 'table',
    bad: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\nC-1,0,0,0,CTL\n',
    good: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\n',
  },
};

const WORDS: Readonly<Record<string, string>> = {
  empty: 'empty rows',
  code: 'rows with a code that is not in the map',
  'after-end': 'rows behind the end of the data',
  others: 'rows for other reasons',
};

function inWords({ reason, value, count }: Reason): string {
  return `${count} ${value === undefined ? (WORDS[reason] ?? reason) : `with "${value}"`}`;
}
