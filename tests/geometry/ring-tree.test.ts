import { describe, expect, it } from 'vitest';
import { distanceToRing, insideRing, type Ring } from '../../src/geometry/ring.js';
import { RingSet } from '../../src/geometry/ring-set.js';
import { isInsideRing, RingTree, ringDistance } from '../../src/geometry/ring-tree.js';
import { newRandom } from '../read/random.js';

/** A ragged ring about (0, 0); whole numbers, so that points at its corners and on level edges occur. */
function ragged(corners: number, radius: number, seed: number): Ring {
  const random = newRandom(seed);
  const far = Float64Array.from({ length: corners }, () => radius * (0.5 + random() / 2));
  const at = (k: number, of: (angle: number) => number) => Math.round(far[k] * of((2 * Math.PI * k) / corners));
  return { u: far.map((_, k) => at(k, Math.cos)), v: far.map((_, k) => at(k, Math.sin)) };
}

/** A comb: half of its edges stand across its whole height. */
function comb(teeth: number): Ring {
  const points = Array.from({ length: teeth }, (_, k) => [
    [k * 4, 0],
    [k * 4 + 1, 1000],
    [k * 4 + 2, 1000],
    [k * 4 + 3, 0],
  ]).flat();
  points.push([teeth * 4, -10], [0, -10]);
  return { u: Float64Array.from(points, ([u]) => u), v: Float64Array.from(points, ([, v]) => v) };
}

describe('RingTree', () => {
  it.each([
    ['a triangle', ragged(3, 40, 1)],
    ['33 corners', ragged(33, 40, 2)],
    ['1000 corners', ragged(1000, 60, 3)],
    ['a comb', comb(20)],
  ])('answers as all edges together do, on corners too: %s', (_, ring) => {
    const tree = new RingTree(ring);
    const random = newRandom(7);
    let inside = 0;
    for (let k = 0; k < 4000; k++) {
      const isWhole = k % 2 === 0;
      const [u, v] = [random() * 160 - 80, random() * 160 - 80].map((x) => (isWhole ? Math.round(x) : x));
      expect(tree.isInside(u, v)).toBe(insideRing(ring, u, v));
      expect(tree.distance(u, v)).toBe(distanceToRing(ring, u, v));
      if (tree.isInside(u, v)) inside++;
    }
    expect(inside).toBeGreaterThan(50);
    for (const far of [1e9, -1e17, 1e200, Number.NaN]) {
      expect(tree.isInside(far, far)).toBe(insideRing(ring, far, far));
      expect(tree.distance(far, 3)).toBe(distanceToRing(ring, far, 3));
    }
  });

  it.each([
    ['ragged', ragged(100_000, 1e6, 5), 1e6],
    ['a comb', comb(25_000), 1e5],
  ])('looks at few of 100,000 edges: %s', (_, ring, size) => {
    const tree = new RingTree(ring);
    const random = newRandom(11);
    for (let k = 0; k < 1000; k++) {
      const [u, v] = [(random() - 0.3) * size, (random() - 0.3) * size];
      tree.isInside(u, v);
      tree.distance(u, v);
    }
    // The ragged one has thousands of corners that are about as near to its middle.
    expect(tree.tests / 1000).toBeLessThan(4000);
  });

  it('is what rings of many corners are asked through', () => {
    // 2 * 10^10 edges without it.
    const ring = ragged(100_000, 1e6, 5);
    const random = newRandom(13);
    let inside = 0;
    for (let k = 0; k < 100_000; k++) {
      const [u, v] = [(random() - 0.5) * 1e6, (random() - 0.5) * 1e6];
      if (isInsideRing(ring, u, v) && ringDistance(ring, u, v) > 0) inside++;
    }
    expect(inside).toBeGreaterThan(50_000);
  });
});

describe('RingSet', () => {
  it.each([1, 8, 9, 300])('finds the first and the last of %i rings in which a point lies', (count) => {
    const random = newRandom(17);
    const rings = Array.from({ length: count }, (_, k) => {
      const [du, dv] = [random() * 300, random() * 300];
      const { u, v } = ragged(12, 60, k + 1);
      return { u: u.map((x) => x + du), v: v.map((y) => y + dv) };
    });
    const set = new RingSet(rings, 0.001);
    let tests = 0;
    const accept = (ring: Ring, u: number, v: number) => {
      tests++;
      return insideRing(ring, u, v);
    };
    for (let k = 0; k < 1000; k++) {
      const [u, v] = [random() * 400 - 50, random() * 400 - 50];
      expect(set.first(u, v, accept)).toBe(rings.findIndex((ring) => insideRing(ring, u, v)));
      expect(set.last(u, v, accept)).toBe(rings.findLastIndex((ring) => insideRing(ring, u, v)));
    }
    expect(tests).toBeLessThan(1000 * 2 * count * 0.3);
  });
});
