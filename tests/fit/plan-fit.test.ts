import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPlan, type PlanFit, type PlanFitOptions } from '../../src/fit/plan-fit.js';
import type { PlanPoints } from '../../src/fit/plan-points.js';

type Point = readonly [x: number, y: number];

function planOf(points: readonly Point[]): PlanPoints {
  return { x: points.map(([x]) => x), y: points.map(([, y]) => y) };
}

function fitted(from: readonly Point[], to: readonly Point[], options: Partial<PlanFitOptions> = {}): PlanFit {
  const fit = fitPlan(planOf(from), planOf(to), { scale: 'fixed', mirror: false, ...options });
  if (fit === undefined) throw new Error('no fit');
  return fit;
}

/** Degrees from degrees, minutes and seconds. */
const dms = (degrees: number, minutes: number, seconds: number) => degrees + minutes / 60 + seconds / 3600;

const rectangle: Point[] = [
  [0, 0],
  [24, 0],
  [24, 16],
  [0, 16],
];

/** Where a fit puts a point, by what is said of its members. */
function movedByFit(fit: PlanFit, x: number, y: number): [x: number, y: number] {
  const angle = (fit.angleDeg * Math.PI) / 180;
  const cos = fit.scale * Math.cos(angle);
  const sin = fit.scale * Math.sin(angle);
  const upright = fit.mirrored ? -y : y;
  return [fit.shift[0] + cos * x - sin * upright, fit.shift[1] + sin * x + cos * upright];
}

describe('fitPlan against published numbers', () => {
  // Data from memory of C. Ghilani and P. Wolf, "Adjustment Computations", chapter 18, conformal example;
  // computed with independent code, which gives every digit that the book prints.
  const control: Point[] = [
    [121.622, -128.066],
    [141.228, 187.718],
    [175.802, 135.728],
  ];
  const map: Point[] = [
    [1049422.4, 51089.2],
    [1049413.95, 49659.3],
    [1049244.95, 49884.95],
  ];

  it('is the textbook similarity of four parameters', () => {
    const fit = fitted(control, map, { scale: 'free' });
    expect(fit.angleDeg + 360).toBeCloseTo(dms(183, 13, 5.02), 5);
    expect(fit.scale).toBeCloseTo(4.5196205205, 9);
    expect(fit.shift[0]).toBeCloseTo(1050003.714537, 5);
    expect(fit.shift[1]).toBeCloseTo(50542.131125, 5);
    const expected = [
      [0.003838, -0.029133],
      [0.100867, -0.076742],
      [-0.104704, 0.105875],
    ];
    for (const [k, [x, y]] of expected.entries()) {
      expect(fit.residuals.x[k]).toBeCloseTo(x, 5);
      expect(fit.residuals.y[k]).toBeCloseTo(y, 5);
    }
    // The book's standard error of unit weight has two degrees of freedom, six measures less four parameters.
    expect(Math.sqrt((fit.rms ** 2 * 3) / 2)).toBeCloseTo(0.1398205, 6);
  });

  it.each<[Point, Point]>([
    [
      [174.148, -120.262],
      [1049187.361, 51040.629],
    ],
    [
      [513.52, -192.13],
      [1047637.713, 51278.829],
    ],
    [
      [754.444, -67.706],
      [1046582.113, 50656.241],
    ],
    [
      [972.788, 120.994],
      [1045644.713, 49749.336],
    ],
  ])('moves %j to its place in the textbook', (from, to) => {
    const moved = movedByFit(fitted(control, map, { scale: 'free' }), ...from);
    expect(moved[0]).toBeCloseTo(to[0], 3);
    expect(moved[1]).toBeCloseTo(to[1], 3);
  });

  // S. Umeyama, "Least-squares estimation of transformation parameters between two point patterns", 1991,
  // example; the numbers computed with independent code. A reflection would fit these points perfectly.
  const pattern: Point[] = [
    [0, 0],
    [1, 0],
    [0, 2],
  ];
  const mirrorImage: Point[] = [
    [0, 0],
    [-1, 0],
    [0, 2],
  ];
  const turn = (Math.atan2(-0.5547, 0.83205) * 180) / Math.PI;

  it('is a proper turn where a reflection would fit perfectly', () => {
    const fit = fitted(pattern, mirrorImage, { scale: 'free' });
    expect(fit.angleDeg).toBeCloseTo(turn, 4);
    expect(fit.scale).toBeCloseTo(0.7211102551, 9);
    expect(fit.shift[0]).toBeCloseTo(-0.8, 9);
    expect(fit.shift[1]).toBeCloseTo(0.4, 9);
    expect(fit.rms ** 2).toBeCloseTo(8 / 15, 9);
    const rigid = fitted(pattern, mirrorImage);
    expect(rigid.angleDeg).toBeCloseTo(turn, 4);
    expect(rigid.scale).toBe(1);
    expect(rigid.shift[0]).toBeCloseTo(-0.980484, 6);
    expect(rigid.shift[1]).toBeCloseTo(0.296867, 6);
    expect(rigid.rms ** 2).toBeCloseTo(0.6197549887, 9);
  });

  it('is the reflection where one is asked for', () => {
    const fit = fitted(pattern, mirrorImage, { mirror: true });
    expect([fit.mirrored, Math.abs(fit.angleDeg)]).toEqual([true, 180]);
    expect(fit.rms).toBeCloseTo(0, 12);
    expect(movedByFit(fit, 1, 0)[0]).toBeCloseTo(-1, 12);
  });
});

// Traps of control on a rectangle of 24 by 16 m: computed with independent code.
describe('fitPlan on a rectangle of control', () => {
  const labels = (...order: number[]) => order.map((k) => rectangle[k - 1]);

  it('cannot see labels that are turned by half a turn', () => {
    const fit = fitted(labels(3, 4, 1, 2), rectangle);
    expect(fit.rms).toBe(0);
    expect(Math.abs(fit.angleDeg)).toBe(180);
  });

  it('sees two labels swapped', () => {
    expect(fitted(labels(2, 1, 3, 4), rectangle).rms).toBeCloseTo(16.970563, 6);
    expect(fitted(labels(1, 4, 3, 2), rectangle).rms).toBeCloseTo(20.396078, 6);
  });

  it('sees a plan drawn looking up, by its fit and by its scale', () => {
    const lookingUp = rectangle.map(([x, y]): Point => [-x, y]);
    const rigid = fitted(lookingUp, rectangle);
    expect(rigid.rms).toBeCloseTo(16, 6);
    expect(Math.abs(rigid.angleDeg)).toBeCloseTo(180, 9);
    const free = fitted(lookingUp, rectangle, { scale: 'free' });
    expect(free.rms).toBeCloseTo(13.312805, 6);
    expect(free.scale).toBeCloseTo(0.384615, 6);
    expect(free.scale).toBeCloseTo((144 - 64) / 208, 12);
    const mirrored = fitted(lookingUp, rectangle, { mirror: true });
    expect(mirrored.rms).toBeCloseTo(0, 12);
    expect(mirrored.mirrored).toBe(true);
  });

  it('recovers a turn of 30 degrees and a shift', () => {
    const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const moved = rectangle.map(([x, y]): Point => [cos * x - sin * y + 500, sin * x + cos * y + 200]);
    const fit = fitted(rectangle, moved, { scale: 'free' });
    expect(fit.angleDeg).toBeCloseTo(30, 9);
    expect(fit.scale).toBeCloseTo(1, 9);
    expect(fit.shift[0]).toBeCloseTo(500, 9);
    expect(fit.shift[1]).toBeCloseTo(200, 9);
  });

  it('spreads the misfit of two points along their line, or takes it for scale', () => {
    const line: Point[] = [
      [0, 0],
      [24, 0],
    ];
    const longer: Point[] = [
      [0, 0],
      [24.005, 0],
    ];
    const rigid = fitted(line, longer);
    expect(rigid.residuals.x[0]).toBeCloseTo(0.0025, 12);
    expect(rigid.residuals.x[1]).toBeCloseTo(-0.0025, 12);
    expect([...rigid.residuals.y]).toEqual([0, 0]);
    const free = fitted(line, longer, { scale: 'free' });
    expect((free.scale - 1) * 1e6).toBeCloseTo(208.333, 3);
    expect(free.rms).toBeCloseTo(0, 12);
  });

  // A levelled instrument that sights four control points: computed with independent code from its own observations.
  it('places an instrument from what it sights', () => {
    const sights = [
      [198.0718, 90.626, 11.2497],
      [76.2054, 90.4386, 16.0785],
      [19.6923, 90.3622, 17.5998],
      [278.8132, 90.5496, 13.331],
    ];
    const rad = Math.PI / 180;
    const local = sights.map(([hz, zenith, slope]): Point => {
      const level = slope * Math.sin(zenith * rad);
      return [level * Math.sin(hz * rad), level * Math.cos(hz * rad)];
    });
    const fit = fitted(local, rectangle);
    expect(fit.shift[0]).toBeCloseTo(9.25006, 5);
    expect(fit.shift[1]).toBeCloseTo(6.40012, 5);
    expect(-fit.angleDeg).toBeCloseTo(37.250101, 5);
    expect(fit.rms * 1000).toBeCloseTo(0.7156, 3);
    expect([...fit.residuals.x].map((x) => x * 1000).map((x) => x.toFixed(2))).toEqual([
      '-0.71',
      '-0.45',
      '0.56',
      '0.60',
    ]);
    const free = fitted(local, rectangle, { scale: 'free' });
    expect((free.scale - 1) * 1e6).toBeCloseTo(2.22, 1);
    expect(free.rms * 1000).toBeCloseTo(0.7149, 3);
  });
});

describe('fitPlan', () => {
  const number = fc.integer({ min: -1e6, max: 1e6 });
  const points = fc.array(fc.tuple(number, number), { minLength: 2, maxLength: 12 });
  const far = fc.constantFrom(0, 6e8, -6e8);

  it('recovers the motion that the points went through, near the origin and far away', () => {
    const angle = fc.integer({ min: -179, max: 180 });
    const property = fc.property(points, angle, fc.boolean(), far, far, (from, degrees, mirror, dx, dy) => {
      fc.pre(from.some(([x, y]) => Math.hypot(x - from[0][0], y - from[0][1]) > 1000));
      const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const to = from.map(([x, y]): Point => {
        const upright = mirror ? -y : y;
        return [cos * x - sin * upright + dx, sin * x + cos * upright + dy];
      });
      const fit = fitted(from, to, { mirror });
      expect(fit.rms).toBeLessThan(1e-6);
      expect(Math.abs(((fit.angleDeg - degrees + 540) % 360) - 180)).toBeLessThan(1e-6);
      for (const [k, [x, y]] of from.entries()) {
        const moved = movedByFit(fit, x, y);
        expect(Math.hypot(moved[0] - to[k][0], moved[1] - to[k][1])).toBeLessThan(1e-5);
      }
    });
    fc.assert(property, { numRuns: 500, seed: 41 });
  });

  it('has no better neighbour: no other turn, shift or scale comes nearer', () => {
    const nudge = fc.double({ min: -0.01, max: 0.01, noNaN: true });
    const pairs = fc.array(fc.tuple(number, number, number, number), { minLength: 2, maxLength: 12 });
    const property = fc.property(
      pairs,
      fc.boolean(),
      fc.boolean(),
      nudge,
      nudge,
      nudge,
      nudge,
      (all, mirror, isFree, a, b, c, d) => {
        const [from, to] = [all.map(([x, y]): Point => [x, y]), all.map(([, , x, y]): Point => [x, y])];
        const options = { mirror, scale: isFree ? ('free' as const) : ('fixed' as const) };
        const fit = fitPlan(planOf(from), planOf(to), options);
        fc.pre(fit !== undefined && fit.scale > 0);
        const missOf = (other: PlanFit) =>
          Math.hypot(...from.flatMap(([x, y], k) => movedByFit(other, x, y).map((part, axis) => part - to[k][axis]))) /
          Math.sqrt(from.length);
        expect(missOf(fit)).toBeCloseTo(fit.rms, 3);
        const other = {
          ...fit,
          angleDeg: fit.angleDeg + a * 100,
          scale: isFree ? fit.scale * (1 + b) : 1,
          shift: [fit.shift[0] + c * 1e5, fit.shift[1] + d * 1e5] as const,
        };
        expect(missOf(other)).toBeGreaterThanOrEqual(fit.rms * (1 - 1e-9) - 1e-6);
      },
    );
    fc.assert(property, { numRuns: 500, seed: 42 });
  });

  it('does not exist without a direction', () => {
    const none = (from: Point[], to: Point[]) => fitPlan(planOf(from), planOf(to), { scale: 'free', mirror: false });
    expect(none([], [])).toBeUndefined();
    expect(none([[1, 1]], [[2, 2]])).toBeUndefined();
    expect(
      none(
        [
          [1, 1],
          [1, 1],
        ],
        [
          [0, 0],
          [5, 5],
        ],
      ),
    ).toBeUndefined();
    expect(
      none(
        [
          [0, 0],
          [5, 5],
        ],
        [
          [1, 1],
          [1, 1],
        ],
      ),
    ).toBeUndefined();
    expect(() => none([[1, 1]], [])).toThrow('1 points cannot be matched with 0');
  });

  it('does not turn where every turn fits as well', () => {
    const square: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    const fit = fitted(
      square.map(([x, y]): Point => [x, -y]),
      square,
    );
    expect([fit.angleDeg, fit.rms]).toEqual([0, 10]);
  });
});
