import { chmodSync, closeSync, existsSync, mkdirSync, openSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/generated/layout.js';
import { layoutText } from '../jobs/small-layout.js';
import { rfc7946Faults } from '../write/rfc7946.js';
import {
  ahx,
  command,
  example,
  poor,
  sprinkler,
  sprinklerPoints,
  sprinklerProfile,
  survey,
  surveyProfile,
  workFolder,
} from './run-ahx.js';

const { file, path } = workFolder();
const good = file('good.ahx.json', layoutText());

function json(name: string): unknown {
  return JSON.parse(readFileSync(name, 'utf8'));
}

/** Names in the folder of a file that begin with a dot: what a broken-off writing leaves behind. */
function leftovers(name: string): string[] {
  return readdirSync(dirname(name)).filter((entry) => entry.startsWith('.'));
}

describe('a table and a layout', () => {
  it('turn into each other: the list of the example gives its layout', () => {
    const out = path('sprinkler.ahx.json');
    const { code, err } = ahx(['convert', sprinklerPoints, out, '--profile', sprinklerProfile]);
    expect(code).toBe(0);
    expect(err).toContain('36 holes.');
    expect(json(out)).toEqual(json(sprinkler));
  });

  it('come back the same from the other form', () => {
    const [table, layout] = [path('there.csv'), path('back.ahx.json')];
    expect(ahx(['convert', sprinkler, table, '-p', sprinklerProfile]).code).toBe(0);
    expect(ahx(['convert', table, layout, '-p', sprinklerProfile]).code).toBe(0);
    const rowless = ({ holes, ...rest }: Layout) => ({
      ...rest,
      holes: holes.map(({ origin, ...hole }) => ({ ...hole, code: origin?.code })),
    });
    expect(rowless(json(layout) as Layout)).toEqual(rowless(json(sprinkler) as Layout));
  });

  it('are told apart by names, or by --to', () => {
    expect(ahx(['convert', sprinklerPoints, path('unnamed'), '-p', sprinklerProfile, '--to', 'layout']).code).toBe(0);
    expect(json(path('unnamed'))).toEqual(json(sprinkler));
    const { code, err } = ahx(['convert', sprinkler, path('unnamed2')]);
    expect(code).toBe(2);
    expect(err).toContain('say --to layout, --to csv or --to geojson');
    expect(existsSync(path('unnamed2'))).toBe(false);
  });

  it('need a profile', () => {
    expect(ahx(['convert', sprinklerPoints, path('no.ahx.json')])).toMatchObject({ code: 2, out: '' });
    expect(ahx(['convert', sprinkler, path('no.csv')])).toMatchObject({ code: 2, out: '' });
  });
});

describe('GeoJSON', () => {
  it.each([
    ['without a georeference', sprinkler, 36],
    ['with one', example('workshop-deck/workshop.ahx.json'), 30],
  ])('is a feature collection after RFC 7946 with every hole, of a layout %s', (title, from, count) => {
    const out = path(`${count}.geojson`);
    expect(ahx(['convert', from, out]).code).toBe(0);
    const { features } = json(out) as { features: { featureType: string; geometry: unknown; place: unknown }[] };
    expect(rfc7946Faults(json(out))).toEqual([]);
    const holes = features.filter(({ featureType }) => featureType === 'hole');
    expect(holes).toHaveLength(count);
    for (const { geometry, place } of holes) {
      expect(place).toMatchObject({ type: 'Point' });
      expect(geometry === null).toBe(title === 'without a georeference');
    }
  });

  it('says what did not travel, and with --strict that is an error', () => {
    const { code, err } = ahx(['convert', sprinkler, path('lossy.geojson')]);
    expect(code).toBe(0);
    expect(err).toContain('Did not travel:\n');
    expect(err).toMatch(/it has no place on a map: .*packages \(2\)/);
    expect(ahx(['convert', sprinkler, path('strict.geojson'), '--strict']).code).toBe(1);
    expect(existsSync(path('strict.geojson'))).toBe(true);
    expect(ahx(['convert', good, path('whole.ahx.json'), '--strict']).code).toBe(0);
  });
});

describe('standard input and output', () => {
  it('carry a table in and a layout out', () => {
    const { code, out } = ahx(['convert', '-', '-', '--profile', sprinklerProfile, '--to', 'layout'], {
      input: readFileSync(sprinklerPoints),
    });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(json(sprinkler));
  });

  it('carry a layout in and a table out', () => {
    const { code, out } = ahx(['convert', '-', '-', '--profile', sprinklerProfile, '--to', 'csv'], {
      input: readFileSync(sprinkler),
    });
    expect(code).toBe(0);
    expect(out.split('\r\n')[0]).toBe(readFileSync(sprinklerPoints, 'utf8').split('\r\n')[0]);
    expect(out.split('\r\n').filter((line) => line.startsWith('FP-'))).toHaveLength(36);
  });

  it('carry only the output: what there is to say goes to standard error, and with --quiet nothing', () => {
    expect(ahx(['convert', good, '-', '--to', 'geojson']).err).toContain('Written: standard output, 1 hole.');
    for (const quiet of ['--quiet', '-q'])
      expect(ahx(['convert', sprinkler, '-', '--to', 'geojson', quiet])).toMatchObject({ code: 0, err: '' });
  });

  it('need --to, since there is no name', () => {
    expect(ahx(['convert', good, '-'])).toMatchObject({ code: 2, out: '' });
  });

  it.skipIf(!existsSync('/dev/full'))('end with plain words where the disk is full', () => {
    const full = openSync('/dev/full', 'w');
    for (const args of [['convert', good, '-', '--to', 'layout'], ['check', poor, '--format', 'json'], ['explain']]) {
      const { status, stderr } = spawnSync(process.execPath, [command, ...args], {
        stdio: ['ignore', full, 'pipe'],
        encoding: 'utf8',
      });
      expect([args, status, stderr]).toEqual([args, 3, 'ahx: Standard output cannot be written: the disk is full.\n']);
    }
    closeSync(full);
  });
});

describe('nothing is written', () => {
  it('when a layout has errors of form', () => {
    const out = path('poor.geojson');
    const { code, err } = ahx(['convert', poor, out]);
    expect(code).toBe(1);
    expect(err).toContain('Nothing was written');
    expect(err).toContain('[duplicate-name]');
    expect(existsSync(out)).toBe(false);
  });

  it('when a table has bad rows, unless they are to be left out', () => {
    const out = path('survey.ahx.json');
    const refused = ahx(['convert', survey, out, '--profile', surveyProfile]);
    expect(refused.code).toBe(1);
    expect(refused.err).toContain('--leave-out-bad-rows');
    expect(existsSync(out)).toBe(false);
    expect(ahx(['convert', survey, out, '--profile', surveyProfile, '--leave-out-bad-rows']).code).toBe(0);
    expect((json(out) as Layout).holes.map(({ id }) => id)).toEqual(['101', '102', '109', '110']);
    expect(ahx(['check', out]).code).toBe(0);
  });

  it('when the input is no layout, or cut off', () => {
    for (const [from, reason] of [
      [sprinklerProfile, 'it is no layout (column-profile)'],
      [file('cut.ahx.json', layoutText().slice(0, -20)), 'it has errors of form'],
      [file('later.ahx.json', layoutText({ ahx: '0.2' })), 'it could not be judged to its end'],
      [file('list.ahx.json', '[1]'), 'it is no layout (unknown)'],
    ]) {
      const { code, err } = ahx(['convert', from, path('never.geojson')]);
      expect([from, code]).toEqual([from, 1]);
      expect(err).toContain(`because ${reason}.`);
      expect(existsSync(path('never.geojson'))).toBe(false);
    }
  });

  it('over an existing file, unless --force is given', () => {
    const out = file('there.ahx.json', 'old');
    const { code, err } = ahx(['convert', good, out]);
    expect([code, readFileSync(out, 'utf8')]).toEqual([2, 'old']);
    expect(err).toContain('exists already; --force overwrites it');
    expect(ahx(['convert', good, out, '--force']).code).toBe(0);
    expect(json(out)).toEqual(JSON.parse(layoutText()));
    expect(ahx(['convert', poor, out, '--force']).code).toBe(1);
    expect(json(out)).toEqual(JSON.parse(layoutText()));
  });

  it('over the input while it is read', () => {
    const name = file('itself.ahx.json', readFileSync(sprinkler));
    expect(ahx(['convert', name, name, '--force']).code).toBe(2);
    expect(json(name)).toEqual(json(sprinkler));
  });

  it('under a name that Windows cannot hold', () => {
    for (const name of [
      'con.ahx.json',
      'NUL',
      'com1.geojson',
      'Lpt9.csv',
      'a:b.geojson',
      'what?.geojson',
      'end.',
      'blank ',
    ]) {
      const { code, err } = ahx(['convert', good, path(name), '--to', 'layout']);
      expect([name, code]).toEqual([name, 2]);
      expect(err).toContain('Windows');
      expect(existsSync(path(name))).toBe(false);
    }
    for (const name of ['console.geojson', 'com10.geojson', 'null.geojson'])
      expect(ahx(['convert', good, path(name)]).code).toBe(0);
  });

  it('into a folder that is not there, or is a file', () => {
    for (const [name, reason] of [
      [path('no-folder/out.geojson'), 'there is no such file or folder'],
      [`${good}/out.geojson`, 'a part of its path is no folder'],
    ]) {
      const { code, err } = ahx(['convert', good, name]);
      expect(code).toBe(3);
      expect(err).toBe(`ahx: ${name} cannot be written: ${reason}.\n`);
    }
  });

  // The system lets its administrator write anywhere but in its own folders.
  const isAdministrator = process.getuid?.() === 0;
  const closed = isAdministrator ? '/sys' : path('closed');
  const cannotClose = process.platform === 'win32' || (isAdministrator && !existsSync(closed));
  it.skipIf(cannotClose)('into a folder that is read-only', () => {
    if (!isAdministrator) mkdirSync(closed, { mode: 0o555 });
    const { code, err } = ahx(['convert', good, `${closed}/out.geojson`]);
    if (!isAdministrator) chmodSync(closed, 0o755);
    expect(code).toBe(3);
    expect(err).toMatch(/cannot be written: (no permission|the disk is read-only)\.\n$/);
    expect(readdirSync(closed).filter((name) => name.includes('out.geojson'))).toEqual([]);
  });

  it('beside the output', () => {
    expect(leftovers(good)).toEqual([]);
    expect(statSync(path('sprinkler.ahx.json')).isFile()).toBe(true);
  });
});

describe('a wrong use of convert', () => {
  it('is told from a bad input', () => {
    expect(ahx(['convert', good]).code).toBe(2);
    expect(ahx(['convert', path('missing.ahx.json'), path('o.geojson')]).code).toBe(3);
    expect(ahx(['convert', survey, path('o.ahx.json'), '--profile', path('missing.json')]).code).toBe(3);
    expect(ahx(['convert', survey, path('o.ahx.json'), '--profile', poor]).code).toBe(2);
    expect(ahx(['convert', example('poor'), path('o.geojson')]).code).toBe(3);
    expect(existsSync(path('o.geojson')) || existsSync(path('o.ahx.json'))).toBe(false);
  });

  it('shows findings in colour where it is asked to', () => {
    expect(ahx(['convert', poor, path('c.geojson'), '--colour', 'always']).err).toContain('\u001b[31merror');
    expect(ahx(['convert', poor, path('c.geojson'), '--colour', 'never']).err).not.toContain('\u001b[');
    expect(ahx(['convert', poor, path('c.geojson')]).err).not.toContain('\u001b[');
  });
});
