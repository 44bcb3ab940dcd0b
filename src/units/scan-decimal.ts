import { type LengthError, lengthError } from './length-error.js';

/** The sign between whole and fraction. */
export type DecimalSign = 'point' | 'comma';

/** A decimal number as it is written: `mantissa` times ten to the `exponent`. */
export interface ScannedDecimal {
  readonly negative: boolean;
  /** A number up to 15 digits, where it is exact; above that a bigint. */
  readonly mantissa: number | bigint;
  readonly exponent: number;
}

const EXACT_DIGITS = 15;
const LARGEST_EXPONENT = 400;
const MINUS_SIGN = 0x2212;

/**
 * Takes a decimal number apart: a sign, digits with at most one decimal sign, an exponent.
 * Nothing else may stand in the text, no blank, no unit, no thousands sign.
 */
export function scanDecimal(text: string, decimal: DecimalSign): ScannedDecimal | LengthError {
  const mark = decimal === 'point' ? 0x2e : 0x2c;
  const first = text.charCodeAt(0);
  const negative = first === 0x2d || first === MINUS_SIGN;
  let at = negative || first === 0x2b ? 1 : 0;
  const start = at;
  let mantissa = 0;
  let digits = 0;
  let places = -1;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code >= 0x30 && code <= 0x39) {
      mantissa = mantissa * 10 + (code - 0x30);
      digits++;
      if (places >= 0) places++;
    } else if (code === mark && places < 0) places = 0;
    else break;
  }
  const end = at;
  const exponent = scanExponent(text, at);
  if (digits === 0 || exponent === undefined) return unreadable(text, decimal);
  if (Math.abs(exponent) > LARGEST_EXPONENT) return lengthError('a number within range', text);
  return {
    negative,
    mantissa: digits > EXACT_DIGITS ? bigMantissa(text.slice(start, end)) : mantissa,
    exponent: exponent - Math.max(0, places),
  };
}

/** The exponent that ends the text; 0 where the text ends before it, undefined for anything else. */
function scanExponent(text: string, start: number): number | undefined {
  if (start === text.length) return 0;
  if ((text.charCodeAt(start) | 0x20) !== 0x65) return undefined;
  let at = start + 1;
  const sign = text.charCodeAt(at);
  if (sign === 0x2b || sign === 0x2d) at++;
  if (at === text.length) return undefined;
  let value = 0;
  for (; at < text.length; at++) {
    const digit = text.charCodeAt(at) - 0x30;
    if (digit < 0 || digit > 9) return undefined;
    value = Math.min(value * 10 + digit, 100000);
  }
  return sign === 0x2d ? -value : value;
}

function bigMantissa(digits: string): bigint {
  return BigInt(digits.replace(/[.,]/, ''));
}

function unreadable(text: string, decimal: DecimalSign): LengthError {
  return lengthError(`a plain number with a decimal ${decimal}, without unit or thousands signs`, text);
}
