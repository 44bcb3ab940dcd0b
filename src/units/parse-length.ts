import { type LengthError, lengthError } from './length-error.js';
import { type LengthUnit, lengthUnits } from './length-unit.js';
import { parseFeetInches } from './parse-feet-inches.js';
import { scaleDecimal } from './scale-decimal.js';
import { type DecimalSign, scanDecimal } from './scan-decimal.js';

/** Units in which a text may hold a length: a decimal unit, or feet, inches and fractions. */
export type TextUnit = LengthUnit | 'ft-in';

/**
 * Reads a length in a stated unit and returns millimetres: the double nearest to the exact value,
 * so that `3.2` m is 3200 and `10.53125` ft is 3209.925. Zero has no sign.
 *
 * Decimal units follow `parseNumber`, `ft-in` follows `parseFeetInches`.
 */
export function parseLength(text: string, unit: TextUnit, decimal: DecimalSign): number | LengthError {
  if (unit === 'ft-in') return parseFeetInches(text, decimal);
  const scanned = scanDecimal(text, decimal);
  if ('expected' in scanned) return scanned;
  const size = scaleDecimal(scanned, lengthUnits[unit]);
  if (!Number.isFinite(size)) return lengthError('a length within range', text);
  return scanned.negative && size !== 0 ? -size : size;
}
