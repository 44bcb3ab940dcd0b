import { type LengthError, lengthError } from './length-error.js';
import { type DecimalSign, scanDecimal } from './scan-decimal.js';

const LARGEST_EXACT_POWER = 22;

/**
 * Reads a plain decimal number; the result is the double nearest to what is written, and zero has
 * no sign.
 *
 * The whole text must be the number: no blanks, no unit, no thousands signs, the other decimal sign
 * nowhere. `1E+05` is read as 100000: an exponent is taken at its word, since digits that a
 * spreadsheet dropped before it cannot be found again.
 */
export function parseNumber(text: string, decimal: DecimalSign): number | LengthError {
  const scanned = scanDecimal(text, decimal);
  if ('expected' in scanned) return scanned;
  const { mantissa, exponent } = scanned;
  const size = Math.abs(exponent);
  let value: number;
  // Both operands are exact doubles here, so that the one operation rounds once.
  if (typeof mantissa === 'number' && size <= LARGEST_EXACT_POWER) {
    value = exponent < 0 ? mantissa / 10 ** size : mantissa * 10 ** size;
  } else value = Number(`${mantissa}e${exponent}`);
  if (!Number.isFinite(value)) return lengthError('a number within range', text);
  return scanned.negative && value !== 0 ? -value : value;
}
