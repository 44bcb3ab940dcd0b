import { describe, expect, it } from 'vitest';
import { roundScale, scaleBar, unitSystemOf } from '../../src/draw/scale.js';

describe('roundScale', () => {
  it.each([
    [0, '1:1'],
    [49.9, '1:50'],
    [50, '1:50'],
    [50.1, '1:100'],
    [101, '1:200'],
    [201, '1:250'],
    [251, '1:500'],
    [11, '1:20'],
    [21, '1:25'],
    [501, '1:1000'],
    [1.2e7, '1:20000000'],
  ])('takes the next metric scale for %s', (least, name) => {
    expect(roundScale(least, 'metric').name).toBe(name);
  });

  it.each([
    [1, `3" = 1'-0"`, 4],
    [96, `1/8" = 1'-0"`, 96],
    [97, `3/32" = 1'-0"`, 128],
    [193, `1" = 20'`, 240],
    [241, `1" = 30'`, 360],
    [721, `1" = 100'`, 1200],
    [1e7, `1" = 1000000'`, 12000000],
  ])('takes the next scale in feet and inches for %s', (least, name, denominator) => {
    expect(roundScale(least, 'imperial')).toEqual({ name, denominator });
  });
});

describe('scaleBar', () => {
  it.each([
    [4500, undefined, 2000, 2, 'm'],
    [5000, { length: 'm' }, 5000, 5, 'm'],
    [990, { length: 'mm' }, 500, 500, 'mm'],
    [4500, { length: 'ft-in' }, 3048, 10, 'ft'],
    [300, { length: 'in' }, 254, 10, 'in'],
    [2.4e8, { length: 'ft' }, 152400000, 500000, 'ft'],
  ] as const)('no longer than %s mm', (most, display, lengthMm, value, unit) => {
    const bar = scaleBar(most, display);
    expect(bar).toEqual({ lengthMm: expect.closeTo(lengthMm, 6), value, unit });
  });
});

describe('unitSystemOf', () => {
  it('is metric where a project does not say', () => {
    expect(
      [undefined, { length: 'm' }, { length: 'ft' }, { length: 'in' }].map((d) => unitSystemOf(d as never)),
    ).toEqual(['metric', 'metric', 'imperial', 'imperial']);
  });
});
