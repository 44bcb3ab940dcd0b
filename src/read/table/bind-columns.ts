import type { Column, ColumnProfile } from '../../generated/column-profile.js';
import { cellText } from '../../model/formula-guard.js';
import { nearest } from '../../model/nearest.js';
import type { Observe } from '../../model/observation.js';
import { assignable, columnNumber, fieldPointer } from '../../model/table-profile.js';
import { profileUnfit } from './check-profile.js';
import { otherSeparator } from './other-separator.js';

/** A column of the profile and where it stands in a row. */
export interface BoundColumn {
  readonly column: Column;
  /** Index of its cell, from 0. */
  readonly index: number;
}

/** The columns of a profile, found in a table. */
export interface BoundColumns {
  readonly columns: readonly BoundColumn[];
  /** Index of the cell that the row filter looks at. */
  readonly filter: number | undefined;
  /** Index of the cell with the code. */
  readonly code: number | undefined;
  /** Cells that a row must have. */
  readonly width: number;
  /** Whether a row may have more; so where no header says how many there are. */
  readonly open: boolean;
  /** Number of the column, from 1, for JSON Pointers relative to the hole. */
  readonly columnOf: ReadonlyMap<string, number>;
}

const MOST_NAMES_SHOWN = 50;

/**
 * Finds the columns of the profile in the header row, or by their numbers alone where there is none.
 * Observes `column-missing` for each name that the header has not, or has more than once, and
 * `profile-unfit` where another separator would find more than one column; then the result is undefined.
 */
export function bindColumns(
  profile: ColumnProfile,
  header: readonly string[] | undefined,
  row: number,
  observe: Observe,
): BoundColumns | undefined {
  const names = trimHeader(header ?? []);
  const separator = header === undefined ? undefined : otherSeparator(profile, header, names);
  if (separator !== undefined) {
    const problem = `Only one column was found; the separator seems to be ${separator}.`;
    observe(profileUnfit({ member: '/table/separator', problem }));
    return undefined;
  }
  const missing = new Set<string>();
  const find = (key: string): number => {
    const number = columnNumber(key);
    if (number !== undefined && (header === undefined || number <= names.length)) return number - 1;
    const places = number === undefined ? placesOf(names, key) : [];
    if (places.length === 1) return places[0];
    if (!missing.has(key)) observeMissing(key, names, places, profile, row, observe);
    missing.add(key);
    return -1;
  };
  const columns = profile.columns.map((column) => ({ column, index: find(column.column) }));
  const filter = profile.rows === undefined ? undefined : find(profile.rows.column);
  const code = profile.codes === undefined ? undefined : find(profile.codes.column);
  if (missing.size > 0) return undefined;
  const highest = Math.max(...columns.map(({ index }) => index), filter ?? 0, code ?? 0);
  return {
    columns,
    filter,
    code,
    width: header === undefined ? highest + 1 : names.length,
    open: header === undefined,
    columnOf: pointersToColumns(profile, columns, code),
  };
}

/** The names that the cells stand for; empty names at the end are no columns. */
function trimHeader(header: readonly string[]): string[] {
  const names = header.map(headerName);
  while (names.length > 0 && names[names.length - 1] === '') names.pop();
  return names;
}

/** The name that a header cell stands for; a no-break space in it is a blank. */
function headerName(cell: string): string {
  return cellText(cell).replaceAll('\u00a0', ' ');
}

function placesOf(names: readonly string[], name: string): number[] {
  const wanted = name.trim().replaceAll('\u00a0', ' ');
  const places: number[] = [];
  names.forEach((candidate, index) => {
    if (candidate === wanted) places.push(index);
  });
  return places;
}

function observeMissing(
  column: string,
  names: readonly string[],
  places: readonly number[],
  profile: ColumnProfile,
  row: number,
  observe: Observe,
): void {
  const found = places.map((index) => index + 1);
  const data: Record<string, unknown> = { column, header: names.slice(0, MOST_NAMES_SHOWN), columns: names.length };
  // A name that another column goes by is no misspelling of this one.
  const taken = new Set(profile.columns.map((other) => other.column));
  const free = names.filter((name) => name !== '' && !taken.has(name));
  const near = nearest(column, free);
  if (found.length > 0) data.foundAt = found;
  else if (near !== undefined) data.nearest = near;
  observe({ rule: 'column-missing', at: { row, column: found[1] }, data, cause: column });
}

function pointersToColumns(
  profile: ColumnProfile,
  columns: readonly BoundColumn[],
  code: number | undefined,
): ReadonlyMap<string, number> {
  const columnOf = new Map<string, number>();
  if (code !== undefined) {
    const given = new Set(Object.values(profile.codes?.map ?? {}).flatMap((assignment) => Object.keys(assignment)));
    for (const member of assignable) if (given.has(member)) columnOf.set(`/${member}`, code + 1);
    columnOf.set('/origin/code', code + 1);
  }
  for (const { column, index } of columns) {
    columnOf.set(fieldPointer(column.field), index + 1);
    if (column.field === 'id') columnOf.set('', index + 1);
    if (column.field === 'x') columnOf.set('/point', index + 1);
    if (column.field === 'axis.x') columnOf.set('/axis', index + 1);
  }
  return columnOf;
}
