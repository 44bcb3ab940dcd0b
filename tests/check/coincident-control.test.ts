import { describe, expect, it } from 'vitest';
import { CoincidentControl } from '../../src/check/coincident-control.js';
import type { UsedPoint } from '../../src/check/control-sets.js';
import { seeded } from '../bench/make-layout.js';

function pointAt(index: number, x: number, y: number, z?: number, level?: string): UsedPoint {
  const point = z === undefined ? [x, y] : [x, y, z];
  const record = { id: `CP-${index}`, point: point as [number, number], ...(level !== undefined && { level }) };
  return { record, index, x, y, z: z ?? Number.NaN };
}

/** Whether two points are at one place by the definition. */
function isOne(a: UsedPoint, b: UsedPoint): boolean {
  if (Math.hypot(a.x - b.x, a.y - b.y) > 1.0005) return false;
  const [first, second] = [a.record.level, b.record.level];
  if (Number.isNaN(a.z - b.z)) return first === undefined || second === undefined || first === second;
  return Math.abs(a.z - b.z) <= 1.0005;
}

describe('control points at one place', () => {
  it('are found as if all before were looked at', () => {
    const random = seeded(8);
    const step = () => Math.floor(random() * 12) / 4 - 1;
    let found = 0;
    for (let round = 0; round < 60; round++) {
      const points = Array.from({ length: 40 }, (_, k) => {
        const level = [undefined, 'L1', 'L2', 'L3'][Math.floor(random() * 4)];
        return pointAt(k, 5 * Math.floor(random() * 3) + step(), step(), random() < 0.5 ? step() : undefined, level);
      });
      const before = new CoincidentControl();
      for (const point of points) {
        const first = points.find((other) => other.index < point.index && isOne(point, other));
        expect(before.add(point)).toBe(first);
        if (first !== undefined) found++;
      }
    }
    expect(found).toBeGreaterThan(300);
  });

  it.each<[string, (k: number) => UsedPoint]>([
    ['plumbed up with heights', (k) => pointAt(k, 0, 0, 3000 * k)],
    ['plumbed up without heights, each on its level', (k) => pointAt(k, 0, 0, undefined, `L${k}`)],
    ['plumbed up, of one level', (k) => pointAt(k, 0, 0, 3000 * k, 'L1')],
    ['at two places side by side', (k) => pointAt(k, k % 2 === 0 ? 0.1 : 1.9, 0, 0)],
    ['at one place', (k) => pointAt(k, 0, 0)],
  ])('are compared with few others where a hundred thousand are %s', (_, make) => {
    const before = new CoincidentControl();
    for (let k = 0; k < 100_000; k++) before.add(make(k));
    expect(before.tests).toBeLessThanOrEqual(200_000);
  });
});
