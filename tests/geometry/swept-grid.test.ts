import { describe, expect, it } from 'vitest';
import { SweptGrid, type SweptVolumes } from '../../src/geometry/swept-grid.js';
import { seeded } from '../bench/make-layout.js';

function volumesOf(
  list: readonly (readonly [from: readonly number[], to: readonly number[], radius: number])[],
): SweptVolumes {
  return {
    count: list.length,
    ends: Float64Array.from(list.flatMap(([from, to]) => [...from, ...to])),
    radius: Float64Array.from(list, ([, , radius]) => radius),
  };
}

/** Volumes whose boxes meet that of volume `i`, each of them looked at. */
function boxesAt({ count, ends, radius }: SweptVolumes, i: number): number[] {
  const side = (v: number, k: number) => [ends[v * 6 + k], ends[v * 6 + k + 3]].sort((a, b) => a - b);
  const meets = (j: number) =>
    [0, 1, 2].every((k) => {
      const [[a0, a1], [b0, b1]] = [side(i, k), side(j, k)];
      return a0 - radius[i] <= b1 + radius[j] && b0 - radius[j] <= a1 + radius[i];
    });
  return Array.from({ length: count }, (_, j) => j).filter((j) => j !== i && meets(j));
}

function near(grid: SweptGrid, i: number): number[] {
  const found: number[] = [];
  expect(grid.near(i, (j) => found.push(j))).toBe(true);
  return found.sort((a, b) => a - b);
}

describe('SweptGrid', () => {
  it.each([
    ['short', 400, 0],
    ['long', 3000, 0],
    ['of all lengths, far from the origin', 2000, -6e8],
  ])('finds what may meet a volume, in any direction, of volumes that are %s', (_, length, origin) => {
    const random = seeded(4);
    const list = Array.from({ length: 400 }, () => {
      const from = [0, 1, 2].map(() => origin + Math.round(random() * 4000));
      const to = from.map((value) => value + (random() - 0.5) * 2 * length * random());
      return [from, to, random() * 40] as const;
    });
    const volumes = volumesOf(list);
    const grid = new SweptGrid(volumes, new Uint8Array(400));
    let met = 0;
    for (let i = 0; i < 400; i++) {
      const wanted = boxesAt(volumes, i);
      met += wanted.length;
      // Boxes of pieces are smaller than that of the whole: what is left out lies beside the volume.
      const found = near(grid, i);
      expect(wanted).toEqual(expect.arrayContaining(found));
      for (const j of wanted) if (!found.includes(j)) expect(piecesApart(volumes, i, j)).toBeGreaterThan(0);
    }
    expect(met).toBeGreaterThan(20);
  });

  it('does not look at volumes that are skipped, and takes one of them as what is asked about', () => {
    const volumes = volumesOf([
      [[0, 0, 0], [0, 0, 60], 5],
      [[3, 0, 0], [3, 0, 60], 5],
      [[6, 0, 0], [6, 0, 60], 5],
    ]);
    const grid = new SweptGrid(volumes, Uint8Array.from([0, 1, 0]));
    expect(near(grid, 0)).toEqual([2]);
    expect(near(grid, 1)).toEqual([0, 2]);
  });

  it('says that it has not looked at all beyond the number that it may look at', () => {
    const volumes = volumesOf(Array.from({ length: 30 }, () => [[0, 0, 0], [0, 0, 60], 5] as const));
    const grid = new SweptGrid(volumes, new Uint8Array(30));
    expect(grid.near(0, () => {}, 29)).toBe(true);
    expect(grid.near(0, () => {}, 28)).toBe(false);
  });

  it('leaves out a volume that would fill it, and keeps its cells small for the others', () => {
    const list = Array.from({ length: 2000 }, (_, k) => [[k * 300, 0, 0], [k * 300, 0, 60], 5] as const);
    const volumes = volumesOf([...list, [[0, 0, 0], [0, 0, 60], 1e7], [[0, 0, 0], [0, 0, Number.NaN], 5]]);
    const grid = new SweptGrid(volumes, new Uint8Array(2002));
    expect([...grid.isLeftOut].map((out, k) => (out ? k : -1)).filter((k) => k >= 0)).toEqual([2000, 2001]);
    for (let i = 0; i < 2000; i++) expect(near(grid, i)).toEqual([]);
    expect(grid.tests / 2000).toBeLessThan(4);
    expect(grid.near(2000, () => {})).toBe(false);
  });
});

/** Least distance of points spread along two volumes, less their radii: less than 0 only where they meet. */
function piecesApart({ ends, radius }: SweptVolumes, i: number, j: number): number {
  const steps = 200;
  const points = (v: number) =>
    Array.from({ length: steps + 1 }, (_, s) =>
      [0, 1, 2].map((k) => ends[v * 6 + k] + ((ends[v * 6 + k + 3] - ends[v * 6 + k]) * s) / steps),
    );
  let least = Number.POSITIVE_INFINITY;
  const others = points(j);
  for (const p of points(i))
    for (const q of others) least = Math.min(least, Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]));
  return least - radius[i] - radius[j];
}
