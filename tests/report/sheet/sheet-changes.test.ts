import { describe, expect, it } from 'vitest';
import { sheetsOf } from '../../../src/jobs/sheet.js';
import { hole, smallLayout } from '../../jobs/small-layout.js';
import { drawnText } from './checked-sheets.js';
import { packaged } from './sheet-source.js';

const before = packaged(
  [
    hole('stays', [0, 0, 0]),
    hole('moves', [1000, 0, 0]),
    hole('deeper', [2000, 0, 0]),
    hole('named', [3000, 0, 0], { tag: 'OLD' }),
    hole('gone', [4000, 0, 0], { tag: 'G-1' }),
    hole('elsewhere', [5000, 0, 0], { tag: 'E-1' }),
  ],
  { packages: [{ id: 'P', holes: ['stays', 'moves', 'deeper', 'named', 'gone'] }] },
);
const after = packaged(
  [
    hole('stays', [0, 0, 0]),
    hole('moves', [1000, 30, 0]),
    hole('deeper', [2000, 0, 0], { depth: 80 }),
    hole('named', [3000, 0, 0], { tag: 'NEW' }),
    hole('new', [6000, 0, 0]),
  ],
  { revision: { label: 'B', supersedes: 'A' } },
);

describe('sheets against the revision before', () => {
  const [sheet] = sheetsOf(after, { package: 'P' }, { parent: before }).sheets;
  const textOf = (id: string) => sheet.rows.find((row) => row.hole.hole.id === id)?.change?.text;

  it('mark holes that are new, moved or other, and no others', () => {
    expect(textOf('stays')).toBeUndefined();
    expect(textOf('moves')).toBe('Δ Since revision A: moved by 30 mm, strike the old mark out.');
    expect(textOf('deeper')).toBe('Δ Since revision A: other depth.');
    expect(textOf('named')).toBe('Δ Since revision A: tag was OLD.');
    expect(textOf('new')).toBe('Δ Since revision A: new.');
    expect(drawnText(sheet)).toMatch(/Δ changed\./);
    expect(sheet.texts.changes[0]).toBe('Δ New, moved or changed since revision A: No. 2, 3, 4, 5.');
  });

  it('name those of the package that were taken out', () => {
    expect(sheet.texts.changes[1]).toBe('Taken out since revision A: G-1: strike old marks out.');
  });

  it('mark holes of a type that has other values now', () => {
    const deeper = packaged([hole('stays', [0, 0, 0])], { holeTypes: [{ ...smallLayout.holeTypes[0], depth: 90 }] });
    const [one] = sheetsOf(deeper, { package: 'P' }, { parent: before }).sheets;
    expect(one.rows[0].change?.text).toBe('Δ Since revision A: T has other values: depth.');
  });

  it('say nothing of changes without one', () => {
    const [one] = sheetsOf(after, { package: 'P' }).sheets;
    expect(one.texts.changes).toEqual([]);
    expect(drawnText(one)).not.toContain('Δ');
  });
});
