import { existsSync, openSync, closeSync, readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { isDateTime } from '../../src/cli/date-time.js';
import { layoutText } from '../jobs/small-layout.js';
import { ahx, command, poor, sprinklerPoints, sprinklerProfile, workFolder } from './run-ahx.js';

const { file } = workFolder();
const good = file('good.ahx.json', layoutText());

describe('a wrong use of the command', () => {
  it.each<[args: string[], words: string]>([
    [['check', '-s', 'hole-coincide=off', good], 'Did you mean "holes-coincide"?'],
    [['check', '-s', 'foo=off', good], 'There is no rule "foo"'],
    [['help', 'nope'], 'There is no command "nope".'],
    [['help', 'chek'], 'Did you mean "check"?'],
    [['check', '-', '-'], 'Standard input can be read only once.'],
    [['check', '-', '--profile', '-'], 'Standard input cannot be the profile and an input at once.'],
    [['check', '--as-of', '2026-99-02T07:30:00Z', good], 'It must be a time such as'],
    [['check', '--as-of', '2026-02-30T07:30:00Z', good], 'It must be a time such as'],
  ])('%j ends with 2 and says what is wrong', (args, words) => {
    const { code, out, err } = ahx(args, { input: layoutText() });
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(words);
  });

  it('is a profile that breaks its schema or cannot be used, alike', () => {
    const text = readFileSync(sprinklerProfile, 'utf8');
    const broken = file('broken.profile.json', text.replace('"columns"', '"colums"'));
    const unfit = file('unfit.profile.json', text.replace(/"field": "x"/, '"field": "y"'));
    for (const profile of [broken, unfit]) {
      const { code, out, err } = ahx(['check', sprinklerPoints, '--profile', profile]);
      expect([profile, code, out]).toEqual([profile, 2, '']);
      expect(err).toContain('is no valid column profile');
    }
  });
});

describe('a profile on standard input', () => {
  it('is read', () => {
    const { code, out } = ahx(['check', sprinklerPoints, '--profile', '-'], { input: readFileSync(sprinklerProfile) });
    expect(code).toBe(0);
    expect(out).toContain('Readable by its profile');
  });
});

describe('isDateTime', () => {
  it('takes times with offset on days that there are', () => {
    for (const text of ['2026-03-02T07:30:00-05:00', '2024-02-29t23:59:60.123z', '2000-02-29T00:00:00Z'])
      expect([text, isDateTime(text)]).toEqual([text, true]);
    for (const text of [
      '2026-03-02T07:30:00',
      '2026-13-02T07:30:00Z',
      '2025-02-29T07:30:00Z',
      '1900-02-29T07:30:00Z',
      '2026-04-31T07:30:00Z',
      '2026-03-02T24:00:00Z',
      '2026-03-02T07:30:00Z\n',
    ])
      expect([text, isDateTime(text)]).toEqual([text, false]);
  });
});

describe('the help of check', () => {
  it('says that layouts of one frame are judged together', () => {
    expect(ahx(['check', '--help']).out).toContain('Layouts of one frame are judged together');
  });
});

describe.skipIf(!existsSync('/dev/full'))('a full disk', () => {
  it('is said in a plain sentence by each way to standard output', () => {
    const full = openSync('/dev/full', 'w');
    for (const args of [['--help'], ['help', 'check'], ['--version'], ['check', poor], ['check', good, '-q']]) {
      const { status, stderr } = spawnSync(process.execPath, [command, ...args], {
        stdio: ['ignore', full, 'pipe'],
        encoding: 'utf8',
      });
      expect([args, status, stderr]).toEqual([args, 3, 'ahx: Standard output cannot be written: the disk is full.\n']);
    }
    closeSync(full);
  });
});
