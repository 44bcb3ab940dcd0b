import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Baseline } from '../../src/generated/baseline.js';
import { hole, layoutText, typeWithSpacing } from '../jobs/small-layout.js';
import { ahx, sprinklerPoints, sprinklerProfile, workFolder } from './run-ahx.js';

const work = workFolder();
const time = ['--as-of', '2026-03-02T07:30:00-05:00'];
const near = layoutText({ holeTypes: [typeWithSpacing(80)], holes: [0, 50].map((x, k) => hole(`H-${k}`, [x, 0, 0])) });
const accepting = ['--reason', 'Group calculated', '--owner', 'Invented Engineers', '--expires', '2026-06-30'];

/** Writes files into a folder of their own and gives the folder. */
function folderOf(name: string, files: Record<string, string>): string {
  for (const [path, text] of Object.entries(files)) {
    const full = work.path(`${name}/${path}`);
    mkdirSync(dirname(full), { recursive: true });
    writeFileSync(full, text);
  }
  return work.path(name);
}

function config(members: Record<string, unknown>): string {
  return JSON.stringify({ ahx: '0.1', kind: 'config', ...members });
}

function namesIn(cwd: string, args: string[] = []): string[] {
  const report = JSON.parse(ahx(['check', '-f', 'json', ...args], { cwd }).out) as { inputs: { name: string }[] };
  return report.inputs.map(({ name }) => name.replaceAll('\\', '/'));
}

describe('a config', () => {
  it('is taken from the folder, left aside on request, or named', () => {
    const cwd = folderOf('severity', {
      'ahx.config.json': config({ severities: { 'holes-too-close': 'info' } }),
      'sharp.json': config({ threshold: 'info' }),
      'near.ahx.json': near,
    });
    expect(ahx(['check', '-q', 'near.ahx.json'], { cwd }).code).toBe(0);
    expect(ahx(['check', '-q', '--no-config', 'near.ahx.json'], { cwd }).code).toBe(1);
    const named = ahx(['check', '--config', 'sharp.json', '-s', 'holes-too-close=info', 'near.ahx.json'], { cwd });
    expect([named.code, named.out]).toEqual([1, expect.stringContaining('0 errors, 0 warnings, 2 info')]);
    expect(
      ahx(['check', '-q', '-c', 'sharp.json', '-t', 'error', '-s', 'holes-too-close=info', 'near.ahx.json'], { cwd })
        .code,
    ).toBe(0);
  });

  it('gives way to what the call says, rule by rule and option by option', () => {
    const off = layoutText({ holes: [hole('H-1', [0, 0, 18])] });
    const cwd = folderOf('options', {
      'ahx.config.json': config({
        severities: { 'holes-too-close': 'off', 'off-surface': 'warning' },
        ruleOptions: { 'off-surface': { limit: 20 }, 'near-existing-bore': { mostDepth: 500 } },
      }),
      'off.ahx.json': off,
    });
    expect(ahx(['check', 'off.ahx.json'], { cwd }).out).toContain('0 errors, 0 warnings');
    const { out } = ahx(['check', '-o', 'off-surface.limit=10', 'off.ahx.json'], { cwd });
    expect(out).toContain('0 errors, 1 warning');
    expect(out).toContain(
      'set for this check: holes-too-close=off, off-surface=warning, near-existing-bore.mostDepth=500, off-surface.limit=10',
    );
  });

  it('names the files, those of a pattern in the order of their names and each of them once', () => {
    const cwd = folderOf('files', {
      'ahx.config.json': config({
        inputs: [
          { files: ['b.ahx.json', 'in/*.ahx.json', 'in/**/[x].ahx.json', '../files/b.ahx.json', './b.ahx.json'] },
        ],
      }),
      'b.ahx.json': layoutText(),
      'in/z.ahx.json': layoutText({ id: 'Z' }),
      'in/B.ahx.json': layoutText({ id: 'B' }),
      'in/a.ahx.json': layoutText({ id: 'A' }),
      'in/deep/er/[x].ahx.json': layoutText({ id: 'X' }),
      'in/deep/er/x.ahx.json': layoutText({ id: 'Y' }),
    });
    const all = ['b.ahx.json', 'in/B.ahx.json', 'in/a.ahx.json', 'in/z.ahx.json', 'in/deep/er/[x].ahx.json'];
    expect(namesIn(cwd)).toEqual(all);
    expect(namesIn(`${cwd}/in`, ['--config', '../ahx.config.json'])).toEqual(all.map((name) => `../${name}`));
    expect(namesIn(cwd, ['in/a.ahx.json'])).toEqual(['in/a.ahx.json']);
  });

  it('reads tables with the profile that it names', () => {
    const cwd = folderOf('table', {
      'ahx.config.json': config({ inputs: [{ files: ['lists/*.csv'], profile: 'p.json' }] }),
      'lists/one.csv': readFileSync(sprinklerPoints, 'utf8'),
      'p.json': readFileSync(sprinklerProfile, 'utf8'),
    });
    const { out, err } = ahx(['check', '-f', 'json'], { cwd });
    expect(err).toBe('');
    expect(JSON.parse(out)).toMatchObject({ inputs: [{ name: 'lists/one.csv', format: 'csv' }] });
  });

  it.each([
    [
      'for a rule of a strange name',
      { inputs: [{ files: ['a.ahx.json'] }], ruleOptions: JSON.parse('{"__proto__":{"limit":3}}') as unknown },
      2,
      'There is no rule "__proto__"',
    ],
    [
      'for an unknown rule',
      { inputs: [{ files: ['a.ahx.json'] }], severities: { 'holes-to-close': 'off' } },
      2,
      'Did you mean "holes-too-close"?',
    ],
    [
      'for an unknown option',
      { inputs: [{ files: ['a.ahx.json'] }], ruleOptions: { 'off-surface': { limits: 1 } } },
      2,
      'Did you mean "limit"?',
    ],
    [
      'that lowers the form of files',
      { inputs: [{ files: ['a.ahx.json'] }], severities: { 'duplicate-id': 'off' } },
      2,
      'stays error for everybody',
    ],
    ['with a member misspelt', { severity: {} }, 2, 'severities'],
    ['without files', {}, 2, 'No files are named, and the config names none'],
    ['whose pattern matches nothing', { inputs: [{ files: ['none/*.json'] }] }, 2, 'No file matches "none/*.json"'],
    ['whose file is missing', { inputs: [{ files: ['none.json'] }] }, 3, 'none.json cannot be read'],
    [
      'whose baseline is missing',
      { inputs: [{ files: ['a.ahx.json'] }], baseline: 'none.json' },
      3,
      'none.json cannot be read',
    ],
    ['of another kind', { kind: 'layout' }, 2, 'is no config'],
    ['of a later version', { ahx: '0.9' }, 2, 'no valid config'],
  ])('%s is refused', (_, members, code, why) => {
    const cwd = folderOf(`bad-${code}-${why.length}`, {
      'ahx.config.json': config(members),
      'a.ahx.json': layoutText(),
    });
    const run = ahx(['check'], { cwd });
    expect([run.code, run.err]).toEqual([code, expect.stringContaining(why)]);
  });

  it('is not needed: without it and without files the use is wrong', () => {
    const run = ahx(['check'], { cwd: folderOf('empty', { 'x.txt': '' }) });
    expect([run.code, run.err]).toEqual([2, expect.stringContaining('No files are named')]);
  });
});

describe('a baseline', () => {
  it('is made, shown, applied, and pruned', () => {
    const cwd = folderOf('cycle', { 'near.ahx.json': near });
    const made = ahx(
      ['baseline', 'accepted.ahx.json', 'near.ahx.json', ...accepting, '--question', 'RFI 17', ...time],
      { cwd },
    );
    expect(made).toEqual({
      code: 0,
      out: 'accepted.ahx.json: 2 accepted findings in 1 entry (before: 0). It is no approval; the findings stay in every report.\n',
      err: '',
    });
    const baseline = JSON.parse(readFileSync(`${cwd}/accepted.ahx.json`, 'utf8')) as Baseline;
    expect(baseline.entries[0]).toMatchObject({ accepted: '2026-03-02', expires: '2026-06-30', question: 'RFI 17' });
    expect(ahx(['check', '-q', 'accepted.ahx.json'], { cwd }).out).toContain('Valid AHX 0.1.');
    expect(ahx(['baseline', 'accepted.ahx.json', 'near.ahx.json', ...time], { cwd }).out).toBe(
      'in-force    holes-too-close in "T-1": 2 of 2 findings, until 2026-06-30, Invented Engineers: Group calculated\n',
    );
    const check = ['check', '--baseline', 'accepted.ahx.json', 'near.ahx.json'];
    expect(ahx([...check, ...time], { cwd })).toMatchObject({
      code: 0,
      out: expect.stringContaining('2 more findings accepted'),
    });
    expect(
      ahx(['check', '-b', 'accepted.ahx.json', 'near.ahx.json', '--as-of', '2026-07-01T00:00:00Z'], { cwd }).code,
    ).toBe(1);
    expect(ahx(check, { cwd })).toMatchObject({ code: 2, err: expect.stringContaining('--as-of now') });
    writeFileSync(`${cwd}/near.ahx.json`, layoutText({ holeTypes: [typeWithSpacing(80)] }));
    expect(ahx(['baseline', 'accepted.ahx.json', 'near.ahx.json', ...time], { cwd }).out).toMatch(/^stale /);
    expect(ahx(['baseline', 'accepted.ahx.json', 'near.ahx.json', '--prune', ...time], { cwd }).out).toContain(
      '0 accepted findings in 0 entries (before: 2)',
    );
    expect(ahx(['baseline', 'accepted.ahx.json', 'near.ahx.json', ...time], { cwd }).out).toBe(
      'The baseline has no entries.\n',
    );
  });

  it('takes the time from the clock on request', () => {
    const cwd = folderOf('now', { 'near.ahx.json': near });
    const until = (year: number) => accepting.with(5, `${year}-12-31`);
    ahx(['baseline', 'long.json', 'near.ahx.json', ...until(9999)], { cwd });
    ahx(['baseline', 'gone.json', 'near.ahx.json', ...until(2020), '--as-of', '2020-01-01T00:00:00Z'], { cwd });
    const codes = ['long.json', 'gone.json'].map(
      (name) => ahx(['check', '-q', '-b', name, '--as-of', 'now', 'near.ahx.json'], { cwd }).code,
    );
    expect(codes).toEqual([0, 1]);
  });

  it('takes one rule on request', () => {
    const cwd = folderOf('rule', { 'near.ahx.json': near });
    const made = ahx(['baseline', 'a.json', 'near.ahx.json', ...accepting, ...time, '--rule', 'holes-coincide'], {
      cwd,
    });
    expect(made.out).toContain('0 accepted findings');
    expect(
      ahx(['baseline', 'a.json', 'near.ahx.json', ...accepting, ...time, '-r', 'holes-too-close'], { cwd }).out,
    ).toContain('2 accepted findings');
  });

  it.each([
    [['a.json', 'near.ahx.json'], 2, 'a.json is not there'],
    [['a.json', 'near.ahx.json', '--reason', 'x'], 2, 'say all three'],
    [['a.json', 'near.ahx.json', ...accepting.with(5, '2026-02-30')], 2, '--expires needs a day'],
    [['a.json', 'near.ahx.json', ...accepting, '-r', 'holes-to-close'], 2, 'Did you mean "holes-too-close"?'],
    [['a.json', 'near.ahx.json', ...accepting, '-r', 'duplicate-id'], 2, 'mended, not accepted'],
    [['a.json', 'none.ahx.json', ...accepting], 3, 'none.ahx.json cannot be read'],
    [['near.ahx.json', 'near.ahx.json', ...accepting], 2, 'is no baseline'],
    [['none/a.json', 'near.ahx.json', ...accepting], 3, 'cannot be written'],
    [['a.json', 'near.ahx.json', ...accepting.with(3, 'a\nb')], 2, 'would not be valid, and was not written'],
    [['a.json', 'near.ahx.json', ...accepting.with(1, '')], 2, 'would not be valid, and was not written'],
    [
      ['a.json', 'near.ahx.json', ...accepting.with(5, '2020-12-31'), '--as-of', '2026-03-02T00:00:00Z'],
      2,
      'is before',
    ],
  ])('is refused: %j', (args, code, why) => {
    const cwd = folderOf('refused', { 'near.ahx.json': near });
    const run = ahx(['baseline', ...(args.includes('--as-of') ? [] : time), ...args], { cwd });
    expect([run.code, run.err]).toEqual([code, expect.stringContaining(why)]);
  });

  it('for another project is refused', () => {
    const cwd = folderOf('other', { 'near.ahx.json': near, 'else.ahx.json': near.replace('"T-1"', '"T-2"') });
    ahx(['baseline', 'a.json', 'near.ahx.json', ...accepting, ...time], { cwd });
    const run = ahx(['check', '-b', 'a.json', '--as-of', 'now', 'else.ahx.json'], { cwd });
    expect([run.code, run.err]).toEqual([
      2,
      expect.stringContaining('The baseline is about "T-1"; checked was "T-2".'),
    ]);
  });

  it.each([['--profile'], ['--purpose'], ['--severity'], ['--option'], ['--config'], ['--quiet']])(
    'knows the flag %s of check',
    (flag) => {
      expect(ahx(['baseline', '--help']).out).toContain(flag);
    },
  );
});
