import { describe, expect, it } from 'vitest';
import { nearPairs, type Points } from '../../src/geometry/near-pairs.js';
import { newRandom } from '../read/random.js';
import { hasTsplib, tsplibPoints, tsplibTitle } from './tsplib-points.js';

type Pair = [i: number, j: number, distance: number];

function pointsOf(points: readonly (readonly number[])[]): Points {
  const column = (k: number) => Float64Array.from(points, (point) => point[k] ?? 0);
  return { count: points.length, x: column(0), y: column(1), z: column(2) };
}

function inOrder(pairs: Pair[]): Pair[] {
  return pairs.sort(([i, j], [k, m]) => i - k || j - m);
}

function found(points: Points, radius: number, skip = new Uint8Array(points.count)): Pair[] {
  const pairs: Pair[] = [];
  nearPairs(points, skip, radius, (i, j, distance) => pairs.push([i, j, distance]));
  return inOrder(pairs);
}

/** Every point against every other, by squares as the promise is kept in doubles. */
function bruteForce({ count, x, y, z }: Points, radius: number, skip = new Uint8Array(count)): Pair[] {
  const pairs: Pair[] = [];
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) {
      const square = (x[i] - x[j]) ** 2 + (y[i] - y[j]) ** 2 + (z[i] - z[j]) ** 2;
      if (skip[i] === 0 && skip[j] === 0 && square <= radius * radius) pairs.push([i, j, Math.sqrt(square)]);
    }
  }
  return inOrder(pairs);
}

function expectAsBruteForce(points: Points, radius: number, skip?: Uint8Array<ArrayBuffer>): number {
  const expected = bruteForce(points, radius, skip);
  expect(found(points, radius, skip)).toEqual(expected);
  return expected.length;
}

/** Random points in a box about a centre. */
function scattered(seed: number, count: number, size: number, centre: readonly number[] = [0, 0, 0]): Points {
  const random = newRandom(seed);
  return pointsOf(Array.from({ length: count }, () => centre.map((middle) => middle + (random() - 0.5) * size)));
}

describe('nearPairs', () => {
  it.each([
    ['of a volume', 3000, [1, 1, 1]],
    ['of a floor', 3000, [1, 1, 0]],
    ['of a line', 3000, [0, 1, 0]],
    ['of a shaft', 100, [0.01, 0.01, 20]],
  ])('finds the pairs %s that comparing all with all finds', (_, size, shape) => {
    for (let seed = 1; seed <= 12; seed++) {
      const points = scattered(seed, 300, size);
      for (const [axis, factor] of shape.entries())
        [points.x, points.y, points.z][axis].forEach((value, k, column) => (column[k] = value * factor));
      for (const radius of [0.5, 20, 150, 900]) expectAsBruteForce(points, radius);
    }
  });

  it('finds pairs of a grid whose distance is exactly the radius', () => {
    for (const step of [1, 0.1, 25.4 / 64, 300, 304.8]) {
      const cells = Array.from({ length: 216 }, (_, k) => [
        (k % 6) * step,
        (Math.floor(k / 6) % 6) * step,
        Math.floor(k / 36) * step,
      ]);
      for (const factor of [1, 2, 5]) expect(expectAsBruteForce(pointsOf(cells), step * factor)).toBeGreaterThan(0);
    }
    const grid = pointsOf(Array.from({ length: 400 }, (_, k) => [(k % 20) * 300, Math.floor(k / 20) * 300, 3000]));
    expect(found(grid, 300)).toHaveLength(2 * 20 * 19);
    expect(found(grid, 299.9999)).toHaveLength(0);
  });

  it('finds every pair of points at one place', () => {
    const points = pointsOf(Array.from({ length: 60 }, (_, k) => [k % 3, 0, 0]));
    expect(found(points, 0.5)).toHaveLength((3 * 20 * 19) / 2);
    expectAsBruteForce(points, 0.5);
    expectAsBruteForce(points, 1);
  });

  it('works far from the origin, on both sides of it', () => {
    for (const far of [1e6, -1e6, 1e9, -1e9, 1e10, -1e10]) {
      for (const radius of [1.0005, 75, 1000]) {
        const points = scattered(9, 200, radius * 8, [far, -far, far / 10]);
        expect(expectAsBruteForce(points, radius)).toBeGreaterThan(0);
      }
    }
    expect(expectAsBruteForce(scattered(10, 300, 100), 30)).toBeGreaterThan(0);
  });

  it('works where the radius is far larger or smaller than the distances', () => {
    const points = scattered(11, 120, 1000);
    expect(found(points, 1e7)).toHaveLength((120 * 119) / 2);
    expect(found(points, 1e-9)).toEqual([]);
  });

  it('leaves out points that are skipped and points without a coordinate', () => {
    const random = newRandom(12);
    const points = scattered(13, 200, 300);
    const skip = Uint8Array.from({ length: 200 }, () => (random() < 0.3 ? 1 + Math.floor(random() * 2) : 0));
    expectAsBruteForce(points, 60, skip);
    const gone = skip.slice();
    for (let k = 0; k < 200; k += 7) {
      [points.x, points.y, points.z][k % 3][k] = k % 2 === 0 ? Number.NaN : Number.POSITIVE_INFINITY;
      gone[k] = 1;
    }
    expect(found(points, 60, skip)).toEqual(bruteForce(points, 60, gone));
  });

  it('finds nothing among no points, or within no radius', () => {
    expect(found(pointsOf([]), 10)).toEqual([]);
    const twice = pointsOf([
      [1, 1, 1],
      [1, 1, 1],
    ]);
    expect(found(twice, 0)).toEqual([]);
    expect(found(twice, Number.NaN)).toEqual([]);
    expect(found(twice, 1e-12)).toEqual([[1, 0, 0]]);
  });

  it('looks only at the first points of longer arrays', () => {
    const points = pointsOf([[0], [1], [2], [3]]);
    expect(found({ ...points, count: 2 }, 10)).toEqual([[1, 0, 1]]);
  });

  it('computes a bounded number of distances a point, at ten thousand points as at a hundred thousand', () => {
    const testsOf = (count: number) => {
      const side = Math.ceil(Math.sqrt(count));
      const points = pointsOf(
        Array.from({ length: count }, (_, k) => [(k % side) * 300, Math.floor(k / side) * 300, 3000]),
      );
      return nearPairs(points, new Uint8Array(count), 200, () => {}) / count;
    };
    expect(testsOf(10_000)).toBeLessThan(8);
    expect(testsOf(100_000)).toBeLessThan(8);
  });
});

// Pairs nearer than, and at most as far as, s: computed with independent code from the files of TSPLIB (checks.md D-11).
const counts = [
  ['berlin52', 50, 19, 20],
  ['berlin52', 100, 60, 60],
  ['berlin52', 150, 108, 109],
  ['berlin52', 200, 178, 178],
  ['eil51', 5, 1, 2],
  ['eil51', 7, 18, 19],
  ['eil51', 10, 68, 71],
  ['a280', 8, 1, 261],
  ['a280', 16, 519, 733],
  ['u159', 100, 0, 43],
  ['u159', 200, 49, 115],
] as const;

describe.skipIf(!hasTsplib)(tsplibTitle('pairs in TSPLIB'), () => {
  it.each(counts)('%s has its known number of pairs at %d', (name, s, nearer, within) => {
    const pairs = found(pointsOf(tsplibPoints(name)), s);
    expect([pairs.filter(([, , distance]) => distance < s).length, pairs.length]).toEqual([nearer, within]);
  });

  it('a280 has one coincident pair', () => {
    expect(found(pointsOf(tsplibPoints('a280')), 0.5).map(([, , distance]) => distance)).toEqual([0]);
  });
});
