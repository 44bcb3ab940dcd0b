import { type LengthUnit, lengthUnits } from './length-unit.js';
import { parseFeetInches } from './parse-feet-inches.js';
import { parseLength } from './parse-length.js';

/** A number and its unit or inch mark, and nothing, a blank, a comma, a semicolon or a hyphen behind it. */
const AT_START = /^(.{1,40}?)(mm|cm|m|inches|inch|in\.?|''|["\u2033\u201d])(?=$|[\s,;-])/u;

/**
 * The length that a text for people begins with, in millimetres, such as 9.525 for `3/8 in`, `3/8"-16 rod`.
 *
 * Reads a decimal number in `mm`, `cm` or `m`, and inches as `parseFeetInches` does.
 *
 * @returns undefined where the text begins with no length above 0, or with a bare number
 */
export function lengthAtStart(text: string): number | undefined {
  const [, number, unit] = AT_START.exec(text) ?? [];
  if (number === undefined) return undefined;
  const isMetric = Object.hasOwn(lengthUnits, unit) && unit !== 'in';
  const length = isMetric
    ? parseLength(number.trimEnd(), unit as LengthUnit, 'point')
    : parseFeetInches(number + unit, 'point');
  return typeof length === 'number' && length > 0 ? length : undefined;
}
