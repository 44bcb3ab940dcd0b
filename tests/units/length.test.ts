import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { divideExactly } from '../../src/units/divide-exactly.js';
import { formatLength } from '../../src/units/format-length.js';
import { formatMm, roundMm } from '../../src/units/format-mm.js';
import { type LengthUnit, lengthUnits } from '../../src/units/length-unit.js';
import { parseLength } from '../../src/units/parse-length.js';
import { parseNumber } from '../../src/units/parse-number.js';

describe('length units', () => {
  // International foot 0.3048 m, US survey foot 1200/3937 m: 85 FR 62698, 5 Oct 2020 (checks.md U-01).
  it('has the international foot and the US survey foot of the Federal Register', () => {
    expect(parseLength('1', 'ft', 'point')).toBe(304.8);
    expect(parseLength('3937', 'us-ft', 'point')).toBe(1200000);
  });

  // 1 usft = 0.304800609601219202438404876810 m, exact rational (checks.md U-02).
  it('gives one survey foot to the last bit', () => {
    expect(parseLength('1', 'us-ft', 'point')).toBe(304.80060960121920243840487681);
  });

  // The wrong foot at 100, 1000, 5280, 1 000 000, 2 000 000 and 10 000 000 ft (checks.md U-03).
  it.each([
    ['100', 0.06096],
    ['1000', 0.609601],
    ['5280', 3.218694],
    ['1000000', 609.601219],
    ['2000000', 1219.202438],
    ['10000000', 6096.012192],
  ])('tells the two feet apart at %s ft by %d mm', (feet, mm) => {
    const survey = Number(parseLength(feet, 'us-ft', 'point'));
    const international = Number(parseLength(feet, 'ft', 'point'));
    expect(survey - international).toBeCloseTo(mm, 5);
  });

  // Survey foot as a decimal in a published table of units, 0.304800609601219 m (checks.md U-04).
  it('agrees with the published decimal of the survey foot', () => {
    expect(Number(parseLength('1', 'us-ft', 'point')) / 1000).toBeCloseTo(0.304800609601219, 15);
  });

  // 45.5 cm = 455.0 mm and 55.25 m = 552.5 dm, a published conversion test (checks.md U-05).
  it('converts metres and centimetres as a published conversion test does', () => {
    expect(parseLength('45.5', 'cm', 'point')).toBe(455);
    expect(parseLength('55.25', 'm', 'point')).toBe(55250);
  });

  // Bits in inches as millimetres (checks.md U-09, computed).
  it.each([
    ['0.1875', 4.7625],
    ['0.25', 6.35],
    ['0.3125', 7.9375],
    ['0.375', 9.525],
    ['0.4375', 11.1125],
    ['0.5', 12.7],
    ['0.5625', 14.2875],
    ['0.625', 15.875],
    ['0.75', 19.05],
    ['0.875', 22.225],
    ['1', 25.4],
    ['1.125', 28.575],
    ['1.25', 31.75],
  ])('reads a bit of %s in as %d mm', (inches, mm) => {
    expect(parseLength(inches, 'in', 'point')).toBe(mm);
  });

  it.each([
    ['3.2', 'm', 3200],
    ['10.53125', 'ft', 3209.925],
    ['0.1', 'm', 100],
    ['1.1', 'cm', 11],
    ['2.3', 'm', 2300],
    ['1.005', 'm', 1005],
    ['1025.7', 'mm', 1025.7],
    ['-4.35', 'm', -4350],
    ['1.00000e+03', 'mm', 1000],
    ['123456789.123456789012', 'mm', 123456789.123456789012],
  ] as const)('reads %s %s as %d mm without noise', (text, unit, mm) => {
    expect(parseLength(text, unit, 'point')).toBe(mm);
  });

  it('reads every length as the double nearest to the exact value', () => {
    // Short numbers and long ones take different ways.
    const digits = fc.oneof(
      fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n }),
      fc.bigInt({ min: -(10n ** 22n), max: 10n ** 22n }),
    );
    const unit = fc.constantFrom<LengthUnit[]>('mm', 'cm', 'm', 'in', 'ft', 'us-ft');
    fc.assert(
      fc.property(digits, fc.integer({ min: 1, max: 22 }), unit, (mantissa, places, name) => {
        const { numerator, denominator } = lengthUnits[name];
        const read = parseLength(`${mantissa}e-${places}`, name, 'point');
        const divisor = BigInt(denominator) * 10n ** BigInt(places);
        expect(isNearest(Number(read), mantissa * BigInt(numerator), divisor)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('reads back what it writes, to a millionth of a millimetre', () => {
    const mm = fc.integer({ min: -5e13, max: 5e13 }).map((steps) => steps / 1e6);
    const unit = fc.constantFrom<LengthUnit[]>('mm', 'cm', 'm', 'in', 'ft', 'us-ft');
    const decimal = fc.constantFrom('point' as const, 'comma' as const);
    fc.assert(
      fc.property(mm, unit, decimal, (length, name, sign) => {
        const text = formatLength(length, { unit: name, decimal: sign });
        expect(roundMm(Number(parseLength(text, name, sign)))).toBe(length === 0 ? 0 : length);
      }),
      { numRuns: 500 },
    );
  });

  it('writes as few decimals as hold a millionth of a millimetre, or as many as are asked for', () => {
    expect(formatLength(3209.925, { unit: 'ft' })).toBe('10.53125');
    expect(formatLength(3209.925, { unit: 'ft', decimals: 2 })).toBe('10.53');
    expect(formatLength(3200, { unit: 'm' })).toBe('3.2');
    expect(formatLength(roundMm(Number(parseLength('100.12', 'us-ft', 'point'))), { unit: 'us-ft' })).toBe('100.12');
    expect(formatLength(3209.925, { unit: 'ft-in' })).toBe(`10'-6 3/8"`);
    expect(formatLength(3209.925, { unit: 'ft-in', fraction: 2 })).toBe(`10'-6 1/2"`);
    expect(formatLength(0.5, { unit: 'mm', decimal: 'comma' })).toBe('0,5');
  });
});

describe('plain numbers', () => {
  it.each([
    ['0', 0],
    ['-0', 0],
    ['-0.00', 0],
    ['.5', 0.5],
    ['5.', 5],
    ['+7', 7],
    ['\u22127', -7],
    ['1E+05', 100000],
    ['1.02570e+03', 1025.7],
    ['0.1', 0.1],
    ['9007199254740993', 9007199254740992],
    ['1e-400', 0],
  ])('%s is read as %d', (text, value) => {
    expect(parseNumber(text, 'point')).toBe(value);
  });

  it.each([
    '',
    ' ',
    '1 ',
    '1,5',
    '1,234.5',
    '1.2.3',
    '12 mm',
    '0x10',
    'Infinity',
    'NaN',
    '1e',
    '1e+',
    '--1',
    '.',
    '1e5.5',
  ])('"%s" is refused', (text) => {
    expect(parseNumber(text, 'point')).toEqual({
      expected: 'a plain number with a decimal point, without unit or thousands signs',
      found: text,
    });
  });

  it('reads the decimal comma only where it is asked for', () => {
    expect(parseNumber('1,5', 'comma')).toBe(1.5);
    expect(parseNumber('1.5', 'comma')).toHaveProperty('expected');
  });

  it('refuses what no double holds', () => {
    expect(parseNumber('1e309', 'point')).toEqual({ expected: 'a number within range', found: '1e309' });
    expect(parseNumber('1e99999', 'point')).toEqual({ expected: 'a number within range', found: '1e99999' });
  });

  it('reads every number as the engine does', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(parseNumber(String(value), 'point')).toBe(value === 0 ? 0 : value);
      }),
      { numRuns: 500 },
    );
  });
});

describe('millimetres as text', () => {
  it.each([
    [-0, '0'],
    [-1e-9, '0'],
    [0.0000004, '0'],
    [0.1 + 0.2, '0.3'],
    [3209.925, '3209.925'],
    [0.396875, '0.396875'],
    [304.8006096012192, '304.80061'],
    [1e10, '10000000000'],
    [1e21, '1000000000000000000000'],
    [-0.0000014, '-0.000001'],
    [0.000001, '0.000001'],
  ])('%d is written %s', (mm, text) => {
    expect(formatMm(mm)).toBe(text);
  });

  it('refuses what is no finite number', () => {
    expect(() => formatMm(Number.NaN)).toThrow(RangeError);
    expect(() => formatMm(Number.NEGATIVE_INFINITY)).toThrow(RangeError);
  });

  it('writes every 64th of an inch up to 50 ft in full', () => {
    let wrong = 0;
    for (let part = 0; part <= 50 * 12 * 64; part++) {
      const mm = (part * 127) / 320;
      if (Number(formatMm(mm)) !== mm) wrong++;
    }
    expect(wrong).toBe(0);
  });
});

describe('exact division', () => {
  it('rounds a tie to even and a quotient beside a tie to its own side', () => {
    const even = 2n ** 53n;
    expect(divideExactly(even + 1n, 1n)).toBe(2 ** 53);
    expect(divideExactly((even + 1n) * 10n ** 40n + 1n, 10n ** 40n)).toBe(2 ** 53 + 2);
    expect(divideExactly((even + 3n) * 10n ** 40n - 1n, 10n ** 40n)).toBe(2 ** 53 + 2);
    expect(divideExactly(-(even + 3n), 1n)).toBe(-(2 ** 53 + 4));
    expect(divideExactly(0n, 7n)).toBe(0);
  });
});

/** Whether no neighbour of a double lies nearer to the quotient, by cross multiplication. */
function isNearest(value: number, numerator: bigint, denominator: bigint): boolean {
  const off = (candidate: number): bigint => {
    const scaled = toFraction(candidate);
    const difference = scaled.top * denominator - numerator * scaled.bottom;
    return (difference < 0n ? -difference : difference) * (2n ** 1200n / scaled.bottom);
  };
  const [below, above] = neighbours(value);
  const here = off(value);
  return here <= off(below) && here <= off(above);
}

function toFraction(value: number): { top: bigint; bottom: bigint } {
  let bottom = 1n;
  let scaled = value;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    bottom *= 2n;
  }
  return { top: BigInt(scaled), bottom };
}

function neighbours(value: number): [number, number] {
  const bits = new BigInt64Array(new Float64Array([value]).buffer);
  if (value === 0) return [-Number.MIN_VALUE, Number.MIN_VALUE];
  const around = new Float64Array(new BigInt64Array([bits[0] - 1n, bits[0] + 1n]).buffer);
  return [around[0], around[1]];
}
