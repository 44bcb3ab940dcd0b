import { spawnSync } from 'node:child_process';
import { closeSync, openSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/generated/report.js';
import { layoutText } from '../jobs/small-layout.js';
import { ahx, command, poor, sprinkler, sprinklerProfile, survey, surveyProfile, workFolder } from './run-ahx.js';

const { file, path } = workFolder();

const layout = layoutText();
const utf16 = (text: string, isLittle: boolean) => {
  const bytes = Buffer.from(text, 'utf16le');
  return isLittle ? bytes : bytes.swap16();
};
/** Bytes without any sense, the same each time. */
const binary = Uint8Array.from({ length: 5000 }, (_, k) => (k * 7919 + (k >> 3) * 104_729) % 251);

const bad: [what: string, name: string, content: string | Uint8Array, words: string][] = [
  ['an empty file', 'empty.json', '', 'the end of the text found'],
  ['blanks', 'blank.json', ' \r\n\t', 'the end of the text found'],
  ['a text', 'words.json', 'Dear all, find the holes attached.', 'a value expected, D found'],
  ['binary data', 'binary.json', binary, 'Not valid AHX 0.1'],
  ['zeros', 'zeros.json', new Uint8Array(3000), 'byte 0x00 found'],
  [
    'UTF-16 with a mark',
    'utf16.json',
    Buffer.concat([Buffer.from([0xff, 0xfe]), utf16(layout, true)]),
    'UTF-16, little-endian',
  ],
  ['UTF-16 without a mark', 'utf16be.json', utf16(layout, false), 'UTF-16, big-endian'],
  ['Latin-1', 'latin1.json', Buffer.from(layoutText({ title: 'Büro' }), 'latin1'), 'The text is not UTF-8 here (0xFC)'],
  ['brackets without end', 'deep.json', '['.repeat(200_000), 'more than 128'],
  ['members without end', 'deeper.json', '{"a":'.repeat(200_000), 'more than 128'],
  ['a cut file', 'cut.ahx.json', layout.slice(0, 200), 'the end of the text found'],
  ['two documents', 'two.json', layout + layout, 'nothing after the document expected'],
  ['a list', 'list.json', '[{"id":"H-1"}]', 'must be an object, not an array'],
  ['a number', 'number.json', '42', 'must be an object, not a single value'],
  ['another object', 'other.json', '{"type":"FeatureCollection","features":[]}', 'The member "ahx" is missing'],
  [
    'a name of a prototype',
    'proto.json',
    '{"__proto__":{"ahx":"0.1"},"constructor":1,"toString":[]}',
    'has no member "__proto__"',
  ],
  [
    'a profile without columns',
    'columns.json',
    '{"ahx":"0.1","kind":"column-profile"}',
    'The member "columns" is missing',
  ],
  ['a report that is none', 'report.json', '{"ahx":"0.1","kind":"report"}', 'is missing'],
  ['a kind that is no text', 'kind.json', layoutText({ kind: 7 }), 'must be a text, not a number'],
  [
    'collections that are none',
    'none.json',
    layoutText({ holes: 5, trades: { id: 'FP' }, levels: 'L1' }),
    'must be an array',
  ],
  [
    'records that are none',
    'records.json',
    layoutText({ holes: [null, 1, 'x', [], {}], trades: [[]], substrates: [null] }),
    'must be an object, not null',
  ],
  [
    'huge numbers',
    'huge.json',
    layoutText({ holes: [{ id: 'H', trade: 'FP', holeType: 'T', point: [1e300, -1e300, 1] }] }),
    'at most 10000000000',
  ],
  ['numbers beyond doubles', 'beyond.json', layout.replace('[1,2,3]', '[1e999,2,3]'), '1e999'],
];

function expectPlainWords(run: ReturnType<typeof ahx>): void {
  expect(`${run.out}${run.err}`).not.toMatch(/\n {4}at |Error:|undefined|\[object|NaN|fault of ahx/);
}

describe('a bad input', () => {
  it.each(bad)('%s gives a finding with a place in plain words', (_, name, content, words) => {
    const run = ahx(['check', file(name, content)]);
    expect(run.code).toBe(1);
    expect(run.out).toContain(words);
    expect(run.out).toMatch(/line \d+, column \d+/);
    expect(run.err).toBe('');
    expectPlainWords(run);
  });

  it.each(bad)('%s is not converted', (_, name, content) => {
    const run = ahx(['convert', file(name, content), path('never.geojson')]);
    expect(run.code).toBe(1);
    expect(run.err).toContain('Nothing was written');
    expectPlainWords(run);
  });

  it.each(bad)('%s is no profile', (_, name, content) => {
    const run = ahx(['check', survey, '--profile', file(name, content)]);
    expect([run.code, run.out]).toEqual([2, '']);
    expect(run.err).toMatch(/is no (valid )?column profile/);
    expectPlainWords(run);
  });

  it.each(bad)('%s, read as a table, gives a finding', (_, name, content) => {
    const run = ahx(['check', file(name.replace(/\.[a-z.]+$/, '.csv'), content), '--profile', surveyProfile]);
    expect(run.code).toBe(1);
    expect(run.out).toMatch(/\[(column-missing|not-utf8)\]/);
    expectPlainWords(run);
  });

  it('is also a file taken for what it is not', () => {
    const cases: [args: string[], code: number, words: string][] = [
      [['check', survey], 2, '--profile FILE says which column is what'],
      [['check', survey, '--profile', sprinkler], 2, 'it needs "kind": "column-profile"'],
      [['check', survey, '--profile', survey], 2, 'is no column profile'],
      [['check', survey, '--profile', sprinklerProfile], 1, '[column-missing]'],
      [['convert', survey, path('never.ahx.json'), '--profile', sprinklerProfile], 1, '[column-missing]'],
      [['convert', sprinklerProfile, path('never.geojson')], 1, 'it is no layout (column-profile)'],
      [['convert', poor, path('never.csv'), '--profile', sprinkler], 2, 'it needs "kind": "column-profile"'],
      [['check', path('.')], 3, 'it is a folder'],
      [['check', survey, '--profile', path('.')], 3, 'it is a folder'],
      [['convert', path('.'), path('never.geojson')], 3, 'it is a folder'],
    ];
    for (const [args, code, words] of cases) {
      const run = ahx(args);
      expect([args, run.code]).toEqual([args, code]);
      expect(run.out + run.err).toContain(words);
      expectPlainWords(run);
    }
  });

  it('reads a table whose rows have no end, no cells or no sense', () => {
    const header = 'Nr,East,North,Height,Code,Remark\n';
    for (const rows of [
      '"',
      '"1,2\n3',
      ',,,,,\n'.repeat(50),
      `${'x'.repeat(300_000)}\n`,
      '1,2,3,4,HGR-38,\0\n',
      '\ufeff1,1,1,1,HGR-38,\n',
      '=1+1,1,1,1,HGR-38,\n',
    ]) {
      const run = ahx(['check', file('rows.csv', header + rows), '--profile', surveyProfile]);
      expect([0, 1]).toContain(run.code);
      expectPlainWords(run);
    }
  });
});

const memory = '/proc/self/mem';

describe('an input that fails while it is read', () => {
  it.skipIf(process.platform !== 'linux')('does not keep the next one from being checked', () => {
    const { code, out, err } = ahx(['check', memory, sprinkler, '--format', 'json']);
    expect(code).toBe(3);
    expect(err).toContain(`ahx: ${memory} cannot be read`);
    const { inputs, verdict, findings } = JSON.parse(out) as Report;
    expect(inputs.map(({ name, kind, holes }) => [name, kind, holes])).toEqual([
      [memory, 'unknown', undefined],
      [sprinkler, 'layout', 36],
    ]);
    expect([verdict, findings]).toEqual([{ format: 'cannot-judge', site: 'cannot-judge' }, []]);
  });

  it('is told by name where it is a folder on standard input', () => {
    const folder = openSync(path('.'), 'r');
    const { status, stdout, stderr } = spawnSync(process.execPath, [command, 'check', '-'], {
      stdio: [folder, 'pipe', 'pipe'],
      encoding: 'utf8',
    });
    closeSync(folder);
    expect([status, stdout, stderr]).toEqual([3, '', 'ahx: standard input cannot be read: it is a folder.\n']);
  });
});
