import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createMapConversion } from '../../src/frame/map-conversion.js';

const origin = { eastings: 1, northings: 2, height: 3, scale: 1 };

describe('createMapConversion', () => {
  // checks.md F-15, from the tests of an IFC library for IfcMapConversion. Its vector with separate
  // factors for x, y and z belongs to IfcMapConversionScaled, which AHX does not have.
  it.each([
    ['shifts', { ...origin, xAxisAbscissa: 1, xAxisOrdinate: 0 }, [1, 1, 0], [2, 3, 3]],
    ['scales before it shifts', { ...origin, scale: 2, xAxisAbscissa: 1, xAxisOrdinate: 0 }, [1, 1, 0], [3, 4, 3]],
    ['turns anticlockwise', { ...origin, xAxisAbscissa: 0, xAxisOrdinate: 1 }, [1, 1, 0], [0, 3, 3]],
    ['takes millimetres to metres', { ...origin, scale: 0.001 }, [1000, 1000, 0], [2, 3, 3]],
  ] as const)('%s as the published vectors have it', (_what, values, [x, y, z], expected) => {
    expect(createMapConversion(values).toMap(x, y, z)).toEqual(expected);
  });

  it('keeps an exact pair exact', () => {
    // checks.md F-15, computed from the formula of the IFC 4.3 documentation (F-14).
    const map = createMapConversion({
      eastings: 500000,
      northings: 4200000,
      height: 5,
      xAxisAbscissa: 0.6,
      xAxisOrdinate: 0.8,
      scale: 1,
    });
    expect(map.toMap(10, 5, 2)).toEqual([500002, 4200011, 7]);
  });

  it('turns by 30 degrees with a pair that is no unit vector', () => {
    // checks.md F-15, computed: theta 30 degrees, millimetres; the pair is 5 times (cos, sin).
    const map = createMapConversion({
      eastings: 500000,
      northings: 4200000,
      height: 5,
      xAxisAbscissa: 5 * Math.cos(Math.PI / 6),
      xAxisOrdinate: 5 * Math.sin(Math.PI / 6),
      scale: 0.001,
    });
    const [e, n, h] = map.toMap(12000, 8000, 3050);
    expect(e).toBeCloseTo(500006.3923048454, 8);
    expect(n).toBeCloseTo(4200012.928203231, 8);
    expect(h).toBeCloseTo(8.05, 12);
  });

  it('puts a point of the official UTM sample model where checks.md F-16 has it', () => {
    const sample = {
      eastings: 458657.3,
      northings: 5438232.25,
      height: 113.7,
      xAxisAbscissa: 0.270600445976,
      xAxisOrdinate: 0.962691746426,
    };
    const right = createMapConversion({ ...sample, scale: 0.001 }).toMap(500, -500, 2000);
    [458657.916646, 5438232.596046, 115.7].forEach((value, i) => expect(right[i]).toBeCloseTo(value, 6));
    const absurd = createMapConversion({ ...sample, scale: 1000 }).toMap(500, -500, 2000);
    [1075303.396, 5784277.9, 2000113.7].forEach((value, i) => expect(absurd[i]).toBeCloseTo(value, 3));
  });

  it('goes back to within a ten-thousandth of a millimetre', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (x, y, z, angle) => {
          const map = createMapConversion({
            eastings: 458657.3,
            northings: 5438232.25,
            height: 113.7,
            xAxisAbscissa: Math.cos(angle),
            xAxisOrdinate: Math.sin(angle),
            scale: 0.001,
          });
          const back = map.toSite(...map.toMap(x, y, z));
          // One step of a double at 5.4e6 m is 1e-9 m, a millionth of a millimetre.
          [x, y, z].forEach((value, i) => expect(Math.abs(back[i] - value)).toBeLessThan(1e-4));
        },
      ),
    );
  });

  it('refuses an x axis without direction and a scale that is not positive', () => {
    expect(() => createMapConversion({ ...origin, xAxisAbscissa: 0, xAxisOrdinate: 0 })).toThrow(/\(0, 0\)/);
    expect(() => createMapConversion({ ...origin, scale: 0 })).toThrow(/not 0/);
    expect(() => createMapConversion({ ...origin, scale: -0.001 })).toThrow(RangeError);
  });
});
