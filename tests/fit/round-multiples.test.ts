import { describe, expect, it } from 'vitest';
import { likelyFoot, multipleShare } from '../../src/fit/round-multiples.js';
import { newRandom } from '../read/random.js';

// International foot 0.3048 m, US survey foot 1200/3937 m (85 FR 62698 of 5 October 2020).
const footMm = { international: 304.8, survey: 1_200_000 / 3937 };
const feet = ['international', 'survey'] as const;

/** Lengths as a document has them: millimetres with so many decimals. */
function written(values: readonly number[], decimals = 6): number[] {
  return values.map((value) => Number(value.toFixed(decimals)));
}

/** Invented lengths in steps of a foot's part, `count` of them below `most` feet, from `base` feet on. */
function inFeet(seed: number, perFoot: number, most: number, base = 0, count = 200): number[] {
  const random = newRandom(seed);
  return Array.from({ length: count }, () => base + Math.ceil(random() * most * perFoot) / perFoot);
}

describe('multipleShare', () => {
  it('is the share of whole multiples, values of 0 left out', () => {
    expect(multipleShare([0, 0, 25.4, 50.8, -76.2, 30], 25.4, 1e-6)).toEqual({
      share: 0.75,
      chance: 2e-6 / 25.4,
      count: 4,
    });
    expect(multipleShare([25.4004, 25.3996, 25.4006, 25.3994], 25.4, 0.0005).share).toBe(0.5);
    expect(multipleShare([0, Number.NaN, Number.POSITIVE_INFINITY], 25.4, 1e-6)).toMatchObject({ share: 0, count: 0 });
    expect(multipleShare([1], 0.3, 5).chance).toBe(1);
  });

  it('is what chance gives where values have nothing to do with the step', () => {
    const random = newRandom(71);
    const values = Array.from({ length: 20_000 }, () => random() * 1e6);
    for (const [stepMm, resolutionMm] of [
      [3.048, 0.05],
      [0.396875, 0.02],
      [0.3048, 0.005],
    ]) {
      const { share, chance } = multipleShare(values, stepMm, resolutionMm);
      expect(Math.abs(share - chance)).toBeLessThan(5 * Math.sqrt(chance / values.length));
    }
  });

  it('holds at 600 km, where doubles are 1.2e-7 mm apart, for every step in its own foot and in no other', () => {
    for (const foot of feet) {
      const other = foot === 'survey' ? 'international' : 'survey';
      for (const perFoot of [100, 768, 1000]) {
        const values = written(inFeet(72, perFoot, 5000, 2_000_000).map((length) => length * footMm[foot]));
        expect(Math.min(...values)).toBeGreaterThan(6e8);
        expect(multipleShare(values, footMm[foot] / perFoot, 1e-6).share).toBe(1);
        expect(multipleShare(values, footMm[other] / perFoot, 1e-6).share).toBeLessThan(0.05);
      }
    }
  });
});

describe('likelyFoot', () => {
  // The cost of the wrong foot: computed with independent code from the two definitions.
  it('tells two lengths apart that the wrong foot makes of one', () => {
    expect((2_000_000 * (footMm.survey - footMm.international)) / 1000).toBeCloseTo(1.219202, 6);
    expect(100 * (footMm.survey - footMm.international)).toBeCloseTo(0.06096, 6);
  });

  it.each([
    ['a building of 200 ft', 0],
    ['state-plane coordinates of 2,000,000 ft', 2_000_000],
  ])('tells the foot of %s', (_, base) => {
    for (const foot of feet) {
      for (const [step, perFoot] of [
        ['0.01 ft', 100],
        ['1/64 in', 768],
        ['0.001 ft', 1000],
      ] as const) {
        const values = written(inFeet(73, perFoot, 200, base).map((length) => length * footMm[foot]));
        const found = likelyFoot(values);
        expect(found).toMatchObject({ foot, step, share: 1 });
        expect(found?.stepMm).toBeCloseTo(footMm[foot] / perFoot, 12);
        expect(likelyFoot([...values].reverse())).toEqual(likelyFoot(values));
      }
    }
  });

  it('tells it where a part of the values is of another origin, with the share', () => {
    const random = newRandom(74);
    const round = inFeet(75, 100, 200).map((length) => length * footMm.survey);
    const other = Array.from({ length: 100 }, () => random() * 60_000);
    const found = likelyFoot(written([...round, ...other]));
    expect(found).toMatchObject({ foot: 'survey', step: '0.01 ft' });
    expect(found?.share).toBeCloseTo(2 / 3, 1);
    expect(found?.chance).toBeLessThan(1e-5);
  });

  it('tells it from few decimals only where the coordinates are large', () => {
    for (const foot of feet) {
      const local = inFeet(76, 100, 150).map((length) => length * footMm[foot]);
      const far = inFeet(76, 100, 1234.5, 1_234_567.89).map((length) => length * footMm[foot]);
      expect(likelyFoot(written(local, 1))).toBeUndefined();
      expect(likelyFoot(written(far, 2))).toMatchObject({ foot, step: '0.01 ft' });
      expect(likelyFoot(written(far, 0))).toBeUndefined();
    }
  });

  it('takes a part of many values, the same in any order', () => {
    const random = newRandom(79);
    const ours = inFeet(80, 1000, 5000, 0, 100_000).map((length) => length * footMm.survey);
    const values = written([...ours, ...Array.from({ length: 50_000 }, () => random() * 1e6)]);
    const found = likelyFoot(values);
    expect(found).toMatchObject({ foot: 'survey', step: '0.001 ft' });
    expect(found?.share).toBeCloseTo(2 / 3, 1);
    expect(found?.count).toBeGreaterThan(9000);
    expect(found?.count).toBeLessThanOrEqual(20_000);
    expect(likelyFoot([...values].sort((a, b) => b - a))).toEqual(found);
    expect(likelyFoot([...values, ...values])).toEqual(found);
  });

  it('says nothing of metric values, however they are written', () => {
    const random = newRandom(77);
    for (const stepMm of [1, 5, 12.5, 25, 100, 0.1, 0.001, 1e-6]) {
      const values = Array.from({ length: 300 }, () => Math.ceil((random() * 60_000) / stepMm) * stepMm);
      expect([stepMm, likelyFoot(written(values))]).toEqual([stepMm, undefined]);
      expect([stepMm, likelyFoot(written(values.map((value) => value + 6e8)))]).toEqual([stepMm, undefined]);
    }
  });

  it('says nothing of few different values, whatever their number', () => {
    const values = written(inFeet(78, 100, 200, 0, 7).map((length) => length * footMm.survey));
    expect(likelyFoot(values)).toBeUndefined();
    expect(likelyFoot(Array.from({ length: 100 }, () => values).flat())).toBeUndefined();
    expect(likelyFoot([...values, Number((123.45 * footMm.survey).toFixed(6))])).toMatchObject({
      foot: 'survey',
      count: 8,
    });
    expect(likelyFoot([])).toBeUndefined();
    expect(likelyFoot(new Array(100).fill(Number.NaN))).toBeUndefined();
  });
});
