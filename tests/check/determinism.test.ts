import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding, Report } from '../../src/generated/report.js';
import { createChecker } from '../../src/jobs/check.js';
import { jsonReport } from '../../src/report/json.js';
import { corpusBytes, manifest } from '../conformance/corpus-files.js';
import { benchBytes } from './bench-text.js';

/** Layouts of the corpus that have findings of many kinds, places in odd text, or faults at an end. */
const CHOSEN = [
  'holes-coincide/both-kinds',
  'holes-too-close/group-steps',
  'crosses-keep-out/severities',
  'breaks-through/deck-flutes',
  'unknown-reference/sample',
  'unsupported-version/later-minor-with-news',
  'duplicate-name/escaped',
  'lone-surrogate/columns',
  'byte-order-mark/marked',
  'not-utf8/cut-sequence',
  'not-utf8/utf-16-le',
  'json-syntax/cut-in-a-hole',
  'nested-too-deep/depth-129-in-a-hole',
  'unknown-member/every-member',
];

type Layout = Record<string, Record<string, unknown>[]>;
type Hole = { id: string; point: number[] } & Record<string, unknown>;

/** An invented layout of 3,000 holes in which faults of several kinds were planted, each at a place of its own. */
function faultyLayout(): Layout {
  const layout = JSON.parse(
    new TextDecoder().decode(benchBytes({ holes: 3000, indent: 0, fault: 'none', seed: 11 })),
  ) as Layout;
  const holes = layout.holes as Hole[];
  for (let i = 0; i < 3000; i += 100) {
    const [before, hole] = [holes[i], holes[i + 1]];
    const [x, y, z] = before.point;
    const kind = (i / 100) % 6;
    if (kind === 0) hole.point = [x + 0.5, y, z];
    if (kind === 1) hole.point = [x + 40 + i / 100, y, z];
    if (kind === 2) hole.depth = 240 + i / 100;
    if (kind === 3) hole.trade = 'XX';
    if (kind === 4) hole.dept = 60;
    if (kind === 5) hole.point = [-5000 - 700 * i, y, z];
  }
  return layout;
}

function checked(bytes: Uint8Array, size = bytes.length): Report {
  const checker = createChecker({ sampleLimit: 10_000 });
  for (let at = 0; at === 0 || at < bytes.length; at += size) checker.write(bytes.subarray(at, at + size));
  return checker.end();
}

const encode = (value: unknown, space?: string | number) =>
  new TextEncoder().encode(JSON.stringify(value, null, space));
const faulty = faultyLayout();

describe('the report', () => {
  const inputs: [name: string, bytes: Uint8Array][] = [
    ...CHOSEN.map((id): [string, Uint8Array] => {
      const one = manifest.cases.find((candidate) => candidate.id === id);
      if (one === undefined) throw new Error(`the corpus has no case ${id}`);
      return [id, corpusBytes(one.files[0])];
    }),
    ['3,000 holes with faults', encode(faulty, 1)],
  ];

  it.each(inputs)('on %s is the same byte for byte however the text is cut into chunks', (_, bytes) => {
    const whole = jsonReport(checked(bytes));
    for (const size of [1, 7, (1 << 16) + 1]) expect(jsonReport(checked(bytes, size)) === whole).toBe(true);
  });

  it('on a layout with faults has findings of each kind that was planted', () => {
    const { findings } = checked(encode(faulty));
    const rules = new Set(findings.map(({ rule }) => rule));
    expect([...rules].sort()).toEqual(
      [
        'breaks-through',
        'holes-coincide',
        'holes-too-close',
        'outside-substrate',
        'unknown-member',
        'unknown-reference',
      ].sort(),
    );
    expect(findings.length).toBe(35);
  });
});

/** A finding without the place that hangs on the order of records; of two holes at one place either may be the later one. */
function apartFromOrder({ rule, severity, id, place, data }: Finding): string {
  if (rule === 'holes-coincide') {
    return JSON.stringify([rule, severity, [id, data.other].sort(), data.distance]);
  }
  return JSON.stringify([rule, severity, id, place.pointer?.replace(/\d+/, '*'), data]);
}

function essence({ verdict, counts, findings, coverage }: Report) {
  return { verdict, counts, findings: findings.map(apartFromOrder).sort(), coverage };
}

describe('what is found', () => {
  const expected = essence(checked(encode(faulty)));

  it('does not hang on the order of records', () => {
    const shuffled = (records: Record<string, unknown>[]) =>
      fc.shuffledSubarray(records, { minLength: records.length, maxLength: records.length });
    const { holes, keepOuts, holeTypes, trades } = faulty;
    const orders = fc.record({
      holes: shuffled(holes),
      keepOuts: shuffled(keepOuts),
      holeTypes: shuffled(holeTypes),
      trades: shuffled(trades),
    });
    const holds = (order: Partial<Layout>) =>
      JSON.stringify(essence(checked(encode({ ...faulty, ...order })))) === JSON.stringify(expected);
    fc.assert(fc.property(orders, holds), { numRuns: 8, seed: 5, endOnFailure: true });
  });

  it('does not hang on the order of members, but for the version in front', () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([name, member]) => [name, turned(member)]),
      );
    };
    expect(essence(checked(encode(turned(faulty))))).toEqual(expected);
  });

  it('does not hang on white space', () => {
    const spaced = (text: string) => new TextEncoder().encode(text);
    for (const text of [
      JSON.stringify(faulty, null, 4),
      JSON.stringify(faulty, null, '\t').replaceAll('\n', '\r\n'),
      `\n\t ${JSON.stringify(faulty, null, ' ').replaceAll(': ', ' :\n')}\r\n`,
    ]) {
      expect(essence(checked(spaced(text)))).toEqual(expected);
    }
  });
});
