import { describe, expect, it } from 'vitest';
import { distanceSweptHoles } from '../../src/geometry/swept-holes.js';
import { along, cross, squareTo, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';
import { newRandom } from '../read/random.js';
import { randomMotion, randomPoint } from './motion.js';

/** A point of a drilled cylinder with flat ends. */
function pointIn(random: () => number, from: Vec3, to: Vec3, radius: number): Vec3 {
  const axis = subtract(to, from);
  const u = squareTo(unit(axis) as Vec3);
  const v = cross(unit(axis) as Vec3, u);
  const angle = random() * 2 * Math.PI;
  const out = radius * Math.sqrt(random());
  return along(along(along(from, axis, random()), u, out * Math.cos(angle)), v, out * Math.sin(angle));
}

describe('distanceSweptHoles', () => {
  it('is the concrete between holes beside each other, crossing or end to end', () => {
    expect(distanceSweptHoles([0, 0, 0], [0, 0, 100], 6, [50, 0, 0], [50, 0, 60], 8)).toBe(36);
    expect(distanceSweptHoles([0, 0, 0], [100, 0, 0], 5, [50, -50, 30], [50, 50, 30], 7)).toBe(18);
    expect(distanceSweptHoles([0, 0, 0], [0, 0, 100], 6, [0, 0, 300], [0, 0, 150], 4)).toBe(40);
  });

  it('is less than 0 where they overlap', () => {
    expect(distanceSweptHoles([0, 0, 0], [0, 0, 100], 6, [10, 0, 50], [10, 0, 150], 6)).toBe(-2);
    expect(distanceSweptHoles([0, 0, 0], [0, 0, 100], 6, [-50, 0, 50], [50, 0, 50], 4)).toBe(-10);
  });

  it('is never more than the distance of any two points of the drilled cylinders, however they are turned', () => {
    const random = newRandom(131);
    for (let k = 0; k < 300; k++) {
      const [a, b, c, d] = [0, 1, 2, 3].map(() => randomPoint(random, 100));
      const [radius, other] = [1 + random() * 10, 1 + random() * 10];
      const found = distanceSweptHoles(a, b, radius, c, d, other);
      for (let n = 0; n < 100; n++) {
        const gap = subtract(pointIn(random, a, b, radius), pointIn(random, c, d, other));
        expect(found).toBeLessThanOrEqual(Math.hypot(...gap) + 1e-9);
      }
      const { move } = randomMotion(random, 10_000);
      expect(distanceSweptHoles(move(c), move(d), other, move(a), move(b), radius)).toBeCloseTo(found, 6);
    }
  });
});
