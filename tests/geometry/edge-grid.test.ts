import { describe, expect, it } from 'vitest';
import { EdgeGrid, type Edges } from '../../src/geometry/edge-grid.js';
import { newRandom } from '../read/random.js';

const ANY = () => true;

function edgesOf(list: readonly (readonly [number, number, number, number])[]): Edges {
  const column = (k: number) => Float64Array.from(list, (edge) => edge[k]);
  return { fromU: column(0), fromV: column(1), toU: column(2), toV: column(3) };
}

/** Edges of square openings, 2 wide and 10 apart. */
function openings(perSide: number): Edges {
  const list: [number, number, number, number][] = [];
  for (let a = 0; a < perSide; a++) {
    for (let b = 0; b < perSide; b++) {
      const [u, v] = [a * 10, b * 10];
      list.push([u, v, u + 2, v], [u + 2, v, u + 2, v + 2], [u + 2, v + 2, u, v + 2], [u, v + 2, u, v]);
    }
  }
  return edgesOf(list);
}

function bruteForce({ fromU, fromV, toU, toV }: Edges, u: number, v: number, within: number): number {
  let found = -1;
  let least = within;
  for (let k = 0; k < fromU.length; k++) {
    const length = Math.hypot(toU[k] - fromU[k], toV[k] - fromV[k]);
    const [du, dv] = length > 0 ? [(toU[k] - fromU[k]) / length, (toV[k] - fromV[k]) / length] : [0, 0];
    const t = Math.min(length, Math.max(0, (u - fromU[k]) * du + (v - fromV[k]) * dv));
    const distance = Math.hypot(u - fromU[k] - t * du, v - fromV[k] - t * dv);
    if (distance > within || (found >= 0 && distance >= least)) continue;
    found = k;
    least = distance;
  }
  return found < 0 ? Number.POSITIVE_INFINITY : least;
}

describe('EdgeGrid', () => {
  it.each([
    ['around the origin', 0],
    ['a hundred kilometres away', 1e8],
  ])('finds the nearest of random edges %s as all edges tell it', (_, off) => {
    const random = newRandom(11);
    for (let round = 0; round < 40; round++) {
      const at = () => off + (random() - 0.5) * 1000;
      const length = round % 2 === 0 ? 1000 : 30;
      const edges = edgesOf(
        Array.from({ length: 1 + Math.floor(random() * 200) }, () => {
          const [u, v] = [at(), at()];
          return [u, v, u + (random() - 0.5) * length, round % 3 === 0 ? v : v + (random() - 0.5) * length] as const;
        }),
      );
      const grid = new EdgeGrid(edges, 0.001);
      for (let k = 0; k < 50; k++) {
        const [u, v, within] = [at(), at(), random() * 300];
        const expected = bruteForce(edges, u, v, within);
        grid.nearest(u, v, within, ANY);
        if (Number.isFinite(expected)) expect(grid.distance).toBeCloseTo(expected, 5);
        else expect(grid.distance).toBe(expected);
      }
    }
  });

  it('takes the first of equally near edges, and only those that are wanted', () => {
    const grid = new EdgeGrid(
      edgesOf([
        [0, 0, 0, 10],
        [4, 0, 4, 10],
        [0, 0, 0, 10],
      ]),
      0.001,
    );
    expect(grid.nearest(2, 5, 10, ANY)).toBe(0);
    expect(grid.nearest(2, 5, 10, (edge) => edge !== 0)).toBe(1);
    expect(grid.nearest(1, 5, 10, (edge) => edge !== 0)).toBe(2);
    expect(grid.nearest(2, 5, 1.9, ANY)).toBe(-1);
    expect(grid.distance).toBe(Number.POSITIVE_INFINITY);
    expect(grid.nearest(Number.NaN, 5, 10, ANY)).toBe(-1);
  });

  it('calls a cell empty only where no edge comes within the margin of it', () => {
    const grid = new EdgeGrid(openings(5), 0.5);
    const random = newRandom(3);
    let empty = 0;
    for (let k = 0; k < 2000; k++) {
      const [u, v] = [random() * 44 - 1, random() * 44 - 1];
      const cell = grid.cellOf(u, v);
      if (cell < 0 || !grid.isEmpty(cell)) continue;
      empty++;
      expect(bruteForce(grid.edges, u, v, 0.5)).toBe(Number.POSITIVE_INFINITY);
    }
    expect(empty).toBeGreaterThan(200);
  });

  it('visits every edge that comes into a box', () => {
    const edges = openings(6);
    const grid = new EdgeGrid(edges, 0.001);
    const seen = new Set<number>();
    grid.visit(9, 9, 13, 11, (edge) => seen.add(edge));
    const within = Array.from(edges.fromU, (_, k) => k).filter(
      (k) =>
        Math.max(edges.fromU[k], edges.toU[k]) >= 9 &&
        Math.min(edges.fromU[k], edges.toU[k]) <= 13 &&
        Math.max(edges.fromV[k], edges.toV[k]) >= 9 &&
        Math.min(edges.fromV[k], edges.toV[k]) <= 11,
    );
    expect(within.length).toBe(3);
    for (const k of within) expect(seen).toContain(k);
    expect(seen.size).toBeLessThan(edges.fromU.length / 2);
  });

  it('looks at few edges however many there are', () => {
    for (const perSide of [5, 50]) {
      const grid = new EdgeGrid(openings(perSide), 0.001);
      const random = newRandom(5);
      for (let k = 0; k < 1000; k++) grid.nearest(random() * perSide * 10, random() * perSide * 10, 1, ANY);
      expect(grid.tests).toBeGreaterThan(0);
      expect(grid.tests / 1000).toBeLessThan(10);
    }
  });

  it('takes edges of any shape: none, one point, one line', () => {
    expect(new EdgeGrid(edgesOf([]), 0.001).nearest(0, 0, 10, ANY)).toBe(-1);
    expect(new EdgeGrid(edgesOf([[3, 4, 3, 4]]), 0.001).nearest(0, 0, 5, ANY)).toBe(0);
    const line = new EdgeGrid(
      edgesOf([
        [0, 0, 1e6, 0],
        [1e6, 0, 2e6, 0],
      ]),
      0.001,
    );
    expect([line.nearest(1.5e6, 3, 5, ANY), line.distance]).toEqual([1, 3]);
  });
});
