/**
 * One hole on its way from the text into the columns.
 *
 * Texts are not made: the row says where in `bytes` they stand. One row serves all holes of a layout.
 */
export interface HoleRow {
  /** The array that the positions below refer to. */
  bytes: Uint8Array;
  idStart: number;
  idEnd: number;
  /** Numbers by path (see `holeNumbers` of the generated decoder); NaN where absent. */
  numbers: Float64Array;
  /** Start of each referenced id by path (see `holeReferences`); -1 where absent. */
  refStarts: Int32Array;
  refEnds: Int32Array;
}

/** Paths of the numbers of a hole that the columns keep, in the order of {@link HoleRow.numbers}. */
export const holeNumbers = [
  'point.0',
  'point.1',
  'point.2',
  'axis.0',
  'axis.1',
  'axis.2',
  'diameter',
  'depth',
] as const;

/** Paths of the references of a hole, in the order of {@link HoleRow.refStarts}. */
export const holeReferences = [
  'trade',
  'holeType',
  'substrate',
  'level',
  'area',
  'group',
  'origin.source',
  'above.level',
  'above.protectedBy',
] as const;

export function newHoleRow(): HoleRow {
  return {
    bytes: new Uint8Array(0),
    idStart: -1,
    idEnd: -1,
    numbers: new Float64Array(holeNumbers.length),
    refStarts: new Int32Array(holeReferences.length),
    refEnds: new Int32Array(holeReferences.length),
  };
}

/** Empties the row for the next hole. */
export function clearRow(row: HoleRow): void {
  row.idStart = -1;
  row.numbers.fill(Number.NaN);
  row.refStarts.fill(-1);
}

const encoder = new TextEncoder();

/**
 * Fills the row from a parsed hole: the way of the records that the decoder leaves alone. Members of a
 * wrong type are taken as absent, so it also serves records that broke the schema.
 */
export function rowFromHole(hole: unknown, row: HoleRow): void {
  clearRow(row);
  const texts = [textAt(hole, ['id']), ...holeReferences.map((path) => textAt(hole, path.split('.')))];
  const encoded = texts.map((text) => (text === undefined ? undefined : encoder.encode(text)));
  row.bytes = new Uint8Array(encoded.reduce((sum, bytes) => sum + (bytes?.length ?? 0), 0));
  let at = 0;
  encoded.forEach((bytes, k) => {
    if (bytes === undefined) return;
    row.bytes.set(bytes, at);
    if (k === 0) {
      row.idStart = at;
      row.idEnd = at + bytes.length;
    } else {
      row.refStarts[k - 1] = at;
      row.refEnds[k - 1] = at + bytes.length;
    }
    at += bytes.length;
  });
  holeNumbers.forEach((path, k) => {
    const value = valueAt(hole, path.split('.'));
    if (typeof value === 'number') row.numbers[k] = value;
  });
}

function textAt(value: unknown, path: string[]): string | undefined {
  const found = valueAt(value, path);
  return typeof found === 'string' ? found : undefined;
}

function valueAt(value: unknown, path: string[]): unknown {
  let at = value;
  for (const name of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, name)) return undefined;
    at = (at as Record<string, unknown>)[name];
  }
  return at;
}
