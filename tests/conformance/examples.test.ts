import { describe, expect, it } from 'vitest';
import { rules } from '../../src/check/list.js';
import type { Rule } from '../../src/check/rule.js';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import { type CheckInput, check } from '../../src/jobs/check.js';
import { severityFor } from '../../src/model/rule.js';
import { corpusJson } from './corpus-files.js';

const layout = corpusJson('base/example.ahx.json') as Record<string, unknown>;
const profile = corpusJson('base/example.profile.json') as ColumnProfile;
/** The day on which the examples are looked at. */
const AS_OF = '2026-03-02T07:30:00Z';
const ROWS = 'Id,East,North,Height,Code\nH-1,1000,2000,3000,HGR-10\n';

/** The inputs that an example stands for. */
function inputsOf(example: Rule['example'], text: string): CheckInput[] {
  if (example.form !== 'layouts') return [inputOf(example, text)];
  return text.split('\n---\n').map((members) => inputOf({ ...example, form: 'members' }, members));
}

function inputOf({ form }: Rule['example'], text: string): CheckInput {
  if (form === 'bytes') return { name: form, data: Uint8Array.from(text, (c) => c.charCodeAt(0)) };
  if (form === 'table') return { name: form, data: text, profile };
  if (form === 'profile') {
    const members = JSON.parse(`{${text}}`) as Partial<ColumnProfile>;
    return { name: form, data: ROWS, profile: { ...profile, ...members } };
  }
  // The members are laid over as text: they may hold what no value can, such as one name twice.
  const own = new Set(Object.keys(JSON.parse(`{${text}}`) as object));
  const rest = Object.fromEntries(Object.entries(layout).filter(([name]) => !own.has(name)));
  return { name: form, data: `${JSON.stringify(rest).slice(0, -1)},${text}}` };
}

describe.each(rules.map((rule) => [rule.id, rule] as const))('the example of %s', (id, rule) => {
  const isOff = severityFor(rule, 'for-review') === 'off';
  const options = { asOf: AS_OF, ...(isOff && { severities: { [id]: 'warning' as const } }) };
  const found = (text: string) => check(inputsOf(rule.example, text), options).findings;

  it('is bad for the reason of the rule and for no other', () => {
    const others = found(rule.example.bad).filter((finding) => finding.rule !== id && finding.severity !== 'info');
    expect(others.map(({ rule: other, message }) => [other, message])).toEqual([]);
    expect(found(rule.example.bad).map((finding) => finding.rule)).toContain(id);
  });

  it('is good where it is good', () => {
    const grave = found(rule.example.good).filter((finding) => finding.rule === id || finding.severity !== 'info');
    expect(grave.map(({ rule: other, message }) => [other, message])).toEqual([]);
  });
});

describe('the bases of the examples', () => {
  it('are sound', () => {
    const reports = [check([{ name: 'a', data: JSON.stringify(layout) }]), check([{ name: 'b', data: ROWS, profile }])];
    expect(reports.map(({ verdict, counts }) => [verdict.format, verdict.site, counts.error, counts.warning])).toEqual([
      ['pass', 'pass', 0, 0],
      ['pass', 'pass', 0, 0],
    ]);
    expect(check([{ name: 'c', data: JSON.stringify(profile) }]).counts).toEqual({ error: 0, warning: 0, info: 0 });
  });
});
