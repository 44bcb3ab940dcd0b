import type { HoleRow } from '../model/hole-row.js';
import type { Shape } from './shape.js';

/** Says where the id or the reference of a hole stands in the bytes of the row. */
export function setText(shape: Shape, row: HoleRow, start: number, end: number): void {
  if (shape.reference >= 0) {
    row.refStarts[shape.reference] = start;
    row.refEnds[shape.reference] = end;
  } else {
    row.idStart = start;
    row.idEnd = end;
  }
}

/** Takes a member and all inside it out of the row, as if it were absent. */
export function forget(shape: Shape, row: HoleRow): void {
  if (shape.path === 'id') row.idStart = -1;
  if (shape.path === 'tag') row.tagHash = 0;
  if (shape.reference >= 0) row.refStarts[shape.reference] = -1;
  for (const column of shape.columns) if (column >= 0) row.numbers[column] = Number.NaN;
  for (const member of shape.members) forget(member, row);
}
