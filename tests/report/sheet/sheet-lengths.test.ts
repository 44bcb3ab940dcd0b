import { describe, expect, it } from 'vitest';
import { sheetLengths } from '../../../src/report/sheet/sheet-lengths.js';

describe('lengths on a sheet', () => {
  const feet = sheetLengths({ length: 'ft-in', fraction: 16 });
  const mm = sheetLengths({ length: 'mm' });

  it('are feet and inches where one measures from, and inches for what is small', () => {
    expect(feet.distance(41.275)).toBe(`0'-1 5/8"`);
    expect(feet.size(41.275)).toBe('1 5/8"');
    expect(feet.size(6.35)).toBe('1/4"');
    expect(feet.size(609.6)).toBe(`2'-0"`);
  });

  it('say when a size was rounded so that it shows', () => {
    expect(feet.size(12)).toBe('≈ 1/2"');
    expect(feet.size(12.7)).toBe('1/2"');
    expect(mm.size(12.34)).toBe('12.3 mm');
  });

  it('never grow where they are the most that is allowed', () => {
    // 6 mm are 3.78 sixteenths of an inch.
    expect(feet.atMost(6)).toBe('3/16"');
    expect(feet.atMost(50.8)).toBe('2"');
    expect(mm.atMost(9.99)).toBe('9.9 mm');
  });

  it('stay more than nothing where a step is too coarse', () => {
    expect(feet.atMost(0.5)).toBe('0.5 mm');
    expect(feet.deviation(0.5)).toBe('+0.5 mm');
    expect(feet.deviation(0)).toBe('0');
    expect(feet.deviation(-3.175)).toBe('−1/8"');
  });

  it('leave out the unit where it stands beside them', () => {
    expect(mm.bare(mm.distance(2250))).toBe('2250');
    expect(mm.unitBeside).toBe('mm');
    expect(feet.bare(feet.distance(304.8))).toBe(`1'-0"`);
    expect(feet.unitBeside).toBeUndefined();
  });
});
