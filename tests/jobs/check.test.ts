import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import { rules } from '../../src/check/list.js';
import { BadSeverity, check, Checker, checkStream, createChecker } from '../../src/jobs/check.js';
import { severityFor } from '../../src/model/rule.js';
import { sha256 } from '../../src/node/sha256.js';
import { jsonReport } from '../../src/report/json.js';
import { hole, layoutText, smallLayout, typeWithSpacing } from './small-layout.js';

const encoder = new TextEncoder();
const good = layoutText();
/** Two holes too close, one id twice, a reference to nothing. */
const bad = layoutText({
  holeTypes: [typeWithSpacing(80)],
  holes: [
    hole('H-1', [0, 0, 0]),
    hole('H-2', [79, 0, 0]),
    hole('H-2', [500, 0, 0]),
    hole('H-4', [900, 0, 0], { trade: 'XX' }),
  ],
});
const profile: ColumnProfile = {
  ahx: '0.1',
  kind: 'column-profile',
  columns: [
    { column: 'Nr', field: 'id' },
    { column: 'E', field: 'x', unit: 'mm' },
    { column: 'N', field: 'y', unit: 'mm' },
  ],
  constants: { trade: 'FP', holeType: 'T' },
  layout: {
    id: 'T-1',
    revision: { label: 'A' },
    frame: smallLayout.frame,
    trades: smallLayout.trades,
    holeTypes: [typeWithSpacing(80)],
  },
};
const table = 'Nr,E,N\n1,0,0\n2,500,0\n3,x,0\n';

async function* chunksOf(text: string, size: number): AsyncGenerator<Uint8Array> {
  const bytes = encoder.encode(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}

describe('check', () => {
  it('takes texts and bytes', () => {
    expect(check([{ name: 'a', data: bad }])).toEqual(check([{ name: 'a', data: encoder.encode(bad) }]));
    expect(check([{ name: 'a', data: good }])).toMatchObject({
      verdict: { format: 'pass', site: 'pass' },
      counts: { error: 0, warning: 0, info: 0 },
      inputs: [
        {
          name: 'a',
          kind: 'layout',
          format: 'json',
          bytes: good.length,
          id: 'T-1',
          revision: 'A',
          holes: 1,
          judged: 1,
        },
      ],
    });
  });

  it('gives a report without inputs where there are none', () => {
    const report = check([]);
    expect(report).toMatchObject({ inputs: [], findings: [], verdict: { format: 'pass', site: 'pass' } });
    expect(new Set(report.coverage.map(({ outcome }) => outcome))).toEqual(new Set(['not-applicable', 'not-run']));
  });

  it('puts several inputs into one report, each finding with the number of its input', () => {
    // The layouts have one id; what is said of that is no matter here.
    const severities = { 'layout-repeated': 'off', 'frames-differ': 'off' } as const;
    const report = check(
      [
        { name: 'good', data: good },
        { name: 'bad', data: bad },
        { name: 'points', data: table, profile },
        { name: 'bad again', data: bad },
      ],
      { severities },
    );
    expect(report.inputs.map(({ name, kind, format }) => [name, kind, format])).toEqual([
      ['good', 'layout', 'json'],
      ['bad', 'layout', 'json'],
      ['points', 'layout', 'csv'],
      ['bad again', 'layout', 'json'],
    ]);
    const alone = check([{ name: 'bad', data: bad }]);
    expect(alone.findings).toHaveLength(4);
    for (const input of [2, 4]) {
      const own = report.findings.filter((finding) => finding.input === input);
      expect(own.map(({ rule, place, data }) => [rule, place, data])).toEqual(
        alone.findings.map(({ rule, place, data }) => [rule, place, data]),
      );
    }
    expect(report.findings.filter(({ input }) => input === 3).map(({ rule, place }) => [rule, place])).toEqual([
      ['cell-unreadable', { row: 4, column: 2 }],
    ]);
    expect(report.counts.error).toBe(9);
    expect(report.findings.map(({ input }) => input)).toEqual([2, 2, 2, 2, 3, 4, 4, 4, 4]);
  });

  it('does not compare the holes of one input with those of another', () => {
    expect(
      check([
        { name: 'a', data: good },
        { name: 'b', data: good },
      ]).counts.error,
    ).toBe(0);
  });

  it('numbers causes from 1 by weight, and findings name theirs', () => {
    const report = check([
      {
        name: 'a',
        data: layoutText({ holes: [hole('h-1', [0, 0, 0]), hole('H-1', [9, 9, 9]), hole('H-1', [99, 9, 9])] }),
      },
    ]);
    expect(report.causes.map(({ id, severity, rule }) => [id, severity, rule])).toEqual([
      [1, 'error', 'duplicate-id'],
      [2, 'warning', 'lookalike-id'],
    ]);
    for (const { cause, rule } of report.findings) expect(report.causes[cause - 1].rule).toBe(rule);
  });

  it('gives places by pointer, line, column and byte', () => {
    const text = JSON.stringify(JSON.parse(bad), null, 2);
    const [first] = check([{ name: 'a', data: text }]).findings;
    expect(first).toMatchObject({ rule: 'holes-too-close', id: 'H-1', place: { pointer: '/holes/0/point' } });
    const byte = text.indexOf('[', text.indexOf('"H-1"'));
    const lines = text.slice(0, byte).split('\n');
    expect(first.place).toEqual({
      pointer: '/holes/0/point',
      line: lines.length,
      column: (lines.at(-1) ?? '').length + 1,
      byte,
    });
  });

  it('lists the first findings by record and rule, and counts the rest', () => {
    const all = check([{ name: 'a', data: bad }]);
    for (const sampleLimit of [0, 1, 2, 3]) {
      const report = check([{ name: 'a', data: bad }], { sampleLimit });
      expect(report.findings).toEqual(all.findings.slice(0, sampleLimit));
      expect(report.sample).toEqual({ limit: sampleLimit, listed: sampleLimit, total: 4 });
      expect([report.counts, report.causes, report.coverage]).toEqual([all.counts, all.causes, all.coverage]);
    }
    expect(all.sample.limit).toBe(1000);
  });

  it('keeps the causes of ten thousand holes with five faults few', () => {
    const holes = Array.from({ length: 10_000 }, (_, k) => hole(`H-${k}`, [k * 200, 0, 0]));
    Object.assign(holes[10], { trade: 'XX' });
    Object.assign(holes[20], { point: holes[21].point });
    Object.assign(holes[30], { depth: '60' });
    Object.assign(holes[40], { id: 'H-41' });
    Object.assign(holes[50], { colour: 'red' });
    const report = check([{ name: 'a', data: layoutText({ holes }) }]);
    expect(report.causes.length).toBeLessThanOrEqual(10);
    expect(report.counts.error).toBe(5);
  });

  it('gives the same report for the same bytes, byte for byte', () => {
    const inputs = [
      { name: 'a', data: bad },
      { name: 'b', data: table, profile },
    ];
    expect(jsonReport(check(inputs))).toBe(jsonReport(check(inputs)));
  });
});

describe('severities', () => {
  const two = layoutText({
    trades: [
      { id: 'FP', name: 'A' },
      { id: 'EL', name: 'B' },
    ],
    holes: [hole('H-1', [0, 0, 0]), hole('h-1', [0, 0, 0], { trade: 'EL' })],
  });

  it('that are set hold in every case, even where the rule gives one to the case', () => {
    const severityOf = (severities: Parameters<typeof check>[1]) =>
      check([{ name: 'a', data: two }], severities).findings.map(({ rule, severity }) => [rule, severity]);
    expect(severityOf({})).toEqual([
      ['lookalike-id', 'warning'],
      ['holes-coincide', 'warning'],
    ]);
    expect(severityOf({ severities: { 'holes-coincide': 'error', 'lookalike-id': 'info' } })).toEqual([
      ['lookalike-id', 'info'],
      ['holes-coincide', 'error'],
    ]);
    expect(severityOf({ severities: { 'holes-coincide': 'off', 'lookalike-id': 'off' } })).toEqual([]);
  });

  it('turn on a rule that is off by itself', () => {
    const unused = layoutText({
      trades: [
        { id: 'FP', name: 'A' },
        { id: 'EL', name: 'B' },
      ],
    });
    expect(check([{ name: 'a', data: unused }]).counts).toEqual({ error: 0, warning: 0, info: 0 });
    const report = check([{ name: 'a', data: unused }], { severities: { 'unused-definition': 'warning' } });
    expect(report.findings.map(({ rule, severity, place }) => [rule, severity, place.pointer])).toEqual([
      ['unused-definition', 'warning', '/trades/1/id'],
    ]);
  });

  it('of a rule that does not exist are refused', () => {
    expect(() => check([], { severities: { 'no-such-rule': 'error' } })).toThrow('no-such-rule');
    expect(() => check([], { severities: { 'holes-coincid': 'error' } })).toThrow('Did you mean "holes-coincide"?');
  });

  it('may raise what the specification says about the form of a file, not lower it', () => {
    for (const severity of ['warning', 'info', 'off'] as const) {
      expect(() => check([], { severities: { 'unknown-member': severity } })).toThrow(BadSeverity);
    }
    const marked = { name: 'a', data: `\ufeff${good}` };
    expect(check([marked]).verdict.format).toBe('pass');
    expect(check([marked], { severities: { 'byte-order-mark': 'error' } }).verdict.format).toBe('fail');
  });
});

describe('createChecker', () => {
  it('takes inputs one after the other, in any chunks', () => {
    for (const size of [1, 7, 1000]) {
      const checker = createChecker();
      for (const data of [bad, good]) {
        checker.open('a');
        const bytes = encoder.encode(data);
        for (let at = 0; at < bytes.length; at += size) checker.write(bytes.subarray(at, at + size));
        checker.close();
      }
      expect(checker.end()).toEqual(
        check([
          { name: 'a', data: bad },
          { name: 'a', data: good },
        ]),
      );
    }
  });

  it('closes the last input itself', () => {
    const checker = createChecker();
    checker.open('a');
    checker.write(encoder.encode(bad));
    expect(checker.end()).toEqual(check([{ name: 'a', data: bad }]));
  });

  it('refuses to open an input inside another, and to close none', () => {
    const checker = new Checker();
    expect(() => checker.close()).toThrow('No input is open.');
    checker.open('a');
    expect(() => checker.open('b')).toThrow('still open');
  });

  it('takes note of an input that cannot be read, before it was opened or on the way', () => {
    for (const isOpened of [false, true]) {
      const checker = createChecker();
      if (isOpened) {
        checker.open('gone');
        checker.write(encoder.encode(bad.slice(0, 40)));
      }
      checker.unreadable('gone');
      checker.open('good');
      checker.write(encoder.encode(good));
      checker.close();
      const { inputs, verdict, coverage } = checker.end();
      expect(inputs.map(({ name }) => name)).toEqual(['gone', 'good']);
      expect(verdict.site).toBe('cannot-judge');
      expect(verdict.format).not.toBe('pass');
      expect(coverage.find(({ rule }) => rule === 'wrong-type')?.reason).toBe('an input cannot be read');
    }
  });

  it('does not hold on to the chunks that it was given', () => {
    const checker = createChecker();
    checker.open('a');
    const buffer = new Uint8Array(5);
    const bytes = encoder.encode(bad);
    for (let at = 0; at < bytes.length; at += 5) {
      const part = bytes.subarray(at, at + 5);
      buffer.set(part);
      checker.write(buffer.subarray(0, part.length));
      buffer.fill(0);
    }
    expect(checker.end()).toEqual(check([{ name: 'a', data: bad }]));
  });
});

describe('checkStream', () => {
  it('gives the report of the whole', async () => {
    const expected = check([{ name: 'a', data: bad }], { asOf: '2026-03-02T07:30:00Z' });
    expect(await checkStream(chunksOf(bad, 50), { name: 'a', asOf: '2026-03-02T07:30:00Z' })).toEqual(expected);
    expect(await checkStream(chunksOf(table, 3), { name: 'b', profile })).toEqual(
      check([{ name: 'b', data: table, profile }]),
    );
    expect(await checkStream(chunksOf('', 1), { name: 'c' })).toEqual(check([{ name: 'c', data: '' }]));
  });

  it('tells how many bytes it has taken', async () => {
    const seen: number[] = [];
    await checkStream(chunksOf(good, 100), { name: 'a', onProgress: (bytes) => seen.push(bytes) });
    expect(seen).toEqual([
      ...Array.from({ length: Math.floor(good.length / 100) }, (_, k) => (k + 1) * 100),
      good.length,
    ]);
  });

  it('stops when the signal says so, with its reason', async () => {
    const controller = new AbortController();
    let taken = 0;
    const stopped = checkStream(chunksOf(good, 10), {
      name: 'a',
      signal: controller.signal,
      onProgress: (bytes) => {
        taken = bytes;
        if (bytes === 30) controller.abort(new Error('enough'));
      },
    });
    await expect(stopped).rejects.toThrow('enough');
    expect(taken).toBe(30);
    await expect(
      checkStream(chunksOf(good, 10), { name: 'a', signal: AbortSignal.abort(new Error('never')) }),
    ).rejects.toThrow('never');
  });

  it('hands on the error of a stream', async () => {
    async function* failing(): AsyncGenerator<Uint8Array> {
      yield encoder.encode('{');
      throw new Error('line dropped');
    }
    await expect(checkStream(failing(), { name: 'a' })).rejects.toThrow('line dropped');
  });
});

describe('what goes into the report', () => {
  it('is the SHA-256 of the bytes, where a hash is handed in', () => {
    const text = layoutText({ title: 'größe' });
    const expected = `sha256:${createHash('sha256').update(text).digest('hex')}`;
    expect(check([{ name: 'a', data: text }], { sha256 }).inputs[0].digest).toBe(expected);
    expect(check([{ name: 'a', data: table, profile }], { sha256 }).inputs[0].digest).toBe(
      `sha256:${createHash('sha256').update(table).digest('hex')}`,
    );
    expect(check([{ name: 'a', data: text }]).inputs[0].digest).toBeUndefined();
  });

  it('is the time and the purpose that were handed in', () => {
    expect(check([], { asOf: '2026-03-02T07:30:00Z', purpose: 'for-drilling' })).toMatchObject({
      asOf: '2026-03-02T07:30:00Z',
      purpose: 'for-drilling',
    });
    expect(check([])).toMatchObject({ purpose: 'for-review' });
    expect(check([]).asOf).toBeUndefined();
  });

  it('is every rule once, and the caution', () => {
    const { coverage, caution } = check([]);
    expect(coverage.map(({ rule }) => rule)).toEqual(rules.map(({ id }) => id));
    expect(caution).toMatch(/^Layout data only\. Not a design, not a permit to drill\./);
  });
});

describe('kinds of inputs', () => {
  const report = jsonReport(check([{ name: 'a', data: bad }]));
  const column = JSON.stringify(profile);

  it('are read from their heads', () => {
    const kinds = check([
      { name: 'l', data: good },
      { name: 'r', data: report },
      { name: 'p', data: column },
      { name: 't', data: table, profile },
      { name: 'u', data: '{"a":1}' },
      { name: 'e', data: '' },
    ]).inputs.map(({ kind }) => kind);
    expect(kinds).toEqual(['layout', 'report', 'column-profile', 'layout', 'unknown', 'unknown']);
  });

  it('other than layouts are judged by their schema, and by no rule of the site', () => {
    for (const data of [report, column]) {
      const { verdict, coverage, counts } = check([{ name: 'a', data }]);
      expect([verdict, counts.error]).toEqual([{ format: 'pass', site: 'pass' }, 0]);
      for (const { rule, outcome } of coverage) {
        const info = rules.find(({ id }) => id === rule) as (typeof rules)[number];
        const isOff = severityFor(info, 'for-review') === 'off';
        const isEarly = info.stage === 'bytes' || info.stage === 'JSON' || info.stage === 'schema';
        const expected = isOff ? 'not-run' : isEarly ? 'passed' : 'not-applicable';
        if (rule !== 'profile-unfit') expect([rule, outcome]).toEqual([rule, expected]);
      }
    }
    const broken = check([{ name: 'a', data: column.replace('"mm"', '"mile"') }]);
    expect(broken.verdict.format).toBe('fail');
    expect(broken.findings.map(({ rule, place }) => [rule, place.pointer])).toEqual([
      ['not-a-choice', '/columns/1/unit'],
    ]);
  });

  it('may have a head that comes late, or behind a byte order mark', () => {
    const { kind, ...rest } = JSON.parse(column) as Record<string, unknown>;
    expect(check([{ name: 'a', data: JSON.stringify({ ...rest, kind }) }]).inputs[0].kind).toBe('column-profile');
    const marked = check([{ name: 'a', data: `\ufeff${column}` }]);
    expect(marked.inputs[0].kind).toBe('column-profile');
    expect(marked.findings.map(({ rule, severity }) => [rule, severity])).toEqual([['byte-order-mark', 'warning']]);
  });

  it('that are tables have the row of each hole in its findings', () => {
    const crowded = check([
      {
        name: 't',
        data: 'Nr,E,N\n1,0,0\n\n2,79,0\n1,500,0\n',
        profile: {
          ...profile,
          constants: { trade: 'FP', holeType: 'T', substrate: 'S' },
          layout: { ...profile.layout, substrates: [{ id: 'S', name: 'Slab', kind: 'solid-slab' }] },
        },
      },
    ]);
    expect(crowded.findings.map(({ rule, place, id }) => [rule, place, id])).toEqual([
      ['holes-too-close', { row: 2, column: 2 }, '1'],
      ['holes-too-close', { row: 4, column: 2 }, '2'],
      ['duplicate-id', { row: 5, column: 1 }, '1'],
    ]);
  });

  it('that came from a table once still name its row', () => {
    const layout = layoutText({
      holeTypes: [typeWithSpacing(80)],
      holes: [hole('A', [0, 0, 0], { origin: { row: 17 } }), hole('B', [50, 0, 0], { origin: { row: 18 } })],
    });
    expect(check([{ name: 'a', data: layout }]).findings.map(({ source }) => source)).toEqual([
      { row: 17 },
      { row: 18 },
    ]);
  });
});
