/** What the scale of a georeference looks like. */
export interface ScaleVerdict {
  /**
   * - `expected`: map units for one millimetre, as IfcMapConversion has it.
   * - `inverted`: millimetres for one map unit; files in the wild have it both ways, so somebody has
   *   to say which is meant.
   * - `factor`: within a thousandth of the expected scale, so probably with the combined grid factor
   *   of the survey in it.
   * - `absent`: there is none, and it is not 1.
   * - `other`: none of these.
   */
  kind: 'expected' | 'inverted' | 'factor' | 'absent' | 'other';
  /** Map units for one millimetre. */
  expected: number;
  /** The scale that was given. */
  actual: number | undefined;
}

/** Two scales are the same up to this relative difference. */
const sameScale = 1e-9;
/** A combined grid factor differs from 1 by less than this. */
const greatestGridFactor = 1e-3;
const metresPerMillimetre = 0.001;

/**
 * Compares the scale of a georeference with the one that its units ask for.
 *
 * `mapUnitMetres` is the length of one unit of the reference system in metres: 1 for metres,
 * 1200/3937 for US survey feet. This only says what the number looks like; it changes nothing.
 */
export function suspectScale(georeference: { readonly scale?: number }, mapUnitMetres: number): ScaleVerdict {
  const expected = metresPerMillimetre / mapUnitMetres;
  const actual = georeference.scale;
  return { kind: kindOf(actual, expected), expected, actual };
}

function kindOf(actual: number | undefined, expected: number): ScaleVerdict['kind'] {
  if (actual === undefined) return Math.abs(expected - 1) <= sameScale ? 'expected' : 'absent';
  if (relativeDifference(actual, expected) <= sameScale) return 'expected';
  if (relativeDifference(actual, 1 / expected) <= sameScale) return 'inverted';
  if (relativeDifference(actual, expected) <= greatestGridFactor) return 'factor';
  return 'other';
}

function relativeDifference(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}
