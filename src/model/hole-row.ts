import { tagHash } from './tag-hash.js';

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
  /** Hash of the tag (see {@link tagHash}); 0 where absent. */
  tagHash: number;
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
  'positionTolerance.radius',
  'positionTolerance.along.0',
  'positionTolerance.along.1',
  'positionTolerance.across.0',
  'positionTolerance.across.1',
  'positionTolerance.height.0',
  'positionTolerance.height.1',
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
    tagHash: 0,
    numbers: new Float64Array(holeNumbers.length),
    refStarts: new Int32Array(holeReferences.length),
    refEnds: new Int32Array(holeReferences.length),
  };
}

/** Empties the row for the next hole. */
export function clearRow(row: HoleRow): void {
  row.idStart = -1;
  row.tagHash = 0;
  // Loops are quicker than `fill` for so few.
  const { numbers, refStarts } = row;
  for (let k = 0; k < numbers.length; k++) numbers[k] = Number.NaN;
  for (let k = 0; k < refStarts.length; k++) refStarts[k] = -1;
}

const encoder = new TextEncoder();
const referencePaths = holeReferences.map((path) => path.split('.'));
const numberPaths = holeNumbers.map((path) => path.split('.'));
/** Room for all texts of one hole. */
const scratch = new Uint8Array(1 << 13);
/** Most units of UTF-16 of an id that a row takes; longer ones, which the schema does not allow, are left out. */
export const LONGEST_TEXT = Math.floor(scratch.length / (holeReferences.length + 1) / 3);

/**
 * Fills the row from a parsed hole: the way of the records that the decoder leaves alone. Members of a
 * wrong type are taken as absent, so it also serves records that broke the schema. The row's bytes are
 * valid until the next call.
 */
export function rowFromHole(hole: unknown, row: HoleRow): void {
  clearRow(row);
  row.bytes = scratch;
  let at = 0;
  const put = (text: unknown): number => {
    if (typeof text !== 'string' || text.length > LONGEST_TEXT) return -1;
    const start = at;
    at += encoder.encodeInto(text, scratch.subarray(at)).written;
    return start;
  };
  row.idStart = put(valueAt(hole, ['id']));
  row.idEnd = at;
  const tag = valueAt(hole, ['tag']);
  if (typeof tag === 'string') row.tagHash = tagHash(tag);
  for (let k = 0; k < referencePaths.length; k++) {
    row.refStarts[k] = put(valueAt(hole, referencePaths[k]));
    row.refEnds[k] = at;
  }
  for (let k = 0; k < numberPaths.length; k++) {
    const value = valueAt(hole, numberPaths[k]);
    if (typeof value === 'number') row.numbers[k] = value;
  }
}

function valueAt(value: unknown, path: readonly string[]): unknown {
  let at = value;
  for (const name of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, name)) return undefined;
    at = (at as Record<string, unknown>)[name];
  }
  return at;
}
