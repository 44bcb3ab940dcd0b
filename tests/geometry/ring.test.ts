import { describe, expect, it } from 'vitest';
import { distanceToRing, insideRing, type Ring, signedAreaTwice } from '../../src/geometry/ring.js';
import { newRandom } from '../read/random.js';

type Point = readonly [u: number, v: number];

function ringOf(points: readonly Point[]): Ring {
  return { u: Float64Array.from(points, ([u]) => u), v: Float64Array.from(points, ([, v]) => v) };
}

/** A double as a whole number of 2^-1074, exactly. */
function exact(value: number): bigint {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  const bits = view.getBigUint64(0);
  const exponent = Number((bits >> 52n) & 0x7ffn);
  const fraction = bits & 0xfffffffffffffn;
  const size = exponent === 0 ? fraction : (fraction | 0x10000000000000n) << BigInt(exponent - 1);
  return bits >> 63n === 1n ? -size : size;
}

/** Inside by even-odd, or on the edge, in whole numbers: no rounding anywhere. */
function exactly(points: readonly Point[], [u, v]: Point): 'inside' | 'outside' | 'on' {
  const [pu, pv] = [exact(u), exact(v)];
  let crossings = 0;
  for (let k = 0; k < points.length; k++) {
    const [au, av] = points[k].map(exact);
    const [bu, bv] = points[(k + 1) % points.length].map(exact);
    const turn = (bu - au) * (pv - av) - (bv - av) * (pu - au);
    const within = (a: bigint, b: bigint, p: bigint) => (a <= p && p <= b) || (b <= p && p <= a);
    if (turn === 0n && within(au, bu, pu) && within(av, bv, pv)) return 'on';
    if (av <= pv === bv <= pv) continue;
    // The edge meets the ray to the right of the point where its u at the height of the point is greater.
    const run = bv - av;
    const meets = au * run + (pv - av) * (bu - au) - pu * run;
    if (run > 0n ? meets > 0n : meets < 0n) crossings++;
  }
  return crossings % 2 === 1 ? 'inside' : 'outside';
}

function nextUp(value: number, steps: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  view.setBigInt64(0, view.getBigInt64(0) + BigInt(steps));
  return view.getFloat64(0);
}

/** Distance of a point from an edge by a search, the distance having one least value on it. */
function searched([u, v]: Point, [au, av]: Point, [bu, bv]: Point): number {
  const at = (t: number) => Math.hypot(au + t * (bu - au) - u, av + t * (bv - av) - v);
  let [low, high] = [0, 1];
  for (let k = 0; k < 120; k++) {
    const [first, second] = [low + (high - low) / 3, high - (high - low) / 3];
    if (at(first) < at(second)) high = second;
    else low = first;
  }
  return Math.min(at(0), at(1), at(low));
}

const rectangle: Point[] = [
  [0, 0],
  [10, 0],
  [10, 6],
  [0, 6],
];
const notched: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [6, 10],
  [6, 4],
  [4, 4],
  [4, 10],
  [0, 10],
];
const pentagram: Point[] = [0, 2, 4, 1, 3].map((k) => [
  Math.cos((k * 2 * Math.PI) / 5) * 10,
  Math.sin((k * 2 * Math.PI) / 5) * 10,
]);

describe('insideRing', () => {
  it('tells inside from outside of a rectangle and of a concave ring, either way round', () => {
    for (const turned of [false, true]) {
      const ring = (points: Point[]) => ringOf(turned ? [...points].reverse() : points);
      expect(
        [
          [5, 3],
          [0.001, 0.001],
          [9.999, 5.999],
        ].map(([u, v]) => insideRing(ring(rectangle), u, v)),
      ).toEqual([true, true, true]);
      expect(
        [
          [-1, 3],
          [11, 3],
          [5, -0.001],
          [5, 6.001],
          [-1, 0],
          [11, 6],
        ].map(([u, v]) => insideRing(ring(rectangle), u, v)),
      ).toEqual(new Array(6).fill(false));
      expect(
        [
          [5, 2],
          [5, 5],
          [2, 8],
          [8, 8],
          [5, 11],
        ].map(([u, v]) => insideRing(ring(notched), u, v)),
      ).toEqual([true, false, true, true, false]);
    }
  });

  it('counts a ring that crosses itself by even-odd', () => {
    expect(insideRing(ringOf(pentagram), 0, 0)).toBe(false);
    expect(insideRing(ringOf(pentagram), 8, 0)).toBe(true);
    expect(insideRing(ringOf(pentagram), -8, 0)).toBe(false);
  });

  it('counts a corner once when the ray goes through it', () => {
    const diamond: Point[] = [
      [0, -5],
      [5, 0],
      [0, 5],
      [-5, 0],
    ];
    expect(
      [
        [-6, 0],
        [-4, 0],
        [4, 0],
        [6, 0],
      ].map(([u, v]) => insideRing(ringOf(diamond), u, v)),
    ).toEqual([false, true, true, false]);
    const step: Point[] = [
      [0, 0],
      [4, 0],
      [4, 2],
      [8, 2],
      [8, 4],
      [0, 4],
    ];
    expect(
      [
        [-1, 2],
        [1, 2],
        [9, 2],
        [5, 1],
      ].map(([u, v]) => insideRing(ringOf(step), u, v)),
    ).toEqual([false, true, false, false]);
  });

  it('agrees with whole numbers on random rings and points', () => {
    const random = newRandom(91);
    const seen = { inside: 0, outside: 0, on: 0 };
    for (let k = 0; k < 3000; k++) {
      const grid = k % 2 === 0 ? 8 : 1e5;
      const value = () => (grid === 8 ? Math.floor(random() * grid) : random() * grid);
      const points = Array.from({ length: 3 + Math.floor(random() * 6) }, (): Point => [value(), value()]);
      const point: Point = [value(), value()];
      const expected = exactly(points, point);
      seen[expected]++;
      if (expected !== 'on')
        expect([points, point, insideRing(ringOf(points), ...point)]).toEqual([points, point, expected === 'inside']);
    }
    expect(Math.min(seen.inside, seen.outside, seen.on)).toBeGreaterThan(100);
  });

  it('agrees with whole numbers on points a few steps of a double from an edge', () => {
    const random = newRandom(92);
    const seen = { inside: 0, outside: 0, on: 0 };
    for (let k = 0; k < 4000; k++) {
      const far = [0, 1e3, 6e8][k % 3];
      const points = Array.from({ length: 3 + (k % 4) }, (): Point => [far + random() * 1e4, far + random() * 1e4]);
      const [[au, av], [bu, bv]] = points;
      const t = random();
      const step = () => Math.floor(random() * 5) - 2;
      const point: Point = [nextUp(au + t * (bu - au), step()), nextUp(av + t * (bv - av), step())];
      const expected = exactly(points, point);
      seen[expected]++;
      if (expected !== 'on')
        expect([points, point, insideRing(ringOf(points), ...point)]).toEqual([points, point, expected === 'inside']);
    }
    expect(Math.min(seen.inside, seen.outside)).toBeGreaterThan(1000);
  });
});

describe('distanceToRing', () => {
  it('is the distance to the nearest edge or corner, from inside and from outside', () => {
    const ring = ringOf(rectangle);
    expect(distanceToRing(ring, 5, 3)).toBe(3);
    expect(distanceToRing(ring, 9, 3)).toBe(1);
    expect(distanceToRing(ring, 13, 10)).toBe(5);
    expect(distanceToRing(ring, 5, 6)).toBe(0);
    expect(distanceToRing(ringOf(notched), 5, 7)).toBe(1);
  });

  it('agrees with a search along every edge', () => {
    const random = newRandom(93);
    for (let k = 0; k < 500; k++) {
      const points = Array.from({ length: 3 + (k % 5) }, (): Point => [random() * 1000, random() * 1000]);
      const point: Point = [random() * 1500 - 250, random() * 1500 - 250];
      const least = Math.min(...points.map((from, n) => searched(point, from, points[(n + 1) % points.length])));
      expect(distanceToRing(ringOf(points), ...point)).toBeCloseTo(least, 5);
    }
  });

  it('takes a corner that comes twice for one point', () => {
    expect(
      distanceToRing(
        ringOf([
          [0, 0],
          [0, 0],
          [10, 0],
          [10, 10],
        ]),
        -3,
        -4,
      ),
    ).toBe(5);
  });
});

describe('signedAreaTwice', () => {
  it('is more than zero anticlockwise', () => {
    expect(signedAreaTwice(ringOf(rectangle))).toBe(120);
    expect(signedAreaTwice(ringOf([...rectangle].reverse()))).toBe(-120);
    expect(signedAreaTwice(ringOf(notched))).toBe(2 * (100 - 12));
  });
});
