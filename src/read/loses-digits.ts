/** Whether writing `value` back gives other digits than were written. */
export function losesDigits(written: string, value: number): boolean {
  return (
    normalDecimal(written) !== normalDecimal(String(value)) &&
    normalDecimal(written) !== normalDecimal(value.toPrecision(17))
  );
}

/** A decimal as its significant digits and the power of ten of the last one, so that equal values have equal texts. */
function normalDecimal(written: string): string {
  const [mantissa, exponent = '0'] = written.toLowerCase().replace(/^[+-]/, '').split('e');
  const [whole, fraction = ''] = mantissa.split('.');
  const digits = (whole + fraction).replace(/^0+/, '');
  let length = digits.length;
  while (length > 0 && digits[length - 1] === '0') length--;
  const significant = digits.slice(0, length);
  if (significant === '') return '0';
  return `${significant}e${Number(exponent) - fraction.length + (digits.length - significant.length)}`;
}
