import { describe, expect, it } from 'vitest';
import { KeepOutIndex } from '../../src/check/keep-out-index.js';
import type { KeepOut, Shape } from '../../src/generated/layout.js';
import { distanceToPrism, newPrism, type Prism } from '../../src/geometry/prism.js';
import { distancePointSegment, distanceSegmentSegment } from '../../src/geometry/segment.js';
import { along, unit, type Vec3 } from '../../src/geometry/vector.js';
import { seeded } from '../bench/make-layout.js';

const keepOut = (id: string, shape: Shape, standoff = 0): KeepOut => ({
  id,
  kind: 'embed',
  shape,
  standoff,
  knownFrom: 'scan',
});
const sphere = (id: string, centre: [number, number, number]) => keepOut(id, { sphere: { centre, radius: 5 } });
type Three = [number, number, number];

function randomKeepOut(random: () => number, k: number): KeepOut {
  const point = (): Three => [random() * 20_000, random() * 20_000, random() * 500];
  const p = point();
  if (k % 3 === 0) return sphere(`K-${k}`, p);
  if (k % 3 === 1) return keepOut(`K-${k}`, { path: { points: [p, point(), point()], radius: 20 } }, 50);
  const [a, b] = [random() * 6, 0.3 + random()];
  const u: Three = [8000 * Math.cos(a), 8000 * Math.sin(a), 0];
  const v: Three = [-200 * b * Math.sin(a), 200 * b * Math.cos(a), 0];
  const base = [p, along(p, u, 1), along(along(p, u, 1), v, 1), along(p, v, 1)] as Three[];
  return keepOut(`K-${k}`, { prism: { base, extrude: [10 * b, 0, 100] } }, 30);
}

function plainClear({ shape }: KeepOut, a: Vec3, b: Vec3): number {
  if (shape.sphere !== undefined) return distancePointSegment(shape.sphere.centre, a, b) - shape.sphere.radius - 6;
  if (shape.prism !== undefined)
    return distanceToPrism(newPrism(shape.prism.base, shape.prism.extrude) as Prism, a, b) - 6;
  const points = shape.path?.points ?? [];
  const each = points.slice(1).map((point, k) => distanceSegmentSegment(a, b, points[k], point));
  return Math.min(...each) - (shape.path?.radius ?? 0) - 6;
}

describe('keep-outs of every shape', () => {
  it('are found as by comparing with each of them, in their order', () => {
    const random = seeded(11);
    const records = Array.from({ length: 600 }, (_, k) => randomKeepOut(random, k));
    const index = new KeepOutIndex(records);
    let hits = 0;
    for (let n = 0; n < 500; n++) {
      const p: Vec3 = [random() * 20_000, random() * 20_000, random() * 400];
      const axis = unit([random() - 0.5, random() - 0.5, random()]) as Vec3;
      const depth = n % 50 === 0 ? 5000 : 100;
      const found: [string, number][] = [];
      index.near(p, axis, depth, 6, ({ id, standoff }, clear) => {
        if (clear < standoff) found.push([id, clear]);
      });
      const plain = records.map((record) => [record, plainClear(record, p, along(p, axis, depth))] as const);
      expect(found).toEqual(plain.filter(([r, clear]) => clear < r.standoff).map(([{ id }, clear]) => [id, clear]));
      hits += found.length;
    }
    expect(hits).toBeGreaterThan(100);
    // Far fewer distances than by comparing with each.
    expect(index.tests).toBeLessThan((500 * 600) / 10);
  });
});

describe('ten thousand keep-outs in one cell', () => {
  const records = Array.from({ length: 10_000 }, (_, k) =>
    sphere(`K-${k}`, [(k % 22) * 65, (Math.floor(k / 22) % 22) * 65, Math.floor(k / 484) * 65]),
  );

  it('are compared with a hole only where they are near it', () => {
    const index = new KeepOutIndex(records);
    for (let k = 0; k < 1000; k++) index.near([k * 1.4, 706, 0], [0, 0, 1], 60, 5, () => {});
    expect(index.tests).toBeGreaterThan(0);
    expect(index.tests / 1000).toBeLessThan(10);
  });

  it('are given up where all of them lie about each hole', () => {
    const index = new KeepOutIndex(
      records.map(({ id }) => sphere(id, [0, 0, 0])),
      25_000,
    );
    const isJudged = Array.from({ length: 1000 }, () => index.near([0, 0, 0], [0, 0, 1], 60, 5, () => {}));
    expect(isJudged.filter((one) => one)).toHaveLength(2);
    expect(index.tests).toBe(20_000);
    expect(index.near([9000, 0, 0], [0, 0, 1], 60, 5, () => {})).toBe(true);
  });
});

describe('paths of many kilometres that slant', () => {
  it('are compared with the holes near a piece of them', () => {
    const records = Array.from({ length: 100 }, (_, k) =>
      keepOut(`K-${k}`, {
        path: {
          points: [
            [-500_000, -500_000 + k * 2000, 0],
            [500_000, 500_000 + k * 2000, 0],
          ],
          radius: 10,
        },
      }),
    );
    const index = new KeepOutIndex(records);
    for (let k = 0; k < 1000; k++) index.near([k * 200, 0, 0], [0, 0, 1], 60, 5, () => {});
    expect(index.tests).toBeGreaterThan(0);
    expect(index.tests / 1000).toBeLessThan(2);
  });
});

describe('a path of very many points', () => {
  it('is compared with a hole only where it is near it', () => {
    const points = Array.from({ length: 100_000 }, (_, k): Three => [k * 10, 200 * Math.sin(k / 50), 0]);
    const index = new KeepOutIndex([keepOut('K', { path: { points, radius: 10 } }, 20)]);
    const clear: number[] = [];
    for (let k = 0; k < 1000; k++) index.near([k * 1000, 0, 20], [0, 0, 1], 60, 5, (_, one) => clear.push(one));
    expect(clear.filter((one) => one < 20).length).toBeGreaterThan(10);
    expect(index.tests / 1000).toBeLessThan(50);
  });
});

describe('numbers near the limits of the schema', () => {
  it('give distances that are numbers', () => {
    const far: Three = [1e10, -1e10, 1e10];
    const records = [
      keepOut('path', { path: { points: [far, [-1e10, 1e10, -1e10], [0, 0, 1e-300]], radius: 1e7 } }, 1e7),
      keepOut('sphere', { sphere: { centre: far, radius: 1e-300 } }, 1e7),
      keepOut(
        'prism',
        {
          prism: {
            base: [
              [1e10, 1e10, 0],
              [-1e10, 1e10, 0],
              [-1e10, -1e10, 0],
            ],
            extrude: [1e-300, 0, 1e10],
          },
        },
        1,
      ),
      keepOut(
        'flat',
        {
          prism: {
            base: [
              [0, 0, 0],
              [1e10, 0, 0],
              [1e10, 1e10, 0],
            ],
            extrude: [0, 0, 1e-150],
          },
        },
        1,
      ),
    ];
    const index = new KeepOutIndex(records);
    expect(index.count).toBe(4);
    const clear: number[] = [];
    for (const p of [[0, 0, 0], far, [-1e10, -1e10, -1e10], [1e-300, 1e-300, 1e-300]] as Three[]) {
      for (const axis of [
        [0, 0, 1],
        [-0.6, 0.8, 0],
      ] as Three[])
        for (const depth of [1e-300, 60, 1e7, 1e13]) index.near(p, axis, depth, 5e6, (_, one) => clear.push(one));
    }
    expect(clear.length).toBeGreaterThan(20);
    expect(clear.filter((one) => !Number.isFinite(one))).toEqual([]);
  });
});
