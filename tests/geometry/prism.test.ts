import { describe, expect, it } from 'vitest';
import { distanceToPrism, newellNormal, newPrism, type Prism } from '../../src/geometry/prism.js';
import { along, cross, dot, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';
import { newRandom } from '../read/random.js';
import { leastDistance } from './least-distance.js';
import { randomMotion, randomPoint } from './motion.js';

function prismOf(base: readonly Vec3[], extrude: Vec3): Prism {
  const prism = newPrism(base, extrude);
  if (prism === undefined) throw new Error('the prism of the test has no volume');
  return prism;
}

const flat = (points: readonly (readonly [number, number])[], z = 0): Vec3[] => points.map(([x, y]) => [x, y, z]);
const box = prismOf(
  flat([
    [0, 0],
    [10, 0],
    [10, 6],
    [0, 6],
  ]),
  [0, 0, 4],
);

describe('newPrism', () => {
  it('makes nothing of what has no volume', () => {
    expect(
      newPrism(
        flat([
          [0, 0],
          [1, 0],
          [2, 0],
        ]),
        [0, 0, 1],
      ),
    ).toBeUndefined();
    expect(
      newPrism(
        flat([
          [0, 0],
          [1, 0],
          [0, 1],
        ]),
        [3, 4, 0],
      ),
    ).toBeUndefined();
    expect(
      newPrism(
        flat([
          [0, 0],
          [1, 0],
          [0, 1],
        ]),
        [0, 0, 0],
      ),
    ).toBeUndefined();
    expect(newPrism([], [0, 0, 1])).toBeUndefined();
  });

  it('has the normal of a ring that is not quite flat, and of one given backwards', () => {
    expect(
      newellNormal(
        flat([
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
        ]),
      ),
    ).toEqual([0, 0, 8]);
    expect(
      newellNormal(
        flat([
          [0, 2],
          [2, 2],
          [2, 0],
          [0, 0],
        ]),
      ),
    ).toEqual([0, 0, -8]);
    const [x, y, z] = unit(
      newellNormal([
        [0, 0, 0.1],
        [2, 0, -0.1],
        [2, 2, 0.1],
        [0, 2, -0.1],
      ]),
    ) as Vec3;
    expect([x, y, z].map((part) => Math.round(part * 1e9) / 1e9)).toEqual([0, 0, 1]);
  });
});

describe('distanceToPrism', () => {
  it('is 0 inside, on the surface, and where the segment goes through', () => {
    expect(distanceToPrism(box, [1, 1, 1], [2, 2, 2])).toBe(0);
    expect(distanceToPrism(box, [5, 3, 2], [5, 3, 99])).toBe(0);
    expect(distanceToPrism(box, [5, 3, -1], [5, 3, 99])).toBe(0);
    expect(distanceToPrism(box, [-1, 3, 2], [11, 3, 2])).toBe(0);
    expect(distanceToPrism(box, [-1, -1, 2], [2, 1, 2])).toBe(0);
    expect(distanceToPrism(box, [5, 3, 4], [5, 3, 9])).toBe(0);
    expect(distanceToPrism(box, [10, 3, 2], [12, 3, 2])).toBe(0);
  });

  it('is taken to the nearest face, edge or corner', () => {
    expect(distanceToPrism(box, [5, 3, 7], [5, 3, 9])).toBe(3);
    expect(distanceToPrism(box, [12, 3, 2], [15, 3, 2])).toBe(2);
    expect(distanceToPrism(box, [13, 10, 2], [13, 10, 3])).toBe(5);
    expect(distanceToPrism(box, [5, 9, 8], [6, 9, 8])).toBe(5);
    expect(distanceToPrism(box, [-2, -2, -1], [-2, -2, -1])).toBe(3);
    expect(distanceToPrism(box, [-1, -5, 8], [-1, 11, 8])).toBeCloseTo(Math.hypot(1, 4), 12);
  });

  it('is the same whichever way the base runs and the extrusion points', () => {
    const random = newRandom(111);
    const base = flat([
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ]);
    const top = flat(
      [
        [0, 0],
        [10, 0],
        [10, 6],
        [0, 6],
      ],
      4,
    );
    const prisms = [
      prismOf([...base].reverse(), [0, 0, 4]),
      prismOf(top, [0, 0, -4]),
      prismOf([...base.slice(2), ...base.slice(0, 2)], [0, 0, 4]),
    ];
    for (let k = 0; k < 500; k++) {
      const [a, b] = [randomPoint(random, 15), randomPoint(random, 15)];
      for (const prism of prisms) expect(distanceToPrism(prism, a, b)).toBeCloseTo(distanceToPrism(box, a, b), 9);
    }
  });

  it('is what a search finds for oblique prisms of parallelograms, anywhere and turned anyhow', () => {
    const random = newRandom(112);
    let touching = 0;
    for (let k = 0; k < 600; k++) {
      const { move, turn } = randomMotion(random, k % 3 === 0 ? 1e6 : 500);
      const corner = move([0, 0, 0]);
      const edges: Vec3[] = [
        turn([200 + random() * 800, 0, 0]),
        turn([(random() - 0.5) * 300, 150 + random() * 500, 0]),
        turn([(random() - 0.5) * 300, (random() - 0.5) * 300, 100 + random() * 400]),
      ];
      const [e, f, g] = edges;
      const prism = prismOf([corner, along(corner, e, 1), along(along(corner, e, 1), f, 1), along(corner, f, 1)], g);
      const [a, b] = [move(randomPoint(random, 700)), move(randomPoint(random, 700))];
      const found = distanceToPrism(prism, a, b);
      const searched = leastDistance(a, b, corner, edges);
      if (found === 0) touching++;
      if (Math.abs(found - searched) > 1e-6) expect([k, found]).toEqual([k, searched]);
    }
    expect(touching).toBeGreaterThan(60);
    expect(touching).toBeLessThan(540);
  });

  it('is the least distance to the parts of a concave prism, its notch being no part of it', () => {
    const random = newRandom(113);
    const parts: [corner: Vec3, size: [number, number]][] = [
      [
        [0, 0, 0],
        [900, 300],
      ],
      [
        [0, 300, 0],
        [300, 400],
      ],
      [
        [600, 300, 0],
        [300, 400],
      ],
    ];
    const outline = flat([
      [0, 0],
      [900, 0],
      [900, 700],
      [600, 700],
      [600, 300],
      [300, 300],
      [300, 700],
      [0, 700],
    ]);
    let inNotch = 0;
    for (let k = 0; k < 400; k++) {
      const { move, turn } = randomMotion(random, 2000);
      const extrude = turn([(random() - 0.5) * 200, (random() - 0.5) * 200, 250]);
      const prism = prismOf(outline.map(move), extrude);
      const near = k % 4 === 0;
      const a = near ? move([320 + random() * 260, 350 + random() * 300, 100]) : move(randomPoint(random, 1000));
      const b = near
        ? along(a, turn([random() * 40 - 20, random() * 40 - 20, random() * 40 - 20]), 1)
        : move(randomPoint(random, 1000));
      const searched = Math.min(
        ...parts.map(([corner, [width, depth]]) =>
          leastDistance(a, b, move(corner), [turn([width, 0, 0]), turn([0, depth, 0]), extrude]),
        ),
      );
      const found = distanceToPrism(prism, a, b);
      if (near && found > 0) inNotch++;
      if (Math.abs(found - searched) > 1e-6) expect([k, found]).toEqual([k, searched]);
    }
    expect(inNotch).toBeGreaterThan(50);
  });

  it('of a convex prism lies between the distance to its planes and that to any point in it', () => {
    const random = newRandom(114);
    for (let k = 0; k < 150; k++) {
      const corners = 3 + (k % 6);
      const angles = Array.from({ length: corners }, (_, n) => ((n + random() * 0.8) * 2 * Math.PI) / corners);
      const base = flat(angles.map((angle) => [Math.cos(angle) * 500, Math.sin(angle) * 500]));
      const extrude: Vec3 = [random() * 200, random() * 200, 300];
      const prism = prismOf(base, extrude);
      const p = randomPoint(random, 900);
      const beyond = beyondPlanes(base, extrude, p);
      const found = distanceToPrism(prism, p, p);
      if (beyond <= 0) expect(found).toBe(0);
      else expect(found).toBeGreaterThanOrEqual(beyond - 1e-9);
      for (let n = 0; n < 60; n++) {
        const weights = base.map(() => -Math.log(random()));
        const sum = weights.reduce((total, weight) => total + weight, 0);
        const q = along(
          base.reduce((total, corner, m) => along(total, corner, weights[m] / sum), [0, 0, 0] as Vec3),
          extrude,
          random(),
        );
        expect(found).toBeLessThanOrEqual(Math.hypot(...subtract(p, q)) + 1e-9);
      }
    }
  });
});

/** How far a point lies beyond the planes of a convex prism, at most; 0 or less inside. */
function beyondPlanes(base: readonly Vec3[], extrude: Vec3, p: Vec3): number {
  const sides = base.map((corner, k) => {
    const outward = unit(cross(subtract(base[(k + 1) % base.length], corner), extrude)) as Vec3;
    return dot(subtract(p, corner), outward);
  });
  return Math.max(...sides, -p[2], p[2] - extrude[2]);
}
