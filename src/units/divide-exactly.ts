const QUOTIENT_BITS = 66;

/**
 * The double nearest to `numerator / denominator`, ties to even. The denominator is positive.
 *
 * The quotient is taken to 66 bits or more and its lowest bit is set where a remainder is left, so
 * that the one rounding, from integer to double, sees on which side of a tie the quotient lies.
 * Results below the range of normal doubles are not needed for lengths and may be rounded twice.
 */
export function divideExactly(numerator: bigint, denominator: bigint): number {
  if (numerator === 0n) return 0;
  const negative = numerator < 0n;
  const dividend = negative ? -numerator : numerator;
  const shift = Math.max(0, QUOTIENT_BITS + bitLength(denominator) - bitLength(dividend));
  const scaled = dividend << BigInt(shift);
  let quotient = scaled / denominator;
  if (quotient * denominator !== scaled) quotient |= 1n;
  const value = Number(quotient) * 2 ** -shift;
  return negative ? -value : value;
}

/** Bits of a positive integer, at most three too many. */
function bitLength(value: bigint): number {
  return value.toString(16).length * 4;
}
