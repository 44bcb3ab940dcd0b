import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import type { Hole, Layout } from '../../src/generated/layout.js';
import { exampleJson, exampleText } from './example-files.js';

// Reads the point list on a way of its own: whole numbers of 1/64 inch, nothing from src.

const list = exampleText('ferry-terminal/sprinkler-points.csv');
const profile = exampleJson('ferry-terminal/sprinkler.profile.json') as ColumnProfile;
const layout = exampleJson('ferry-terminal/sprinkler.ahx.json') as Layout;

function cellsOf(line: string): string[] {
  const cells = line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,"]*))/g);
  return [...cells].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain);
}

/** Millimetres of a length written as `-1'-6 1/2"`; 1/64 inch is 396875 millionths of a millimetre. */
function mmOf(text: string): number {
  const parts = /^(-?)(\d+)'-(\d+)(?: (\d+)\/(\d+))?"$/.exec(text);
  if (parts === null) throw new Error(`no feet and inches: ${text}`);
  const [feet, inches, over, under] = parts.slice(2).map((digits) => Number(digits ?? 0));
  const sixtyFourths = (feet * 12 + inches) * 64 + (under > 0 ? (over * 64) / under : 0);
  if (!Number.isInteger(sixtyFourths)) throw new Error(`finer than 1/64 inch: ${text}`);
  return ((parts[1] === '-' ? -1 : 1) * sixtyFourths * 396875) / 1e6;
}

function holeOf(cells: string[], row: number): Hole | undefined {
  const cell = (field: string) => {
    const column = profile.columns.find((candidate) => candidate.field === field);
    const text = cells[header.indexOf(column?.column ?? '')];
    return column?.map?.[text] ?? text;
  };
  const code = cells[header.indexOf(profile.rows?.column ?? '')];
  if (profile.rows?.drop?.includes(code)) return undefined;
  const optional = Object.entries({
    group: cell('group'),
    role: cell('role'),
    note: cell('note'),
  }).filter(([, text]) => text !== '');
  return {
    id: cell('id'),
    tag: cell('tag'),
    area: cell('area'),
    ...profile.constants,
    ...profile.codes?.map[code],
    ...Object.fromEntries(optional),
    point: [mmOf(cell('x')), mmOf(cell('y')), mmOf(cell('z'))],
    origin: { row, code: cell('origin.code') },
  } as Hole;
}

const lines = list.split('\r\n').slice(0, -1);
const header = cellsOf(lines[0]);

describe('the point list of the sprinkler firm', () => {
  it('has 42 rows, of which 36 are holes and 6 are control and check shots', () => {
    const codes = lines.slice(1).map((line) => cellsOf(line)[header.indexOf('Code')]);
    expect(codes).toHaveLength(42);
    expect(codes.filter((code) => code === 'CTL' || code === 'CHK')).toHaveLength(6);
  });

  it('has the same number of cells in every row', () => {
    expect(lines.map((line) => cellsOf(line).length)).toEqual(lines.map(() => 10));
  });

  it('becomes the holes of the sprinkler layout', () => {
    const holes = lines.slice(1).map((line, index) => holeOf(cellsOf(line), index + 2));
    expect(layout.holes).toEqual(holes.filter((hole) => hole !== undefined));
  });

  it('has a profile that gives the rest of the sprinkler layout', () => {
    const { ahx, kind, holes, ...rest } = layout;
    expect({ ahx, kind }).toEqual({ ahx: '0.1', kind: 'layout' });
    expect(holes.length).toBeGreaterThan(0);
    expect(profile.layout).toEqual(rest);
  });

  it('has its control points where the layout has them', () => {
    const shots = lines.slice(1).map(cellsOf);
    const listed = shots
      .filter((cells) => cells[header.indexOf('Code')] === 'CTL')
      .map((cells) => ({
        id: cells[0],
        point: ['East', 'North', 'Elev'].map((name) => mmOf(cells[header.indexOf(name)])),
      }));
    expect(layout.control?.map(({ id, point }) => ({ id, point }))).toEqual(listed);
  });
});
