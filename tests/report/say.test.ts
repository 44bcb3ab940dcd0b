import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Display } from '../../src/generated/layout.js';
import { sayAs } from '../../src/report/say.js';

const displays: (Display | undefined)[] = [
  undefined,
  { length: 'mm' },
  { length: 'mm', decimals: 0 },
  { length: 'm', decimals: 2 },
  { length: 'in', decimals: 1 },
  { length: 'ft', decimals: 2 },
  { length: 'ft' },
  { length: 'ft-in', fraction: 2 },
  { length: 'ft-in', fraction: 64 },
  { length: 'ft-in' },
];

describe('sayAs', () => {
  it('writes a length in the unit of the project, and in millimetres beside it', () => {
    const written = displays.map((display) => sayAs(display).length(3209.925));
    expect(written).toEqual([
      '3209.925 mm',
      '3209.925 mm',
      '3209.925 mm',
      '3.21 m (3209.925 mm)',
      '126.4 in (3209.925 mm)',
      '10.53 ft (3209.925 mm)',
      '10.5313 ft (3209.925 mm)',
      `10'-6 1/2" (3209.925 mm)`,
      `10'-6 3/8" (3209.925 mm)`,
      `10'-6 3/8" (3209.925 mm)`,
    ]);
  });

  it('writes no zeros and no more than 4 decimals of a millimetre', () => {
    const { length } = sayAs(undefined);
    expect([0, -0, 75, 0.5, 1 / 3, 1e7, -12.00004].map(length)).toEqual([
      '0 mm',
      '0 mm',
      '75 mm',
      '0.5 mm',
      '0.3333 mm',
      '10000000 mm',
      '-12 mm',
    ]);
  });

  it('writes a mark in place of what is no length, so that the rest can be read', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, undefined, null, 'x', '12', {}, []])
      for (const display of [undefined, { length: 'ft-in' }, { length: 'm' }] as const)
        expect(sayAs(display).length(value)).toBe('? mm');
  });

  it('never writes a length that misses its limit like the limit', () => {
    // The slack is 0.0005 mm, so what fails lies further from the limit than that.
    const limits = fc.oneof(
      fc.integer({ min: 0, max: 1e9 }).map((microns) => microns / 1000),
      fc.integer({ min: 0, max: 1e6 }).map((parts) => (parts * 25.4) / 64),
      fc.double({ min: 0, max: 1e6, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...displays),
        limits,
        fc.double({ min: 0.00051, max: 0.3, noNaN: true }),
        (display, limit, miss) => {
          const { length } = sayAs(display);
          expect(length(limit - miss)).not.toBe(length(limit));
          expect(length(limit + miss)).not.toBe(length(limit));
        },
      ),
      { numRuns: 5000, seed: 131 },
    );
    const { length } = sayAs(undefined);
    expect([length(1.984375), length(1.984375 - 0.0006)]).toEqual(['1.9844 mm', '1.9838 mm']);
  });
});
