import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineWidth } from '../../src/fit/line-width.js';

type Point = readonly [x: number, y: number];

function widthOf(points: readonly Point[]) {
  const found = lineWidth({ x: points.map(([x]) => x), y: points.map(([, y]) => y) });
  if (found === undefined) throw new Error('no line');
  return found;
}

describe('lineWidth', () => {
  // Singular values of the covariance: computed with independent code for a rectangle of 24 by 16 and for a line.
  it('has the known scatter of a rectangle and of a line', () => {
    const rectangle = widthOf([
      [0, 0],
      [24, 0],
      [24, 16],
      [0, 16],
    ]);
    expect([rectangle.varianceAlong, rectangle.varianceAcross]).toEqual([144, 64]);
    expect([rectangle.length, rectangle.greatestDistance, rectangle.angleDeg]).toEqual([24, 8, 0]);
    const line = widthOf([
      [0, 0],
      [10, 0],
      [20, 0],
    ]);
    expect(line.varianceAlong).toBeCloseTo(66.667, 3);
    expect([line.varianceAcross, line.length, line.greatestDistance]).toEqual([0, 20, 0]);
  });

  it('tells points that are nearly on a line, wherever it lies and runs', () => {
    const property = fc.property(fc.integer({ min: -89, max: 90 }), fc.constantFrom(0, 1e6, -6e8), (degrees, far) => {
      const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const place = ([along, across]: Point): Point => [
        far + cos * along - sin * across,
        -far + sin * along + cos * across,
      ];
      const on = widthOf(
        (
          [
            [0, 0],
            [7000, 0],
            [20_000, 0],
            [31_000, 0],
          ] as Point[]
        ).map(place),
      );
      expect(on.length).toBeCloseTo(31_000, 5);
      expect(on.greatestDistance).toBeLessThan(1e-6);
      expect(Math.abs(((on.angleDeg - degrees + 270) % 180) - 90)).toBeLessThan(1e-6);
      // In pairs across the line, so that it stays the best one.
      const beside = widthOf(
        (
          [
            [0, 0],
            [10_000, 3],
            [10_000, -3],
            [20_000, 0],
          ] as Point[]
        ).map(place),
      );
      expect(beside.greatestDistance).toBeCloseTo(3, 5);
    });
    fc.assert(property, { numRuns: 300, seed: 51 });
  });

  it('has no better neighbour: no line through the middle, turned a little, comes nearer', () => {
    const number = fc.integer({ min: -1000, max: 1000 });
    const points = fc.array(fc.tuple(number, number), { minLength: 1, maxLength: 12 });
    const property = fc.property(points, fc.double({ min: -1, max: 1, noNaN: true }), (list, turn) => {
      const found = widthOf(list);
      const angle = (found.angleDeg * Math.PI) / 180 + turn;
      const middle = [0, 1].map((axis) => list.reduce((sum, point) => sum + point[axis], 0) / list.length);
      const meanSq =
        list.reduce(
          (sum, [x, y]) => sum + (Math.cos(angle) * (y - middle[1]) - Math.sin(angle) * (x - middle[0])) ** 2,
          0,
        ) / list.length;
      expect(meanSq).toBeGreaterThanOrEqual(found.varianceAcross - 1e-6);
      expect(found.varianceAlong).toBeGreaterThanOrEqual(found.varianceAcross - 1e-6);
    });
    fc.assert(property, { numRuns: 500, seed: 52 });
  });

  it('has no length at one place, and is not there without points', () => {
    expect(
      widthOf([
        [5, 5],
        [5, 5],
      ]),
    ).toMatchObject({ length: 0, greatestDistance: 0 });
    expect(lineWidth({ x: [], y: [] })).toBeUndefined();
  });
});
