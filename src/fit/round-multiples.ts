import { type LengthRatio, lengthUnits } from '../units/length-unit.js';

/** How many of some values are whole multiples of a step, and how many would be by chance. */
export interface MultipleShare {
  /** Share of the values, 0 to 1; 0 where there are no values. */
  share: number;
  /** The share to expect of values that have nothing to do with the step. */
  chance: number;
  /** Values that were counted. */
  count: number;
}

/** The foot in which numbers seem to have been written, and what speaks for it. */
export interface FootEvidence extends MultipleShare {
  foot: 'international' | 'survey';
  /** The step of which so many are whole multiples, in that foot. */
  step: '0.01 ft' | '1/64 in' | '0.001 ft';
  stepMm: number;
}

/**
 * The share of values that are whole multiples of a step to within `resolutionMm`, values of 0 left out.
 *
 * By chance a value lies so near to a multiple with probability 2 r / s (evenly spread remainders). The
 * resolution has to hold what the file rounded away, and a few times the distance of doubles: 1.2e-7 mm at
 * 6e8 mm.
 */
export function multipleShare(valuesMm: Iterable<number>, stepMm: number, resolutionMm: number): MultipleShare {
  let count = 0;
  let multiples = 0;
  for (const value of valuesMm) {
    if (!(Math.abs(value) > resolutionMm && Number.isFinite(value))) continue;
    count++;
    if (Math.abs(value - Math.round(value / stepMm) * stepMm) <= resolutionMm) multiples++;
  }
  return { share: count > 0 ? multiples / count : 0, chance: Math.min(1, (2 * resolutionMm) / stepMm), count };
}

/** Fewer different values than this are no evidence. */
const FEWEST = 8;
/** Less than this share of whole multiples is no evidence. */
const LEAST_SHARE = 0.5;
/** The share has to be as many times what chance gives, and twice what the other foot gives. */
const LEAST_OVER_CHANCE = 10;
const LEAST_OVER_OTHER = 2;
/** Of more different values than this a part is taken. */
const MOST = 20_000;
/** By so much of a length the feet differ: 2 parts in a million (500000/499999). */
const FOOT_DIFFERENCE = 2e-6;

const steps = [
  { step: '0.01 ft', perFoot: 100 },
  { step: '1/64 in', perFoot: 12 * 64 },
  { step: '0.001 ft', perFoot: 1000 },
] as const;

/**
 * Which foot the numbers behind values in millimetres were written in: that of which most are multiples of
 * 0.01 ft, 1/64 in or 0.001 ft. Undefined where they do not say.
 *
 * A value counts once, and only where the two feet differ by more than the values are exact. How exact is
 * read from them: as many decimals as any has, at most the 6 of a document. So values in whole
 * millimetres say nothing, and a list of a small building only where it is written finely. Of more than
 * 20,000 different values a part is taken that depends on the values alone, so their order does not
 * matter. The cost is linear.
 */
export function likelyFoot(valuesMm: Iterable<number>): FootEvidence | undefined {
  const values = differentOf(valuesMm);
  const resolutionMm = resolutionOf(values);
  const telling = values.filter((value) => Math.abs(value) * FOOT_DIFFERENCE > 2 * resolutionMm);
  if (telling.length < FEWEST) return undefined;
  const international = bestStep(telling, resolutionMm, 'international', lengthUnits.ft);
  const survey = bestStep(telling, resolutionMm, 'survey', lengthUnits['us-ft']);
  const [best, other] = international.share >= survey.share ? [international, survey] : [survey, international];
  const isEvidence =
    best.share >= LEAST_SHARE &&
    best.share >= LEAST_OVER_CHANCE * best.chance &&
    best.share >= LEAST_OVER_OTHER * other.share;
  return isEvidence ? best : undefined;
}

/** The different values, or those of them that a hash picks, halved as often as needed. */
function differentOf(valuesMm: Iterable<number>): number[] {
  const double = new Float64Array(1);
  const words = new Int32Array(double.buffer);
  const hashOf = (value: number) => {
    double[0] = value;
    const h = Math.imul(words[0], 0x9e3779b1) ^ Math.imul(words[1], 0x85ebca6b);
    const mixed = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
    return mixed ^ (mixed >>> 13);
  };
  const values = new Set<number>();
  let mask = 0;
  for (const value of valuesMm) {
    if (!Number.isFinite(value) || (hashOf(value) & mask) !== 0) continue;
    values.add(value);
    while (values.size > MOST) {
      mask = mask * 2 + 1;
      for (const one of values) if ((hashOf(one) & mask) !== 0) values.delete(one);
    }
  }
  return [...values];
}

/** The step with the greatest share, of equal ones the largest. */
function bestStep(
  values: readonly number[],
  resolutionMm: number,
  foot: FootEvidence['foot'],
  { numerator, denominator }: LengthRatio,
): FootEvidence {
  const all = steps.map(({ step, perFoot }): FootEvidence => {
    const stepMm = numerator / (denominator * perFoot);
    return { foot, step, stepMm, ...multipleShare(values, stepMm, resolutionMm) };
  });
  return all.reduce((best, one) => (one.share > best.share ? one : best));
}

/** What rounding to the decimals of the values took away, with a margin for doubles and for the sixth decimal. */
function resolutionOf(values: readonly number[]): number {
  let places = 0;
  let greatest = 0;
  for (const value of values) {
    greatest = Math.max(greatest, Math.abs(value));
    while (places < 6 && !hasPlaces(value, places)) places++;
  }
  return 0.5 / 10 ** places + 5e-7 + greatest * 2 ** -51;
}

/** Whether a value is a decimal with so many places, as near as doubles are. */
function hasPlaces(value: number, places: number): boolean {
  const scaled = value * 10 ** places;
  return Math.abs(scaled - Math.round(scaled)) <= Math.abs(scaled) * 2 ** -51;
}
