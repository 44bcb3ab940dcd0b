import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundMm } from '../../src/units/format-mm.js';
import { metresText } from '../../src/write/geometry-text.js';

describe('metresText', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [1, '0.001'],
    [-1, '-0.001'],
    [1000, '1'],
    [-999.9, '-0.9999'],
    [0.000001, '0.000000001'],
    [0.0000004, '0'],
    [25.4 / 64, '0.000396875'],
    [10000000000, '10000000'],
    [1234567.891011, '1234.567891011'],
  ])('%d mm is %s m', (mm, metres) => {
    expect(metresText(mm)).toBe(metres);
  });

  it('loses nothing of a length with 6 decimals up to a kilometre', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000_000_000, max: 1_000_000_000_000 }), (millionths) => {
        const mm = millionths / 1e6;
        expect(roundMm(Number(metresText(mm)) * 1000)).toBe(mm === 0 ? 0 : mm);
      }),
    );
  });
});
