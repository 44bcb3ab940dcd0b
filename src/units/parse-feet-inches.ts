import { type FeetInchesToken, feetInchesTokens } from './feet-inches-tokens.js';
import { type LengthError, lengthError } from './length-error.js';
import { lengthUnits } from './length-unit.js';
import { scaleDecimal } from './scale-decimal.js';
import { type DecimalSign, type ScannedDecimal, scanDecimal } from './scan-decimal.js';

interface Shape {
  feet?: string;
  inches?: string;
  numerator?: string;
  denominator?: string;
  inchMark: boolean;
}

const LONGEST_WHOLE = 9;
const denominators: ReadonlySet<string> = new Set(['2', '4', '8', '16', '32', '64']);

/**
 * Reads a length in feet, inches and fractions of an inch and returns millimetres: the double
 * nearest to the exact value, one foot being 304.8 mm.
 *
 * Reads `10'-6 3/8"`, `10' 6-3/8"`, `10-6 3/8`, `10ft 6.375in`, `10.53'`, `126 3/8"`, typographic
 * primes, quotes and hyphens, the fraction slash and vulgar fractions. A sign in front stands for
 * the whole value; a hyphen further in is a separator. A bare number is refused, for it may mean
 * feet or inches; only `0` needs no mark.
 */
export function parseFeetInches(text: string, decimal: DecimalSign = 'point'): number | LengthError {
  const tokens = feetInchesTokens(text, decimal);
  if ('expected' in tokens) return tokens;
  const sign = tokens[0]?.kind;
  const signed = sign === 'hyphen' || sign === 'plus';
  const shape = readShape(signed ? tokens.slice(1) : tokens);
  if (shape === undefined) return lengthError(`feet and inches such as 10'-6 3/8"`, text);
  const size = measure(shape, decimal);
  if (typeof size !== 'number') return size;
  if (size !== 0 && shape.feet === undefined && !shape.inchMark)
    return lengthError('a length with a foot or inch mark', text);
  return sign === 'hyphen' && size !== 0 ? -size : size;
}

/** Sorts the pieces into feet, inches and fraction; undefined where they stand in no known order. */
function readShape(tokens: readonly FeetInchesToken[]): Shape | undefined {
  if (tokens[0]?.kind !== 'number') return undefined;
  const shape: Shape = { inchMark: false };
  let at = 0;
  if (tokens[1]?.kind === 'foot') {
    shape.feet = tokens[0].text;
    if (tokens.length === 2) return shape;
    at = tokens[2].kind === 'hyphen' ? 3 : 2;
  } else if (tokens[1]?.kind === 'hyphen' && !isFraction(tokens, 2)) {
    shape.feet = tokens[0].text;
    at = 2;
  }
  if (!isFraction(tokens, at)) {
    if (tokens[at]?.kind !== 'number') return undefined;
    shape.inches = tokens[at].text;
    at++;
    if (tokens[at]?.kind === 'hyphen' && isFraction(tokens, at + 1)) at++;
  }
  if (isFraction(tokens, at)) {
    shape.numerator = tokens[at].text;
    shape.denominator = tokens[at + 2].text;
    at += 3;
  }
  if (tokens[at]?.kind === 'inch') {
    shape.inchMark = true;
    at++;
  }
  return at === tokens.length ? shape : undefined;
}

function isFraction(tokens: readonly FeetInchesToken[], at: number): boolean {
  const [top, slash, bottom] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  return top?.kind === 'number' && slash?.kind === 'slash' && bottom?.kind === 'number';
}

function measure(shape: Shape, decimal: DecimalSign): number | LengthError {
  const { feet, inches = '0', numerator, denominator } = shape;
  if (feet !== undefined && !isWhole(feet)) {
    if (shape.inches !== undefined || numerator !== undefined) {
      return lengthError('a whole number of feet beside inches', feet);
    }
    return scaled(feet, decimal, 0n, 'ft');
  }
  if (feet !== undefined && feet.length > LONGEST_WHOLE) return lengthError('a length within range', feet);
  if (feet !== undefined && Number.parseInt(inches, 10) >= 12) {
    return lengthError('less than 12 inches beside feet', inches);
  }
  const feetInInches = 12 * Number(feet ?? 0);
  if (numerator === undefined || denominator === undefined) {
    return scaled(inches, decimal, BigInt(feetInInches), 'in');
  }
  if (!isWhole(inches)) return lengthError('a whole number of inches beside a fraction', inches);
  if (inches.length > LONGEST_WHOLE) return lengthError('a length within range', inches);
  if (!denominators.has(denominator)) {
    return lengthError('a fraction in halves, 4ths, 8ths, 16ths, 32nds or 64ths', `${numerator}/${denominator}`);
  }
  if (!isWhole(numerator) || Number(numerator) >= Number(denominator)) {
    return lengthError('a fraction below one inch', `${numerator}/${denominator}`);
  }
  return fromParts(feetInInches + Number(inches), Number(numerator), Number(denominator));
}

/** Whole inches and a fraction as millimetres; an inch of 25.4 mm has 64 parts of 127/320 mm. */
function fromParts(inches: number, numerator: number, denominator: number): number {
  return ((inches * 64 + numerator * (64 / denominator)) * 127) / 320;
}

function scaled(text: string, decimal: DecimalSign, whole: bigint, unit: 'in' | 'ft'): number | LengthError {
  const scanned = scanDecimal(text, decimal);
  if ('expected' in scanned) return scanned;
  const size = scaleDecimal(plusWhole(scanned, whole), lengthUnits[unit]);
  return Number.isFinite(size) ? size : lengthError('a length within range', text);
}

function plusWhole(scanned: ScannedDecimal, whole: bigint): ScannedDecimal {
  if (whole === 0n) return scanned;
  const mantissa = whole * 10n ** BigInt(-scanned.exponent) + BigInt(scanned.mantissa);
  return { ...scanned, mantissa };
}

function isWhole(text: string): boolean {
  return !text.includes('.') && !text.includes(',');
}
