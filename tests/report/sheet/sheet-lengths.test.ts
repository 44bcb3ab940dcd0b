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
  });

  it('of a depth lie between the least and the greatest, whatever is rounded', () => {
    expect(feet.depth(41.275, [0, 3.175])).toEqual(['1 5/8"', '+1/8"', '0']);
    // 82 to 84 mm hold one sixteenth of an inch, 3 1/4".
    expect(feet.depth(82, [0, 2])).toEqual(['≈ 3 1/4"', '0', '0']);
    expect(feet.depth(80, [3, 10])).toEqual(['≈ 3 5/16"', '+3/16"', '0']);
    // 50 to 50.5 mm hold none.
    expect(feet.depth(50, [0, 0.5])).toEqual(['50 mm', '+0.5 mm', '0']);
    expect(mm.depth(80, [-1.04, 1.04])).toEqual(['80 mm', '+1 mm', '−1 mm']);
  });

  it('of a depth never leave its limits', () => {
    const inches = (text: string) =>
      text
        .replace(/[≈ "]+/g, ' ')
        .trim()
        .split(' ')
        .reduce(
          (sum, part) =>
            sum +
            part
              .split('/')
              .map(Number)
              .reduce((a, b) => a / b),
          0,
        );
    const size = (text: string) =>
      text.endsWith(' mm') ? Number.parseFloat(text.replace('−', '-')) : 25.4 * inches(text);
    const signed = (text: string) => (text.startsWith('−') ? -size(text.slice(1)) : size(text.replace('+', '')));
    for (let k = 0; k < 2000; k++) {
      const depth = 30 + ((k * 7.13) % 90);
      const [lower, upper] = [-((k * 1.37) % 6), (k * 2.11) % 9];
      const [written, more, less] = feet.depth(depth, [lower, upper]);
      expect(size(written) + signed(more)).toBeLessThanOrEqual(depth + upper + 0.01);
      expect(size(written) + signed(less)).toBeGreaterThanOrEqual(depth + lower - 0.01);
    }
  });

  it('leave out the unit where it stands beside them', () => {
    expect(mm.bare(mm.distance(2250))).toBe('2250');
    expect(mm.unitBeside).toBe('mm');
    expect(feet.bare(feet.distance(304.8))).toBe(`1'-0"`);
    expect(feet.unitBeside).toBeUndefined();
  });
});
