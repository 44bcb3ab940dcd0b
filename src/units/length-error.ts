/** Why a text is no length: what was expected and what stood there, both for people. */
export interface LengthError {
  /** What was expected, in words that follow "must be". */
  readonly expected: string;
  /** The part of the text that does not fit, at most 60 characters of it. */
  readonly found: string;
}

const LONGEST_FOUND = 60;

/** Makes a `LengthError`; a long `found` is cut and ends in an ellipsis. */
export function lengthError(expected: string, found: string): LengthError {
  const shown = found.length > LONGEST_FOUND ? `${found.slice(0, LONGEST_FOUND - 1)}…` : found;
  return { expected, found: shown };
}
