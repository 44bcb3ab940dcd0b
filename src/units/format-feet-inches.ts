/** Finest fraction of an inch, as its denominator. */
export type InchDenominator = 2 | 4 | 8 | 16 | 32 | 64;

/**
 * A length in millimetres as feet, inches and a reduced fraction, such as `10'-6 3/8"`: rounded to
 * the nearest `1/denominator` inch, a tie away from zero. Zero inches are written, and the sign
 * stands for the whole value. Every multiple of `1/denominator` inch is written exactly.
 * Throws a `RangeError` for what is no finite number.
 */
export function formatFeetInches(mm: number, denominator: InchDenominator): string {
  if (!Number.isFinite(mm)) throw new RangeError(`No finite length to write: ${mm}.`);
  // The addend lets a tie go up that the division put a hair below one half.
  const parts = Math.floor((Math.abs(mm) * denominator) / 25.4 + 0.5 + 1e-9);
  const inches = Math.floor(parts / denominator);
  const feet = Math.floor(inches / 12);
  const fraction = formatFraction(parts - inches * denominator, denominator);
  const sign = mm < 0 && parts > 0 ? '-' : '';
  return `${sign}${feet}'-${inches - feet * 12}${fraction}"`;
}

function formatFraction(numerator: number, denominator: number): string {
  if (numerator === 0) return '';
  let top = numerator;
  let bottom = denominator;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return ` ${top}/${bottom}`;
}
