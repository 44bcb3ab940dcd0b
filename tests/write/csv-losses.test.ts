import { describe, expect, it } from 'vitest';
import type { Column, ColumnProfile } from '../../src/generated/column-profile.js';
import type { Hole, Level } from '../../src/generated/layout.js';
import type { LayoutSource, Loss } from '../../src/model/layout-source.js';
import { type RowFilter, writeCsv } from '../../src/write/csv.js';

/** Invented. */
const frame = { name: 'site', heightDatum: 'level 0' };
const base = { id: 'ceiling', revision: { label: 'A' }, frame, trades: [], holeTypes: [] };
const id: Column = { column: 'ID', field: 'id' };
const x: Column = { column: 'X', field: 'x', unit: 'mm' };
const y: Column = { column: 'Y', field: 'y', unit: 'mm' };
const z: Column = { column: 'Z', field: 'z', unit: 'mm' };
const level: Column = { column: 'L', field: 'level' };

function hole(members: Partial<Hole> = {}): Hole {
  return { id: 'A1', trade: 'FP', holeType: 'T', point: [1, 2], ...members };
}

function write(holes: Hole[], profile: Partial<ColumnProfile>, levels: Level[] = [], filter?: RowFilter) {
  const losses: Loss[] = [];
  const source: LayoutSource = {
    header: { ahx: '0.1', kind: 'layout', ...base, levels } as unknown as LayoutSource['header'],
    holeCount: holes.length,
    holes: () => holes,
  };
  const whole: ColumnProfile = {
    ahx: '0.1',
    kind: 'column-profile',
    columns: [id, x, y],
    constants: { trade: 'FP', holeType: 'T' },
    layout: base,
    ...profile,
  };
  const text = [...writeCsv(source, whole, (loss) => losses.push(loss), filter)].join('');
  return { rows: text.split('\r\n').slice(1, -1), losses: losses.filter(({ field }) => field.startsWith('holes')) };
}

function l(name: string, finishedFloor?: number): Level {
  return { id: name, name, ...(finishedFloor !== undefined && { finishedFloor }) };
}

describe('a height from a level', () => {
  const profile = (...levels: Level[]): Partial<ColumnProfile> => ({
    columns: [id, x, y, z, level],
    height: 'finished-floor',
    layout: { ...base, levels },
  });

  it('is written where both layouts have the level at the same height', () => {
    const { rows, losses } = write([hole({ level: 'L1', point: [1, 2, 1300] })], profile(l('L1', 1000)), [
      l('L1', 1000),
    ]);
    expect(rows).toEqual(['A1,1,2,300,L1']);
    expect(losses).toEqual([]);
  });

  it('is left out and counted where they have it at different ones', () => {
    const { rows, losses } = write([hole({ level: 'L1', point: [1, 2, 1300] })], profile(l('L1', 1000)), [
      l('L1', 1200),
    ]);
    expect(rows).toEqual(['A1,1,2,,L1']);
    expect(losses).toEqual([
      {
        field: 'holes/point/z',
        count: 1,
        reason: 'the layout of the profile has its level at another height',
        recoverable: false,
      },
    ]);
  });

  it('is left out where the row would be read with another level than that of the hole', () => {
    const { rows, losses } = write(
      [hole({ level: 'L2', point: [1, 2, 4300] })],
      {
        columns: [id, x, y, z],
        height: 'finished-floor',
        constants: { trade: 'FP', holeType: 'T', level: 'L1' },
        layout: { ...base, levels: [l('L1', 1000), l('L2', 4000)] },
      },
      [l('L1', 1000), l('L2', 4000)],
    );
    expect(rows).toEqual(['A1,1,2,']);
    expect(losses).toContainEqual(
      expect.objectContaining({ field: 'holes/point/z', count: 1, reason: 'its row is read with another level' }),
    );
  });

  it('is left out where the profile does not have the level', () => {
    const { rows, losses } = write([hole({ level: 'L2', point: [1, 2, 4300] })], profile(l('L1', 1000)), [
      l('L2', 4000),
    ]);
    expect(rows).toEqual(['A1,1,2,,L2']);
    expect(losses.map(({ field }) => field)).toEqual(['holes/point/z']);
  });
});

describe('a size', () => {
  it('above zero never becomes zero, and keeps its digits where it would', () => {
    const cases: [depth: Partial<Column>, table: ColumnProfile['table'], row: string][] = [
      [{ unit: 'mm', decimals: 0 }, undefined, 'A1,1,2,0.1'],
      [{ unit: 'm', decimals: 2 }, undefined, 'A1,1,2,0.0001'],
      [{ unit: 'cm', decimals: 1 }, { separator: 'semicolon', decimal: 'comma' }, 'A1;1;2;0,01'],
      [{ unit: 'ft-in', fraction: 8 }, undefined, 'A1,1,2,"0.003937007874015748"""'],
    ];
    for (const [members, table, row] of cases) {
      const depth: Column = { column: 'D', field: 'depth', ...members };
      expect(write([hole({ depth: 0.1 })], { columns: [id, x, y, depth], table }).rows).toEqual([row]);
    }
  });

  it('that is not near zero is rounded as the column says', () => {
    const depth: Column = { column: 'D', field: 'depth', unit: 'mm', decimals: 0 };
    const { rows, losses } = write([hole({ depth: 12.4 })], { columns: [id, x, y, depth] });
    expect(rows).toEqual(['A1,1,2,12']);
    expect(losses.map(({ field, reason }) => [field, reason])).toEqual([
      ['holes/depth', 'rounded to 0 decimals of mm'],
    ]);
  });
});

describe('a text with blanks around it', () => {
  it('is counted, for the cell is read without them', () => {
    const note: Column = { column: 'N', field: 'note' };
    const { losses } = write(
      [hole({ note: ' wet' }), hole({ note: 'dry' }), hole({ note: 'x\u00a0' }), hole({ note: "'=1 " })],
      { columns: [id, x, y, note] },
    );
    expect(losses).toEqual([
      { field: 'holes/note', count: 3, reason: 'blanks around a text are no part of a cell', recoverable: false },
    ]);
  });
});

describe('a row filter', () => {
  it('leaves out rows, counts them, and forgets what else they would have lost', () => {
    const seen: string[] = [];
    const { rows, losses } = write([hole(), hole({ id: 'A2', note: 'n' }), hole({ id: 'A3', role: 'r' })], {}, [], {
      begin: (preamble) => seen.push(preamble),
      keeps: (row, { id: own }) => {
        seen.push(row);
        return own !== 'A2';
      },
    });
    expect(seen).toEqual(['ID,X,Y\r\n', 'A1,1,2\r\n', 'A2,1,2\r\n', 'A3,1,2\r\n']);
    expect(rows).toEqual(['A1,1,2', 'A3,1,2']);
    expect(losses.map(({ field, count }) => [field, count])).toEqual([
      ['holes', 1],
      ['holes/role', 1],
    ]);
  });
});
