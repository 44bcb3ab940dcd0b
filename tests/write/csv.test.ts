import { describe, expect, it } from 'vitest';
import type { Column, ColumnProfile } from '../../src/generated/column-profile.js';
import type { Hole } from '../../src/generated/layout.js';
import type { LayoutSource, Loss } from '../../src/model/layout-source.js';
import { writeCsv } from '../../src/write/csv.js';

/** Invented: two trades, one level, what a profile may carry. */
const layout = {
  id: 'ceiling',
  revision: { label: 'A' },
  frame: { name: 'site', heightDatum: 'level 0' },
  levels: [{ id: 'L3', name: 'Level 3', finishedFloor: 1000 }],
  trades: [
    { id: 'FP', name: 'Fire protection' },
    { id: 'EL', name: 'Electrical' },
  ],
  holeTypes: [{ id: 'W10', name: 'Wedge', principle: 'torque-controlled', form: 'blind', diameter: 10, depth: 60 }],
} satisfies Partial<LayoutSource['header']>;

const columns: Column[] = [
  { column: 'ID', field: 'id' },
  { column: 'X', field: 'x', unit: 'mm' },
  { column: 'Y', field: 'y', unit: 'mm' },
];

function profileWith(changes: Partial<ColumnProfile>): ColumnProfile {
  const constants = { trade: 'FP', holeType: 'W10' };
  return { ahx: '0.1', kind: 'column-profile', columns, constants, layout, ...changes };
}

function hole(members: Partial<Hole> = {}): Hole {
  return { id: 'A1', trade: 'FP', holeType: 'W10', point: [1, 2], ...members };
}

function write(
  holes: Hole[],
  changes: Partial<ColumnProfile> = {},
  header: object = {},
): { text: string; losses: Loss[] } {
  const losses: Loss[] = [];
  const source: LayoutSource = {
    header: { ahx: '0.1', kind: 'layout', ...layout, ...header } as LayoutSource['header'],
    holeCount: holes.length,
    holes: () => holes,
  };
  const text = [...writeCsv(source, profileWith(changes), (loss) => losses.push(loss))].join('');
  return { text, losses };
}

function counts(losses: Loss[]): [string, number][] {
  return losses.map(({ field, count }) => [field, count]);
}

describe('a layout as CSV', () => {
  it('has a header, the columns in the order of the profile, and CRLF at each end of a row', () => {
    const { text, losses } = write([hole(), hole({ id: 'A2', point: [-0.5, 1e-7] })]);
    expect(text).toBe('ID,X,Y\r\nA1,1,2\r\nA2,-0.5,0\r\n');
    expect(losses).toEqual([
      { field: 'holes/point/y', count: 1, reason: 'rounded to a millionth of a millimetre', recoverable: false },
    ]);
  });

  it('writes each length in the unit, fraction and decimals of its column', () => {
    const { text, losses } = write(
      [hole({ point: [3209.925, 3200, 609.6], diameter: 12.7, depth: 304.8006096012192 })],
      {
        columns: [
          columns[0],
          { column: 'X', field: 'x', unit: 'ft-in' },
          { column: 'Y', field: 'y', unit: 'm' },
          { column: 'Z', field: 'z', unit: 'ft' },
          { column: 'D', field: 'diameter', unit: 'in' },
          { column: 'T', field: 'depth', unit: 'us-ft' },
        ],
      },
    );
    expect(text).toBe(`ID,X,Y,Z,D,T\r\nA1,"10'-6 3/8""",3.2,2,0.5,1\r\n`);
    expect(losses).toEqual([]);
  });

  it('counts the lengths that fraction and decimals change, and only those', () => {
    const { losses } = write(
      [hole({ point: [12.7, 304.8] }), hole({ point: [9.525, 308] }), hole({ point: [10, 304.8] })],
      {
        columns: [
          columns[0],
          { column: 'X', field: 'x', unit: 'ft-in', fraction: 4 },
          { column: 'Y', field: 'y', unit: 'ft', decimals: 2 },
        ],
      },
    );
    expect(losses).toEqual([
      { field: 'holes/point/x', count: 2, reason: 'rounded to 1/4 in', recoverable: false },
      { field: 'holes/point/y', count: 1, reason: 'rounded to 2 decimals of ft', recoverable: false },
    ]);
  });

  it('leaves the cell of an unknown height empty', () => {
    const z: Column = { column: 'Z', field: 'z', unit: 'mm' };
    const { text, losses } = write([hole(), hole({ point: [1, 2, 0] })], { columns: [...columns, z] });
    expect(text).toBe('ID,X,Y,Z\r\nA1,1,2,\r\nA1,1,2,0\r\n');
    expect(losses).toEqual([]);
  });

  it('measures heights from the reference of the profile', () => {
    const z: Column = { column: 'Z', field: 'z', unit: 'mm' };
    const level: Column = { column: 'L', field: 'level' };
    const { text, losses } = write(
      [hole({ level: 'L3', point: [1, 2, 1000.3] }), hole({ level: 'L4', point: [1, 2, 5] })],
      { columns: [...columns, z, level], height: 'finished-floor' },
    );
    expect(text).toBe('ID,X,Y,Z,L\r\nA1,1,2,0.3,L3\r\nA1,1,2,,L4\r\n');
    expect(counts(losses)).toEqual([['holes/point/z', 1]]);
  });

  it('quotes after RFC 4180 and writes the decimal sign and the separator of the profile', () => {
    const note: Column = { column: 'Remark; short', field: 'note' };
    const { text } = write([hole({ id: 'A;1', point: [1.5, 2], note: 'say "yes"\r\nor, no' })], {
      table: { separator: 'semicolon', decimal: 'comma' },
      columns: [...columns, note],
    });
    expect(text).toBe('ID;X;Y;"Remark; short"\r\n"A;1";1,5;2;"say ""yes""\r\nor, no"\r\n');
  });

  it('quotes empty cells and blanks where blanks separate', () => {
    const tag: Column = { column: 'Tag', field: 'tag' };
    const { text } = write([hole({ id: 'A 1' }), hole({ tag: 'T' })], {
      table: { separator: 'blanks' },
      columns: [tag, ...columns],
    });
    expect(text).toBe('Tag ID X Y\r\n"" "A 1" 1 2\r\nT A1 1 2\r\n');
  });

  // Cells that begin with = + - @ TAB or CR may run as formulas; numbers begin with - (checks.md F-26, from memory).
  it('guards texts that a spreadsheet would run, and no number', () => {
    const note: Column = { column: 'Remark', field: 'note' };
    const texts = ['=1+1', '+1', '-1', '@a', '\tx', '\rx', `'=1`, `'a`, 'a=1'];
    const { text } = write(
      texts.map((start) => hole({ point: [-1, -2], note: start })),
      { columns: [...columns, note] },
    );
    expect(text.split('\r\n').slice(1, -1)).toEqual([
      `A1,-1,-2,'=1+1`,
      `A1,-1,-2,'+1`,
      `A1,-1,-2,'-1`,
      `A1,-1,-2,'@a`,
      `A1,-1,-2,'\tx`,
      `A1,-1,-2,"'\rx"`,
      `A1,-1,-2,''=1`,
      `A1,-1,-2,'a`,
      'A1,-1,-2,a=1',
    ]);
  });

  it('puts numbered columns at their places and writes preamble and end row as the profile reads them', () => {
    const { text } = write([hole()], {
      table: { skipRows: 2, header: false, end: 'EOF' },
      columns: [
        { column: '#4', field: 'y', unit: 'mm' },
        { column: '#1', field: 'id' },
        { column: '#2', field: 'x', unit: 'mm' },
      ],
    });
    expect(text).toBe('\r\n\r\nA1,1,,2\r\nEOF\r\n');
  });
});

describe('maps and codes of a profile', () => {
  const type: Column = { column: 'Type', field: 'holeType', map: { wedge: 'W10', W: 'W10', sleeve: 'C50' } };
  const codes: ColumnProfile['codes'] = {
    column: 'Code',
    map: {
      HGR: { trade: 'FP', holeType: 'W10', axis: [0, 0, 1] },
      HNG: { trade: 'FP', holeType: 'W10', axis: [0, 0, 1] },
      SLV: { trade: 'EL', holeType: 'C50' },
    },
  };
  const up = { axis: [0, 0, 1] } satisfies Partial<Hole>;

  it('are turned round: the first text that means the value, a loss where none does', () => {
    const { text, losses } = write([hole(), hole({ holeType: 'C50' }), hole({ holeType: 'X' })], {
      columns: [...columns, type],
      constants: { trade: 'FP' },
    });
    expect(text).toBe('ID,X,Y,Type\r\nA1,1,2,wedge\r\nA1,1,2,sleeve\r\nA1,1,2,\r\n');
    expect(losses).toEqual([
      { field: 'holes/holeType', count: 1, reason: 'the map of column "Type" has no text for it', recoverable: false },
    ]);
  });

  it('give each hole the code that stands for all its members, its own code before others', () => {
    const { text, losses } = write(
      [hole(up), hole({ ...up, origin: { row: 3, code: 'HNG' } }), hole({ trade: 'EL', holeType: 'C50' })],
      { codes, constants: undefined },
    );
    expect(text).toBe('ID,X,Y,Code\r\nA1,1,2,HGR\r\nA1,1,2,HNG\r\nA1,1,2,SLV\r\n');
    expect(losses).toEqual([]);
  });

  it('leave to a column what has a column of its own', () => {
    const { text, losses } = write([hole({ trade: 'PL', ...up }), hole({ trade: 'PL', holeType: 'C50' })], {
      columns: [...columns, { column: 'Trade', field: 'trade' }],
      codes,
      constants: undefined,
    });
    expect(text).toBe('ID,X,Y,Trade,Code\r\nA1,1,2,PL,HGR\r\nA1,1,2,PL,SLV\r\n');
    expect(losses).toEqual([]);
  });

  it('may be read from the column of a field, and a column may hold two fields that agree', () => {
    const { text, losses } = write(
      [hole({ tag: 'A1', holeType: 'W10', ...up, group: 'HGR' }), hole({ tag: 'T', ...up, group: 'X' })],
      {
        columns: [...columns, { column: 'ID', field: 'tag' }, { column: 'Code', field: 'group' }],
        codes,
        constants: undefined,
      },
    );
    expect(text).toBe('ID,X,Y,Code\r\nA1,1,2,HGR\r\nA1,1,2,X\r\n');
    expect(counts(losses)).toEqual([
      ['holes/tag', 1],
      ['holes/trade', 1],
      ['holes/holeType', 1],
      ['holes/axis', 1],
      ['holes', 1],
    ]);
  });

  it('count what no code stands for, and that such a row cannot be read again', () => {
    const { text, losses } = write([hole({ trade: 'EL', ...up }), hole()], { codes, constants: undefined });
    expect(text).toBe('ID,X,Y,Code\r\nA1,1,2,\r\nA1,1,2,\r\n');
    expect(counts(losses)).toEqual([
      ['holes/trade', 2],
      ['holes/holeType', 2],
      ['holes/axis', 1],
      ['holes', 2],
    ]);
  });

  it('write a value that the row filter lets through', () => {
    const kept = write([hole()], { rows: { column: 'Kind', keep: ['a', 'b'], drop: ['a'] } });
    expect(kept.text).toBe('ID,X,Y,Kind\r\nA1,1,2,b\r\n');
    const dropped = write([hole()], { rows: { column: 'Kind', drop: ['CTRL', ''] } });
    expect(dropped.text).toBe('ID,X,Y,Kind\r\nA1,1,2,hole\r\n');
    const byId = write([hole(), hole({ id: 'CP1' })], { rows: { column: 'ID', drop: ['CP1'] } });
    expect(byId.text).toBe('ID,X,Y\r\nA1,1,2\r\nCP1,1,2\r\n');
    expect(counts(byId.losses)).toEqual([['holes', 1]]);
  });
});

describe('losses of a layout as CSV', () => {
  it('are every member of a hole that neither column nor code nor constant carries, counted', () => {
    const full = hole({
      tag: 'T',
      level: 'L3',
      group: 'G',
      point: [1, 2, 3],
      axis: [0, 0, 1],
      diameter: 12,
      depth: 60,
      positionTolerance: { radius: 5 },
      moveAllowance: { along: 1, across: 1, ask: 'ask-first' },
      origin: { source: 'S', row: 9, element: 'E', code: 'C' },
      note: 'N',
      ext: { 'https://example.org/x': 1 },
    });
    const { losses } = write([full, hole({ trade: 'EL', tag: 'U', origin: { row: 3 } })], {
      constants: { trade: 'FP', holeType: 'W10', level: 'L3' },
    });
    expect(counts(losses)).toEqual([
      ['holes/point/z', 1],
      ['holes/tag', 2],
      ['holes/group', 1],
      ['holes/axis', 1],
      ['holes/diameter', 1],
      ['holes/depth', 1],
      ['holes/positionTolerance', 1],
      ['holes/moveAllowance', 1],
      ['holes/origin/source', 1],
      ['holes/origin/row', 1],
      ['holes/origin/element', 1],
      ['holes/origin/code', 1],
      ['holes/note', 1],
      ['holes/ext', 1],
      ['holes/trade', 1],
      ['holes/level', 1],
    ]);
    expect(losses.find(({ field }) => field === 'holes/level')?.reason).toBe(
      'the hole has none, and the row is read as having one',
    );
  });

  it('are the records of the header that the layout of the profile does not have likewise', () => {
    const { losses } = write(
      [],
      {},
      {
        revision: { label: 'B' },
        frame: { heightDatum: 'level 0', name: 'site' },
        trades: [layout.trades[1], { id: 'FP', name: 'Sprinklers' }],
        keepOuts: [{}, {}],
        parties: [],
      },
    );
    expect(counts(losses)).toEqual([
      ['revision', 1],
      ['trades', 1],
      ['keepOuts', 2],
    ]);
  });

  it('name the holes whose row would end the data', () => {
    const { losses } = write([hole({ id: 'EOF' })], { table: { end: 'EOF' } });
    expect(counts(losses)).toEqual([['holes', 1]]);
  });

  it('refuse a length without unit', () => {
    expect(() => write([hole()], { columns: [columns[0], { column: 'X', field: 'x' }, columns[2]] })).toThrow(
      'The column "X" is a length (x) and has no unit.',
    );
  });
});
