import { describe, expect, it } from 'vitest';
import { distanceToWeb } from '../../src/geometry/deck-web.js';
import { seeded } from '../bench/make-layout.js';

/** The same by steps of the height, over flutes near and far. */
function stepped(w: number, shift: number, low: number, high: number, pitch: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let n = 0; n <= 2000; n++) {
    const y = n / 2000;
    for (let k = -8; k <= 8; k++) {
      for (const side of [-1, 1])
        least = Math.min(least, Math.abs(w + shift * y - k * pitch - side * (low + (high - low) * y)));
    }
  }
  return least;
}

describe('the distance of an axis from the webs of a deck', () => {
  it('is that at any height, whichever flute the web belongs to', () => {
    const random = seeded(3);
    let apart = 0;
    for (let n = 0; n < 300; n++) {
      const pitch = 100 + 200 * random();
      const [low, high] = [0, 1].map(() => (pitch / 2) * random());
      const w = (random() - 0.5) * pitch;
      const shift = (random() - 0.5) * (n % 2 === 0 ? 5 : 0.4) * pitch;
      const distance = distanceToWeb(w, shift, low, high, pitch);
      // A step of the height moves the axis by less than half a millimetre against a web.
      expect(Math.abs(distance - stepped(w, shift, low, high, pitch))).toBeLessThan(0.5);
      if (distance > 1) apart++;
    }
    expect(apart).toBeGreaterThan(50);
  });

  it('is that to the nearer end of a web for an axis that rises straight', () => {
    expect(distanceToWeb(50, 0, 60, 80, 300)).toBe(10);
    expect(distanceToWeb(-90, 0, 60, 80, 300)).toBe(10);
    expect(distanceToWeb(70, 0, 60, 80, 300)).toBe(0);
    expect(distanceToWeb(150, 0, 60, 80, 300)).toBe(70);
  });
});
