import { describe, expect, it } from 'vitest';
import { PointQuarters } from '../../src/geometry/point-quarters.js';
import { distanceToRing, insideRing, type Ring } from '../../src/geometry/ring.js';
import { seeded } from '../bench/make-layout.js';

const MARGIN = 0.0005;

function ringOf(points: readonly [number, number][]): Ring {
  return { u: Float64Array.from(points, ([u]) => u), v: Float64Array.from(points, ([, v]) => v) };
}

function isIn(ring: Ring, u: number, v: number): boolean {
  return insideRing(ring, u, v) && distanceToRing(ring, u, v) >= MARGIN;
}

const all = (count: number) => Int32Array.from({ length: count }, (_, k) => k);

const points: [string, (random: () => number) => [number, number]][] = [
  ['scattered', (random) => [random() * 1000, random() * 1000]],
  [
    'on a grid that corners of rings are on',
    (random) => [Math.floor(random() * 20) * 50, Math.floor(random() * 20) * 50],
  ],
  ['on a line', (random) => [500, random() * 1000]],
  ['at one place', () => [500, 500]],
  [
    'near one place but for a few',
    (random) => (random() < 0.01 ? [random() * 1e6, 0] : [500 + random(), 500 + random()]),
  ],
];

describe('points in quarters', () => {
  it.each(points)('%s are in a ring as if each were looked at', (_, place) => {
    for (const count of [0, 1, 40, 3000]) {
      const random = seeded(count + 1);
      const at = Array.from({ length: count }, () => place(random));
      const { u, v } = ringOf(at);
      // Every third one is not taken.
      const taken = all(count).filter((k) => k % 3 !== 2);
      const quarters = new PointQuarters(u, v, taken, MARGIN);
      const values = new Int32Array(count).fill(-1);
      const filling = quarters.newFilling(values);
      const expected = new Int32Array(count).fill(-1);
      for (let k = 0; k < 40; k++) {
        const corner = (): [number, number] => [Math.floor(random() * 21) * 50, Math.floor(random() * 21) * 50];
        const ring = ringOf(Array.from({ length: 3 + (k % 4) }, corner));
        const held = [...taken].filter((i) => isIn(ring, u[i], v[i]));
        expect(quarters.anyIn(ring)).toBe(held.length > 0);
        quarters.fill(ring, k, filling);
        for (const i of held) if (expected[i] < 0) expected[i] = k;
        expect(values).toEqual(expected);
      }
    }
  });

  it('keep the margin at the limit', () => {
    const square = ringOf([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]);
    for (const [u, expected] of [
      [0.0004, false],
      [0.0006, true],
      [-0.0006, false],
    ] as const)
      expect(new PointQuarters(Float64Array.of(u), Float64Array.of(5), all(1), MARGIN).anyIn(square)).toBe(expected);
  });

  it('are compared with few of many rings that go about all of them or past them', () => {
    const random = seeded(6);
    const count = 100_000;
    const { u, v } = ringOf(Array.from({ length: count }, () => [random() * 50_000, random() * 50_000]));
    const quarters = new PointQuarters(u, v, all(count), MARGIN);
    const filling = quarters.newFilling(new Int32Array(count).fill(-1));
    const about = (by: number): Ring =>
      ringOf([
        [-by, -by],
        [50_000 + by, -by],
        [50_000 + by, 50_000 + by],
        [-by, 50_000 + by],
      ]);
    // A bracket: its extent has all points, and it has none.
    const past = (by: number): Ring =>
      ringOf([
        [-by - 1, -by - 1],
        [50_000 + by, -by - 1],
        [50_000 + by, -by],
        [-by, -by],
        [-by, 50_000 + by],
        [-by - 1, 50_000 + by],
      ]);
    for (let k = 0; k < 2000; k++) {
      expect(quarters.anyIn(past(k + 1))).toBe(false);
      quarters.fill(past(k + 1), k, filling);
      expect(quarters.anyIn(about(k + 1))).toBe(true);
    }
    expect(filling.values.every((value) => value === -1)).toBe(true);
    for (let k = 0; k < 2000; k++) quarters.fill(about(k + 1), k, filling);
    expect(filling.values.every((value) => value === 0)).toBe(true);
    expect(quarters.tests).toBeLessThan(10_000);
  });

  it('are compared with a ring only near where it goes through them', () => {
    const side = 300;
    const u = Float64Array.from({ length: side * side }, (_, k) => k % side);
    const v = Float64Array.from({ length: side * side }, (_, k) => Math.floor(k / side));
    const quarters = new PointQuarters(u, v, all(side * side), MARGIN);
    const values = new Int32Array(side * side).fill(-1);
    const cut = ringOf([
      [-1, -1],
      [150.5, -1],
      [150.5, 300],
      [-1, 300],
    ]);
    quarters.fill(cut, 7, quarters.newFilling(values));
    expect(values.filter((value) => value === 7)).toHaveLength(151 * side);
    expect(quarters.tests).toBeLessThan((side * side) / 10);
  });
});
