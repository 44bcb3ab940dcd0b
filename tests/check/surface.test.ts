import { describe, expect, it } from 'vitest';
import { openingAt } from '../../src/check/opening-at.js';
import { newSurface, type Surface, zoneAt } from '../../src/check/surface.js';
import type { Substrate } from '../../src/generated/layout.js';
import type { Vec3 } from '../../src/geometry/vector.js';
import { newRandom } from '../read/random.js';

const PER_SIDE = 200;

/** Squares of 500, 2 m apart, as openings and 100 to the right as zones; the last zone is a copy of the first. */
function fullOfRings(): Surface {
  const square = (x: number, y: number): { points: Vec3[] } => ({
    points: [
      [x, y, 0],
      [x + 500, y, 0],
      [x + 500, y + 500, 0],
      [x, y + 500, 0],
    ],
  });
  const places = Array.from({ length: PER_SIDE ** 2 }, (_, k) => [
    (k % PER_SIDE) * 2000,
    Math.floor(k / PER_SIDE) * 2000,
  ]);
  const zones = places.map(([x, y], k) => ({ outline: square(x + 100, y), thickness: k + 1 }));
  const substrate = {
    id: 'S',
    kind: 'solid-slab',
    face: { point: [0, 0, 0], inward: [0, 0, -1] },
    openings: places.map(([x, y]) => square(x, y)),
    zones: [...zones, { ...zones[0], thickness: 9 }],
  };
  return newSurface(substrate as unknown as Substrate) as Surface;
}

describe('Surface', () => {
  it('is asked for openings and zones at 100,000 places, of 40,000 each', () => {
    // One by one these are 8 * 10^9 rings.
    const surface = fullOfRings();
    const random = newRandom(5);
    const size = PER_SIDE * 2000;
    const isIn = (from: number, x: number, y: number) => x % 2000 >= from && x % 2000 <= from + 500 && y % 2000 <= 500;
    const { u, v } = surface;
    for (let k = 0; k < 100_000; k++) {
      const [x, y] = [Math.floor(random() * size) + 0.5, Math.floor(random() * size) + 0.5];
      const number = Math.floor(y / 2000) * PER_SIDE + Math.floor(x / 2000);
      const opening = openingAt(surface, u[0] * x + u[1] * y, v[0] * x + v[1] * y);
      const thickness = zoneAt(surface, [x, y, 0])?.thickness;
      if (opening !== (isIn(0, x, y) ? number : -1)) expect([x, y, opening]).toBe('its own opening');
      if (number > 0 && thickness !== (isIn(100, x, y) ? number + 1 : undefined))
        expect([x, y, thickness]).toBe('its own zone');
    }
    expect(zoneAt(surface, [300, 300, 0])?.thickness).toBe(9);
    // Up to the slack beside its edge counts as in a zone, and as out of an opening.
    expect(zoneAt(surface, [2099.9996, 100, 0])?.thickness).toBe(2);
    expect(zoneAt(surface, [2099.9994, 100, 0])).toBeUndefined();
    expect(openingAt(surface, u[0] * 2000.0004 + u[1] * 100, v[0] * 2000.0004 + v[1] * 100)).toBe(-1);
    expect(openingAt(surface, u[0] * 2000.0006 + u[1] * 100, v[0] * 2000.0006 + v[1] * 100)).toBe(1);
  });
});
