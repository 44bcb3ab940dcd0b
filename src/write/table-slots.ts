import type { Column, ColumnProfile } from '../generated/column-profile.js';
import { columnNumber } from '../model/table-profile.js';

/** One column of the table that is written. */
export interface Slot {
  /** Name in the header, which the profile finds it by. */
  readonly header: string;
  /** Columns of the profile that are read from it; all of them get the same cell. */
  readonly columns: readonly Column[];
  /** Whether the codes are read from it. */
  readonly hasCode: boolean;
  /** Whether the row filter looks at it. */
  readonly hasFilter: boolean;
}

/**
 * The columns of the table that a profile reads, from left to right: those with a number at their
 * place, those with a name in the order of the profile in the places that are left, then the column
 * of the codes and of the row filter where no field has them. Undefined stands for a column that the
 * profile does not read.
 */
export function tableSlots(profile: ColumnProfile): (Slot | undefined)[] {
  const keys = profile.columns.map(({ column }) => column);
  if (profile.codes !== undefined) keys.push(profile.codes.column);
  if (profile.rows !== undefined) keys.push(profile.rows.column);
  const slots: (Slot | undefined)[] = [];
  const distinct = [...new Set(keys)];
  const named = distinct.filter((key) => columnNumber(key) === undefined);
  for (const key of distinct) {
    const number = columnNumber(key);
    if (number !== undefined) slots[number - 1] = makeSlot(key, profile);
  }
  let free = 0;
  for (const key of named) {
    while (slots[free] !== undefined) free++;
    slots[free] = makeSlot(key, profile);
  }
  return Array.from(slots);
}

function makeSlot(key: string, profile: ColumnProfile): Slot {
  return {
    header: key,
    columns: profile.columns.filter(({ column }) => column === key),
    hasCode: profile.codes?.column === key,
    hasFilter: profile.rows?.column === key,
  };
}
