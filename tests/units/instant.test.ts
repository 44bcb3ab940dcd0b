import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareInstants } from '../../src/units/instant.js';

describe('two times', () => {
  it.each([
    ['2026-03-02T07:30:00-05:00', '2026-03-02T12:30:00Z'],
    ['2026-03-02T00:15:00+05:45', '2026-03-01T18:30:00z'],
    ['2024-03-01T00:30:00+01:00', '2024-02-29T23:30:00Z'],
    ['2026-03-02t07:30:00.500Z', '2026-03-02T07:30:00.5Z'],
  ])('with two offsets can be one instant: %s and %s', (a, b) => {
    expect(compareInstants(a, b)).toBe(0);
  });

  it('come in order across the ends of months, years and leap seconds', () => {
    const inOrder = [
      '0000-01-01T00:00:00Z',
      '1900-02-28T23:59:59Z',
      '1900-03-01T00:00:00Z',
      '2000-02-29T12:00:00Z',
      '2000-03-01T00:00:00-12:30',
      '2016-12-31T23:59:59.999999999Z',
      '2016-12-31T23:59:60Z',
      '2017-01-01T00:00:00Z',
      '2017-01-01T00:00:00.000000001Z',
    ];
    for (const [a, first] of inOrder.entries())
      for (const [b, second] of inOrder.entries())
        expect([first, second, Math.sign(compareInstants(first, second))]).toEqual([first, second, Math.sign(a - b)]);
  });

  it('differ as the calendar of the platform says', () => {
    const times = fc.date({ min: new Date('1000-01-01'), max: new Date('2999-12-31'), noInvalidDate: true });
    const sameOrder = (a: Date, b: Date) =>
      Math.sign(compareInstants(a.toISOString(), b.toISOString())) === Math.sign(a.getTime() - b.getTime());
    fc.assert(fc.property(times, times, sameOrder), { seed: 3 });
    const nextDay = (a: Date) =>
      compareInstants(new Date(a.getTime() + 86_400_000).toISOString(), a.toISOString()) === 24 * 60;
    fc.assert(fc.property(times, nextDay), { seed: 4 });
  });
});
