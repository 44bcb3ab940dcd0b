import { describe, expect, it } from 'vitest';
import { distancePointSegment, distanceSegmentSegment } from '../../src/geometry/segment.js';
import { along, type Vec3 } from '../../src/geometry/vector.js';
import { newRandom } from '../read/random.js';
import { leastDistance } from './least-distance.js';
import { randomMotion, randomPoint } from './motion.js';

const O: Vec3 = [0, 0, 0];

/** Four points; every third time the segments have a corner, a direction, a plane or a point in common. */
function randomSegments(random: () => number, k: number): [Vec3, Vec3, Vec3, Vec3] {
  const [a, b, c, d] = [0, 1, 2, 3].map(() => randomPoint(random, 100));
  if (k % 9 === 1) return [a, b, along(c, b, 0), along(c, [b[0] - a[0], b[1] - a[1], b[2] - a[2]], random() * 2 - 1)];
  if (k % 9 === 3) return [a, b, a, d];
  if (k % 9 === 5)
    return [
      [a[0], a[1], 5],
      [b[0], b[1], 5],
      [c[0], c[1], 5],
      [d[0], d[1], 5],
    ];
  if (k % 9 === 7) return [a, a, c, d];
  return [a, b, c, d];
}

describe('distancePointSegment', () => {
  it('is taken to the foot of the point or to the nearer end', () => {
    expect(distancePointSegment([5, 3, 4], O, [10, 0, 0])).toBe(5);
    expect(distancePointSegment([-3, 4, 0], O, [10, 0, 0])).toBe(5);
    expect(distancePointSegment([13, 0, 4], O, [10, 0, 0])).toBe(5);
    expect(distancePointSegment([4, 0, 0], O, [10, 0, 0])).toBe(0);
    expect(distancePointSegment([3, 4, 0], O, O)).toBe(5);
  });
});

describe('distanceSegmentSegment', () => {
  it('is right where one knows it', () => {
    expect(distanceSegmentSegment([0, 0, 0], [10, 0, 0], [5, -5, 7], [5, 5, 7])).toBe(7);
    expect(distanceSegmentSegment([0, 0, 0], [10, 10, 0], [10, 0, 0], [0, 10, 0])).toBe(0);
    expect(distanceSegmentSegment([0, 0, 0], [10, 0, 0], [0, 3, 4], [10, 3, 4])).toBe(5);
    expect(distanceSegmentSegment([0, 0, 0], [10, 0, 0], [13, 4, 0], [20, 4, 0])).toBe(5);
    expect(distanceSegmentSegment([0, 0, 0], [10, 0, 0], [20, 0, 0], [12, 0, 0])).toBe(2);
    expect(distanceSegmentSegment([0, 0, 0], [10, 0, 0], [4, 0, 0], [6, 0, 0])).toBe(0);
    expect(distanceSegmentSegment(O, O, [3, 4, 0], [3, 4, 0])).toBe(5);
  });

  it('is what a search over both segments finds', () => {
    const random = newRandom(101);
    for (let k = 0; k < 2000; k++) {
      const [a, b, c, d] = randomSegments(random, k);
      const searched = leastDistance(a, b, c, [[d[0] - c[0], d[1] - c[1], d[2] - c[2]]]);
      const found = distanceSegmentSegment(a, b, c, d);
      if (Math.abs(found - searched) > 1e-7) expect([k, a, b, c, d, found]).toEqual([k, a, b, c, d, searched]);
    }
  });

  it('is the same from the other segment, from the other ends, and after a rigid motion', () => {
    const random = newRandom(102);
    for (let k = 0; k < 2000; k++) {
      const [a, b, c, d] = randomSegments(random, k);
      const { move } = randomMotion(random, 10_000);
      const found = distanceSegmentSegment(a, b, c, d);
      expect(distanceSegmentSegment(c, d, a, b)).toBeCloseTo(found, 6);
      expect(distanceSegmentSegment(b, a, c, d)).toBeCloseTo(found, 6);
      expect(distanceSegmentSegment(a, b, d, c)).toBeCloseTo(found, 6);
      expect(distanceSegmentSegment(move(a), move(b), move(c), move(d))).toBeCloseTo(found, 6);
    }
  });

  it('is never less than 0 and never more than the distance of any two points of the segments', () => {
    const random = newRandom(103);
    for (let k = 0; k < 500; k++) {
      const [a, b, c, d] = randomSegments(random, k);
      const found = distanceSegmentSegment(a, b, c, d);
      for (let s = 0; s <= 1; s += 0.125) {
        const p = along(a, [b[0] - a[0], b[1] - a[1], b[2] - a[2]], s);
        expect(found).toBeLessThanOrEqual(distancePointSegment(p, c, d) + 1e-9);
      }
    }
  });

  it('holds to less than the slack of lengths between a hole and a nearly parallel bar that crosses it', () => {
    for (const angle of [1e-3, 1e-5, 9e-7, 3e-7, 1e-7, 3e-8, 1e-9]) {
      const length = 50_000;
      for (const [length1, from] of [
        [500, -250],
        [100, 0],
        [2000, -1000],
      ]) {
        const c: Vec3 = [-length / 2, (-length / 2) * angle, 0];
        const d: Vec3 = [length / 2, (length / 2) * angle, 0];
        expect(distanceSegmentSegment([from, 0, 0], [from + length1, 0, 0], c, d)).toBeLessThan(0.0005);
      }
    }
  });
});
