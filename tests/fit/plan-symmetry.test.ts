import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnsOntoItself } from '../../src/fit/plan-symmetry.js';
import { newRandom } from '../read/random.js';

type Point = readonly [x: number, y: number, z?: number];

function turnsOf(points: readonly Point[], tolerance = 0.01): number[] {
  return turnsOntoItself(
    { x: points.map(([x]) => x), y: points.map(([, y]) => y), z: points.map(([, , z]) => z ?? Number.NaN) },
    tolerance,
  );
}

function polygon(corners: number, radius: number): Point[] {
  return Array.from({ length: corners }, (_, k) => {
    const angle = (2 * Math.PI * k) / corners;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** The points turned about a place and shifted. */
function placed(points: readonly Point[], angle: number, [dx, dy]: readonly [number, number]): Point[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return points.map(([x, y, z]) => [cos * x - sin * y + dx, sin * x + cos * y + dy, z]);
}

const rectangle: Point[] = [
  [0, 0],
  [24_000, 0],
  [24_000, 16_000],
  [0, 16_000],
];
const square: Point[] = [
  [0, 0],
  [9000, 0],
  [9000, 9000],
  [0, 9000],
];

describe('turnsOntoItself', () => {
  // The rectangle of 24 by 16 m: half a turn of its labels fits with nothing left over, by independent code too.
  it.each<[string, Point[], number[]]>([
    ['a rectangle', rectangle, [180]],
    ['a square', square, [90, 180, 270]],
    ['a square and its middle', [...square, [4500, 4500]], [90, 180, 270]],
    [
      'two points',
      [
        [0, 0],
        [5000, 1000],
      ],
      [180],
    ],
    [
      'two points on each other and two more',
      [
        [0, 0],
        [0, 0],
        [9000, 0],
        [9000, 0],
      ],
      [180],
    ],
    ['a triangle with equal sides', polygon(3, 5000), [120, 240]],
    [
      'a triangle with two equal sides',
      [
        [0, 0],
        [6000, 0],
        [3000, 9000],
      ],
      [],
    ],
    ['a rectangle and one more point', [...rectangle, [12_000, 3000]], []],
    ['a rectangle without a corner', rectangle.slice(1), []],
    [
      'points on a line, evenly',
      [
        [0, 0],
        [1000, 500],
        [2000, 1000],
      ],
      [180],
    ],
    [
      'points on a line, unevenly',
      [
        [0, 0],
        [1000, 500],
        [3000, 1500],
      ],
      [],
    ],
    [
      'a five-pointed ring in a ring',
      [...polygon(5, 5000), ...placed(polygon(5, 3000), 0.3, [0, 0])],
      [72, 144, 216, 288],
    ],
    ['rings of four and six', [...polygon(4, 5000), ...polygon(6, 3000)], [180]],
    ['one point', [[3, 4]], []],
    ['no points', [], []],
    [
      'points all at one place',
      [
        [3, 4],
        [3, 4],
        [3, 4],
      ],
      [],
    ],
  ])('knows those of %s, wherever it lies', (_, points, turns) => {
    for (const [angle, at] of [
      [0, [0, 0]],
      [0.7, [5e6, -1e6]],
      [-2, [-6e8, 6e8]],
    ] as const)
      expect(turnsOf(placed(points, angle, at))).toEqual(turns);
  });

  it('holds each point to the tolerance', () => {
    const moved = (by: number): Point[] => [...rectangle.slice(0, 3), [0, 16_000 + by]];
    // The centroid follows by a quarter, and half a turn about it doubles what is left.
    expect(turnsOf(moved(4), 2.01)).toEqual([180]);
    expect(turnsOf(moved(4), 1.99)).toEqual([]);
  });

  it('asks that heights agree where every point has one', () => {
    const withHeights = (...heights: (number | undefined)[]) => square.map(([x, y], k): Point => [x, y, heights[k]]);
    expect(turnsOf(withHeights(0, 0, 0, 0))).toEqual([90, 180, 270]);
    expect(turnsOf(withHeights(0, 50, 0, 50))).toEqual([180]);
    expect(turnsOf(withHeights(0, 0, 0, 50))).toEqual([]);
    expect(turnsOf(withHeights(0, 0, 0, 50), 51)).toEqual([90, 180, 270]);
    expect(turnsOf(withHeights(0, 0, undefined, 50))).toEqual([90, 180, 270]);
    expect(turnsOntoItself({ x: [0, 9], y: [0, 0] }, 0.01)).toEqual([180]);
  });

  it('says nothing where the set is no larger than the tolerance', () => {
    expect(turnsOf(square, 7000)).toEqual([]);
  });

  it('needs every orbit: taking a point out of a ring leaves none', () => {
    const property = fc.property(fc.integer({ min: 3, max: 40 }), fc.nat(), (corners, at) => {
      const ring = polygon(corners, 5000);
      expect(turnsOf(ring)).toEqual(Array.from({ length: corners - 1 }, (_, k) => (360 * (k + 1)) / corners));
      const missing = ring.filter((_, k) => k !== at % corners);
      expect(turnsOf(missing)).toEqual(corners === 3 ? [180] : []);
    });
    fc.assert(property, { numRuns: 100, seed: 61 });
  });

  it('finds the turns that comparing every point with every other at any turn finds', () => {
    const cell = fc.integer({ min: -2, max: 2 });
    const property = fc.property(
      fc.uniqueArray(fc.tuple(cell, cell), { minLength: 2, maxLength: 10, selector: String }),
      (list) => {
        const count = list.length;
        const middle = [0, 1].map((axis) => list.reduce((sum, point) => sum + point[axis], 0));
        // In whole numbers: points times their count, about the sum. On a grid only quarter turns can do.
        const about = list.map(([x, y]) => [x * count - middle[0], y * count - middle[1]]);
        const names = new Set(about.map(String));
        const quarters: ((x: number, y: number) => number[])[] = [
          (x, y) => [-y, x],
          (x, y) => [-x, -y],
          (x, y) => [y, -x],
        ];
        const expected = quarters.flatMap((turn, k) =>
          about.every(([x, y]) => names.has(String(turn(x, y).map((part) => part + 0)))) ? [90 * (k + 1)] : [],
        );
        expect(turnsOf(list, 1e-6)).toEqual(expected);
      },
    );
    fc.assert(property, { numRuns: 2000, seed: 62 });
  });

  it('tells thousands of points', () => {
    const random = newRandom(63);
    const half = Array.from({ length: 1500 }, (): Point => [random() * 50_000, random() * 50_000]);
    expect(turnsOf([...half, ...placed(half, Math.PI, [70_000, 20_000])])).toEqual([180]);
    expect(turnsOf([...half, ...placed(half, Math.PI / 2, [0, 0])])).toEqual([]);
  });
});
