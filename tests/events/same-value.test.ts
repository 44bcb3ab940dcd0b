import { describe, expect, it } from 'vitest';
import { sameValue } from '../../src/events/same-value.js';

describe('two values of a member', () => {
  it.each([
    [10, 10.0004],
    [10, 10.0005 - 1e-12],
    [-0, 0],
    [
      [1, 2],
      [1.0004, 2],
    ],
    [
      { radius: 5, height: [-1, 1] },
      { height: [-1, 1.0001], radius: 5 },
    ],
    [{ radius: 5 }, { radius: 5, height: undefined }],
    [Number.NaN, Number.NaN],
  ])('are the same: %j and %j', (one, other) => {
    expect([sameValue(one, other), sameValue(other, one)]).toEqual([true, true]);
  });

  it.each([
    [10, 10.0006],
    [
      [1, 2],
      [1, 2, 3],
    ],
    [
      [1, 2],
      [2, 1],
    ],
    [{ radius: 5 }, { radius: 5, height: [0, 0] }],
    [{}, []],
    [null, {}],
    [null, 0],
    ['10', 10],
    ['a', 'A'],
    [undefined, null],
    [JSON.parse('{"__proto__":{"a":1}}'), {}],
    [{ constructor: 1 }, {}],
  ])('are not: %j and %j', (one, other) => {
    expect([sameValue(one, other), sameValue(other, one)]).toEqual([false, false]);
  });

  it.each(['axis', 'run', 'inward'])('are compared by direction alone in %s', (member) => {
    expect(sameValue([0, 0, 1], [0, 0, 2500], member)).toBe(true);
    expect(sameValue([0, 0, 1], [0, 0, -1], member)).toBe(false);
    // 0.0004 in a million is 2.3e-8 degree; 0.0004 in 1 is 0.023 degree.
    expect(sameValue([1e6, 0, 0], [1e6, 0.0004, 0], member)).toBe(true);
    expect(sameValue([1, 0, 0], [1, 0.0004, 0], member)).toBe(false);
    expect(sameValue([0, 0, 0], [0, 0, 1], member)).toBe(false);
    expect(sameValue([0, 0, 0], [0, 0, 0], member)).toBe(true);
  });

  it('are compared as angles where the name ends so', () => {
    expect(sameValue(30, 30.00004, 'turnDeg')).toBe(true);
    expect(sameValue(30, 30.00006, 'turnDeg')).toBe(false);
    expect(sameValue({ turnDeg: 30 }, { turnDeg: 30.0004 })).toBe(false);
  });

  it('are compared exactly where numbers are no lengths on site', () => {
    const place = { crs: 'EPSG:1', eastings: 1, northings: 2, height: 3, scale: 0.001 };
    expect(sameValue(place, { ...place, scale: 0.00100001 }, 'georeference')).toBe(false);
    expect(sameValue({ georeference: place }, { georeference: { ...place, scale: 0.00100001 } }, 'frame')).toBe(false);
    expect(sameValue({ depthFactor: 2 }, { depthFactor: 2.0001 })).toBe(false);
    expect(sameValue({ 'urn:x': 1 }, { 'urn:x': 1.0001 }, 'ext')).toBe(false);
  });

  it('may be nested as deep as memory allows', () => {
    const deep = () => {
      let value: unknown = 1;
      for (let k = 0; k < 100_000; k++) value = k % 2 === 0 ? [value] : { value };
      return value;
    };
    expect(sameValue(deep(), deep())).toBe(true);
    expect(sameValue(deep(), [deep()])).toBe(false);
  });
});
