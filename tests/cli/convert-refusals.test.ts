import { existsSync, linkSync, lstatSync, mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import type { Layout } from '../../src/generated/layout.js';
import { layoutText } from '../jobs/small-layout.js';
import { ahx, sprinkler, sprinklerPoints, sprinklerProfile, survey, surveyProfile, workFolder } from './run-ahx.js';

const { file, path } = workFolder();
const good = file('good.ahx.json', layoutText());
const cannotLink = process.platform === 'win32';
const layout = JSON.parse(layoutText()) as Layout;
const { ahx: version, kind, holes, ...ofProfile } = layout;

/** A profile for the small layout; invented. */
function profileText(changes: Partial<ColumnProfile> = {}): string {
  const profile: ColumnProfile = {
    ahx: '0.1',
    kind: 'column-profile',
    columns: [
      { column: 'Id', field: 'id' },
      { column: 'X', field: 'x', unit: 'mm' },
      { column: 'Y', field: 'y', unit: 'mm' },
    ],
    constants: { trade: layout.trades[0].id, holeType: layout.holeTypes[0].id },
    layout: ofProfile,
    ...changes,
  };
  return JSON.stringify(profile);
}

const profile = file('plain.profile.json', profileText());

describe('an output that is also read', () => {
  it('is refused with and without --force, through links too', () => {
    const before = readFileSync(good, 'utf8');
    const others = [good];
    linkSync(good, path('hard.ahx.json'));
    others.push(path('hard.ahx.json'));
    if (!cannotLink) {
      symlinkSync(good, path('soft.ahx.json'));
      others.push(path('soft.ahx.json'));
    }
    for (const other of others) {
      for (const force of [[], ['--force']]) {
        const { code, err } = ahx(['convert', good, other, ...force]);
        expect([other, force, code]).toEqual([other, force, 2]);
        expect(err).toContain('is read and cannot be written at once');
      }
    }
    expect(ahx(['convert', survey, profile, '-p', profile, '--force', '--to', 'layout']).code).toBe(2);
    expect(readFileSync(good, 'utf8')).toBe(before);
  });
});

describe('an output that is there', () => {
  it.skipIf(cannotLink)('as a link is kept, and its target overwritten with --force', () => {
    mkdirSync(path('deep'));
    file('deep/real.ahx.json', 'old');
    symlinkSync('deep/real.ahx.json', path('link.ahx.json'));
    expect(ahx(['convert', good, path('link.ahx.json')]).code).toBe(2);
    expect(ahx(['convert', good, path('link.ahx.json'), '--force']).code).toBe(0);
    expect(lstatSync(path('link.ahx.json')).isSymbolicLink()).toBe(true);
    expect(JSON.parse(readFileSync(path('deep/real.ahx.json'), 'utf8'))).toEqual(layout);
  });

  it('and no regular file is refused', () => {
    for (const name of [path('.'), ...(existsSync('/dev/null') ? ['/dev/null'] : [])]) {
      for (const force of [[], ['--force']]) {
        const { code, err } = ahx(['convert', good, name, '--to', 'layout', ...force]);
        expect([name, code]).toEqual([name, 2]);
        expect(err).toContain('cannot be written');
      }
    }
  });
});

describe('a row that the profile could not read again', () => {
  const { trade, substrate, axis } = holes[0];
  const two = file(
    'two.ahx.json',
    layoutText({
      trades: [...layout.trades, { id: 'EL', name: 'Electrical' }],
      holes: [
        { ...holes[0], id: 'A' },
        { ...holes[0], id: 'B', trade: 'EL' },
        { ...holes[0], id: 'END' },
        { ...holes[0], id: 'C' },
      ],
    }),
  );
  const strict = file(
    'strict.profile.json',
    profileText({
      table: { end: 'END' },
      codes: { column: 'Code', map: { K: { trade, substrate, axis } } },
      constants: { holeType: layout.holeTypes[0].id },
    }),
  );

  it('keeps the table from being written, with its reason', () => {
    const out = path('refused.csv');
    const { code, err } = ahx(['convert', two, out, '-p', strict]);
    expect(code).toBe(1);
    expect(existsSync(out)).toBe(false);
    expect(err).toContain('because the profile could not read 2 of 4 rows again.');
    expect(err).toContain('1 row, the first of hole B: ');
    expect(err).toContain('1 row, the first of hole END: The profile leaves the row out.');
  });

  it('is left out where that is asked for, and said', () => {
    const out = path('left-out.csv');
    const { code, err } = ahx(['convert', two, out, '-p', strict, '--leave-out-bad-rows']);
    expect(code).toBe(0);
    expect(
      readFileSync(out, 'utf8')
        .split('\r\n')
        .slice(1, 3)
        .map((line) => line.split(',')[0]),
    ).toEqual(['A', 'C']);
    expect(err).toContain('2 holes.');
    expect(err).toContain('the profile cannot read its row again; it was left out as asked: holes (2)');
    const back = ahx(['convert', out, '-', '--to', 'layout', '-p', strict]);
    expect((JSON.parse(back.out) as Layout).holes.map(({ id }) => id)).toEqual(['A', 'C']);
  });
});

describe('what of a table does not travel', () => {
  it('are columns without a name in the profile, rows before the header and rows left out', () => {
    const own = file(
      'own.profile.json',
      profileText({ table: { skipRows: 1 }, rows: { column: 'Kind', drop: ['CTL'] } }),
    );
    const table = file('own.csv', 'Job 7\nId,X,Y,Kind,Remark\nA,1,2,H,wet\nB,500,2,H,\nC,0,0,CTL,\n');
    const { code, err } = ahx(['convert', table, path('own.ahx.json'), '-p', own]);
    expect(code).toBe(0);
    expect(err.slice(err.indexOf('Did not travel'))).toBe(
      [
        'Did not travel:',
        '  no column of the profile reads it: columns/Remark (1)',
        '  they stand before the header: rows (1)',
        '  left out by the profile (1 with "CTL"): rows (1)',
        '',
      ].join('\n'),
    );
    expect(ahx(['convert', table, path('own2.ahx.json'), '-p', own, '--strict']).code).toBe(1);
  });

  it('are bad rows that were left out as asked, counted', () => {
    const { err } = ahx(['convert', survey, path('s.ahx.json'), '-p', surveyProfile, '--leave-out-bad-rows']);
    const rows = readFileSync(survey, 'utf8').trimEnd().split(/\r?\n/).length - 1;
    const kept = (JSON.parse(readFileSync(path('s.ahx.json'), 'utf8')) as Layout).holes.length;
    const bad = Number(/they are bad and were left out as asked: rows \((\d+)\)/.exec(err)?.[1]);
    expect(bad).toBeGreaterThan(0);
    expect(bad + kept).toBeLessThanOrEqual(rows);
  });

  it('is nothing where all of the table travels', () => {
    const table = file('whole.csv', 'Id,X,Y\nA,1,2\n');
    const { code, err } = ahx(['convert', table, path('whole2.ahx.json'), '-p', profile, '--strict']);
    expect(code).toBe(0);
    expect(err).not.toContain('Did not travel');
    expect(err).not.toContain('Warning');
  });

  it('may be all of it, which is a warning', () => {
    const { code, err } = ahx(['convert', file('none.csv', 'Id,X,Y\n'), path('none.ahx.json'), '-p', profile]);
    expect(code).toBe(0);
    expect(err).toContain('0 holes.\nWarning: no hole is in it.\n');
  });

  it('is a line for each reason, and a note where there is no georeference', () => {
    const { err } = ahx(['convert', sprinkler, path('grouped.geojson')]);
    const lines = err.slice(err.indexOf('Did not travel')).trimEnd().split('\n').slice(1, -1);
    const reasons = lines.map((line) => line.slice(0, line.indexOf(':')));
    expect(new Set(reasons).size).toBe(reasons.length);
    expect(err.trimEnd()).toMatch(/\nEvery "geometry" is null, because the layout has no georeference;[^\n]*$/);
  });
});

describe('the advice to leave out bad rows', () => {
  it('is given for faults of rows, and for no others', () => {
    const advised = (name: string, own = profile) => {
      const { code, err } = ahx(['convert', name, path('never.ahx.json'), '-p', own]);
      expect([name, code, existsSync(path('never.ahx.json'))]).toEqual([name, 1, false]);
      return err.includes('--leave-out-bad-rows');
    };
    expect(advised(file('bad-row.csv', 'Id,X,Y\nA,1,2\nB,x,2\n'))).toBe(true);
    expect(advised(file('no-column.csv', 'Id,X\nA,1\n'))).toBe(false);
    expect(advised(file('empty.csv', ''))).toBe(false);
    expect(advised(file('utf16.csv', Buffer.from('Id,X,Y\nA,1,2\n', 'utf16le')))).toBe(false);
    expect(advised(file('semicolon.csv', 'Id;X;Y\nA;1;2\n'))).toBe(false);
    expect(advised(sprinklerPoints)).toBe(false);
    expect(advised(file('both.csv', 'Id,X,Y\nA,1,2\nB,x,2\nA,500,2\n'))).toBe(false);
  });
});

describe('GeoJSON as an input', () => {
  it('is told by name', () => {
    expect(ahx(['convert', sprinkler, path('in.geojson')]).code).toBe(0);
    const { code, err } = ahx(['convert', path('in.geojson'), path('never.ahx.json')]);
    expect(code).toBe(1);
    expect(err).toBe(
      `Nothing was written: ${path('in.geojson')} cannot be converted because it is GeoJSON; reading it is not supported yet.\n`,
    );
    const piped = ahx(['convert', '-', '-', '--to', 'layout'], { input: readFileSync(path('in.geojson')) });
    expect([piped.code, piped.out]).toEqual([1, '']);
    expect(piped.err).toContain('it is GeoJSON');
  });
});

describe('a profile on standard input', () => {
  it('is read where no input comes from there', () => {
    const { code, out } = ahx(['convert', sprinklerPoints, '-', '--to', 'layout', '-p', '-'], {
      input: readFileSync(sprinklerProfile),
    });
    expect(code).toBe(0);
    expect((JSON.parse(out) as Layout).holes).toHaveLength(36);
    const clash = ahx(['convert', '-', '-', '--to', 'layout', '-p', '-'], { input: readFileSync(sprinklerProfile) });
    expect([clash.code, clash.out]).toEqual([2, '']);
  });
});

describe('the help of convert', () => {
  it('lists the exit codes and says what --force does to a link', () => {
    const { out } = ahx(['convert', '--help']);
    expect(out).toContain('Exit codes: 0 converted, 1 ');
    expect(out).toContain('a symbolic link stays and its target is overwritten');
  });
});
