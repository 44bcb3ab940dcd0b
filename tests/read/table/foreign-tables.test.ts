import { describe, expect, it } from 'vitest';
import { cellUnreadable } from '../../../src/check/rules/cell-unreadable.js';
import type { ColumnProfile } from '../../../src/generated/column-profile.js';
import type { Hole } from '../../../src/generated/layout.js';
import type { Observation } from '../../../src/model/observation.js';
import { checkProfile } from '../../../src/read/table/check-profile.js';
import { PointListReader } from '../../../src/read/table/point-list.js';
import { UnreadCells } from '../../../src/read/table/unread-cells.js';

/** Invented. */
const profile: ColumnProfile = {
  ahx: '0.1',
  kind: 'column-profile',
  columns: [
    { column: 'Point No', field: 'id' },
    { column: 'East', field: 'x', unit: 'mm' },
    { column: 'North', field: 'y', unit: 'ft-in' },
  ],
  constants: { trade: 'FP', holeType: 'T' },
};
const header = 'Point No,East,North\n';

function read(text: string, changes: Partial<ColumnProfile> = {}) {
  const holes: Hole[] = [];
  const found: Observation[] = [];
  const unread = new UnreadCells();
  const list = new PointListReader(
    { ...profile, ...changes },
    (hole) => holes.push(hole),
    (observation) => found.push(observation),
    unread,
  );
  list.write(text);
  const counts = list.end();
  return { holes, found, counts, unread };
}

describe('a table with another separator', () => {
  it.each([
    [';', 'a semicolon'],
    ['\t', 'a tab'],
  ])('%j is told once, with the separator that it seems to have', (sign, words) => {
    const { found, holes } = read(`${header}1,2,0\n`.replaceAll(',', sign));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      rule: 'profile-unfit',
      data: {
        member: '/table/separator',
        problem: `Only one column was found; the separator seems to be ${words}.`,
      },
    });
    expect(holes).toEqual([]);
  });

  it('is told so of a comma and of blanks too', () => {
    const semicolon = { table: { separator: 'semicolon' as const } };
    expect(read(header, semicolon).found[0].data.problem).toContain('a comma');
    const columns = [profile.columns[1], profile.columns[2], { column: 'Nr', field: 'id' as const }];
    expect(read('Nr  East North\n', { columns }).found[0].data.problem).toContain('a run of blanks');
  });

  it('is told so by its cells where no name is found', () => {
    expect(read('Nothing;of;it\n').found.map(({ data }) => data.problem)).toEqual([
      'Only one column was found; the separator seems to be a semicolon.',
    ]);
  });

  it.each(['Nothing of it\n', '{"a";"b"}\n', 'Nothing\n'])('is not guessed where nothing separates: %j', (text) => {
    const { found } = read(text);
    expect(found.map(({ rule }) => rule)).toEqual(['column-missing', 'column-missing', 'column-missing']);
  });
});

describe('what is no table', () => {
  it('gives one finding where it is empty, in row 1', () => {
    for (const text of ['', '\n\n', '\ufeff', '  \n']) {
      const { found } = read(text);
      expect(found).toHaveLength(1);
      expect(found[0].rule).toBe('column-missing');
      expect(found[0].at.row).toBeGreaterThanOrEqual(1);
    }
    expect(read('').found[0].at.row).toBe(1);
  });

  const decode = (bytes: Uint8Array) => new TextDecoder('utf-8').decode(bytes);
  const utf16 = Buffer.from(`\ufeff${header}1,2,0\n`, 'utf16le');

  it('is called UTF-16 where it is', () => {
    const cases: [bytes: Buffer, found: string][] = [
      [utf16, 'UTF-16, little-endian'],
      [utf16.subarray(2), 'UTF-16, little-endian'],
      [Buffer.from(utf16).swap16(), 'UTF-16, big-endian'],
      [Buffer.from(utf16.subarray(2)).swap16(), 'UTF-16, big-endian'],
    ];
    for (const [bytes, found] of cases) {
      expect(read(decode(bytes)).found).toEqual([{ rule: 'not-utf8', at: { byte: 0 }, data: { found }, cause: found }]);
    }
  });

  it('is called a packed file where it is one', () => {
    const { found } = read(decode(Buffer.from('PK\x03\x04\x14\x00\x06\x00\x08\x00rest', 'latin1')));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ rule: 'not-utf8', at: { byte: 0 } });
    expect(found[0].data.found).toContain('spreadsheet workbook');
  });

  it('is not said of a single zero, or of zeros only', () => {
    expect(read(`${header}A\0,2,0\n`).found).toEqual([]);
    expect(read('\0'.repeat(500)).found.map(({ rule }) => rule)).not.toContain('not-utf8');
  });
});

describe('a name in the header', () => {
  it('may have no-break spaces for blanks, in table and profile', () => {
    expect(read('Point\u00a0No,East,North\n1,2,0\n').holes).toHaveLength(1);
    const columns = [{ column: 'Point\u00a0No', field: 'id' as const }, ...profile.columns.slice(1)];
    expect(read(`${header}1,2,0\n`, { columns }).holes).toHaveLength(1);
  });
});

describe('an unknown code', () => {
  const codes = { column: 'Code', map: { 'HGR-10': { holeType: 'T' }, 'HGR-12': { holeType: 'T' } } };

  it('comes with the nearest one in every row, and is clipped where it is long', () => {
    const long = 'X'.repeat(100_000);
    const rows = `1,2,0,HRG-10\n2,2,0,HRG-10\n3,2,0,${long}\n`;
    const { found } = read(`Point No,East,North,Code\n${rows}`, { codes });
    expect(found.map(({ data }) => data.nearest)).toEqual(['HGR-10', 'HGR-10', undefined]);
    expect(String(found[2].data.code)).toBe(`${'X'.repeat(79)}…`);
  });
});

describe('a profile', () => {
  it('whose layout holds what the converter writes itself is unfit', () => {
    for (const name of ['ahx', 'kind', 'holes']) {
      expect(checkProfile({ ...profile, layout: { [name]: 'x' } })).toEqual([
        { member: `/layout/${name}`, problem: `The layout of a profile has no member "${name}".` },
      ]);
    }
    expect(checkProfile({ ...profile, layout: { id: 'L' } })).toEqual([]);
  });
});

describe('what is expected of a cell', () => {
  it('reads as a sentence', () => {
    const say = (cell: string) => {
      const [{ data }] = read(`${header}1,2,"${cell.replaceAll('"', '""')}"\n`).found;
      return cellUnreadable.message(data, undefined as never);
    };
    expect(say(`10'-14"`)).toBe('The cell in column "North" must be less than 12 inches beside feet; it is "14".');
    expect(say('12')).toBe('The cell in column "North" must be a length with a foot or inch mark; it is "12".');
    expect(say('32 mm')).toBe(
      'The cell in column "North" must be made of digits, foot and inch marks, a hyphen and a fraction only; it is "32 mm".',
    );
  });
});

describe('cells that no column reads', () => {
  it('are counted by column, with rows before the header', () => {
    const text = 'Job 7\n\nPoint No,East,Remark,North,,Empty\n1,2,wet,0,x,\n2,2,,0,,\n3,2,dry,0,,\n4,bad,dry,0,,\n';
    const { unread, counts } = read(text, { table: { skipRows: 2 } });
    expect(counts).toMatchObject({ holes: 3, faulty: 1 });
    expect(unread.preambleRows).toBe(1);
    expect(unread.columns()).toEqual([
      { column: 'Remark', count: 2 },
      { column: '#5', count: 1 },
    ]);
  });
});
