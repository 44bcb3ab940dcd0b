/** A record as it stood in a file: nothing about it is taken for granted. */
export type Rec = Readonly<Record<string, unknown>>;

const EMPTY: Rec = {};

/** The value as a record; an empty one where it is none. */
export function recordOf(value: unknown): Rec {
  return isRecord(value) ? value : EMPTY;
}

export function isRecord(value: unknown): value is Rec {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The elements of an array as records; none where it is no array. */
export function recordsOf(value: unknown): Rec[] {
  return Array.isArray(value) ? value.map(recordOf) : [];
}

/** The elements of an array that are texts. */
export function textsOf(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((element) => typeof element === 'string') : [];
}

/** A member of the record itself, never of what its object inherits. */
export function memberOf(record: Rec, name: string): unknown {
  return Object.hasOwn(record, name) ? record[name] : undefined;
}

/** A member where it is a text. */
export function textOf(record: Rec, name: string): string | undefined {
  const value = memberOf(record, name);
  return typeof value === 'string' ? value : undefined;
}

/** The id of a record; empty where it has none. */
export function idOf(record: Rec): string {
  return textOf(record, 'id') ?? '';
}
