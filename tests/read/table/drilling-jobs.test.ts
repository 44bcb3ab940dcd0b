import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../../src/generated/column-profile.js';
import type { Hole } from '../../../src/generated/layout.js';
import { readPoints } from './read-points.js';

const folder = '../shared/data/tsplib';
const here = existsSync(folder);

/**
 * The files have five lines of description and one that begins the points, then number, x and y
 * between blanks, then `EOF`. They say neither unit nor trade: millimetres, trade and type are invented.
 */
const profile: ColumnProfile = {
  ahx: '0.1',
  kind: 'column-profile',
  title: 'Circuit-board drilling jobs',
  table: { separator: 'blanks', skipRows: 6, header: false, end: 'EOF' },
  columns: [
    { column: '#1', field: 'id' },
    { column: '#2', field: 'x', unit: 'mm' },
    { column: '#3', field: 'y', unit: 'mm' },
  ],
  constants: { trade: 'board', holeType: 'any' },
};

// Counts, first and last points as the files of TSPLIB (G. Reinelt, ORSA J. Computing 3, 1991) have them.
const jobs = [
  { name: 'a280', count: 280, first: [288, 149], last: [280, 133] },
  { name: 'd198', count: 198, first: [0, 0], last: [3952.1, 1010.3] },
  { name: 'u159', count: 159, first: [3300, 2200], last: [3500, 2400] },
  { name: 'fl417', count: 417, first: [1025.7, 1971.3], last: [771.494, 152.546] },
] as const;

// Pairs nearer than and at most as far as s (checks.md D-11, computed with independent code).
const pairCounts = [
  { name: 'a280', s: 8, nearer: 1, within: 261 },
  { name: 'a280', s: 16, nearer: 519, within: 733 },
  { name: 'u159', s: 100, nearer: 0, within: 43 },
  { name: 'u159', s: 200, nearer: 49, within: 115 },
] as const;

const title = here ? 'drilling jobs of TSPLIB' : `drilling jobs of TSPLIB, skipped because ${folder} is absent`;

describe.skipIf(!here)(title, () => {
  it.each(jobs)('$name is read through a column profile with all its $count points', ({ name, count, first, last }) => {
    const { holes, observations, counts } = read(name);
    expect(observations).toEqual([]);
    expect(counts).toEqual({ rows: count, holes: count, faulty: 0, leftOut: 0 });
    expect(holes.map(({ id }) => id)).toEqual(Array.from({ length: count }, (_, index) => String(index + 1)));
    expect(holes[0]).toEqual({ id: '1', trade: 'board', holeType: 'any', point: first, origin: { row: 7 } });
    expect(holes[count - 1].point).toEqual(last);
    expect(holes[count - 1].origin).toEqual({ row: count + 6 });
  });

  it.each(pairCounts)('$name has the published number of pairs at $s', ({ name, s, nearer, within }) => {
    const squares = squaredDistances(read(name).holes);
    expect(squares.filter((square) => square < s * s)).toHaveLength(nearer);
    expect(squares.filter((square) => square <= s * s)).toHaveLength(within);
  });

  it('a280 has one coincident pair', () => {
    expect(squaredDistances(read('a280').holes).filter((square) => square === 0)).toHaveLength(1);
  });
});

function read(name: string) {
  return readPoints(readFileSync(`${folder}/${name}.tsp`, 'utf8'), profile);
}

function squaredDistances(holes: readonly Hole[]): number[] {
  return holes.flatMap(({ point: [x, y] }, index) =>
    holes.slice(index + 1).map(({ point: [otherX, otherY] }) => (x - otherX) ** 2 + (y - otherY) ** 2),
  );
}
