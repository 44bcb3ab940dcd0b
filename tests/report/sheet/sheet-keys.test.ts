import { describe, expect, it } from 'vitest';
import { sheetsOf } from '../../../src/jobs/sheet.js';
import { keysOf } from '../../../src/report/sheet/sheet-keys.js';
import { hole, smallLayout } from '../../jobs/small-layout.js';
import { drawnText } from './checked-sheets.js';
import { holesInSquare, packaged } from './sheet-source.js';

const row = (tag: string, substrateText = 'slab', moveText = 'ask') => ({ tag, substrateText, moveText });

describe('keys of sheets', () => {
  it('do not begin as a tag or a gridline does', () => {
    expect(keysOf([row('H-1')], [])(row('H-1'))).toEqual({ substrate: 'C1', move: 'M1' });
    const rows = [row('C1'), row('m-2')];
    const key = keysOf(rows, ['K', 'A'])(rows[0]);
    expect(key.substrate).not.toMatch(/^[CKMA]/);
    expect(key.move).not.toMatch(/^[CKMA]/);
    expect(key.move[0]).not.toBe(key.substrate[0]);
  });

  it('stand in brackets where every letter begins a tag', () => {
    const rows = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => row(`${letter}1`));
    expect(keysOf(rows, [])(rows[0])).toEqual({ substrate: '[C1]', move: '[M1]' });
  });

  it('and numbers run through all sheets, and each sheet says what its own mean', () => {
    const slabs = [1, 2, 3, 4, 5].map((k) => ({ ...smallLayout.substrates[0], id: `S${k}`, name: `Slab ${k}` }));
    const holes = slabs.map(({ id }, k) => hole(`H-${k}`, [k * 600, 0, 0], { substrate: id }));
    const { sheets } = sheetsOf(packaged(holes, { substrates: slabs }), { package: 'P' });
    expect(sheets.length).toBeGreaterThan(1);
    const rows = sheets.flatMap((sheet) => sheet.rows);
    expect(rows.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
    expect(rows.map(({ keys }) => keys.substrate)).toEqual(['C1', 'C2', 'C3', 'C4', 'C5']);
    expect(sheets[1].texts.substrates[0]).toMatch(/^C[2-5]: Slab [2-5]/);
  });

  it('and numbers of three digits are not broken', () => {
    const { sheets } = sheetsOf(packaged(holesInSquare(120)), { package: 'P' });
    expect(drawnText(sheets[sheets.length - 1])).toMatch(/ 120 /);
  });
});

describe('sheets with few holes', () => {
  it('use what paper is free for a larger plan', () => {
    const heightOf = (count: number) => {
      const [sheet] = sheetsOf(packaged(holesInSquare(count)), { package: 'P' }).sheets;
      const plans = sheet.drawing.children.filter((one) => one.kind === 'group' && one.name === 'plan');
      return plans.map((one) => (one.kind === 'group' ? one.clip?.height : undefined))[0] ?? 0;
    };
    expect(heightOf(1)).toBeGreaterThan(heightOf(60) + 20);
  });
});

describe('the height of the surface', () => {
  const level = { id: 'L1', name: 'One', finishedFloor: 1000 };
  const said = (holes: Record<string, unknown>[], levels: unknown[] = [level]) =>
    sheetsOf(packaged(holes, { levels }), { package: 'P' }).sheets[0].texts.heights.join(' ');
  const at = (id: string, z?: number) => hole(id, z === undefined ? [0, 0] : [0, 0, z], { level: 'L1' });

  it('is said with what it is counted from', () => {
    expect(said([at('a', 4000), at('b', 4000)])).toBe('Surface at all holes: 3000 mm above the finished floor of One.');
    expect(said([at('a', 4000), at('b', 4500)])).toBe(
      'Surface 3000 mm (No. 1); Surface 3500 mm (No. 2) above the finished floor of One.',
    );
    expect(said([at('a', 4000)], [{ id: 'L1', name: 'One' }])).toBe(
      'Surface at all holes: 4000 mm above the height datum (floor).',
    );
  });

  it('is said to be as found where it is not known, and as a range where there are many', () => {
    expect(said([at('a')])).toBe('Surface as found: no height is given.');
    expect(said([at('a', 4000), at('b')])).toContain('Surface as found at No. 2: no height is given.');
    expect(said([1, 2, 3, 4].map((k) => at(`h${k}`, 4000 + k)))).toBe(
      'Surface: 3001 mm to 3004 mm above the finished floor of One; each in the layout.',
    );
  });
});
