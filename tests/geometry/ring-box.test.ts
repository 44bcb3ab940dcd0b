import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { insideRing, type Ring } from '../../src/geometry/ring.js';
import { ringAtBox } from '../../src/geometry/ring-box.js';

const ringOf = (...points: [number, number][]): Ring => ({
  u: Float64Array.from(points, ([u]) => u),
  v: Float64Array.from(points, ([, v]) => v),
});

describe('a ring at a box', () => {
  const square = ringOf([0, 0], [10, 0], [10, 10], [0, 10]);

  it.each([
    ['with the box in it', 'holds', [1, 1, 9, 9]],
    ['with the box about it', 'cuts', [-1, -1, 11, 11]],
    ['beside it', 'beside', [11, 0, 12, 10]],
    ['across a corner of it', 'cuts', [9, 9, 12, 12]],
    ['across a side, all corners out of the box', 'cuts', [4, -1, 6, 1]],
    ['that touches it from inside', 'cuts', [1, 1, 10, 9]],
    ['that touches it from outside', 'cuts', [10, 1, 12, 9]],
    ['with a box of one point', 'holds', [5, 5, 5, 5]],
  ] as const)('%s', (_, expected, [uLow, vLow, uHigh, vHigh]) => {
    expect(ringAtBox(square, uLow, vLow, uHigh, vHigh)).toBe(expected);
  });

  it('whose edge passes a corner of the box lies beside it, though their extents overlap', () => {
    const triangle = ringOf([0, 0], [10, 0], [0, 10]);
    expect(ringAtBox(triangle, 5.001, 5, 9, 9)).toBe('beside');
    expect(ringAtBox(triangle, 5, 5, 9, 9)).toBe('cuts');
  });

  it('has all points of the box on one side unless it cuts it', () => {
    const at = fc.integer({ min: -40, max: 40 });
    const ring = fc.array(fc.tuple(at, at), { minLength: 3, maxLength: 6 }).map((points) => ringOf(...points));
    let told = 0;
    const agrees = (one: Ring, u: number, v: number, width: number, height: number) => {
      const found = ringAtBox(one, u, v, u + width, v + height);
      if (found === 'cuts') return;
      told++;
      for (let du = 0; du <= 4; du++)
        for (let dv = 0; dv <= 4; dv++)
          expect(insideRing(one, u + (du * width) / 4, v + (dv * height) / 4)).toBe(found === 'holds');
    };
    const size = fc.integer({ min: 0, max: 12 });
    fc.assert(fc.property(ring, at, at, size, size, agrees), { seed: 2, numRuns: 3000 });
    expect(told).toBeGreaterThan(500);
  });
});
