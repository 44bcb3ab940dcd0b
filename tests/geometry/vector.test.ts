import { describe, expect, it } from 'vitest';
import { along, cross, dot, squareTo, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';
import { newRandom } from '../read/random.js';
import { randomPoint } from './motion.js';

describe('vectors', () => {
  it('are right-handed', () => {
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
    expect(dot([1, 2, 3], [4, 5, 6])).toBe(32);
    expect(subtract([1, 2, 3], [4, 5, 6])).toEqual([-3, -3, -3]);
    expect(along([1, 2, 3], [1, 0, -1], 2)).toEqual([3, 2, 1]);
  });

  it('have a unit vector unless they have no length', () => {
    expect(unit([3, 0, 4])).toEqual([0.6, 0, 0.8]);
    expect(unit([1e-200, 0, 0])).toEqual([1, 0, 0]);
    expect(unit([1e200, 0, 0])).toEqual([1, 0, 0]);
    const [x, y, z] = unit([0, 3e-320, -4e-320]) as Vec3;
    // Numbers as small as that have four digits.
    expect([x, y, z]).toEqual([0, expect.closeTo(0.6, 3), expect.closeTo(-0.8, 3)]);
    expect(y * y + z * z).toBeCloseTo(1, 14);
    expect([unit([0, 0, 0]), unit([Number.NaN, 0, 0]), unit([Number.POSITIVE_INFINITY, 0, 0])]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('have a unit vector square to them, the x axis for a level face', () => {
    expect(squareTo([0, 0, 1])).toEqual([1, 0, 0]);
    expect(squareTo([0, 0, -1])).toEqual([1, 0, 0]);
    const random = newRandom(121);
    for (let k = 0; k < 1000; k++) {
      const n = unit(randomPoint(random, 1)) as Vec3;
      const u = squareTo(n);
      expect(dot(u, n)).toBeCloseTo(0, 12);
      expect(dot(u, u)).toBeCloseTo(1, 12);
    }
  });
});
