import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Points } from '../../src/geometry/near-pairs.js';
import { GAVE_UP, NeighbourGrid } from '../../src/geometry/neighbour-grid.js';
import { newRandom } from '../read/random.js';
import { hasTsplib, tsplibPoints, tsplibTitle } from './tsplib-points.js';

type Found = [j: number, distance: number];

function pointsOf(points: readonly (readonly number[])[]): Points {
  const column = (k: number) => Float64Array.from(points, (point) => point[k] ?? 0);
  return { count: points.length, x: column(0), y: column(1), z: column(2) };
}

/** A floor of holes in rows, `step` apart. */
function floor(count: number, step: number): Points {
  const side = Math.ceil(Math.sqrt(count));
  return pointsOf(Array.from({ length: count }, (_, k) => [(k % side) * step, Math.floor(k / side) * step, 3000]));
}

function newGrid(points: Points, skip = new Uint8Array(points.count)): NeighbourGrid {
  return new NeighbourGrid(points, skip);
}

/** Every other point within the radius, by squares as the promise is kept in doubles. */
function bruteForce({ count, x, y, z }: Points, skip: Uint8Array, i: number, radius: number): Found[] {
  const found: Found[] = [];
  for (let j = 0; j < count; j++) {
    const square = (x[i] - x[j]) ** 2 + (y[i] - y[j]) ** 2 + (z[i] - z[j]) ** 2;
    if (j !== i && skip[j] === 0 && Number.isFinite(square) && square <= radius * radius)
      found.push([j, Math.sqrt(square)]);
  }
  return found;
}

function nearestOf(found: readonly Found[], accept: (j: number) => boolean): number {
  let best: Found = [-1, Number.POSITIVE_INFINITY];
  for (const one of found) if (accept(one[0]) && one[1] < best[1]) best = one;
  return best[0];
}

const all = () => true;

/** Asks about every point, with all accepted and with a part of them. */
function expectAsBruteForce(points: Points, radius: number, skip = new Uint8Array(points.count)): void {
  const grid = newGrid(points, skip);
  const isThird = (j: number) => j % 3 === 0;
  for (let i = 0; i < points.count; i++) {
    const expected = bruteForce(points, skip, i, radius);
    const found: Found[] = [];
    grid.within(i, radius, (j, distance) => found.push([j, distance]));
    expect([i, found.sort(([a], [b]) => a - b)]).toEqual([i, expected]);
    expect([i, grid.nearest(i, radius, all)]).toEqual([i, nearestOf(expected, all)]);
    expect([i, grid.nearest(i, radius, isThird)]).toEqual([i, nearestOf(expected, isThird)]);
  }
}

describe('NeighbourGrid', () => {
  const cell = fc.integer({ min: -4, max: 4 });
  const wide = fc.integer({ min: -2e9, max: 2e9 }).map((millionths) => millionths / 1e6);
  const shapes = {
    'on a grid, many equally near and some at one place': fc.tuple(cell, cell, cell),
    'on a floor': fc.tuple(wide, wide, fc.constant(3000)),
    'in a volume': fc.tuple(wide, wide, wide),
    'on levels': fc.tuple(wide, wide, fc.constantFrom(0, 3500, 7000, -100_000)),
    'of which a part is in another unit': fc
      .tuple(wide, wide, fc.boolean())
      .map(([x, y, isSmall]) => (isSmall ? [x / 1000, y / 1000, 3] : [x, y, 3000])),
    'without a coordinate in part': fc.tuple(fc.oneof(wide, fc.constantFrom(Number.NaN, 1 / 0, -1 / 0)), wide, wide),
    'far away in part': fc.tuple(fc.oneof(wide, fc.constantFrom(1e10, -1e10, 6e8)), wide, fc.constantFrom(0, 1e10)),
  };
  it.each(Object.entries(shapes))('finds among points %s what comparing all with all finds', (_, point) => {
    const points = fc.array(point, { maxLength: 120 });
    const radius = fc.constantFrom(0, 1, 2, 3.5, 150, 1000, 1e6, Number.POSITIVE_INFINITY);
    const property = fc.property(points, radius, fc.nat(4), (list, reach, every) => {
      const skip = Uint8Array.from(list, (_, k) => (every > 1 && k % every === 1 ? every : 0));
      expectAsBruteForce(pointsOf(list), reach, skip);
    });
    fc.assert(property, { numRuns: 150, seed: 31 });
  });

  it('finds it in crowds, of which one is divided and one is all at one place', () => {
    const random = newRandom(32);
    const list = Array.from({ length: 400 }, (_, k) => {
      if (k % 4 === 0) return [5000, 5000, 0];
      if (k % 4 === 1) return [Math.floor(random() * 12) / 100, Math.floor(random() * 12) / 100, 0];
      return [random() * 30_000, random() * 30_000, 0];
    });
    for (const radius of [0, 0.02, 1000, 1e5]) expectAsBruteForce(pointsOf(list), radius);
  });

  it.each([1e6, -1e6, 1e9, -1e9, 1e10, -1e10])('finds it about %d', (far) => {
    const random = newRandom(33);
    const list = Array.from({ length: 150 }, () => [far + random() * 3000, -far + random() * 3000, far / 10]);
    for (const radius of [1.0005, 300, 5000]) expectAsBruteForce(pointsOf(list), radius);
  });

  it('leaves points out without a coordinate or with skip, and still answers about the skipped ones', () => {
    const points = pointsOf([
      [0, 0, 0],
      [10, 0, 0],
      [Number.NaN, 0, 0],
      [25, 0, 0],
    ]);
    const grid = newGrid(points, Uint8Array.of(0, 1, 0, 0));
    expect([0, 1, 2, 3].map((i) => grid.nearest(i, 100, all))).toEqual([3, 0, -1, 0]);
    const visited: number[] = [];
    grid.within(2, 100, (j) => visited.push(j));
    grid.within(1, 100, (j) => visited.push(j));
    expect(visited.sort()).toEqual([0, 3]);
  });

  it('finds nothing among no points, within no radius, or where all are refused', () => {
    const lone = newGrid(pointsOf([[1, 1, 1]]));
    expect(lone.nearest(0, 1e9, all)).toBe(-1);
    expect(newGrid(pointsOf([[1, 1, 1]]), Uint8Array.of(1)).nearest(0, Number.POSITIVE_INFINITY, all)).toBe(-1);
    const twice = newGrid(
      pointsOf([
        [1, 1, 1],
        [1, 1, 1],
      ]),
    );
    expect(twice.nearest(0, 0, all)).toBe(1);
    expect(twice.nearest(0, Number.NaN, all)).toBe(-1);
    expect(twice.nearest(0, -1, all)).toBe(-1);
    expect(twice.nearest(0, 5, () => false)).toBe(-1);
  });

  it('hands over the distance and takes a point at exactly the radius', () => {
    const grid = newGrid(
      pointsOf([
        [0, 0, 0],
        [3, 4, 0],
        [300, 400, 1200],
      ]),
    );
    const distances: number[] = [];
    const note = (_: number, distance: number) => distances.push(distance) > 0;
    expect(grid.nearest(0, 5, note)).toBe(1);
    expect(grid.nearest(0, 4.999999, all)).toBe(-1);
    expect(grid.nearest(0, 1300, (j, distance) => j === 2 && note(j, distance))).toBe(2);
    expect(distances).toEqual([5, 1300]);
  });
});

describe('the work of a NeighbourGrid', () => {
  /** Distances a point, of some points spread over all. */
  function testsOf(points: Points, radius: number, accept = all, mostTests?: number): number {
    const grid = newGrid(points);
    const step = Math.ceil(points.count / 2000);
    let asked = 0;
    for (let i = 0; i < points.count; i += step, asked++) grid.nearest(i, radius, accept, mostTests);
    return grid.tests / asked;
  }

  it('does not grow with the number of points nor with the radius', () => {
    for (const count of [10_000, 1_000_000]) {
      const points = floor(count, 600);
      for (const radius of [700, 5000, 1e7]) expect(testsOf(points, radius)).toBeLessThan(12);
    }
  });

  it('does not grow where half of the points are in another unit', () => {
    const points = floor(200_000, 600);
    for (let k = 0; k < points.count; k += 2) for (const column of [points.x, points.y, points.z]) column[k] /= 1000;
    expect(testsOf(points, 5000)).toBeLessThan(60);
  });

  it('is one distance where all points are at one place, and none is refused', () => {
    expect(testsOf(pointsOf(Array.from({ length: 100_000 }, () => [5, 5, 5])), 5000)).toBeLessThan(2);
  });

  it('is one distance for a place with many points beside the one asked about', () => {
    const list = Array.from({ length: 50_000 }, (_, k) => (k === 0 ? [0, 0, 0] : [k % 2 === 0 ? 30 : 50, 0, 0]));
    const grid = newGrid(pointsOf(list));
    expect(grid.nearest(0, 1000, all)).toBe(2);
    expect(grid.tests).toBeLessThan(5);
  });

  it('ends at the most tests, which the answer says', () => {
    const crowd = pointsOf(Array.from({ length: 5000 }, (_, k) => (k === 0 ? [100, 0, 0] : [5, 5, 5])));
    const grid = newGrid(crowd);
    const onlyFirst = (j: number) => j === 0;
    expect(grid.nearest(1, 1000, onlyFirst, 200)).toBe(GAVE_UP);
    expect(grid.tests).toBeLessThanOrEqual(201);
    expect(grid.nearest(1, 1000, onlyFirst)).toBe(0);
    expect(grid.nearest(0, 1000, all, 200)).toBe(1);
  });

  it('ends at the most tests where no cell about holds points', () => {
    const list = Array.from({ length: 4000 }, (_, k) => [(k % 60) * 10, Math.floor(k / 60) * 10, 0]);
    const grid = newGrid(pointsOf([...list, [50_000, 50_000, 0]]));
    expect(grid.nearest(4000, 1e6, all, 20)).toBe(GAVE_UP);
    expect(grid.nearest(4000, 1e6, all)).toBe(3999 - (3999 % 60) - 1);
  });

  it('is bounded by the points where nothing is accepted at any radius', () => {
    const points = pointsOf(Array.from({ length: 3000 }, (_, k) => [k * 100, k * 100, k * 100]));
    expect(testsOf(points, 1e9, () => false)).toBe(2999);
  });
});

// Pairs nearer than, and at most as far as, s: computed with independent code from the files of TSPLIB.
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

describe.skipIf(!hasTsplib)(tsplibTitle('surroundings in TSPLIB'), () => {
  it.each(counts)('%s has its known number of pairs at %d', (name, s, nearer, within) => {
    const points = pointsOf(tsplibPoints(name));
    const grid = newGrid(points);
    const distances: number[] = [];
    for (let i = 0; i < points.count; i++) grid.within(i, s, (j, distance) => j < i && distances.push(distance));
    expect([distances.filter((distance) => distance < s).length, distances.length]).toEqual([nearer, within]);
  });

  // Nearest neighbour from node 1, ties to the lowest index, lengths unrounded: computed with independent code.
  it.each([
    ['berlin52', 8980.9183],
    ['eil51', 513.61],
    ['st70', 805.5312],
  ])('the walk through %s to the nearest point not yet visited has its known length', (name, length) => {
    const points = pointsOf(tsplibPoints(name));
    const grid = newGrid(points);
    const isVisited = new Uint8Array(points.count);
    let at = 0;
    let walked = 0;
    for (let n = 1; n < points.count; n++) {
      isVisited[at] = 1;
      const next = grid.nearest(at, Number.POSITIVE_INFINITY, (j) => isVisited[j] === 0);
      walked += Math.hypot(points.x[next] - points.x[at], points.y[next] - points.y[at]);
      at = next;
    }
    walked += Math.hypot(points.x[0] - points.x[at], points.y[0] - points.y[at]);
    expect(walked).toBeCloseTo(length, 3);
  });
});
