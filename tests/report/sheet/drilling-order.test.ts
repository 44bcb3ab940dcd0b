import { describe, expect, it } from 'vitest';
import type { Hole, Layout } from '../../../src/generated/layout.js';
import { drillingOrder } from '../../../src/report/sheet/drilling-order.js';
import { layoutRecords } from '../../../src/report/sheet/layout-records.js';
import { sheetHole } from '../../../src/report/sheet/sheet-hole.js';
import { smallLayout } from '../../jobs/small-layout.js';

const records = layoutRecords({ ...smallLayout, groups: [{ id: 'G', kind: 'trapeze' }] } as unknown as Layout);
const at = (id: string, x: number, y: number, members: Partial<Hole> = {}) =>
  sheetHole({ id, trade: 'FP', holeType: 'T', point: [x, y, 0], ...members } as Hole, records);
const ids = (holes: readonly { hole: Hole }[]) => holes.map(({ hole }) => hole.id).join(' ');

describe('the order of a sheet', () => {
  const grid = [at('a', 0, 0), at('b', 900, 0), at('c', 0, 4000), at('d', 900, 4000)];

  it('goes in rows from north to south, to and fro', () => {
    expect(ids(drillingOrder(grid, 0, 1500, [undefined], {}))).toBe('c d a b');
    const rows = [at('n1', 0, 3000), at('n2', 900, 3000), at('s1', 0, 1400), at('s2', 900, 1400)];
    expect(ids(drillingOrder(rows, 0, 1500, [undefined], {}))).toBe('n1 n2 s2 s1');
  });

  it('turns with project north', () => {
    expect(ids(drillingOrder(grid, 0, 1500, [undefined], { projectNorthDeg: 90 }))).toBe('d c b a');
  });

  it('keeps what the package gives, and puts the rest behind', () => {
    expect(ids(drillingOrder([grid[1], grid[2], grid[0], grid[3]], 2, 1500, [undefined], {}))).toBe('b c d a');
  });

  it('keeps a group together at the place of its first member', () => {
    const group = { group: 'G' };
    const holes = [at('g1', 0, 4000, group), at('x', 500, 4000), at('g2', 0, 0, group)];
    expect(ids(drillingOrder(holes, 0, 1500, [undefined], {}))).toBe('g1 g2 x');
  });

  it('does one level after the other', () => {
    const holes = [at('u', 0, 0, { level: 'L2' }), at('l', 0, 0, { level: 'L1' }), at('n', 0, 0)];
    expect(ids(drillingOrder(holes, 3, 1500, ['L1', 'L2'], {}))).toBe('l u n');
  });
});
