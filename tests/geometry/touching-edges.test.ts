import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Segment2D, uncovered } from '../../src/geometry/touching-edges.js';

const edge: Segment2D = [0, 0, 10_000, 0];

function turned([a, b, c, d]: Segment2D, angle: number, [u, v]: readonly [number, number]): Segment2D {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [a * cos - b * sin + u, a * sin + b * cos + v, c * cos - d * sin + u, c * sin + d * cos + v];
}

describe('uncovered', () => {
  it.each<[string, Segment2D[], number, [number, number][]]>([
    ['all where there is nothing else', [], 1, [[0, 1]]],
    ['nothing beside the same edge', [edge], 1, []],
    ['nothing beside a longer edge', [[-5000, 0, 15_000, 0]], 1, []],
    ['nothing beside an edge run the other way', [[10_000, 0, 0, 0]], 1, []],
    [
      'both ends beside a shorter edge',
      [[2000, 0, 6000, 0]],
      1,
      [
        [0, 0.2],
        [0.6, 1],
      ],
    ],
    [
      'what two edges leave',
      [
        [6000, 0, 10_000, 0],
        [0, 0, 4000, 0],
      ],
      1,
      [[0.4, 0.6]],
    ],
    [
      'what overlapping edges leave',
      [
        [1000, 0, 5000, 0],
        [2000, 0, 3000, 0],
        [4000, 0, 12_000, 0],
      ],
      1,
      [[0, 0.1]],
    ],
    ['nothing of a joint within the tolerance', [[0, 0.9, 10_000, 0.9]], 1, []],
    ['all beside a joint wider than the tolerance', [[0, 1.1, 10_000, 1.1]], 1, [[0, 1]]],
    ['all beyond the end of an edge on the same line', [[12_000, 0, 15_000, 0]], 1, [[0, 1]]],
    [
      'all where edges meet it square',
      [
        [0, 0, 0, 5000],
        [4000, -2000, 4000, 2000],
      ],
      1,
      [[0, 1]],
    ],
    [
      'all where edges meet it aslant',
      [
        [0, 0, 3000, 3000],
        [4000, -500, 5000, 500],
      ],
      1,
      [[0, 1]],
    ],
    ['the far part of an edge that turns away', [[0, 0, 10_000, 4]], 1, [[0.25, 1]]],
    [
      'both ends of an edge that crosses slowly',
      [[0, -4, 10_000, 4]],
      1,
      [
        [0, 0.375],
        [0.625, 1],
      ],
    ],
    [
      'no misfit of corners',
      [
        [0.4, 0, 5000, 0],
        [5000.8, 0, 9999.5, 0],
      ],
      1,
      [],
    ],
    [
      'a gap larger than that',
      [
        [0, 0, 5000, 0],
        [5001.5, 0, 10_000, 0],
      ],
      1,
      [[0.5, 0.50015]],
    ],
    ['all beside an edge without length', [[500, 0, 500, 0]], 1, [[0, 1]]],
  ])('is %s', (_, others, touchMm, expected) => {
    for (const [angle, at] of [
      [0, [0, 0]],
      [1, [0, 0]],
      [-2.5, [6e8, -6e8]],
    ] as const) {
      const place = (segment: Segment2D) => turned(segment, angle, at);
      const found = uncovered(place(edge), others.map(place), touchMm);
      expect(found).toHaveLength(expected.length);
      for (const [k, [from, to]] of expected.entries()) {
        expect(found[k][0]).toBeCloseTo(from, 6);
        expect(found[k][1]).toBeCloseTo(to, 6);
      }
    }
  });

  it('is nothing of a segment without length', () => {
    expect(uncovered([5, 5, 5, 5], [], 1)).toEqual([]);
  });

  it('is, for edges on one line, what a count of places says, in whatever order they come', () => {
    const pair = fc.tuple(fc.integer({ min: -10, max: 110 }), fc.integer({ min: -10, max: 110 }));
    const property = fc.property(fc.array(pair, { maxLength: 8 }), (pairs) => {
      const others = pairs.map(([from, to]): Segment2D => [from * 100, 0, to * 100, 0]);
      const free = uncovered(edge, others, 1);
      expect(uncovered(edge, [...others].reverse(), 1)).toEqual(free);
      for (let cell = 0; cell < 100; cell++) {
        const isCovered = pairs.some((ends) => Math.min(...ends) <= cell && cell < Math.max(...ends));
        const middle = (cell + 0.5) / 100;
        expect([cell, free.some(([from, to]) => from < middle && middle < to)]).toEqual([cell, !isCovered]);
      }
    });
    fc.assert(property, { numRuns: 500, seed: 21 });
  });
});
