/** Decimals of a millimetre that AHX writes: enough for every 1/64 in exactly. */
const DECIMALS = 6;

/**
 * A number of millimetres as text: at most 6 decimals, never an exponent, no sign before zero.
 * Throws a `RangeError` for what is no finite number.
 */
export function formatMm(mm: number): string {
  return formatDecimal(mm, DECIMALS);
}

/** The number of millimetres that `formatMm` writes: the nearest with at most 6 decimals. */
export function roundMm(mm: number): number {
  return Number(formatMm(mm));
}

/**
 * A number as text with at most so many decimals (0 to 20): no trailing zeros, never an exponent,
 * no sign before zero. Throws a `RangeError` for what is no finite number.
 */
export function formatDecimal(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`No finite number to write: ${value}.`);
  const shortest = String(value);
  if (shortest.indexOf('e') < 0) {
    const point = shortest.indexOf('.');
    if (point < 0 || shortest.length - point - 1 <= decimals) return shortest === '-0' ? '0' : shortest;
  }
  if (Math.abs(value) >= 1e21) return BigInt(value).toString();
  const fixed = value.toFixed(decimals);
  const trimmed = fixed.indexOf('.') < 0 ? fixed : fixed.replace(/\.?0+$/, '');
  return trimmed === '-0' ? '0' : trimmed;
}
