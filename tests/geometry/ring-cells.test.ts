import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { insideRing, type Ring } from '../../src/geometry/ring.js';
import { RingCells } from '../../src/geometry/ring-cells.js';

const coordinate = fc.integer({ min: -1e8, max: 1e8 }).map((micrometres) => micrometres / 1000);
const ring = fc
  .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 6 })
  .map((points): Ring => ({ u: Float64Array.from(points, ([u]) => u), v: Float64Array.from(points, ([, v]) => v) }));
const maybeRing = fc.option(ring, { nil: undefined });

describe('cells of rings', () => {
  it('name every ring that holds a point, in order and once', () => {
    const holds = (rings: (Ring | undefined)[], u: number, v: number) => {
      const near = new RingCells(rings).near(u, v);
      expect([...near]).toEqual([...new Set(near)].sort((a, b) => a - b));
      const around = rings.flatMap((one, k) => (one !== undefined && insideRing(one, u, v) ? [k] : []));
      expect(around.filter((k) => !near.includes(k))).toEqual([]);
      expect(near.filter((k) => rings[k] === undefined)).toEqual([]);
    };
    fc.assert(fc.property(fc.array(maybeRing, { maxLength: 12 }), coordinate, coordinate, holds), { seed: 1 });
  });

  it('name few of many rings that lie apart', () => {
    const square = (k: number): Ring => {
      const [u, v] = [(k % 30) * 100, Math.floor(k / 30) * 100];
      return { u: Float64Array.of(u, u + 90, u + 90, u), v: Float64Array.of(v, v, v + 90, v + 90) };
    };
    const cells = new RingCells(Array.from({ length: 900 }, (_, k) => square(k)));
    expect(cells.near(1545, 1545)).toEqual([465]);
    expect(cells.near(-1, 1545)).toEqual([]);
  });

  it('take rings of no width', () => {
    const flat: Ring = { u: Float64Array.of(5, 5, 5), v: Float64Array.of(0, 1, 2) };
    expect(new RingCells([flat]).near(5, 1)).toEqual([0]);
    expect(new RingCells([undefined]).near(5, 1)).toEqual([]);
  });
});
