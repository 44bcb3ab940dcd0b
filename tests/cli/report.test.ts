import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hole, layoutText } from '../jobs/small-layout.js';
import { ahx, example, sprinkler, sprinklerPoints, sprinklerProfile, workFolder } from './run-ahx.js';

const work = workFolder();
const duct = example('ferry-terminal/duct.ahx.json');

describe('ahx report', () => {
  it('writes the report and answers as the check does', () => {
    const out = work.path('two.html');
    const run = ahx(['report', sprinkler, duct, out]);
    expect(run).toEqual({
      code: 0,
      out: `Valid AHX 0.1.\nSite checks (for review): 0 errors, 0 warnings on 60 holes.\n${out} written.\n`,
      err: '',
    });
    expect(readFileSync(out, 'utf8')).toMatch(/^<!doctype html>[^]*<\/html>\n$/);
  });

  it('ends with 1 where something was found, and writes it', () => {
    const bad = work.file('bad.ahx.json', layoutText({ holes: [hole('H', [0, 0, 40])] }));
    const out = work.path('bad.html');
    expect(ahx(['report', bad, out]).code).toBe(1);
    expect(readFileSync(out, 'utf8')).toContain('The hole lies 40 mm inside the face');
    expect(ahx(['report', '--force', '--severity', 'off-surface=warning', bad, out]).code).toBe(0);
    expect(ahx(['report', '--force', '-s', 'off-surface=warning', '--threshold', 'warning', bad, out]).code).toBe(1);
  });

  it('overwrites nothing unasked, and never what it reads', () => {
    const layout = work.file('kept.ahx.json', layoutText());
    const out = work.file('kept.html', 'mine');
    expect(ahx(['report', layout, out])).toMatchObject({ code: 2, err: expect.stringContaining('--force') });
    expect(readFileSync(out, 'utf8')).toBe('mine');
    const disguised = work.file('layout.html', layoutText());
    const run = ahx(['report', '--force', disguised, disguised]);
    expect([run.code, run.err]).toEqual([2, expect.stringContaining('it is not overwritten')]);
    expect(readFileSync(disguised, 'utf8')).toBe(layoutText());
  });

  it('overwrites neither the revision before nor what says how to check', () => {
    const text = (kind: string, more: object = {}) => JSON.stringify({ ahx: '0.1', kind, ...more });
    const layout = work.file('l.ahx.json', layoutText());
    const named = work.file('named.html', layoutText({ id: 'T-2' }));
    const before = work.file('before.html', layoutText({ revision: { label: '0' } }));
    const baseline = work.file('baseline.html', text('baseline', { entries: [] }));
    const config = work.file('config.html', text('config', { baseline: 'baseline.html' }));
    const naming = work.file('naming.json', text('config', { inputs: [{ files: ['named.html'] }] }));
    const profile = work.file('profile.html', readFileSync(sprinklerProfile, 'utf8'));
    for (const [out, ...args] of [
      [before, '--parent', before, layout],
      [baseline, '--baseline', baseline, layout],
      [baseline, '--config', config, layout],
      [config, '--config', config, layout],
      [named, '--config', naming],
      [profile, '--profile', profile, sprinklerPoints],
    ]) {
      const was = readFileSync(out, 'utf8');
      const run = ahx(['report', '--force', '--as-of', 'now', ...args, out]);
      expect([run.code, run.err]).toEqual([2, expect.stringContaining(`${out} is a file that is read`)]);
      expect(readFileSync(out, 'utf8')).toBe(was);
    }
  });

  it('keeps as many findings as the config says, the call first', () => {
    const bad = work.file(
      'four.ahx.json',
      layoutText({ holes: [1, 2, 3, 4].map((k) => hole(`H-${k}`, [k * 900, 0, 40])) }),
    );
    const config = work.file('limit.json', JSON.stringify({ ahx: '0.1', kind: 'config', limit: 3 }));
    const out = work.path('limit.html');
    const kept = (...flags: string[]) => {
      ahx(['report', '--force', ...flags, bad, out]);
      return /(\d) of 4 findings were kept one by one; all/.exec(readFileSync(out, 'utf8'))?.[1];
    };
    expect([kept(), kept('--config', config), kept('--config', config, '-n', '2')]).toEqual([undefined, '3', '2']);
  });

  it.each([
    [[sprinkler], 2, 'ends in .html'],
    [[sprinkler, 'report.pdf'], 2, 'ends in .html'],
    [['none.ahx.json', 'r.html'], 3, 'none.ahx.json cannot be read'],
    [[sprinkler, 'none/r.html'], 3, 'cannot be written'],
    [['r.html'], 2, 'No files are named'],
    [[sprinkler, 'r.html', '--paper', 'a3'], 2, 'a4, letter'],
    [[sprinkler, 'r.html', '--limit', '-1'], 2, 'whole number'],
  ])('is refused: %j', (args, code, why) => {
    const run = ahx(['report', ...args], { cwd: work.path('.') });
    expect([run.code, run.err]).toEqual([code, expect.stringContaining(why)]);
    expect(existsSync(work.path('r.html'))).toBe(false);
  });

  it('holds a revision against the one before', () => {
    const text = readFileSync(duct, 'utf8');
    const before = work.file(
      'before.ahx.json',
      text.replace('"label": "B"', '"label": "A"').replace(/"parent": \{[^}]*\},/, ''),
    );
    const out = work.path('changes.html');
    expect(ahx(['report', '--parent', before, duct, out])).toMatchObject({ code: 0, err: '' });
    expect(readFileSync(out, 'utf8')).toContain('SB-100-DU: revision A to B');
    for (const [parent, why] of [
      [sprinkler, 'is of the layout "SB-100-FP", and none of the files is.'],
      [work.file('broken.ahx.json', '{'), 'is no valid layout to hold a revision against'],
      [work.path('none.ahx.json'), 'cannot be read'],
    ]) {
      const run = ahx(['report', '--force', '--parent', parent, duct, out]);
      expect([run.code, run.err]).toEqual([2, expect.stringContaining(why)]);
    }
  });

  it('takes what a check takes', () => {
    const out = work.path('all.html');
    const config = work.file(
      'c.json',
      JSON.stringify({ ahx: '0.1', kind: 'config', severities: { 'off-surface': 'off' } }),
    );
    const bad = work.file('all.ahx.json', layoutText({ holes: [hole('H', [0, 0, 40])] }));
    const flags = [
      '--quiet',
      '--purpose',
      'for-review',
      '--as-of',
      '2026-03-02T07:30:00-05:00',
      '-n',
      '5',
      '--config',
      config,
    ];
    expect(ahx(['report', ...flags, bad, out]).code).toBe(0);
    expect(readFileSync(out, 'utf8')).toContain('2026-03-02T07:30:00-05:00');
  });

  it('writes it in the language that the call or the config says', () => {
    const out = work.path('informe.html');
    const config = work.file('es.json', JSON.stringify({ ahx: '0.1', kind: 'config', language: 'es' }));
    const run = ahx(['report', '--language', 'es-MX', sprinkler, out]);
    expect([run.code, run.out.split('\n')[0]]).toEqual([0, 'AHX 0.1 válido.']);
    const spanish = readFileSync(out, 'utf8');
    expect(spanish).toContain('<html lang="es">');
    expect(spanish).toContain('Lista de perforaciones');
    expect(spanish).not.toContain('Hole schedule');
    expect(ahx(['report', '--force', '--config', config, sprinkler, out]).code).toBe(0);
    expect(readFileSync(out, 'utf8')).toBe(spanish);
    expect(ahx(['report', '--force', '--config', config, '-l', 'en', sprinkler, out]).code).toBe(0);
    expect(readFileSync(out, 'utf8')).toContain('Hole schedule');
    const refused = ahx(['report', '--force', '-l', 'xx', sprinkler, out]);
    expect([refused.code, refused.err]).toEqual([2, expect.stringContaining('"xx"')]);
  });

  it('has words of its own that no check loads', () => {
    const cli = join(import.meta.dirname, '../../dist/cli');
    const withWords = (words: string) =>
      readdirSync(cli).filter((name) => name.endsWith('.cjs') && readFileSync(join(cli, name), 'utf8').includes(words));
    for (const words of ['Hole schedule', 'Lista de perforaciones']) expect(withWords(words)).toEqual(['report.cjs']);
  });

  it('prints it where there is a Chromium, and says so where there is none', () => {
    const out = work.path('p.html');
    const run = ahx(['report', '--pdf', '--paper', 'letter', sprinkler, out], {
      env: { AHX_CHROMIUM: work.path('none') },
    });
    expect([run.code, run.err]).toEqual([3, expect.stringContaining('no Chromium was found')]);
    expect(existsSync(work.path('p.pdf'))).toBe(false);
    // A browser that prints nothing is told, and leaves nothing behind.
    const dull = work.path('dull.sh');
    writeFileSync(dull, '#!/bin/sh\nexit 0\n', { mode: 0o755 });
    const again = ahx(['report', '--pdf', '--force', sprinkler, out], { env: { AHX_CHROMIUM: dull } });
    expect(again.code).toBe(3);
    expect(again.err).toContain('p.pdf cannot be printed');
  });
});
