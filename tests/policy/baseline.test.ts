import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Baseline } from '../../src/generated/baseline.js';
import type { Report } from '../../src/generated/report.js';
import { check, type CheckOptions } from '../../src/jobs/check.js';
import { acceptFindings, pruneBaseline } from '../../src/policy/accept.js';
import { isSameFact, lastingFacts } from '../../src/policy/lasting-facts.js';
import { hole, layoutText, typeWithSpacing } from '../jobs/small-layout.js';

const asOf = '2026-03-02T07:30:00-05:00';
const said = { reason: 'Agreed with the designer', owner: 'Invented Engineers', accepted: '2026-03-02' };
const spaced = { holeTypes: [typeWithSpacing(80)] };

/** Two pairs of holes that are too close. */
const four = [0, 50, 1000, 1050].map((x, k) => hole(`H-${k}`, [x, 0, 0]));

function checked(holes: readonly unknown[], options: CheckOptions = {}, more: Record<string, unknown> = {}): Report {
  return check([{ name: 'a', data: layoutText({ ...spaced, ...more, holes }) }], { asOf, ...options });
}

function acceptedAll(expires = '2026-06-30'): Baseline {
  return acceptFindings(checked(four), { ...said, expires });
}

describe('a baseline', () => {
  it('made from a report accepts what the report lists', () => {
    const baseline = acceptedAll();
    expect(baseline).toEqual({
      ahx: '0.1',
      kind: 'baseline',
      entries: [
        {
          rule: 'holes-too-close',
          layout: 'T-1',
          ...said,
          expires: '2026-06-30',
          findings: four.map(({ id }, k) => ({
            hole: id,
            data: expect.objectContaining({ other: `H-${k ^ 1}`, distance: 50, limit: 80 }),
          })),
        },
      ],
    });
    const report = checked(four, { baseline });
    expect(report.counts).toEqual({ error: 0, warning: 0, info: 0 });
    expect(report.verdict).toEqual({ format: 'pass', site: 'pass' });
    expect(report.baseline).toEqual({
      entries: [
        expect.objectContaining({
          rule: 'holes-too-close',
          owner: said.owner,
          state: 'in-force',
          findings: 4,
          matched: 4,
        }),
      ],
      counts: { error: 4, warning: 0, info: 0 },
    });
  });

  it('keeps what it accepts in the list, marked', () => {
    const report = checked(four, { baseline: acceptedAll() });
    expect(report.findings.map(({ accepted, severity }) => [accepted, severity])).toEqual(four.map(() => [1, 'error']));
    expect(report.causes).toEqual([expect.objectContaining({ accepted: 1, findings: 4, severity: 'error' })]);
    expect(report.sample).toEqual({ limit: 1000, listed: 4, total: 4 });
  });

  it('does not accept a hole that came later, nor one whose distance is another now', () => {
    const later = [...four, hole('H-4', [3000, 0, 0]), hole('H-5', [3050, 0, 0])];
    expect(checked(later, { baseline: acceptedAll() }).counts.error).toBe(2);
    const nearer = four.map((one) => (one.id === 'H-1' ? hole('H-1', [49, 0, 0]) : one));
    const report = checked(nearer, { baseline: acceptedAll() });
    expect(report.counts.error).toBe(2);
    expect(report.baseline?.entries[0]).toMatchObject({ state: 'in-force', findings: 4, matched: 2 });
  });

  it.each([
    [0.0004, 0],
    [0.0006, 2],
  ])('compares numbers with the slack: shifted by %f mm, %i errors', (by, errors) => {
    const shifted = four.map((one) => (one.id === 'H-1' ? hole('H-1', [50 + by, 0, 0]) : one));
    expect(checked(shifted, { baseline: acceptedAll() }).counts.error).toBe(errors);
  });

  it('holds to the end of its last day and not longer', () => {
    const baseline = acceptedAll('2026-03-02');
    expect(checked(four, { baseline }).counts.error).toBe(0);
    const after = checked(four, { baseline, asOf: '2026-03-03T00:00:00-05:00' });
    expect(after.counts.error).toBe(4);
    expect(after.verdict.site).toBe('fail');
    expect(after.baseline?.entries[0]).toMatchObject({ state: 'expired', matched: 4 });
    expect(after.findings.every(({ accepted }) => accepted === undefined)).toBe(true);
  });

  it('lets an entry in force go before one that has run out', () => {
    const [entry] = acceptedAll().entries;
    const baseline: Baseline = { ahx: '0.1', kind: 'baseline', entries: [{ ...entry, expires: '2026-01-31' }, entry] };
    const report = checked(four, { baseline });
    expect(report.counts.error).toBe(0);
    expect(report.findings.map(({ accepted }) => accepted)).toEqual([2, 2, 2, 2]);
  });

  it('says which entries are stale and which were not looked at', () => {
    const [entry] = acceptedAll().entries;
    const other = { ...entry, layout: 'T-2' };
    const off = { ...entry, rule: 'holes-coincide' };
    const report = checked([four[0]], {
      baseline: { ahx: '0.1', kind: 'baseline', entries: [entry, other, off] },
      severities: { 'holes-coincide': 'off' },
    });
    expect(report.baseline?.entries.map(({ state, matched }) => [state, matched])).toEqual([
      ['stale', 0],
      ['not-checked', 0],
      ['not-checked', 0],
    ]);
  });

  it('is the same whatever the order of inputs', () => {
    const first = { name: 'a', data: layoutText({ ...spaced, id: 'A', holes: [hole('H-1', [0, 0, 0])] }) };
    const second = { name: 'b', data: layoutText({ ...spaced, id: 'B', holes: [hole('H-1', [50, 0, 0])] }) };
    const baseline = acceptFindings(check([first, second], { asOf }), { ...said, expires: '2026-06-30' });
    expect(baseline.entries.map(({ layout, rule }) => [layout, rule])).toEqual([
      ['A', 'holes-too-close'],
      ['B', 'holes-too-close'],
    ]);
    for (const inputs of [
      [first, second],
      [second, first],
    ])
      expect(check(inputs, { asOf, baseline }).counts.error).toBe(0);
  });

  it('accepts findings that are about no hole, by their place', () => {
    const more = { holeTypes: [{ ...typeWithSpacing(80), embedment: 70 }] };
    const report = checked([four[0]], {}, more);
    expect(report.causes.map(({ rule }) => rule)).toContain('embedment-exceeds-depth');
    const baseline = acceptFindings(report, { ...said, expires: '2026-06-30' });
    expect(baseline.entries[0].findings[0].record).toBe('holeTypes/T');
    expect(checked([four[0]], { baseline }, more).counts).toEqual({ error: 0, warning: 0, info: 0 });
  });

  it('accepts findings of records, which are made while their input is open', () => {
    const holes = [hole('h-0', [0, 0, 0]), hole('H-0', [5000, 0, 0])];
    const report = checked(holes);
    expect(report.causes.map(({ rule }) => rule)).toEqual(['lookalike-id']);
    const baseline = acceptFindings(report, { ...said, expires: '2026-06-30' });
    expect(checked(holes, { baseline }).counts).toEqual({ error: 0, warning: 0, info: 0 });
  });

  it('goes by the id of a record, not by its place in the list', () => {
    const twins = { symbol: { colour: '#ff0000', shape: 'circle' } };
    const trades = (...ids: string[]) => ({ trades: ids.map((id) => ({ id, name: id, ...twins })) });
    const one = [hole('H-0', [0, 0, 0], { trade: 'A' })];
    const report = checked(one, {}, trades('A', 'X'));
    expect(report.findings.map(({ rule, record }) => [rule, record])).toEqual([['symbol-clash', 'trades/X']]);
    const baseline = acceptFindings(report, { ...said, expires: '2026-06-30' });
    const warnings = (...ids: string[]) => checked(one, { baseline }, trades(...ids)).counts.warning;
    expect(warnings('A', 'X')).toBe(0);
    expect(warnings('A', 'Y')).toBe(1);
    expect(warnings('A', 'Y', 'X')).toBe(1);
  });

  it('lets later rules judge what is no longer in doubt once it is accepted', () => {
    const tendon = {
      keepOuts: [
        {
          id: 'K',
          kind: 'tendon',
          standoff: 20,
          knownFrom: 'survey',
          shape: {
            path: {
              points: [
                [-500, 0, 40],
                [500, 0, 40],
              ],
              radius: 10,
            },
          },
        },
      ],
    };
    const off = [hole('H', [0, 0, 16])];
    const doubted = checked(off, {}, tendon);
    expect(doubted.causes.map(({ rule }) => rule)).toEqual(['off-surface']);
    const baseline = acceptFindings(doubted, { ...said, expires: '2026-06-30' });
    const report = checked(off, { baseline }, tendon);
    expect(report.verdict.site).toBe('fail');
    expect(report.causes.map(({ rule, accepted }) => [rule, accepted])).toEqual(
      expect.arrayContaining([
        ['crosses-keep-out', undefined],
        ['off-surface', 1],
      ]),
    );
  });

  it('is not voided by holes that lie as they should', () => {
    const off = [0, 500, 1000].map((x, k) => hole(`H-${k}`, [x, 0, 40]));
    const baseline = acceptFindings(checked(off), { ...said, expires: '2026-06-30' });
    const more = [...off, hole('H-9', [9000, 0, 0]), hole('H-8', [9500, 0, 0])];
    expect(checked(more, { baseline }).counts.error).toBe(0);
  });

  it('between two layouts names the other one, and waits for it', () => {
    const first = { name: 'a', data: layoutText({ ...spaced, id: 'A', holes: [hole('H-1', [0, 0, 0])] }) };
    const second = { name: 'b', data: layoutText({ ...spaced, id: 'B', holes: [hole('H-1', [50, 0, 0])] }) };
    const baseline = acceptFindings(check([first, second], { asOf }), { ...said, expires: '2026-06-30' });
    expect(baseline.entries.map(({ findings }) => findings[0].with)).toEqual(['B', 'A']);
    const alone = check([first], { asOf, baseline });
    expect(alone.baseline?.entries.map(({ state }) => state)).toEqual(['not-checked', 'not-checked']);
    expect(pruneBaseline(baseline, alone)).toEqual(baseline);
    const third = { name: 'c', data: second.data.replace('"B"', '"C"') };
    expect(check([first, third], { asOf, baseline }).counts.error).toBe(2);
  });

  it('keeps, when it is pruned, what could not be judged', () => {
    const baseline = acceptedAll();
    const broken = [...four.slice(0, 2), { ...four[2], depth: 'x' }, four[3]];
    for (const holes of [broken, [{ ...four[0], point: 'x' }]]) {
      const report = checked(holes, { baseline });
      expect(pruneBaseline(baseline, report)).toEqual(baseline);
    }
    expect(checked([{ ...four[0], point: 'x' }], { baseline }).baseline?.entries[0].state).toBe('not-checked');
  });

  it('is renewed in place of what ran out', () => {
    const old = acceptedAll('2026-03-02');
    const later = { asOf: '2026-07-01T00:00:00Z' };
    const renewed = acceptFindings(
      checked(four, { ...later, baseline: old }),
      { ...said, accepted: '2026-07-01', expires: '2026-12-31' },
      old,
    );
    expect(renewed.entries.map(({ expires, findings }) => [expires, findings.length])).toEqual([['2026-12-31', 4]]);
    expect(() => acceptFindings(checked(four), { ...said, expires: '2026-03-01' })).toThrow(/is before/);
  });

  it('takes no findings about the form of a file', () => {
    const report = checked([hole('H-1', [0, 0, 0]), hole('H-1', [5000, 0, 0]), { id: 7 }]);
    expect(report.verdict.format).toBe('fail');
    expect(acceptFindings(report, { ...said, expires: '2026-06-30' }).entries).toEqual([]);
  });

  it('takes the rules that are asked for, and keeps what was accepted before', () => {
    const coincident = [...four, hole('H-9', [0, 0, 0.2])];
    const before = acceptFindings(checked(coincident), { ...said, expires: '2026-06-30', rules: ['holes-coincide'] });
    expect(before.entries.map(({ rule }) => rule)).toEqual(['holes-coincide']);
    const after = acceptFindings(
      checked(coincident, { baseline: before }),
      { ...said, reason: 'Second', expires: '2026-06-30' },
      before,
    );
    expect(after.entries[0]).toEqual(before.entries[0]);
    expect(checked(coincident, { baseline: after }).counts.error).toBe(0);
  });

  it('loses what is gone when it is pruned, and nothing else', () => {
    const baseline = acceptedAll();
    const report = checked(four.slice(0, 2), { baseline });
    const pruned = pruneBaseline(baseline, report);
    expect(pruned.entries[0].findings.map(({ hole: id }) => id)).toEqual(['H-0', 'H-1']);
    expect(pruneBaseline(pruned, checked(four.slice(0, 2), { baseline: pruned }))).toEqual(pruned);
    expect(pruneBaseline(baseline, checked([four[0]], { baseline })).entries).toEqual([]);
    const elsewhere = { ...baseline, entries: [...baseline.entries, { ...baseline.entries[0], layout: 'T-2' }] };
    expect(pruneBaseline(elsewhere, checked([four[0]], { baseline: elsewhere })).entries).toEqual([
      { ...baseline.entries[0], layout: 'T-2' },
    ]);
  });

  it.each([
    ['of an unknown rule', { rule: 'no-such-rule' }, asOf, /no-such-rule/],
    ['of a rule about the form of files', { rule: 'duplicate-id' }, asOf, /form of a file/],
    ['for another project', { layout: 'elsewhere' }, asOf, /"elsewhere"; checked was "T-1"/],
    ['where no time is given', {}, undefined, /asOf/],
  ])('%s cannot be applied', (_, change, time, message) => {
    const [entry] = acceptedAll().entries;
    const baseline: Baseline = { ahx: '0.1', kind: 'baseline', entries: [{ ...entry, ...change }] };
    expect(() => checked(four, { baseline, asOf: time })).toThrow(message);
  });

  it('cannot be made or pruned from a report that lists a part', () => {
    const part = checked(four, { sampleLimit: 2 });
    expect(() => acceptFindings(part, { ...said, expires: '2026-06-30' })).toThrow(/lists 2 of 4/);
    expect(() => pruneBaseline(acceptedAll(), part)).toThrow(/lists 2 of 4/);
    expect(() => pruneBaseline(acceptedAll(), checked(four))).toThrow(/without this baseline/);
  });
});

describe('the facts of a finding', () => {
  it('are the same as themselves after a round trip through JSON, whatever they are', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (data) => {
        const facts = lastingFacts(data);
        expect(isSameFact(facts, JSON.parse(JSON.stringify(facts)))).toBe(true);
      }),
    );
  });

  it('leave out what hangs on the day or the order of inputs', () => {
    expect(lastingFacts({ a: 1, day: '2026-03-02', otherInput: 2, otherName: 'b', gone: undefined })).toEqual({ a: 1 });
  });

  it.each([
    [{ a: 1 }, { a: 1, b: 2 }],
    [{ a: [1, 2] }, { a: [2, 1] }],
    [{ a: '1' }, { a: 1 }],
    [{ a: null }, { a: {} }],
    [{ a: [] }, { a: {} }],
    [{ scale: 0.0011 }, { scale: 0.0014 }],
    [{ distance: 50 }, { distance: 50.0006 }],
  ])('%j differ from %j', (a, b) => {
    expect(isSameFact(a, b)).toBe(false);
    expect(isSameFact(b, a)).toBe(false);
  });
});
