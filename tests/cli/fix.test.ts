import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync, truncateSync } from 'node:fs';
import { dirname } from 'node:path';
import { applyPatch as applyDiff } from 'diff';
import jsonpatch from 'fast-json-patch';
import { describe, expect, it } from 'vitest';
import { hole, layoutText } from '../jobs/small-layout.js';
import { ahx, sprinklerPoints, workFolder } from './run-ahx.js';

const { file, path } = workFolder();

const faulty = `\uFEFF${JSON.stringify(
  JSON.parse(
    layoutText({
      display: { length: 'feet' },
      trades: [{ id: 'FP ', name: 'Sprinkler' }],
      holes: [
        hole('H-1', [1, 2, 3], { depht: 60, trade: 'FP ' }),
        hole('H-2', [999, 9, 3], { trade: 'FP ', area: null }),
      ],
    }),
  ),
  undefined,
  '\t',
).replaceAll('\n', '\r\n')}`;
const sound = layoutText();

/** What standard output and error are, and the code. */
const unchanged = { code: 0, out: '', err: 'Nothing to fix; no finding is left in a check for review.\n' };

describe('ahx fix', () => {
  it('shows a diff on standard output and a line for each fix on standard error, and writes nothing', () => {
    const name = file('faulty.json', faulty);
    const { code, out, err } = ahx(['fix', name]);
    expect(code).toBe(1);
    expect(readFileSync(name, 'utf8')).toBe(faulty);
    expect(out.startsWith(`--- ${name}\n+++ ${name}\n@@ -1,`)).toBe(true);
    const fixed = applyDiff(faulty, out, { autoConvertLineEndings: false }) as string;
    expect(ahx(['check', file('patched.json', fixed)]).out).toContain('Valid AHX 0.1.');
    expect(err.split('\n').slice(0, -3)).toEqual([
      expect.stringMatching(/^line 1, column 1: .* Fix: the mark goes\. \[byte-order-mark\]$/),
      expect.stringMatching(/^line \d+, column \d+: .* Fix: becomes "FP", and 2 more with it\. \[bad-text\]$/),
      expect.stringMatching(/^line \d+, column \d+: .* Fix: renamed to "depth"\. \[unknown-member\]$/),
      expect.stringMatching(/^line \d+, column \d+: .* Fix: left out\. \[wrong-type\]$/),
      expect.stringMatching(/^line \d+, column \d+: .* Fix: becomes "ft"\. \[not-a-choice\]$/),
    ]);
    expect(err).toMatch(
      /\n5 findings to be fixed; no finding is left in a check for review\.\nNothing was written; --write does it\.\n$/,
    );
  });

  it('writes into the file what the diff shows, keeps its modes, and has nothing more to do then', () => {
    const name = file('written.json', faulty);
    const diff = ahx(['fix', name, '-q']);
    expect(diff.err).toBe('');
    const { code, out, err } = ahx(['fix', name, '--write']);
    expect({ code, out }).toEqual({ code: 0, out: '' });
    expect(err).toContain(
      `5 findings fixed; no finding is left in a check for review.\nWritten: ${name}.\nValid AHX 0.1.\n`,
    );
    expect(readFileSync(name, 'utf8')).toBe(applyDiff(faulty, diff.out, { autoConvertLineEndings: false }));
    expect(ahx(['fix', name, '--write'])).toEqual(unchanged);
    expect(readdirSync(dirname(name)).filter((other) => other.includes('written'))).toEqual(['written.json']);
  });

  it.skipIf(process.platform === 'win32')('leaves a link a link and a private file private', () => {
    const name = file('private.json', faulty);
    const link = path('link.json');
    chmodSync(name, 0o600);
    symlinkSync(name, link);
    expect(ahx(['fix', link, '-w']).code).toBe(0);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(statSync(name).mode & 0o777).toBe(0o600);
    expect(ahx(['fix', name]).code).toBe(0);
  });

  it('prints the fixes as a JSON Patch, and says what it leaves', () => {
    const name = file('patch.json', faulty);
    const { code, out, err } = ahx(['fix', name, '--format', 'patch']);
    expect(code).toBe(1);
    expect(err).toContain('The byte order mark is no part of JSON: the patch leaves it.');
    const patched = jsonpatch.applyPatch(JSON.parse(faulty.slice(1)), JSON.parse(out), true).newDocument;
    ahx(['fix', name, '--write', '--quiet']);
    expect(JSON.parse(readFileSync(name, 'utf8'))).toEqual(patched);
    expect(ahx(['fix', name, '-f', 'patch'])).toEqual({ ...unchanged, out: '[]\n' });
  });

  it('fixes the findings of the rules that are named', () => {
    const { out, err } = ahx([
      'fix',
      file('rule.json', faulty),
      '-f',
      'patch',
      '-r',
      'wrong-type',
      '--rule',
      'not-a-choice',
    ]);
    expect(JSON.parse(out).map(({ op }: { op: string }) => op)).toEqual(['replace', 'remove']);
    expect(err).toContain(
      '2 findings to be fixed; 5 findings are left in a check for review: 3 of rules that were not named, 2 without a fix that is sure.\n',
    );
  });

  it('changes geometry for who asks for it', () => {
    const levels = [{ id: 'L1', name: '1', elevation: 4000, finishedFloor: 4060, soffits: [7000] }];
    const holes = [1, 2, 3].map((k) => {
      const { substrate, ...rest } = hole(`H-${k}`, [1000 * k, 0, 4060], { level: 'L1', axis: [0, 0, 1] });
      return rest;
    });
    const name = file('geometry.json', layoutText({ levels, holes }));
    const { code, err } = ahx(['fix', name]);
    expect({ code, err }).toMatchObject({
      code: 0,
      err: expect.stringMatching(/; \d findings are left in a check for review: .*3 to be fixed with --geometry/),
    });
    for (const flag of ['--geometry', '-g'])
      expect(JSON.parse(ahx(['fix', name, flag, '-f', 'patch']).out)).toHaveLength(3);
    for (const off of ['--severity', '-s']) expect(ahx(['fix', name, '-g', off, 'height-stand-in=off']).code).toBe(0);
    const config = { ahx: '0.1', kind: 'config', severities: { 'height-stand-in': 'off' } };
    const named = file('other.config.json', JSON.stringify(config));
    for (const flag of ['--config', '-c']) expect(ahx(['fix', name, '-g', flag, named]).code).toBe(0);
    const folder = dirname(file('ahx.config.json', JSON.stringify(config)));
    expect(ahx(['fix', name, '-g'], { cwd: folder }).code).toBe(0);
    expect(ahx(['fix', name, '-g', '--no-config'], { cwd: folder }).code).toBe(1);
  });

  it('leaves what was accepted, as of now', () => {
    const name = file('accepted.json', faulty);
    const baseline = file('b.json', JSON.stringify({ ahx: '0.1', kind: 'baseline', entries: [] }));
    for (const flag of ['--baseline', '-b']) expect(ahx(['fix', name, flag, baseline]).code).toBe(1);
  });

  it('reads standard input and cannot write to it', () => {
    const { code, out } = ahx(['fix', '-'], { input: faulty });
    expect({ code, head: out.split('\n')[0] }).toEqual({ code: 1, head: '--- standard input' });
    expect(ahx(['fix', '-'], { input: sound })).toEqual(unchanged);
    expect(ahx(['fix', '-', '--write'], { input: faulty })).toMatchObject({ code: 2, out: '' });
  });

  it('tells how many findings have no fix that is sure', () => {
    const name = file('left.json', layoutText({ holes: [hole('H-1', [1, 2, 3], { weight: 3 })] }));
    expect(ahx(['fix', name, '-w'])).toEqual({
      ...unchanged,
      err: 'Nothing to fix; 1 finding is left in a check for review: 1 without a fix that is sure.\n',
    });
  });

  it('tells what is left for the purpose of the call or of the config', () => {
    const name = file('purpose.json', sound);
    const err = ahx(['fix', name, '--purpose', 'for-drilling']).err;
    expect(err).toMatch(/^Nothing to fix; \d+ findings? (is|are) left in a check for drilling: /);
    const config = { ahx: '0.1', kind: 'config', purpose: 'for-drilling' };
    expect(ahx(['fix', name, '-c', file('drilling.config.json', JSON.stringify(config))]).err).toBe(err);
  });

  it('tells findings in the language of the call or of the config', () => {
    const name = file('language.json', faulty);
    const err = ahx(['fix', name, '--language', 'es']).err;
    expect(err).toMatch(/^l\u00ednea \d+, columna \d+: .*"depht".* \[unknown-member\]$/m);
    expect(ahx(['fix', name, '-l', 'es', '--write']).err).toContain('\nAHX 0.1 v\u00e1lido.\n');
    const config = { ahx: '0.1', kind: 'config', language: 'es' };
    const other = file('language-too.json', faulty);
    expect(ahx(['fix', other, '-c', file('es.config.json', JSON.stringify(config))]).err).toBe(err);
    expect(ahx(['fix', other, '--language', 'xx'])).toMatchObject({ code: 2, out: '' });
  });

  it('makes ungrouped holes of an export sound, and tells of the group that has too few members', () => {
    const groups = [
      {
        id: 'G',
        kind: 'hanger',
        pattern: [
          [0, 0],
          [1000, 0],
        ],
      },
    ];
    const holes = [hole('H-1', [1, 2, 3], { group: 'G' }), hole('H-2', [1001, 2, 3], { group: null })];
    const { code, err } = ahx(['fix', file('groups.json', layoutText({ groups, holes })), '-w']);
    expect(code).toBe(0);
    expect(err).toMatch(/Came to light.*\n.*\[pattern-count\]\n/);
  });

  it('shows no diff of lines that nobody can read, but the patch', () => {
    const long = layoutText({
      title: 'feet',
      display: { length: 'feet' },
      ext: { 'https://example.org/': 'x'.repeat(70_000) },
    });
    const { code, out, err } = ahx(['fix', file('long.json', long)]);
    expect({ code, out, err }).toMatchObject({ code: 1, out: '', err: expect.stringContaining('too long for a diff') });
  });

  it('shows what a file can carry so that it cannot act', () => {
    const name = file(
      'hostile.json',
      layoutText({ display: { length: 'fe\u202eet' }, holes: [hole('H-1', [1, 2, 3], { 'dep\u202eht': 1 })] }),
    );
    expect(ahx(['fix', name]).err).not.toContain('\u202e');
  });
});

describe('ahx fix refuses', () => {
  it('a table, and says why', () => {
    const { code, out, err } = ahx(['fix', sprinklerPoints]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('is a table; only JSON is fixed.');
  });

  it.each(['id,x,y\n1,2,3\n', '{ "kind": "layout", "holes": [', '', '\u0000'])('%j, which is no JSON', (text) => {
    const name = file('none.json', text);
    const { code, out, err } = ahx(['fix', name, '--write']);
    expect({ code, out, text: readFileSync(name, 'utf8') }).toEqual({ code: 1, out: '', text });
    expect(err).toContain('is no JSON to its end');
  });

  it('a file that is not there, a folder and a file that is too large', () => {
    expect(ahx(['fix', path('gone.json')]).code).toBe(3);
    expect(ahx(['fix', dirname(path('x'))]).code).toBe(3);
    const large = file('large.json', '');
    truncateSync(large, 256 * 1024 * 1024 + 1);
    expect(ahx(['fix', large])).toMatchObject({ code: 2, err: expect.stringContaining('268435457 bytes') });
  });

  it('rules that are none or have no fixes', () => {
    const name = file('rules.json', faulty);
    expect(ahx(['fix', name, '-r', 'bad-tekst']).err).toContain(
      'There is no rule "bad-tekst". Did you mean "bad-text"?',
    );
    expect(ahx(['fix', name, '-r', 'holes-too-close']).err).toContain('The rule "holes-too-close" has no fixes.');
    expect(ahx(['fix', name, '-r', 'holes-too-close']).code).toBe(2);
    for (const flag of ['-o', '--option']) expect(ahx(['fix', name, flag, 'nothing.x=1']).code).toBe(2);
  });
});
