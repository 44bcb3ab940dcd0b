/** A double is written with at most so many significant digits. */
const MOST_DIGITS = 17;

/** Whether writing `value` back gives other digits than were written. */
export function losesDigits(written: string, value: number): boolean {
  const back = String(value);
  if (written === back) return false;
  const decimal = normalDecimal(written);
  if (decimal.indexOf('e') > MOST_DIGITS) return true;
  return decimal !== normalDecimal(back) && decimal !== normalDecimal(value.toPrecision(MOST_DIGITS));
}

/** A decimal as its significant digits and the power of ten of the last one, so that equal values have equal texts. */
function normalDecimal(written: string): string {
  const exponent = written.search(/e/i);
  const end = exponent < 0 ? written.length : exponent;
  const point = written.indexOf('.');
  const wholeEnd = point < 0 ? end : point;
  let first = 0;
  while (first < end && !isSignificant(written.charCodeAt(first))) first++;
  let last = end - 1;
  while (last > first && !isSignificant(written.charCodeAt(last))) last--;
  if (first === end) return '0e0';
  const isPointInside = first < point && point < last;
  const digits = isPointInside
    ? written.slice(first, point) + written.slice(point + 1, last + 1)
    : written.slice(first, last + 1);
  const power = last < wholeEnd ? wholeEnd - 1 - last : wholeEnd - last;
  return `${digits}e${power + (exponent < 0 ? 0 : Number(written.slice(exponent + 1)))}`;
}

/** Whether a character is a digit other than 0. */
function isSignificant(code: number): boolean {
  return code > 48 && code <= 57;
}
