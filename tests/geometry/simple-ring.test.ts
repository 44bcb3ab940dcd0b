import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornersInOrder, edgesMeet } from '../../src/geometry/edge-sweep.js';
import type { Ring } from '../../src/geometry/ring.js';
import { ringFault } from '../../src/geometry/simple-ring.js';

type Point = readonly [u: number, v: number];

function ringOf(points: readonly Point[]): Ring {
  return { u: Float64Array.from(points, ([u]) => u), v: Float64Array.from(points, ([, v]) => v) };
}

/** Which side of `a`-`b` a point lies on, in whole numbers. */
function side(a: Point, b: Point, p: Point): number {
  const [[au, av], [bu, bv], [pu, pv]] = [a, b, p].map((point) => point.map(BigInt));
  const turn = (bu - au) * (pv - av) - (bv - av) * (pu - au);
  return turn > 0n ? 1 : turn < 0n ? -1 : 0;
}

function isBetween(a: Point, b: Point, p: Point): boolean {
  const within = (k: 0 | 1) => Math.min(a[k], b[k]) <= p[k] && p[k] <= Math.max(a[k], b[k]);
  return side(a, b, p) === 0 && within(0) && within(1);
}

/** What two edges have in common, in whole numbers and by cases rather than by signs of boxes. */
function common(points: readonly Point[], i: number, j: number): 'crosses' | 'touches' | undefined {
  const at = (k: number) => points[k % points.length];
  const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
  const isNext = j === i + 1;
  if (isNext || (i === 0 && j === points.length - 1)) {
    const [from, corner, to] = isNext ? [a, b, d] : [c, a, b];
    return isBetween(corner, from, to) || isBetween(corner, to, from) ? 'touches' : undefined;
  }
  if (isBetween(a, b, c) || isBetween(a, b, d) || isBetween(c, d, a) || isBetween(c, d, b)) return 'touches';
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0 ? 'crosses' : undefined;
}

/** The first edge that meets an earlier one, of all pairs. */
function firstFault(points: readonly Point[]): ReturnType<typeof ringFault> {
  for (let other = 1; other < points.length; other++) {
    for (let edge = 0; edge < other; edge++) {
      const kind = common(points, edge, other);
      if (kind !== undefined) return { kind, edge, other };
    }
  }
  return undefined;
}

/** A ring about a centre that every ray from there meets once. */
function star(radii: readonly number[], centre: Point = [0, 0]): Point[] {
  return radii.map((radius, k) => {
    const angle = (2 * Math.PI * k) / radii.length;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** Teeth, each `height` long and a unit from the next, turned by an angle. */
function comb(teeth: number, height: number, angle: number): Point[] {
  const points: Point[] = [[2 * teeth, -1]];
  points.push([0, -1]);
  for (let k = 0; k < teeth; k++) points.push([2 * k, 0], [2 * k, height], [2 * k + 1, height], [2 * k + 1, 0]);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return points.map(([u, v]) => [u * cos - v * sin, u * sin + v * cos]);
}

const corner = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
const far = fc.integer({ min: -1e6, max: 1e6 });

describe('ringFault', () => {
  it.each<[string, Point[], ReturnType<typeof ringFault>]>([
    [
      'a rectangle',
      [
        [0, 0],
        [9, 0],
        [9, 6],
        [0, 6],
      ],
      undefined,
    ],
    [
      'a rectangle run clockwise',
      [
        [0, 6],
        [9, 6],
        [9, 0],
        [0, 0],
      ],
      undefined,
    ],
    [
      'a corner in a straight edge',
      [
        [0, 0],
        [4, 0],
        [9, 0],
        [9, 6],
        [0, 6],
      ],
      undefined,
    ],
    [
      'a bow tie',
      [
        [0, 0],
        [9, 6],
        [9, 0],
        [0, 6],
      ],
      { kind: 'crosses', edge: 0, other: 2 },
    ],
    [
      'a corner on an edge',
      [
        [0, 0],
        [9, 0],
        [9, 6],
        [5, 0],
        [0, 6],
      ],
      { kind: 'touches', edge: 0, other: 2 },
    ],
    [
      'a place passed twice',
      [
        [0, 0],
        [9, 0],
        [5, 5],
        [9, 9],
        [0, 9],
        [5, 5],
      ],
      { kind: 'touches', edge: 1, other: 4 },
    ],
    [
      'a spike',
      [
        [0, 0],
        [9, 0],
        [9, 9],
        [9, 6],
        [0, 6],
      ],
      { kind: 'touches', edge: 1, other: 2 },
    ],
    [
      'a spike at the first corner',
      [
        [0, 0],
        [9, 0],
        [9, 6],
        [20, 6],
        [20, 0],
      ],
      { kind: 'touches', edge: 0, other: 4 },
    ],
    [
      'a stretch run along twice',
      [
        [0, 0],
        [9, 0],
        [9, 6],
        [8, 0],
        [2, 0],
        [0, 6],
      ],
      { kind: 'touches', edge: 0, other: 2 },
    ],
    [
      'a repeated point',
      [
        [0, 0],
        [9, 0],
        [9, 6],
        [9, 6],
        [0, 6],
      ],
      { kind: 'repeats-point', edge: 2, other: 3 },
    ],
    [
      'the first point as the last',
      [
        [0, 0],
        [9, 0],
        [9, 6],
        [0, 0],
      ],
      { kind: 'repeats-point', edge: 3, other: 0 },
    ],
    [
      'a line',
      [
        [0, 0],
        [3, 1],
        [9, 3],
        [6, 2],
      ],
      { kind: 'no-area', edge: 0, other: 0 },
    ],
    [
      'one place',
      [
        [2, 2],
        [2, 2],
        [2, 2],
      ],
      { kind: 'no-area', edge: 0, other: 0 },
    ],
    [
      'two points',
      [
        [0, 0],
        [9, 0],
      ],
      { kind: 'no-area', edge: 0, other: 0 },
    ],
    ['no points', [], { kind: 'no-area', edge: 0, other: 0 }],
    [
      'no number',
      [
        [0, 0],
        [9, 0],
        [Number.NaN, 6],
      ],
      { kind: 'no-area', edge: 0, other: 0 },
    ],
    [
      'an endless edge',
      [
        [0, 0],
        [9, 0],
        [9, Number.POSITIVE_INFINITY],
      ],
      { kind: 'no-area', edge: 0, other: 0 },
    ],
  ])('knows %s', (_, points, fault) => {
    expect(ringFault(ringOf(points))).toEqual(fault);
  });

  it('says of rings of whole numbers what comparing all with all in whole numbers says', () => {
    const seen = new Map<string, number>();
    const property = fc.property(
      fc.array(fc.oneof(corner, fc.tuple(far, far)), { minLength: 3, maxLength: 9 }),
      (points) => {
        const fault = ringFault(ringOf(points));
        seen.set(fault?.kind ?? 'simple', (seen.get(fault?.kind ?? 'simple') ?? 0) + 1);
        if (fault?.kind === 'no-area') {
          const off = points.filter((p) => points.some((q) => points.some((r) => side(p, q, r) !== 0)));
          expect(off).toEqual([]);
        } else if (fault?.kind === 'repeats-point') {
          expect(points[fault.edge]).toEqual(points[fault.other]);
        } else expect(fault).toEqual(firstFault(points));
      },
    );
    fc.assert(property, { numRuns: 3000, seed: 1 });
    expect(
      Math.min(...['simple', 'crosses', 'touches', 'repeats-point'].map((kind) => seen.get(kind) ?? 0)),
    ).toBeGreaterThan(50);
  });

  it('takes any ring that is seen whole from a point within for simple, near the origin and far away', () => {
    const radii = fc.array(fc.double({ min: 1, max: 1e5, noNaN: true }), { minLength: 3, maxLength: 150 });
    const centre = fc.tuple(fc.constantFrom(0, 1e6, -6e8), fc.constantFrom(0, -1e6, 6e8));
    const property = fc.property(radii, centre, (lengths, at) => {
      expect(ringFault(ringOf(star(lengths, at)))).toBeUndefined();
    });
    fc.assert(property, { numRuns: 400, seed: 2 });
  });

  it('sees two neighbours swapped in a convex ring, wherever they are', () => {
    const property = fc.property(fc.integer({ min: 4, max: 200 }), fc.nat(), (count, at) => {
      const points = star(new Array(count).fill(1000));
      const k = at % count;
      const next = (k + 1) % count;
      [points[k], points[next]] = [points[next], points[k]];
      const edges = [(k + count - 1) % count, next].sort((a, b) => a - b);
      expect(ringFault(ringOf(points))).toEqual({ kind: 'crosses', edge: edges[0], other: edges[1] });
    });
    fc.assert(property, { numRuns: 200, seed: 3 });
  });

  it('tells a corner one step of a double off an edge from a corner on it', () => {
    const points = (height: number): Point[] => [
      [0, 0],
      [3, 0],
      [3, 3],
      [1, height],
      [0, 3],
    ];
    expect(ringFault(ringOf(points(Number.MIN_VALUE)))).toBeUndefined();
    expect(ringFault(ringOf(points(0)))).toEqual({ kind: 'touches', edge: 0, other: 2 });
    expect(ringFault(ringOf(points(-Number.MIN_VALUE)))).toEqual({ kind: 'crosses', edge: 0, other: 2 });
  });

  it('says the same of a large ring as of all pairs, wherever the fault is', () => {
    const property = fc.property(fc.nat(299), fc.nat(299), (from, to) => {
      const points = star(Array.from({ length: 300 }, (_, k) => 1000 + 500 * Math.sin(k * k))).map(
        ([u, v]): Point => [Math.round(u * 1000), Math.round(v * 1000)],
      );
      points[from] = points[to].map((part) => part + 3) as unknown as Point;
      expect(ringFault(ringOf(points))).toEqual(firstFault(points));
    });
    fc.assert(property, { numRuns: 30, seed: 4 });
  });

  it.each<[string, (count: number) => Point[]]>([
    ['a circle', (count) => star(new Array(count).fill(1e6))],
    ['spikes from one place', (count) => star(Array.from({ length: count }, (_, k) => (k % 2 === 0 ? 1e6 : 10)))],
    ['a comb', (count) => comb(count / 4, 1e5, 0)],
    ['a comb on its side', (count) => comb(count / 4, 1e5, Math.PI / 2)],
    ['a comb aslant', (count) => comb(count / 4, 1e5, 1)],
  ])('needs comparisons in proportion to n log n for %s of ten thousand corners', (_, make) => {
    for (const count of [1000, 10_000]) {
      const points = make(count);
      const work = { tests: 0 };
      expect(ringFault(ringOf(points), work)).toBeUndefined();
      expect(work.tests / (points.length * Math.log2(points.length))).toBeLessThan(4);
      const crossing = points.slice();
      [crossing[count - 2], crossing[count - 5]] = [crossing[count - 5], crossing[count - 2]];
      work.tests = 0;
      expect(ringFault(ringOf(crossing), work)).toBeDefined();
      expect(work.tests / (points.length * Math.log2(points.length) ** 2)).toBeLessThan(4);
    }
  });
});

describe('edgesMeet', () => {
  it('finds a fault among any number of first edges exactly where one of the pairs is at fault', () => {
    const property = fc.property(
      fc.uniqueArray(corner, { minLength: 3, maxLength: 12, selector: String }),
      (points) => {
        const ring = ringOf(points);
        const corners = cornersInOrder(ring);
        const fault = firstFault(points);
        for (let edges = 1; edges <= points.length; edges++)
          expect([edges, edgesMeet(ring, corners, edges, { tests: 0 })]).toEqual([
            edges,
            fault !== undefined && fault.other < edges,
          ]);
      },
    );
    fc.assert(property, { numRuns: 3000, seed: 5 });
  });

  it('finds none in simple rings of whole numbers, one above the other included', () => {
    const heights = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 2, maxLength: 60 });
    const property = fc.property(heights, fc.boolean(), (steps, isTurned) => {
      const points = steps.flatMap((height, k): Point[] => [
        [2 * k, height],
        [2 * k + 1, height],
      ]);
      points.push([2 * steps.length, 0], [0, 0]);
      const ring = ringOf(isTurned ? points.map(([u, v]): Point => [-v, u]) : points);
      expect(edgesMeet(ring, cornersInOrder(ring), points.length, { tests: 0 })).toBe(false);
    });
    fc.assert(property, { numRuns: 500, seed: 6 });
  });
});
