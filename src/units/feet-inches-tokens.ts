import { type LengthError, lengthError } from './length-error.js';
import type { DecimalSign } from './scan-decimal.js';

export type FeetInchesKind = 'number' | 'foot' | 'inch' | 'slash' | 'hyphen' | 'plus';

/** One piece of a length in feet and inches. */
export interface FeetInchesToken {
  readonly kind: FeetInchesKind;
  readonly text: string;
}

const marks: ReadonlyMap<string, FeetInchesKind> = new Map([
  ["'", 'foot'],
  ['\u2032', 'foot'],
  ['\u2019', 'foot'],
  ["''", 'inch'],
  ['"', 'inch'],
  ['\u2033', 'inch'],
  ['\u201d', 'inch'],
  ['/', 'slash'],
  ['\u2044', 'slash'],
  ['-', 'hyphen'],
  ['\u2010', 'hyphen'],
  ['\u2011', 'hyphen'],
  ['\u2012', 'hyphen'],
  ['\u2013', 'hyphen'],
  ['\u2212', 'hyphen'],
  ['+', 'plus'],
]);

const words: ReadonlyMap<string, FeetInchesKind> = new Map([
  ['ft', 'foot'],
  ['foot', 'foot'],
  ['feet', 'foot'],
  ['in', 'inch'],
  ['inch', 'inch'],
  ['inches', 'inch'],
]);

const vulgarFractions: ReadonlyMap<string, readonly [string, string]> = new Map([
  ['\u00bc', ['1', '4']],
  ['\u00bd', ['1', '2']],
  ['\u00be', ['3', '4']],
  ['\u215b', ['1', '8']],
  ['\u215c', ['3', '8']],
  ['\u215d', ['5', '8']],
  ['\u215e', ['7', '8']],
]);

const blanks = ' \t\u00a0\u2007\u2009\u202f';
const piece = { point: /\d+(?:\.\d*)?|\.\d+|[a-z]+\.?|''|[^]/giu, comma: /\d+(?:,\d*)?|,\d+|[a-z]+\.?|''|[^]/giu };

/**
 * Cuts a length in feet and inches into numbers and marks; blanks are dropped, a vulgar fraction
 * becomes the three pieces that it stands for.
 */
export function feetInchesTokens(text: string, decimal: DecimalSign): FeetInchesToken[] | LengthError {
  const tokens: FeetInchesToken[] = [];
  for (const [part] of text.matchAll(piece[decimal])) {
    if (blanks.includes(part)) continue;
    const fraction = vulgarFractions.get(part);
    const kind = kindOf(part);
    if (fraction !== undefined) {
      const [numerator, denominator] = fraction;
      tokens.push({ kind: 'number', text: numerator }, { kind: 'slash', text: '/' });
      tokens.push({ kind: 'number', text: denominator });
    } else if (kind !== undefined) tokens.push({ kind, text: part });
    else return lengthError('made of digits, foot and inch marks, a hyphen and a fraction only', text);
  }
  return tokens;
}

function kindOf(part: string): FeetInchesKind | undefined {
  if (/\d/.test(part)) return 'number';
  return marks.get(part) ?? words.get(part.toLowerCase().replace('.', ''));
}
