import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import { createChecker, type OpenOptions } from '../../src/jobs/check.js';
import { convert, type ConvertTarget, lossInWords, whyNot } from '../../src/jobs/convert.js';
import { hole, layoutText, smallLayout } from './small-layout.js';

const encoder = new TextEncoder();

function read(data: string, options: OpenOptions = {}) {
  const checker = createChecker();
  checker.open('a', options);
  checker.write(encoder.encode(data));
  const input = checker.close();
  return { input, report: checker.end() };
}

async function converted(data: string, target: ConvertTarget, options: OpenOptions = {}) {
  const { input, report } = read(data, options);
  const source = input.layout();
  expect(whyNot(report, input)).toBeUndefined();
  if (source === undefined) throw new Error('no layout to convert');
  const { text, losses } = await convert(source, target);
  return { text: [...text].join(''), losses };
}

function example(path: string): string {
  return readFileSync(`examples/${path}`, 'utf8');
}

const profile = JSON.parse(example('ferry-terminal/sprinkler.profile.json')) as ColumnProfile;

describe('convert', () => {
  it('turns the list of the example into its layout, and the layout into a list that gives it again', async () => {
    const layout = JSON.parse(example('ferry-terminal/sprinkler.ahx.json'));
    const there = await converted(example('ferry-terminal/sprinkler-points.csv'), { form: 'layout' }, { profile });
    expect(JSON.parse(there.text)).toEqual(layout);
    expect(there.losses).toEqual([]);
    const back = await converted(there.text, { form: 'csv', profile });
    const again = await converted(back.text, { form: 'layout' }, { profile });
    const ids = (text: string) =>
      (JSON.parse(text) as typeof layout).holes.map(({ origin, ...rest }: { origin: unknown }) => rest);
    expect(ids(again.text)).toEqual(ids(there.text));
  });

  it('keeps members of a layout that it has no name for', async () => {
    const ext = { 'https://example.org/x': { deep: [{ id: 'e' }] } };
    const data = layoutText({ ext, holes: [hole('A', [1.000001, 2, 3], { ext, note: 'é😀"\\' })] });
    expect(JSON.parse((await converted(data, { form: 'layout' })).text)).toEqual(JSON.parse(data));
  });

  it('writes a layout that was kept from a stream as one read from a source', async () => {
    const data = layoutText();
    const bytes = encoder.encode(data);
    const source = { byteLength: bytes.length, slice: (start: number, end: number) => bytes.subarray(start, end) };
    expect(await converted(data, { form: 'layout' }, { source })).toEqual(await converted(data, { form: 'layout' }));
  });

  it('lists its losses when the text has been taken to its end', async () => {
    const { input } = read(layoutText({ packages: [{ id: 'P', name: 'Night shift', holes: ['H-1'] }] }));
    const source = input.layout();
    if (source === undefined) throw new Error('no layout to convert');
    const { text, losses } = await convert(source, { form: 'geojson' });
    for (const _ of text);
    expect(losses.map(lossInWords)).toContain('packages (1): it has no place on a map');
  });
});

describe('whyNot', () => {
  const reason = (data: string, leaveOutBadRows = false, options?: OpenOptions) => {
    const { input, report } = read(data, options);
    return whyNot(report, input, leaveOutBadRows);
  };

  it('lets sound layouts through, even those with findings of the site', () => {
    expect(reason(layoutText())).toBeUndefined();
    expect(reason(layoutText({ holes: [hole('A', [0, 0, 0]), hole('B', [0, 0, 0])] }))).toBeUndefined();
  });

  it('stops what is no layout, what has errors of form, and what cannot be judged', () => {
    expect(reason(JSON.stringify(profile))).toBe('it is no layout (column-profile)');
    expect(reason('{}')).toBe('it is no layout (unknown)');
    expect(reason(layoutText({ colour: 'red' }))).toBe('it has errors of form');
    for (const members of [{ ahx: '0.2' }, { ahx: '1.0' }, { extensionsRequired: ['urn:x:y'] }])
      expect(reason(layoutText(members))).toBe('it could not be judged to its end');
  });

  it('stops a table with bad rows unless they are to be left out', () => {
    const small: ColumnProfile = {
      ahx: '0.1',
      kind: 'column-profile',
      columns: [
        { column: 'A', field: 'id' },
        { column: 'B', field: 'x', unit: 'mm' },
        { column: 'C', field: 'y', unit: 'mm' },
      ],
      constants: { trade: 'FP', holeType: 'T' },
      layout: {
        id: 'T',
        revision: { label: 'A' },
        frame: smallLayout.frame,
        trades: smallLayout.trades,
        holeTypes: smallLayout.holeTypes,
      },
    };
    const rows = 'A,B,C\n1,2,3\n2,x,3\n';
    expect(reason(rows, false, { profile: small })).toBe('it has errors of form');
    expect(reason(rows, true, { profile: small })).toBeUndefined();
    expect(reason('A,B\n1,2\n', true, { profile: small })).toBe('it has errors of form');
    expect(reason('A,B,C\n1,2,3\n1,5,6\n', true, { profile: small })).toBe('it has errors of form');
  });
});
