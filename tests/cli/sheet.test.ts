import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hole, layoutText, smallLayout } from '../jobs/small-layout.js';
import { ahx, example, poor, sprinkler, sprinklerPoints, workFolder } from './run-ahx.js';

const { file, path } = workFolder();
const duct = example('ferry-terminal/duct.ahx.json');
const read = (name: string) => readFileSync(name, 'utf8');

describe('ahx sheet', () => {
  it('writes the sheets of a package as one HTML file, the same each time', () => {
    const [one, other] = [path('one.html'), path('other.html')];
    const { code, err } = ahx(['sheet', sprinkler, one, '--package', 'FP-day-1']);
    expect(code).toBe(0);
    expect(err).toMatch(/Valid AHX 0\.1\.[^]*Written: .*one\.html, \d sheets, 20 holes\./);
    expect(ahx(['sheet', sprinkler, other, '--package', 'FP-day-1']).code).toBe(0);
    expect(read(other)).toBe(read(one));
    const sheets = Number(/(\d) sheets/.exec(err)?.[1]);
    expect(read(one).match(/<section class="sheet"/g)).toHaveLength(sheets);
    expect(read(one)).toContain('size: letter portrait');
  });

  it('writes A4 where that is asked for, for an area', () => {
    const out = path('area.html');
    expect(ahx(['sheet', duct, out, '--area', 'pour-1', '--paper', 'a4']).code).toBe(0);
    expect(read(out)).toContain('size: A4 portrait');
    expect(read(out)).toContain('supersedes A');
  });

  it('writes one SVG file for each sheet, and one by itself under its own name', () => {
    const { code, err } = ahx(['sheet', sprinkler, path('day.svg'), '--level', 'L1', '--trade', 'sprinkler']);
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
    expect(ahx(['sheet', small, path('small.svg'), '--package', 'P']).code).toBe(0);
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
    const { code, err } = ahx(['sheet', two, path('old.svg'), '--package', 'P', '--force']);
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
    const { code, err } = ahx(['sheet', layout, path('cast.html'), '--package', 'P']);
    expect(code).toBe(0);
    expect(err).toContain('1 sheet, 1 hole.');
    expect(err).toContain('Left out: 1 hole cast in or there already.');
    expect(read(path('cast.html'))).toContain('1 cast-in or existing hole: nothing to drill there.');
    const none = ahx(['sheet', layout, path('none.html'), '--package', 'Q']);
    expect(none.code).toBe(1);
    expect(none.err).toContain('Nothing was written: package Q has no hole to drill; 1 hole cast in or there already.');
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
    expect(ahx(['sheet', sprinkler, out, '--package', 'FP-day-1', '--force']).code).toBe(0);
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

  it('a table, and says what to do with it', () => {
    const { code, err } = ahx(['sheet', sprinklerPoints, path('table.html'), '--area', 'pour-1']);
    expect(code).toBe(2);
    expect(err).toContain('is a table; ahx convert makes a layout of it first.');
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
