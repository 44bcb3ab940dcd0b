import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Observation } from '../../../src/model/observation.js';
import { type Separator, TableReader } from '../../../src/read/table/table-reader.js';

interface Reading {
  rows: [number, string[]][];
  observations: Observation[];
  reader: TableReader;
}

function read(pieces: string | string[], separator: Separator = 'comma'): Reading {
  const rows: [number, string[]][] = [];
  const observations: Observation[] = [];
  const reader = new TableReader(
    separator,
    (cells, row) => rows.push([row, cells]),
    (observation) => observations.push(observation),
  );
  for (const piece of typeof pieces === 'string' ? [pieces] : pieces) reader.write(piece);
  reader.end();
  return { rows, observations, reader };
}

function cells(text: string, separator: Separator = 'comma'): string[][] {
  return read(text, separator).rows.map(([, row]) => row);
}

describe('the table reader', () => {
  // RFC 4180, section 2, points 1 to 7: texts after its examples.
  it.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('reads %j as RFC 4180 says', (text, expected) => {
    expect(cells(text)).toEqual(expected);
  });

  // Published fixtures "newlines" and "quotes_and_newlines" (checks.md F-06).
  it('keeps line ends and doubled quotes inside quotes', () => {
    expect(cells('a,b,c\n1,2,3\n"Once upon \na time",5,6\n7,8,9\n')[2][0]).toBe('Once upon \na time');
    expect(cells('a,b\n1,"ha \n""ha"" \nha"\n3,4\n')[1]).toEqual(['1', 'ha \n"ha" \nha']);
  });

  // A published fixture has the bytes EF BF BD in a cell (checks.md F-06).
  it('hands on the replacement character as it stands', () => {
    expect(cells('a,20.\uFFFD\n')).toEqual([['a', '20.\uFFFD']]);
  });

  it('counts rows as a spreadsheet does: blank lines count, line ends in quotes do not', () => {
    const { rows } = read('id,x\r\n\r\n1,2\r\n"a\r\nb",3\r\n   \r\n2,5\r\n');
    expect(rows).toEqual([
      [1, ['id', 'x']],
      [3, ['1', '2']],
      [4, ['a\r\nb', '3']],
      [6, ['2', '5']],
    ]);
  });

  it.each(['\n', '\r\n', '\r'])('ends rows at %j', (end) => {
    expect(read(['a,b', '1,"2"', '', '3,4'].join(end)).rows).toEqual([
      [1, ['a', 'b']],
      [2, ['1', '2']],
      [4, ['3', '4']],
    ]);
  });

  it('ends rows at line ends of several kinds in one text', () => {
    expect(read('a\rb\nc\r\nd\r\re').rows).toEqual([
      [1, ['a']],
      [2, ['b']],
      [3, ['c']],
      [4, ['d']],
      [6, ['e']],
    ]);
  });

  it('skips one byte order mark at the start and no other', () => {
    expect(cells('\uFEFFid,x\n\uFEFF1,2')).toEqual([
      ['id', 'x'],
      ['\uFEFF1', '2'],
    ]);
    expect(read(['\uFEFF', '"id",x\n']).rows).toEqual([[1, ['id', 'x']]]);
  });

  it.each([
    ['semicolon', 'a;1,5;"x;y"', ['a', '1,5', 'x;y']],
    ['tab', 'a\t1 2\t\tb', ['a', '1 2', '', 'b']],
    ['blanks', '  1 \t288   149  ', ['1', '288', '149']],
    ['blanks', ' "a b"  "" c ', ['a b', '', 'c']],
  ] as const)('cuts at %s', (separator, text, expected) => {
    expect(cells(text, separator)).toEqual([expected]);
  });

  it('keeps empty cells at the start, between and at the end', () => {
    expect(cells(',,a,,\n"",b,""\n')).toEqual([
      ['', '', 'a', '', ''],
      ['', 'b', ''],
    ]);
  });

  it('takes a quote inside a cell as an inch mark', () => {
    expect(cells(`H-1,10'-6 3/8",8'-0"\n`)).toEqual([['H-1', `10'-6 3/8"`, `8'-0"`]]);
  });

  it('keeps blanks around cells', () => {
    expect(cells(' a , b \n')).toEqual([[' a ', ' b ']]);
  });

  it('says where a quote was opened that never closes, and how many lines it swallowed', () => {
    const { rows, observations, reader } = read('id,note\n1,a\n2,"b\n3,c\n4,d\n');
    expect(rows).toEqual([
      [1, ['id', 'note']],
      [2, ['1', 'a']],
    ]);
    expect(observations).toEqual([
      {
        rule: 'quote-not-closed',
        at: { row: 3, column: 2 },
        data: { found: 'b…', linesInside: 3 },
        cause: 'quote-not-closed',
      },
    ]);
    expect(reader.faultyRows).toBe(1);
  });

  it('reports text after a closing quote, drops the row and reads on', () => {
    const { rows, observations, reader } = read(`"10'-6" 3/8,5\n1,2\n`);
    expect(rows).toEqual([[2, ['1', '2']]]);
    expect(observations).toEqual([
      {
        rule: 'cell-unreadable',
        at: { row: 1, column: 1 },
        data: {
          expected: 'followed by a separator or the end of the row behind its closing quote',
          found: `10'-6 3/8`,
        },
        cause: 'text-after-quote',
      },
    ]);
    expect(reader.faultyRows).toBe(1);
  });

  it('stops at a row of more than 1,000,000 cells', () => {
    const { rows, observations } = read(['a\n', ...Array(11).fill('1,'.repeat(100_000)), '\nb\n']);
    expect(rows).toEqual([[1, ['a']]]);
    expect(observations).toEqual([
      {
        rule: 'row-length',
        at: { row: 2, column: 1_000_001 },
        data: { what: 'cells', expected: 1_000_000, found: 1_000_001, limit: true },
        cause: 'too-many-cells',
      },
    ]);
  });

  it('reads a row of exactly 1,000,000 cells', () => {
    const { rows, observations } = read(`${','.repeat(999_999)}\nb\n`);
    expect(rows.map(([row, row_]) => [row, row_.length])).toEqual([
      [1, 1_000_000],
      [2, 1],
    ]);
    expect(observations).toEqual([]);
  });

  it('stops at a cell of more than 10,000,000 characters, quoted or not', () => {
    for (const quote of ['', '"']) {
      const { rows, observations } = read(['a\n', `b,${quote}`, ...Array(11).fill('x'.repeat(1_000_000)), '\nc\n']);
      expect(rows).toEqual([[1, ['a']]]);
      expect(observations).toHaveLength(1);
      expect(observations[0]).toMatchObject({
        rule: 'row-length',
        at: { row: 2, column: 2 },
        data: { what: 'characters in a cell', expected: 10_000_000, found: 11_000_000 },
      });
    }
  });

  it('reads the same rows however the text is cut into pieces', () => {
    const piece = fc.constantFrom('a', '1', ',', ';', '"', '""', '\n', '\r', '\r\n', ' ', '\t', '\uFEFF');
    const text = fc.array(piece, { maxLength: 40 }).map((parts) => parts.join(''));
    const cuts = fc.array(fc.nat(60), { maxLength: 6 });
    const separator = fc.constantFrom<Separator[]>('comma', 'semicolon', 'tab', 'blanks');
    fc.assert(
      fc.property(text, cuts, separator, (whole, places, name) => {
        const sorted = [...places, 0, whole.length].filter((at) => at <= whole.length).sort((a, b) => a - b);
        const pieces = sorted.slice(1).map((at, index) => whole.slice(sorted[index], at));
        const [one, many] = [read(whole, name), read(pieces, name)];
        expect(many.rows).toEqual(one.rows);
        expect(many.observations).toEqual(one.observations);
      }),
      { numRuns: 1000 },
    );
  });

  it('reads back every table that is quoted after RFC 4180', () => {
    const cell = fc.string({
      unit: fc.constantFrom('a', '7', ' ', ',', ';', '"', '\n', '\r', '\t', "'"),
      maxLength: 6,
    });
    const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 });
    const end = fc.constantFrom('\n', '\r\n', '\r');
    fc.assert(
      fc.property(table, end, (rows, lineEnd) => {
        const quoted = rows.map((row) => row.map((text) => `"${text.replaceAll('"', '""')}"`).join(','));
        expect(cells(quoted.join(lineEnd))).toEqual(rows);
      }),
      { numRuns: 300 },
    );
  });
});
