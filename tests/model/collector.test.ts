import { describe, expect, it } from 'vitest';
import { Collector } from '../../src/model/collector.js';
import type { Observation, Severity } from '../../src/model/observation.js';

const severities: Readonly<Record<string, Severity | 'off'>> = {
  bad: 'error',
  odd: 'warning',
  note: 'info',
  mute: 'off',
};

function newCollector(limit = 10): Collector {
  return new Collector((rule) => severities[rule], limit);
}

function observation(rule: string, cause = '', hole?: number, severity?: Severity): Observation {
  return { rule, at: { hole }, data: { hole }, cause, severity };
}

describe('the collector', () => {
  it('counts by severity and by rule', () => {
    const collector = newCollector();
    for (const rule of ['bad', 'odd', 'bad', 'note']) collector.observe(0, observation(rule));
    expect(collector.counts).toEqual({ error: 2, warning: 1, info: 1 });
    expect([...collector.countOfRule]).toEqual([
      ['bad', 2],
      ['odd', 1],
      ['note', 1],
    ]);
    expect(collector.total).toBe(4);
  });

  it('takes the severity of the case before that of the rule, and drops rules that are off', () => {
    const collector = newCollector();
    collector.observe(0, observation('bad', '', undefined, 'info'));
    collector.observe(0, observation('mute'));
    collector.observe(0, observation('mute', '', undefined, 'error'));
    expect(collector.counts).toEqual({ error: 0, warning: 0, info: 1 });
    expect(collector.kept).toHaveLength(1);
    expect(collector.causes).toHaveLength(1);
  });

  it('makes one cause of what shares input, rule, severity and cause', () => {
    const collector = newCollector();
    collector.observe(0, observation('bad', 'x', 4));
    collector.observe(0, observation('bad', 'x', 7));
    collector.observe(0, observation('bad', 'y', 7));
    collector.observe(0, observation('odd', 'x', 7));
    collector.observe(0, observation('bad', 'x', 8, 'warning'));
    collector.observe(1, observation('bad', 'x', 4));
    expect(
      collector.causes.map(({ rule, severity, input, count, holes }) => [rule, severity, input, count, holes]),
    ).toEqual([
      ['bad', 'error', 0, 2, [4, 7]],
      ['bad', 'error', 0, 1, [7]],
      ['odd', 'warning', 0, 1, [7]],
      ['bad', 'warning', 0, 1, [8]],
      ['bad', 'error', 1, 1, [4]],
    ]);
    expect(collector.kept.map(({ causeIndex }) => causeIndex)).toEqual([0, 0, 1, 2, 3, 4]);
  });

  it('does not mix rules and causes whose texts run together', () => {
    const collector = new Collector(() => 'error', 10);
    collector.observe(0, observation('a', 'b c'));
    collector.observe(0, observation('a b', 'c'));
    expect(collector.causes).toHaveLength(2);
  });

  it('counts exactly while it keeps the first ones of each rule and input', () => {
    const collector = newCollector(3);
    for (let k = 0; k < 1000; k++) {
      collector.observe(0, observation('bad', '', k));
      if (k % 2 === 0) collector.observe(0, observation('odd', '', k));
    }
    for (let k = 0; k < 5; k++) collector.observe(1, observation('bad', '', k));
    expect(collector.counts).toEqual({ error: 1005, warning: 500, info: 0 });
    const kept = collector.kept.map(({ input, rule, at }) => [input, rule, at.hole]);
    expect(kept.filter(([input, rule]) => input === 0 && rule === 'bad').map(([, , hole]) => hole)).toEqual([0, 1, 2]);
    expect(kept.filter(([, rule]) => rule === 'odd').map(([, , hole]) => hole)).toEqual([0, 2, 4]);
    expect(kept.filter(([input]) => input === 1)).toHaveLength(3);
  });

  it('tells when further observations of a rule and cause are only counted', () => {
    const collector = newCollector(3);
    const answers = Array.from({ length: 22 }, (_, k) => collector.observe(0, observation('bad', 'x', k)));
    // The first twenty are named, though only three are listed.
    expect(answers.indexOf(true)).toBe(19);
    expect(answers.slice(19)).toEqual([true, true, true]);
    expect(collector.observe(0, observation('bad', 'y', 1))).toBe(false);
    expect(collector.observe(0, observation('bad', 'z'))).toBe(true);
    expect(collector.observe(1, observation('bad', 'x', 1))).toBe(false);
    expect(collector.observe(0, observation('mute'))).toBe(true);
  });

  it('takes observations together that are only counted', () => {
    const [one, together] = [newCollector(2), newCollector(2)];
    for (let k = 0; k < 50; k++) one.observe(0, observation('bad', 'x', k));
    for (let k = 0; k < 20; k++) together.observe(0, observation('bad', 'x', k));
    together.observe(0, { ...observation('bad', 'x', 20), count: 30 });
    const all = ({ counts, countOfRule, causes, kept }: Collector) => ({ counts, countOfRule, causes, kept });
    expect(all(together)).toEqual(all(one));
  });

  it('keeps nothing with a limit of 0, and counts all the same', () => {
    const collector = newCollector(0);
    collector.observe(0, observation('bad'));
    expect([collector.kept.length, collector.total, collector.causes[0].count]).toEqual([0, 1, 1]);
  });

  it('names the first twenty holes of a cause', () => {
    const collector = newCollector();
    for (let k = 0; k < 50; k++) collector.observe(0, observation('bad', '', k));
    expect(collector.causes[0].holes).toEqual(Array.from({ length: 20 }, (_, k) => k));
    expect(collector.causes[0].count).toBe(50);
  });

  it('counts causes beyond the ten thousandth together, a cause for each rule', () => {
    const collector = newCollector();
    for (let k = 0; k < 12_000; k++) collector.observe(0, observation('bad', `cause ${k}`));
    collector.observe(0, observation('odd', 'late'));
    collector.observe(0, observation('odd', 'later'));
    collector.observe(0, observation('bad', 'cause 5'));
    expect(collector.causes).toHaveLength(10_002);
    expect(collector.causes[10_000]).toMatchObject({ count: 2000, isRest: true });
    expect(collector.causes[5].count).toBe(2);
    expect(collector.causes[10_001]).toMatchObject({ rule: 'odd', count: 2 });
    expect(collector.causes.reduce((sum, { count }) => sum + count, 0)).toBe(collector.total);
  });
});
