import type { Rule } from '../rule.js';

export const columnMissing: Rule = {
  id: 'column-missing',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'table',
  title: 'A column that the profile names is not in the table.',
  why: 'The profile belongs to another list, or the export has changed.',
  mend: 'Correct the column name in the profile, or export the list with the column.',
  data: {
    column: 'the column that is missing',
    nearest: 'the nearest column that the profile does not use; absent when none is near',
    header: 'the first column names there are',
    columns: 'number of columns there are',
    foundAt: 'numbers of the columns that bear the name, where several do',
  },
  message: ({ column, nearest, header, columns, foundAt }) => {
    if (foundAt !== undefined)
      return `Several columns are named "${column}": columns ${(foundAt as number[]).join(' and ')}.`;
    if (nearest !== undefined) return `The table has no column "${column}". Did you mean "${nearest}"?`;
    if (columns === 0) return `The table is empty: there is no row with the names of columns, such as "${column}".`;
    const names = (header as string[]).map((name) => `"${name}"`).join(', ');
    return `The table has no column "${column}". It has ${columns}${names === '' ? '' : `: ${names}`}.`;
  },
  example: {
    form: 'table',
    bad: 'Id,Esat,North,Height,Code\nH-1,1000,2000,3000,HGR-10\n',
    good: 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\n',
  },
};
