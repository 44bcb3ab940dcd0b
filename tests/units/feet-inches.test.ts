import { describe, expect, it } from 'vitest';
import { formatFeetInches } from '../../src/units/format-feet-inches.js';
import { parseFeetInches } from '../../src/units/parse-feet-inches.js';

describe('feet and inches', () => {
  // Exact rationals: 1 in = 25.4 mm exactly, checked with independent code (checks.md U-06).
  it.each([
    [`10'-6 3/8"`, 3209.925],
    [`12'-11 15/16"`, 3960.8125],
    [`8'-0"`, 2438.4],
    [`0'-0 1/16"`, 1.5875],
    [`-2'-3 1/2"`, -698.5],
  ])('%s is read as its exact length and written back the same', (text, mm) => {
    expect(parseFeetInches(text)).toBe(mm);
    expect(formatFeetInches(mm, 64)).toBe(text);
  });

  // Spellings seen on drawings and in lists (checks.md U-08, from memory).
  it.each([
    `10'-6 3/8"`,
    `10' 6-3/8"`,
    '10-6 3/8',
    '10ft 6.375in',
    `10'6.375"`,
    '10 ft. - 6 3/8 in.',
    '10 Feet 6 3/8 Inches',
    '10\u20326 3/8\u2033',
    '10\u2019-6 3\u20448\u201d',
    `10'-6\u215c"`,
    `10'-6-3/8"`,
    `10' 6 3/8''`,
    `10'-6 3/8`,
    `+10'-6 3/8"`,
    `126 3/8"`,
    `126-3/8"`,
    '126.375 in',
    `10.53125'`,
    '10\u00a0ft\u20096\u00a03/8\u00a0in',
    `10'\u20136 3/8"`,
    `10'-6 24/64"`,
  ])('%s is one spelling of 3209.925 mm', (text) => {
    expect(parseFeetInches(text)).toBe(3209.925);
  });

  it.each([
    ['\u00bd"', 12.7],
    ['1\u00bc"', 31.75],
    [`10'-\u00be"`, 3067.05],
    ['3/8"', 9.525],
    [`-0'-6"`, -152.4],
    ['\u22122 ft 3 1/2 in', -698.5],
    ['10-6', 3200.4],
    [`10-6"`, 3200.4],
    [`10'`, 3048],
    [`10.53'`, 3209.544],
  ])('%s is read as %d mm', (text, mm) => {
    expect(parseFeetInches(text)).toBe(mm);
  });

  it.each(['0', `0"`, `0'`, `-0'-0"`, '-0'])('%s is zero without a sign', (text) => {
    expect(parseFeetInches(text)).toBe(0);
  });

  // What must be refused (checks.md U-08, from memory), and what else has two meanings.
  it.each([
    [`10'-14"`, 'less than 12 inches beside feet', '14'],
    [`10'-12"`, 'less than 12 inches beside feet', '12'],
    [`10.5'-6"`, 'a whole number of feet beside inches', '10.5'],
    [`10'-6 1/3"`, 'a fraction in halves, 4ths, 8ths, 16ths, 32nds or 64ths', '1/3'],
    [`10'-6 1/128"`, 'a fraction in halves, 4ths, 8ths, 16ths, 32nds or 64ths', '1/128'],
    [`10'-6 3/0"`, 'a fraction in halves, 4ths, 8ths, 16ths, 32nds or 64ths', '3/0'],
    [`10'-6 9/8"`, 'a fraction below one inch', '9/8'],
    [`10'-6.5 3/8"`, 'a whole number of inches beside a fraction', '6.5'],
    ['10', 'a length with a foot or inch mark', '10'],
    ['6-3/8', 'a length with a foot or inch mark', '6-3/8'],
    [`10'--6"`, `feet and inches such as 10'-6 3/8"`, `10'--6"`],
    [`10'-`, `feet and inches such as 10'-6 3/8"`, `10'-`],
    [`10'-6" 3/8`, `feet and inches such as 10'-6 3/8"`, `10'-6" 3/8`],
    ['', `feet and inches such as 10'-6 3/8"`, ''],
    ['3200 mm', 'made of digits, foot and inch marks, a hyphen and a fraction only', '3200 mm'],
    [`1,210'`, 'made of digits, foot and inch marks, a hyphen and a fraction only', `1,210'`],
    [`\u2153"`, 'made of digits, foot and inch marks, a hyphen and a fraction only', `\u2153"`],
    [`12345678901'`, 'a length within range', '12345678901'],
  ])('%s is refused and says what was expected and what was found', (text, expected, found) => {
    expect(parseFeetInches(text)).toEqual({ expected, found });
  });

  it('reads decimals after a comma where the list writes them so', () => {
    expect(parseFeetInches(`10' 6,375"`, 'comma')).toBe(3209.925);
    expect(parseFeetInches(`10' 6.375"`, 'comma')).toHaveProperty('expected');
  });

  it('keeps every 64th of an inch from -50 ft to 50 ft through writing and reading', () => {
    const limit = 50 * 12 * 64;
    let wrong = 0;
    for (let part = -limit; part <= limit; part++) {
      const mm = (part * 127) / 320;
      if (parseFeetInches(formatFeetInches(mm, 64)) !== mm) wrong++;
    }
    expect(wrong).toBe(0);
  });

  it('rounds to the nearest fraction, a tie away from zero', () => {
    expect(formatFeetInches(25.4 / 64, 32)).toBe(`0'-0 1/32"`);
    expect(formatFeetInches(-25.4 / 64, 32)).toBe(`-0'-0 1/32"`);
    expect(formatFeetInches(25.4 * (3 / 64), 32)).toBe(`0'-0 1/16"`);
    expect(formatFeetInches(25.4 * 11.99, 4)).toBe(`1'-0"`);
    expect(formatFeetInches(-0.1, 64)).toBe(`0'-0"`);
    expect(formatFeetInches(-0, 64)).toBe(`0'-0"`);
  });

  // Greatest rounding errors to a fraction of an inch (checks.md U-07, computed).
  it.each([
    [8, 1.5875],
    [16, 0.79375],
    [32, 0.396875],
    [64, 0.1984375],
  ] as const)('to 1/%d inch changes no length by more than %d mm', (denominator, limit) => {
    let most = 0;
    for (let mm = -700; mm <= 700; mm += 0.0496) {
      const back = parseFeetInches(formatFeetInches(mm, denominator));
      most = Math.max(most, Math.abs(Number(back) - mm));
    }
    expect(most).toBeLessThanOrEqual(limit + 1e-9);
    expect(most).toBeGreaterThan(limit * 0.9);
  });

  it('refuses to write what is no finite length', () => {
    expect(() => formatFeetInches(Number.NaN, 64)).toThrow(RangeError);
    expect(() => formatFeetInches(Number.POSITIVE_INFINITY, 64)).toThrow(RangeError);
  });
});
