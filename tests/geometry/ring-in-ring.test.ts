import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceToRing, insideRing, type Ring } from '../../src/geometry/ring.js';
import { isRingInRing } from '../../src/geometry/ring-in-ring.js';

type Point = readonly [u: number, v: number];

const SLACK = 0.0005;

function ringOf(points: readonly Point[]): Ring {
  return { u: Float64Array.from(points, ([u]) => u), v: Float64Array.from(points, ([, v]) => v) };
}

function box(u0: number, v0: number, u1: number, v1: number): Point[] {
  return [
    [u0, v0],
    [u1, v0],
    [u1, v1],
    [u0, v1],
  ];
}

function star(radii: readonly number[], [u, v]: Point): Point[] {
  return radii.map((radius, k) => {
    const angle = (2 * Math.PI * k) / radii.length;
    return [u + radius * Math.cos(angle), v + radius * Math.sin(angle)];
  });
}

/** How far the ring sticks out at the points that a walk along it stops at. */
function sticksOut(inner: readonly Point[], outer: Ring): number {
  let most = 0;
  for (const [k, [u, v]] of inner.entries()) {
    const [nextU, nextV] = inner[(k + 1) % inner.length];
    for (let t = 0; t < 1; t += 1 / 512) {
      const [pu, pv] = [u + t * (nextU - u), v + t * (nextV - v)];
      if (!insideRing(outer, pu, pv)) most = Math.max(most, distanceToRing(outer, pu, pv));
    }
  }
  return most;
}

const outer = box(0, 0, 1000, 600);
const notched: Point[] = [
  [0, 0],
  [400, 0],
  [400, 300],
  [600, 300],
  [600, 0],
  [1000, 0],
  [1000, 600],
  [0, 600],
];
const reversed = (points: readonly Point[]) => [...points].reverse();

describe('isRingInRing', () => {
  it.each<[string, Point[], Point[], boolean]>([
    ['well inside', box(100, 100, 200, 200), outer, true],
    ['run the other way round', reversed(box(100, 100, 200, 200)), outer, true],
    ['the same', outer, outer, true],
    [
      'the same with more corners',
      [
        [0, 0],
        [300, 0],
        [1000, 0],
        [1000, 600],
        [0, 600],
        [0, 10],
      ],
      outer,
      true,
    ],
    ['along an edge from inside', box(100, 0, 200, 50), outer, true],
    ['along an edge from outside', box(100, -50, 200, 0), outer, false],
    ['across an edge', box(100, -50, 200, 50), outer, false],
    ['elsewhere', box(2000, 0, 2100, 50), outer, false],
    ['around it', box(-1, -1, 1001, 601), outer, false],
    ['out by the slack', box(100, -SLACK, 200, 50), outer, true],
    ['out at a corner by the slack', box(-0.0003, -0.0003, 200, 50), outer, true],
    ['out by more than the slack', box(100, -0.000501, 200, 50), outer, false],
    ['across a notch, all corners inside', box(100, 100, 900, 200), notched, false],
    [
      'across a notch, corners on its edges',
      [
        [400, 0],
        [600, 0],
        [600, 300],
        [400, 300],
      ],
      notched,
      false,
    ],
    ['along the edges with the notch skipped', outer, notched, false],
    ['around the notch', box(100, 300, 900, 500), notched, true],
    ['with the notch, in it', notched, outer, true],
  ])('judges a ring %s', (_, inner, around, verdict) => {
    for (const a of [inner, reversed(inner)])
      for (const b of [around, reversed(around)]) expect(isRingInRing(ringOf(a), ringOf(b), SLACK)).toBe(verdict);
  });

  it('sees an edge that leaves through a notch whose corners it passes within the slack', () => {
    const narrow: Point[] = [
      [0, 0],
      [500, 0],
      [500, 100],
      [500.01, 100],
      [500.01, 0],
      [1000, 0],
      [1000, 600],
      [0, 600],
    ];
    expect(isRingInRing(ringOf(outer), ringOf(narrow), SLACK)).toBe(false);
    expect(isRingInRing(ringOf(outer), ringOf(narrow), 0.0051)).toBe(true);
  });

  it('agrees with a walk along the ring', () => {
    const radii = fc.array(fc.double({ min: 20, max: 300, noNaN: true }), { minLength: 3, maxLength: 12 });
    const offset = fc.double({ min: -60, max: 60, noNaN: true });
    const seen = { inside: 0, outside: 0 };
    const property = fc.property(
      radii,
      radii,
      offset,
      offset,
      fc.double({ min: 0.05, max: 1, noNaN: true }),
      (a, b, u, v, factor) => {
        const inner = star(
          a.map((radius) => radius * factor),
          [u, v],
        );
        const ring = ringOf(star(b, [0, 0]));
        const out = sticksOut(inner, ring);
        const slack = 2;
        // A walk in steps may miss the farthest point by half a step.
        if (Math.abs(out - slack) < 1) return;
        seen[out > slack ? 'outside' : 'inside']++;
        expect(isRingInRing(ringOf(inner), ring, slack)).toBe(out <= slack);
      },
    );
    fc.assert(property, { numRuns: 1500, seed: 11 });
    expect(Math.min(seen.inside, seen.outside)).toBeGreaterThan(200);
  });

  it('holds far from the origin', () => {
    const at = (points: readonly Point[]) => ringOf(points.map(([u, v]): Point => [u + 6e8, v - 6e8]));
    expect(isRingInRing(at(box(0, 0, 200, 50)), at(outer), SLACK)).toBe(true);
    expect(isRingInRing(at(box(0, -0.0004, 200, 50)), at(outer), SLACK)).toBe(true);
    expect(isRingInRing(at(box(0, -0.0006, 200, 50)), at(outer), SLACK)).toBe(false);
  });
});
