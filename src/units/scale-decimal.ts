import { divideExactly } from './divide-exactly.js';
import type { LengthRatio } from './length-unit.js';
import type { ScannedDecimal } from './scan-decimal.js';

/** Up to here ten to the power, times any denominator of a unit, is an exact double. */
const LARGEST_EXACT_POWER = 15;

/** The size, without sign, of a scanned number times a ratio: the double nearest to it. */
export function scaleDecimal(scanned: ScannedDecimal, ratio: LengthRatio): number {
  const { mantissa, exponent } = scanned;
  if (typeof mantissa === 'number') {
    const product = mantissa * ratio.numerator;
    const dividend = exponent > 0 ? product * 10 ** exponent : product;
    if (dividend <= Number.MAX_SAFE_INTEGER && exponent >= -LARGEST_EXACT_POWER) {
      const divisor = exponent < 0 ? ratio.denominator * 10 ** -exponent : ratio.denominator;
      return dividend / divisor;
    }
  }
  const power = 10n ** BigInt(Math.abs(exponent));
  const dividend = BigInt(mantissa) * BigInt(ratio.numerator) * (exponent > 0 ? power : 1n);
  const divisor = BigInt(ratio.denominator) * (exponent < 0 ? power : 1n);
  return divideExactly(dividend, divisor);
}
