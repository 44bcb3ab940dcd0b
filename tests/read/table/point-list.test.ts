import { describe, expect, it } from 'vitest';
import type { Column, ColumnProfile } from '../../../src/generated/column-profile.js';
import { PointListReader } from '../../../src/read/table/point-list.js';
import { plainProfile, readPoints } from './read-points.js';

const { columns } = plainProfile();

describe('a point list', () => {
  it('becomes holes with their members in the order of the schema and every length in millimetres', () => {
    const { holes, rows, columnOf, observations, counts } = readPoints(
      [
        'No,Point,East,North,Elev,Size,Depth,Type,Run,Remark,GUID,AX,AY,AZ',
        `1,007,10'-6 3/8",3.2,100,0.5,2,W,R-1,"near duct, ""B""",0w93,0,0,1`,
        `2,8,-2'-3 1/2",-0.001,, 0.375 ,2.5,W,,,,,,`,
      ].join('\r\n'),
      plainProfile({
        columns: [
          { column: 'Point', field: 'id' },
          { column: 'No', field: 'tag' },
          { column: 'East', field: 'x', unit: 'ft-in' },
          { column: 'North', field: 'y', unit: 'm' },
          { column: 'Elev', field: 'z', unit: 'us-ft' },
          { column: 'Size', field: 'diameter', unit: 'in' },
          { column: 'Depth', field: 'depth', unit: 'in' },
          { column: 'Type', field: 'holeType', map: { W: 'W10' } },
          { column: 'Run', field: 'group' },
          { column: 'Remark', field: 'note' },
          { column: 'GUID', field: 'origin.element' },
          { column: 'AX', field: 'axis.x' },
          { column: 'AY', field: 'axis.y' },
          { column: 'AZ', field: 'axis.z' },
        ],
        constants: { trade: 'FP', level: 'L3' },
      }),
    );
    expect(observations).toEqual([]);
    expect(counts).toEqual({ rows: 2, holes: 2, faulty: 0, leftOut: 0 });
    expect(rows).toEqual([2, 3]);
    expect(JSON.stringify(holes[0])).toBe(
      JSON.stringify({
        id: '007',
        tag: '1',
        trade: 'FP',
        holeType: 'W10',
        level: 'L3',
        group: 'R-1',
        point: [3209.925, 3200, (100 * 1200000) / 3937],
        axis: [0, 0, 1],
        diameter: 12.7,
        depth: 50.8,
        origin: { row: 2, element: '0w93' },
        note: 'near duct, "B"',
      }),
    );
    expect(holes[1]).toEqual({
      id: '8',
      tag: '2',
      trade: 'FP',
      holeType: 'W10',
      level: 'L3',
      point: [-698.5, -1],
      diameter: 9.525,
      depth: 63.5,
      origin: { row: 3 },
    });
    expect(Object.fromEntries(columnOf ?? [])).toEqual({
      '': 2,
      '/id': 2,
      '/tag': 1,
      '/point': 3,
      '/point/0': 3,
      '/point/1': 4,
      '/point/2': 5,
      '/diameter': 6,
      '/depth': 7,
      '/holeType': 8,
      '/group': 9,
      '/note': 10,
      '/origin/element': 11,
      '/axis': 12,
      '/axis/0': 12,
      '/axis/1': 13,
      '/axis/2': 14,
    });
  });

  it('may come in pieces of any size', () => {
    const text = 'ID,X,Y\n"A ""1""",1.25,2\nB,3,4\n';
    const whole = readPoints(text, plainProfile()).holes;
    const ids: string[] = [];
    const reader = new PointListReader(
      plainProfile(),
      ({ id }) => ids.push(id),
      () => {},
    );
    for (const character of text) reader.write(character);
    reader.end();
    expect(ids).toEqual(whole.map(({ id }) => id));
    expect(ids).toEqual(['A "1"', 'B']);
  });

  it('keeps ids as they are written but for blanks around them', () => {
    const { holes } = readPoints('ID,X,Y\n  007 ,1,2\n1E+05,1,2\n1.50,1,2\na b,1,2', plainProfile());
    expect(holes.map(({ id }) => id)).toEqual(['007', '1E+05', '1.50', 'a b']);
  });

  it('finds columns by number, skips the preamble and stops at the end row', () => {
    const profile = plainProfile({
      table: { separator: 'semicolon', decimal: 'comma', skipRows: 3, header: false, end: 'END' },
      columns: [
        { column: '#2', field: 'id' },
        { column: '#3', field: 'x', unit: 'cm' },
        { column: '#4', field: 'y', unit: 'cm' },
      ],
    });
    const { holes, observations, counts } = readPoints('list 7\n\n"a;b"\n1;A;1,5;2\nEND\n2;B;3;4\nx\n', profile);
    expect(holes).toEqual([{ id: 'A', trade: 'FP', holeType: 'W10', point: [15, 20], origin: { row: 4 } }]);
    expect(counts).toEqual({ rows: 3, holes: 1, faulty: 0, leftOut: 2 });
    expect(observations).toEqual([
      {
        rule: 'rows-left-out',
        at: { row: 6 },
        data: { total: 2, reasons: [{ reason: 'after-end', value: undefined, count: 2, firstRow: 6 }] },
        cause: 'rows-left-out',
        severity: 'info',
      },
    ]);
  });

  it('warns where the end row never comes, for the list may be cut', () => {
    const { holes, observations } = readPoints('ID,X,Y\nA,1,2\n', plainProfile({ table: { end: 'EOF' } }));
    expect(holes).toHaveLength(1);
    expect(observations).toMatchObject([
      { rule: 'profile-unfit', severity: 'warning', data: { member: '/table/end' } },
    ]);
  });

  it('says which column is missing and what its name may be', () => {
    const { holes, observations, counts } = readPoints(
      'Id,Y,Y,Xx\nA,1,2,3\nB,1,2,3\n',
      plainProfile({ rows: { column: 'Kind', keep: ['H'] } }),
    );
    expect(holes).toEqual([]);
    expect(counts).toEqual({ rows: 2, holes: 0, faulty: 2, leftOut: 0 });
    const header = ['Id', 'Y', 'Y', 'Xx'];
    expect(observations).toEqual([
      {
        rule: 'column-missing',
        at: { row: 1 },
        data: { column: 'ID', header, columns: 4, nearest: 'Id' },
        cause: 'ID',
      },
      { rule: 'column-missing', at: { row: 1 }, data: { column: 'X', header, columns: 4, nearest: 'Xx' }, cause: 'X' },
      {
        rule: 'column-missing',
        at: { row: 1, column: 3 },
        data: { column: 'Y', header, columns: 4, foundAt: [2, 3] },
        cause: 'Y',
      },
      { rule: 'column-missing', at: { row: 1 }, data: { column: 'Kind', header, columns: 4 }, cause: 'Kind' },
    ]);
  });

  it('says once that there is no header at all', () => {
    const { observations } = readPoints('', plainProfile());
    expect(observations.map(({ rule, data }) => [rule, data.column])).toEqual([['column-missing', 'ID']]);
  });

  it('drops a row with too few or too many cells, but not one with empty cells beyond the last column', () => {
    const { holes, observations, counts } = readPoints('ID,X,Y,\nA,1\nB,1,2,,\nC,1,2,3\nD,1,2\n', plainProfile());
    expect(holes.map(({ id }) => id)).toEqual(['B', 'D']);
    expect(counts).toEqual({ rows: 4, holes: 2, faulty: 2, leftOut: 0 });
    expect(observations).toEqual([
      {
        rule: 'row-length',
        at: { row: 2, column: 3 },
        data: { what: 'cells', expected: 3, found: 2 },
        cause: '2 cells',
      },
      {
        rule: 'row-length',
        at: { row: 4, column: 4 },
        data: { what: 'cells', expected: 3, found: 4 },
        cause: '4 cells',
      },
    ]);
  });

  it('says what an unreadable cell should be, and gives the same fault in many rows one cause', () => {
    const lines = ['A,1 mm,2', 'B,"1,5",n/a', ...Array.from({ length: 100 }, (_, index) => `C${index},${index}x,2`)];
    const { holes, observations, counts } = readPoints(`ID,X,Y\n${lines.join('\n')}`, plainProfile());
    expect(holes).toEqual([]);
    expect(counts.faulty).toBe(102);
    expect(observations).toHaveLength(103);
    const expected = 'a plain number with a decimal point, without unit or thousands signs';
    expect(observations[0]).toEqual({
      rule: 'cell-unreadable',
      at: { row: 2, column: 2 },
      data: { column: 'X', expected, found: '1 mm' },
      cause: `X: ${expected}`,
    });
    expect(new Set(observations.map(({ cause }) => cause))).toEqual(new Set([`X: ${expected}`, `Y: ${expected}`]));
  });

  it('warns of a character that was lost and keeps the hole', () => {
    const { holes, observations } = readPoints('ID,X,Y\nT\uFFFDr 1,1,2\n', plainProfile());
    expect(holes.map(({ id }) => id)).toEqual(['T\uFFFDr 1']);
    expect(observations).toMatchObject([
      { rule: 'cell-unreadable', severity: 'warning', at: { row: 2, column: 1 }, data: { found: 'T\uFFFDr 1' } },
    ]);
  });

  it('tells an empty cell that is needed from one that may be empty', () => {
    const more: Column[] = [
      { column: 'D', field: 'diameter', unit: 'mm' },
      { column: 'H', field: 'depth', unit: 'mm', optional: true },
      { column: 'Area', field: 'area', optional: false },
      { column: 'Type', field: 'holeType' },
    ];
    const { holes, observations } = readPoints(
      'ID,X,Y,D,H,Area,Type\nA,1,2,,,a,W\n ,1,,5,6,,W\nB,1,2,3,,a,\n',
      plainProfile({ columns: [...columns, ...more], constants: { trade: 'FP' } }),
    );
    expect(holes).toEqual([]);
    expect(observations.map(({ rule, at, cause }) => [rule, at.row, at.column, cause])).toEqual([
      ['cell-empty', 2, 4, 'D'],
      ['cell-empty', 3, 1, 'ID'],
      ['cell-empty', 3, 3, 'Y'],
      ['cell-empty', 3, 6, 'Area'],
      ['cell-empty', 4, 7, 'Type'],
    ]);
  });

  it('wants all components of an axis or none', () => {
    const axis: Column[] = (['x', 'y', 'z'] as const).map((name) => ({ column: `A${name}`, field: `axis.${name}` }));
    const { holes, observations } = readPoints(
      'ID,X,Y,Ax,Ay,Az\nA,1,2,0,,1\nB,1,2,,,\nC,1,2,0,0,-1\n',
      plainProfile({
        columns: [...columns, ...axis],
        constants: { trade: 'FP', holeType: 'W10', axis: [0, 0, 1] },
      }),
    );
    expect(holes.map(({ id, axis: direction }) => [id, direction])).toEqual([
      ['B', [0, 0, 1]],
      ['C', [0, 0, -1]],
    ]);
    expect(observations).toMatchObject([{ rule: 'cell-empty', at: { row: 2, column: 5 } }]);
  });
});

describe('codes and filters of a point list', () => {
  const coded: ColumnProfile = plainProfile({
    rows: { column: 'Kind', keep: ['H'] },
    codes: {
      column: 'Code',
      map: {
        'HGR-3/8-FP': { trade: 'FP', holeType: 'W10', axis: [0, 0, 1] },
        'SLV-EL': { trade: 'EL', holeType: 'C50' },
      },
    },
    constants: { level: 'L3', trade: 'XX' },
  });
  const list = [
    'ID,X,Y,Kind,Code',
    'A,1,2,H,HGR-3/8-FP',
    'CP1,1,2,CTRL,',
    'B,1,2,H,SLV-EL',
    'C,1,2,H,HGR-1/2-FP',
    'D,1,2,H,HGR-1/2-FP',
    'CP2,1,2,CTRL,',
    'E,1,2,H,',
    ',,,,',
    'K,1,2,CHK,X',
  ].join('\n');

  it('turn a code into members, before the constants', () => {
    const { holes, columnOf } = readPoints(list, coded);
    expect(holes).toEqual([
      {
        id: 'A',
        trade: 'FP',
        holeType: 'W10',
        level: 'L3',
        point: [1, 2],
        axis: [0, 0, 1],
        origin: { row: 2, code: 'HGR-3/8-FP' },
      },
      { id: 'B', trade: 'EL', holeType: 'C50', level: 'L3', point: [1, 2], origin: { row: 4, code: 'SLV-EL' } },
    ]);
    expect(columnOf?.get('/trade')).toBe(5);
    expect(columnOf?.get('/axis')).toBe(5);
  });

  it('report each row with an unmapped code, one cause a code, and count what the filter left out', () => {
    const { observations, counts } = readPoints(list, coded);
    expect(counts).toEqual({ rows: 9, holes: 2, faulty: 3, leftOut: 4 });
    expect(observations.map(({ rule, at, cause, severity }) => [rule, at.row, at.column, cause, severity])).toEqual([
      ['code-unmapped', 5, 5, 'Code=HGR-1/2-FP', undefined],
      ['code-unmapped', 6, 5, 'Code=HGR-1/2-FP', undefined],
      ['code-unmapped', 8, 5, 'Code=', undefined],
      ['rows-left-out', 3, undefined, 'rows-left-out', 'info'],
    ]);
    expect(observations[3].data).toEqual({
      total: 4,
      reasons: [
        { reason: 'filter', value: 'CTRL', count: 2, firstRow: 3 },
        { reason: 'empty', value: undefined, count: 1, firstRow: 9 },
        { reason: 'filter', value: 'CHK', count: 1, firstRow: 10 },
      ],
    });
  });

  it('leave out and count unmapped codes where the profile says so', () => {
    const codes = coded.codes && { ...coded.codes, unmapped: 'leave-out' as const };
    const { observations, counts } = readPoints(list, { ...coded, codes });
    expect(counts).toEqual({ rows: 9, holes: 2, faulty: 0, leftOut: 7 });
    expect(observations).toMatchObject([
      { rule: 'code-unmapped', severity: 'info', at: { row: 5 }, data: { code: 'HGR-1/2-FP', count: 2 } },
      { rule: 'code-unmapped', severity: 'info', at: { row: 8 }, data: { code: '', count: 1 } },
      { rule: 'rows-left-out', data: { total: 7 } },
    ]);
  });

  it('drop the rows that the filter names and no others', () => {
    const profile = plainProfile({ rows: { column: 'Kind', drop: ['CTRL', ''] } });
    const { holes } = readPoints('ID,X,Y,Kind\nA,1,2,H\nB,1,2,CTRL\nC,1,2,\nD,1,2,ctrl\n', profile);
    expect(holes.map(({ id }) => id)).toEqual(['A', 'D']);
  });

  it('list at most a hundred values that were left out, and count the rest', () => {
    const lines = Array.from({ length: 130 }, (_, index) => `${index},1,2,k${index}`);
    const profile = plainProfile({ rows: { column: 'Kind', keep: ['H'] } });
    const { observations } = readPoints(`ID,X,Y,Kind\n${lines.join('\n')}`, profile);
    const { total, reasons } = observations[0].data as { total: number; reasons: { reason: string; count: number }[] };
    expect(total).toBe(130);
    expect(reasons).toHaveLength(101);
    expect(reasons[100]).toMatchObject({ reason: 'others', count: 30 });
  });

  it('give a value that the map of a column lacks one cause', () => {
    const area: Column = { column: 'Area', field: 'area', map: { N: 'north', '-': '' } };
    const { holes, observations } = readPoints(
      'ID,X,Y,Area\nA,1,2,N\nB,1,2,S\nC,1,2,-\nD,1,2,\n',
      plainProfile({ columns: [...columns, area] }),
    );
    expect(holes.map(({ id, area: value }) => [id, value])).toEqual([
      ['A', 'north'],
      ['C', undefined],
      ['D', undefined],
    ]);
    expect(observations).toEqual([
      { rule: 'code-unmapped', at: { row: 3, column: 4 }, data: { column: 'Area', code: 'S' }, cause: 'Area=S' },
    ]);
  });
});

describe('heights of a point list', () => {
  const z: Column = { column: 'Z', field: 'z', unit: 'mm' };
  const level: Column = { column: 'Level', field: 'level' };
  const layout = {
    levels: [
      { id: 'L1', name: 'Level 1', finishedFloor: 100.1, structuralTop: 50, soffits: [3000.3] },
      { id: 'L2', name: 'Level 2', structuralTop: 4000, soffits: [7000, 7200] },
    ],
  };
  const list = 'ID,X,Y,Z,Level\nA,1,2,0.2,L1\nB,1,2,5,L2\nC,1,2,,L9\nD,1,2,5,\n';

  it.each([
    ['datum', [0.2, 5, undefined, 5]],
    ['finished-floor', [100.3, undefined]],
    ['structural-top', [50.2, 4005, undefined]],
    ['soffit-down', [3000.1, undefined]],
  ] as const)('are turned into z when they are measured from %s', (height, expected) => {
    const { holes } = readPoints(list, plainProfile({ height, columns: [...columns, z, level], layout }));
    expect(holes.map(({ point }) => point[2])).toEqual(expected);
  });

  it('need a level with that height, and say so with the row', () => {
    const { observations, counts } = readPoints(
      list,
      plainProfile({ height: 'soffit-down', columns: [...columns, z, level], layout }),
    );
    expect(counts).toEqual({ rows: 4, holes: 2, faulty: 2, leftOut: 0 });
    const expected = 'a level with exactly one height in soffits in the layout of the profile';
    expect(observations).toEqual([
      {
        rule: 'cell-unreadable',
        at: { row: 3, column: 5 },
        data: { column: 'Level', expected, found: 'L2' },
        cause: `Level: ${expected}: L2`,
      },
      { rule: 'cell-empty', at: { row: 5, column: 5 }, data: { column: 'Level' }, cause: 'Level' },
    ]);
  });
});

describe('an unfit profile', () => {
  const z: Column = { column: 'Z', field: 'z', unit: 'mm' };
  const cases: [string, Partial<ColumnProfile>, [string, string][]][] = [
    [
      'a length without unit',
      { columns: [columns[0], { column: 'X', field: 'x' }, columns[2]] },
      [['/columns/1', 'The column "X" is a length (x) and has no unit.']],
    ],
    [
      'two columns for one field',
      { columns: [...columns, { column: 'Nr', field: 'id' }] },
      [['/columns/3', 'The columns "ID" and "Nr" are both id.']],
    ],
    [
      'no id, x or y',
      { columns: [z] },
      [
        ['/columns', 'No column is the id.'],
        ['/columns', 'No column is the x.'],
        ['/columns', 'No column is the y.'],
      ],
    ],
    [
      'a piece of an axis',
      { columns: [...columns, { column: 'A', field: 'axis.z' }] },
      [['/columns', 'The axis has no column for axis.x and axis.y.']],
    ],
    [
      'nothing that gives trade and hole type',
      { constants: undefined },
      [
        ['', 'Nothing gives the trade of a hole.'],
        ['', 'Nothing gives the hole type of a hole.'],
      ],
    ],
    [
      'a code without hole type',
      { constants: { trade: 'FP' }, codes: { column: 'C', map: { 'a/b': { level: 'L1' }, c: { holeType: 'W10' } } } },
      [['/codes/map/a~1b', 'Nothing gives the hole type of a hole with code "a/b".']],
    ],
    [
      'a level for a height reference that the layout does not define',
      {
        height: 'finished-floor',
        columns: [...columns, z],
        constants: { trade: 'FP', holeType: 'W10', level: 'L1' },
        layout: { levels: [{ id: 'L1', name: 'Level 1', structuralTop: 0 }] },
      },
      [
        [
          '/constants',
          'Heights from finished-floor need a level with finishedFloor in the layout of the profile; "L1" is none.',
        ],
      ],
    ],
    [
      'a height reference without any level',
      { height: 'soffit-down', columns: [...columns, z] },
      [['/height', 'Heights from soffit-down need a level, and nothing gives one.']],
    ],
    [
      'a comma for two things',
      { table: { decimal: 'comma' } },
      [['/table/decimal', 'The comma cannot be decimal sign and separator at once.']],
    ],
    [
      'names without a header',
      { table: { header: false }, rows: { column: 'K', drop: ['x'] } },
      ['ID', 'X', 'Y', 'K'].map((name, index) => [
        index < 3 ? `/columns/${index}/column` : '/rows/column',
        `Without a header the column "${name}" must be given by number, such as #1.`,
      ]),
    ],
    [
      'a map on a number',
      { columns: [columns[0], columns[1], { ...columns[2], map: { a: '1' } }] },
      [['/columns/2/map', 'The column "Y" (y) is a number and cannot have a map.']],
    ],
  ];

  it.each(cases)('has %s: it is refused and no row is read', (_, changes, faults) => {
    const { holes, observations, counts } = readPoints('ID,X,Y,Z\nA,1,2,3\n', plainProfile(changes));
    expect(observations.map(({ rule, data }) => [rule, data.member, data.problem])).toEqual(
      faults.map((fault) => ['profile-unfit', ...fault]),
    );
    expect(holes).toEqual([]);
    expect(counts).toEqual({ rows: 0, holes: 0, faulty: 0, leftOut: 0 });
  });

  it('is read where only something in it has no meaning', () => {
    const { holes, observations } = readPoints(
      'ID,X,Y\nA,1,2\n',
      plainProfile({ columns: [{ ...columns[0], unit: 'mm' }, columns[1], columns[2]], rows: { column: 'ID' } }),
    );
    expect(holes).toHaveLength(1);
    expect(observations.map(({ rule, severity, data }) => [rule, severity, data.member])).toEqual([
      ['profile-unfit', 'warning', '/rows'],
      ['profile-unfit', 'warning', '/columns/0/unit'],
    ]);
  });
});
