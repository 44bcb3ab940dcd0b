import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hole, layoutText, smallLayout, typeWithSpacing } from '../jobs/small-layout.js';
import { ahx, example, poor, sprinkler, sprinklerPoints, sprinklerProfile, workFolder } from './run-ahx.js';

const { file, path } = workFolder();
const duct = example('ferry-terminal/duct.ahx.json');
/** Leaves aside that the examples name no scan. */
const FINE = ['--severity', 'scan-missing=off'];
const read = (name: string) => readFileSync(name, 'utf8');

describe('ahx sheet', () => {
  it('writes the sheets of a package as one HTML file, the same each time', () => {
    const [one, other] = [path('one.html'), path('other.html')];
    const { code, err } = ahx(['sheet', sprinkler, one, '--package', 'FP-day-1', ...FINE]);
    expect(code).toBe(0);
    expect(err).toMatch(/^Written: .*one\.html, \d sheets, 20 holes\./);
    expect(ahx(['sheet', sprinkler, other, '--package', 'FP-day-1', ...FINE]).code).toBe(0);
    expect(read(other)).toBe(read(one));
    const sheets = Number(/(\d) sheets/.exec(err)?.[1]);
    expect(read(one).match(/<section class="sheet"/g)).toHaveLength(sheets);
    expect(read(one)).toContain('size: letter portrait');
  });

  it('writes A4 where that is asked for, for an area', () => {
    const out = path('area.html');
    expect(ahx(['sheet', duct, out, '--area', 'pour-1', '--paper', 'a4', ...FINE]).code).toBe(0);
    expect(read(out)).toContain('size: A4 portrait');
    expect(read(out)).toContain('supersedes A');
  });

  it('writes one SVG file for each sheet, and one by itself under its own name', () => {
    const { code, err } = ahx(['sheet', sprinkler, path('day.svg'), '--level', 'L1', '--trade', 'sprinkler', ...FINE]);
    expect(code).toBe(0);
    const count = Number(/(\d+) sheets, 36 holes/.exec(err)?.[1]);
    expect(count).toBeGreaterThan(1);
    for (let k = 1; k <= count; k++) {
      const text = read(path(`day-${k}.svg`));
      expect(text).toMatch(/^<svg xmlns/);
      expect(text).not.toMatch(/currentColor|var\(/);
    }
    expect(existsSync(path(`day-${count + 1}.svg`))).toBe(false);
    const small = file('small.ahx.json', layoutText({ packages: [{ id: 'P', holes: ['H-1'] }] }));
    expect(ahx(['sheet', small, path('small.svg'), '--package', 'P', ...FINE]).code).toBe(0);
    expect(read(path('small.svg'))).toContain('Sheet 1 of 1');
  });

  it('says that a sheet from before is there', () => {
    file('old-2.svg', 'old');
    file('old-3.svg', 'old');
    const two = file(
      'two.ahx.json',
      layoutText({
        levels: [
          { id: 'L1', name: 'One' },
          { id: 'L2', name: 'Two' },
        ],
        holes: [hole('a', [0, 0, 0], { level: 'L1' }), hole('b', [500, 0, 0], { level: 'L2' })],
        packages: [{ id: 'P', holes: ['a', 'b'] }],
      }),
    );
    const { code, err } = ahx(['sheet', two, path('old.svg'), '--package', 'P', '--force', ...FINE]);
    expect(code).toBe(0);
    expect(err).toContain('old-3.svg is there from before and is no sheet of these.');
    expect(read(path('old-2.svg'))).not.toBe('old');
  });

  it('lists what there is to choose from where nothing is chosen', () => {
    const { code, out, err } = ahx(['sheet', sprinkler]);
    expect(code).toBe(2);
    expect(err).toContain('Choose what the sheets are for');
    expect(out.split('\n')).toEqual([
      '--package FP-day-1  Sprinkler, pour 1, 20 holes',
      '--package FP-day-2  Sprinkler, pour 2, 16 holes',
      '--area pour-1  Pour 1, gridlines 1 to 2, 20 holes',
      '--area pour-2  Pour 2, gridlines 2 to 3, 16 holes',
      '--level L1 --trade sprinkler  Level 1, waiting hall: Fire sprinkler, 36 holes',
      '',
    ]);
    expect(ahx(['sheet', sprinkler, path('none.html')]).code).toBe(2);
    expect(existsSync(path('none.html'))).toBe(false);
  });

  it('keeps cast-in holes off the list, and says so', () => {
    const castIn = { ...smallLayout.holeTypes[0], id: 'C', made: 'cast-in' };
    const members = {
      holeTypes: [...smallLayout.holeTypes, castIn],
      holes: [hole('a', [0, 0, 0]), hole('b', [500, 0, 0], { holeType: 'C' })],
      packages: [
        { id: 'P', holes: ['b', 'a'] },
        { id: 'Q', holes: ['b'] },
      ],
    };
    const layout = file('cast.ahx.json', layoutText(members));
    const { code, err } = ahx(['sheet', layout, path('cast.html'), '--package', 'P', ...FINE]);
    expect(code).toBe(0);
    expect(err).toContain('1 sheet, 1 hole.');
    expect(err).toContain('Left out: 1 hole cast in or there already.');
    expect(read(path('cast.html'))).toContain('1 cast-in or existing hole: nothing to drill there.');
    const none = ahx(['sheet', layout, path('none.html'), '--package', 'Q', ...FINE]);
    expect(none.code).toBe(1);
    expect(none.err).toContain('Nothing was written: package Q has no hole to drill; 1 hole cast in or there already.');
  });
});

/** Two holes too close to each other; invented. */
const CLOSE = {
  holeTypes: [typeWithSpacing(200)],
  holes: [hole('a', [0, 0, 0]), hole('b', [50, 0, 0])],
  packages: [{ id: 'P', holes: ['a', 'b'] }],
};
const close = file('close.ahx.json', layoutText(CLOSE));
const DO_NOT = 'Do not drill before the office has settled this.';

describe('ahx sheet and the check', () => {
  it('prints the causes as ahx check does, marks the holes, and exits with 1 though it writes the sheet', () => {
    const { code, out, err } = ahx(['sheet', close, path('close.html'), '--package', 'P']);
    expect(code).toBe(1);
    expect(out).toBe(ahx(['check', close, '--purpose', 'for-drilling']).out);
    expect(out).toContain('[holes-too-close]');
    expect(err).toContain('Marked as not to be drilled before the office has settled them: 2 holes.');
    expect(read(path('close.html'))).toContain(DO_NOT);
    const quiet = ahx(['sheet', close, path('close.html'), '--package', 'P', '--force', '-q']);
    expect(quiet.out).toMatch(/^Valid AHX [^\n]+\nSite checks \(for drilling\)[^\n]+\n$/);
    expect([quiet.code, quiet.err]).toEqual([1, '']);
  });

  it('takes severity, option, threshold, purpose and config', () => {
    const codeWith = (...flags: string[]) =>
      ahx(['sheet', close, path('flags.html'), '--package', 'P', '--force', ...FINE, ...flags]).code;
    expect(codeWith()).toBe(1);
    expect(codeWith('--severity', 'holes-too-close=warning')).toBe(0);
    expect(codeWith('--severity', 'holes-too-close=warning', '--threshold', 'warning')).toBe(1);
    expect(codeWith('--severity', 'no-such-rule=off')).toBe(2);
    const config = file(
      'sheet.config.json',
      JSON.stringify({ ahx: '0.1', kind: 'config', severities: { 'holes-too-close': 'off' }, purpose: 'for-review' }),
    );
    const { code, out } = ahx(['sheet', close, path('flags.html'), '--package', 'P', '--force', '--config', config]);
    expect(out).toContain('(for drilling)');
    expect(code).toBe(1);
    expect(out).not.toContain('holes-too-close]');
    const review = ahx(['sheet', close, path('flags.html'), '--package', 'P', '--force', '--purpose', 'for-review']);
    expect(review.out).toContain('(for review)');
  });

  it('takes a baseline: what it accepts is named and closes nothing', () => {
    const accepted = path('accepted.ahx.json');
    const asOf = ['--as-of', '2026-03-02T07:30:00-05:00'];
    const why = ['--reason', 'Calculated', '--owner', 'J. Doe', '--expires', '2026-06-30'];
    expect(ahx(['baseline', accepted, close, ...why, ...asOf, '--purpose', 'for-drilling']).code).toBe(0);
    const out = path('accepted.html');
    expect(ahx(['sheet', close, out, '--package', 'P', '--baseline', accepted, ...asOf]).code).toBe(0);
    expect(read(out)).toContain('Accepted by J. Doe until 2026-06-30');
    expect(read(out)).not.toContain(DO_NOT);
  });

  it('reads a table with its profile', () => {
    const out = path('table.html');
    const { err } = ahx([
      'sheet',
      sprinklerPoints,
      out,
      '--profile',
      sprinklerProfile,
      '--level',
      'L1',
      '--trade',
      'sprinkler',
    ]);
    expect(err).toContain('36 holes.');
    expect(read(out)).toContain('<section class="sheet"');
  });

  it('marks what was changed since the revision before', () => {
    const before = file(
      'before.ahx.json',
      layoutText({
        ...CLOSE,
        holes: [hole('a', [0, 0, 0]), hole('gone', [0, 900, 0])],
        packages: [{ id: 'P', holes: ['a', 'gone'] }],
      }),
    );
    const out = path('changed.html');
    ahx(['sheet', close, out, '--package', 'P', '--parent', before]);
    expect(read(out)).toContain('Δ Since revision A: new.');
    expect(read(out)).toContain('Taken out since revision A: gone: strike old marks out.');
    const other = ahx(['sheet', close, path('x.html'), '--package', 'P', '--parent', sprinkler]);
    expect(other.code).toBe(2);
    expect(other.err).toContain('none of the files is');
    expect(existsSync(path('x.html'))).toBe(false);
  });

  it('writes sheets in Spanish, and in no language that it lacks', () => {
    const out = path('es.html');
    const run = ahx(['sheet', close, out, '--package', 'P', '--language', 'es']);
    expect(run.out).toContain('AHX 0.1 válido.');
    expect(read(out)).toContain('No perforar antes de que la oficina haya resuelto esto.');
    expect(ahx(['sheet', close, path('de.html'), '--package', 'P', '--language', 'de']).code).toBe(2);
  });
});

describe('ahx sheet of several layouts', () => {
  const other = file(
    'other.ahx.json',
    layoutText({ ...CLOSE, id: 'T-2', holes: [hole('z', [60, 0, 0])], packages: [{ id: 'Q', holes: ['z'] }] }),
  );
  const same = file(
    'same.ahx.json',
    layoutText({ ...CLOSE, id: 'T-3', holes: [hole('a', [9000, 0, 0]), hole('b', [9900, 0, 0])] }),
  );

  it('checks all together and finds the package in whichever has it', () => {
    const out = path('both.html');
    const { code, err } = ahx(['sheet', close, other, out, '--package', 'Q']);
    expect(code).toBe(1);
    expect(err).toContain('1 sheet, 1 hole.');
    expect(read(out)).toContain('Checked together with close.ahx.json.');
    expect(read(out)).toContain(DO_NOT);
    ahx(['sheet', other, path('alone.html'), '--package', 'Q']);
    expect(read(path('alone.html'))).toContain('Checked alone: layouts of other trades were not looked at.');
    expect(read(path('alone.html'))).not.toContain(DO_NOT);
  });

  it('asks which one is meant where several have it, and takes --of', () => {
    const { code, err } = ahx(['sheet', close, same, path('which.html'), '--package', 'P']);
    expect(code).toBe(2);
    expect(err).toMatch(/More than one layout has package P: .*close\.ahx\.json, .*same\.ahx\.json\. --of FILE/);
    expect(existsSync(path('which.html'))).toBe(false);
    expect(ahx(['sheet', close, same, path('which.html'), '--package', 'P', '--of', same]).err).toContain('2 holes.');
    expect(ahx(['sheet', close, same, path('w.html'), '--package', 'P', '--of', 'no.json']).code).toBe(2);
    expect(ahx(['sheet', close, same, path('w.html'), '--package', 'R']).err).toContain(
      'None of the layouts has package R.',
    );
  });

  it('lists what there is in each, and says which layouts cannot be compared', () => {
    expect(ahx(['sheet', close, other]).out.split('\n')).toEqual(['--package P  2 holes', '--package Q  1 hole', '']);
    const apart = file('apart.ahx.json', layoutText({ id: 'T-4', frame: { name: 'Elsewhere', heightDatum: 'floor' } }));
    ahx(['sheet', close, apart, path('apart.html'), '--package', 'P']);
    expect(read(path('apart.html'))).toContain('cannot be compared with this layout: apart.ahx.json.');
  });
});

describe('ahx sheet refuses', () => {
  it.each([
    [['--package', 'FP-day'], 'The layout has no package "FP-day". Did you mean "FP-day-1"?'],
    [['--area', 'x'], 'The layout has no area "x".'],
    [['--level', 'L9', '--trade', 'sprinkler'], 'The layout has no level "L9".'],
    [['--level', 'L1'], '--level and --trade are given together.'],
    [['--package', 'FP-day-1', '--area', 'pour-1'], 'Choose one:'],
  ])('%j', (choice, message) => {
    const { code, err } = ahx(['sheet', sprinkler, path('refused.html'), ...choice]);
    expect(code).toBe(2);
    expect(err).toContain(message);
    expect(existsSync(path('refused.html'))).toBe(false);
  });

  it('a name that says no form, and a choice without a file', () => {
    expect(ahx(['sheet', sprinkler, path('sheet.pdf'), '--package', 'FP-day-1']).err).toContain(
      'ends in .html or .svg',
    );
    expect(ahx(['sheet', sprinkler, '--package', 'FP-day-1']).code).toBe(2);
  });

  it('to overwrite a file without --force, and the layout itself at all', () => {
    const out = file('there.html', 'mine');
    expect(ahx(['sheet', sprinkler, out, '--package', 'FP-day-1']).code).toBe(2);
    expect(read(out)).toBe('mine');
    expect(ahx(['sheet', sprinkler, out, '--package', 'FP-day-1', '--force', ...FINE]).code).toBe(0);
    expect(read(out)).toContain('<section class="sheet"');
    const layout = file('layout.html', read(sprinkler));
    expect(ahx(['sheet', layout, layout, '--package', 'FP-day-1', '--force']).code).toBe(2);
    expect(read(layout)).toBe(read(sprinkler));
  });

  it('a layout that is not valid, and a file that is not there', () => {
    const { code, err } = ahx(['sheet', poor, path('poor.html'), '--area', 'x']);
    expect(code).toBe(1);
    expect(err).toContain('because it has errors of form');
    expect(ahx(['sheet', path('gone.ahx.json'), path('gone.html'), '--area', 'x']).code).toBe(3);
  });

  it('a table without a profile', () => {
    const { code, err } = ahx(['sheet', sprinklerPoints, path('table.html'), '--area', 'pour-1']);
    expect(code).toBe(2);
    expect(err).toContain('is a table; --profile FILE says which column is what.');
  });

  it('more SVG files than a folder should get', () => {
    const holes = Array.from({ length: 900 }, (_, k) => hole(`h${k}`, [k * 300, 0, 0]));
    const layout = file(
      'many.ahx.json',
      layoutText({ holes, packages: [{ id: 'P', holes: holes.map(({ id }) => id) }] }),
    );
    const { code, err } = ahx(['sheet', layout, path('many.svg'), '--package', 'P']);
    expect(code).toBe(2);
    expect(err).toContain('more than 100; write OUT.html');
  });
});
