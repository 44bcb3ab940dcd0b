import { describe, expect, it } from 'vitest';
import { clausesByRule, readRequirements, requirementsIn } from '../../src/build/requirements.js';
import { casesOf } from '../../src/build/trace.js';
import { rules } from '../../src/check/list.js';
import { manifest, root } from './corpus-files.js';

const requirements = readRequirements(root);
const clauses = clausesByRule(
  requirements,
  rules.map(({ id }) => id),
);
/** Requirements that every case tests: the same report each time, and the one that the manifest names. */
const OF_ALL_CASES = ['AHX-CHK-14', 'AHX-CNF-6'];

describe('from requirement to case', () => {
  it('every requirement that a rule checks has a case', () => {
    const without = requirements.filter(({ id, rules: own }) => own.length > 0 && casesOf(id, manifest).length === 0);
    expect(without.map(({ id }) => id)).toEqual([]);
  });

  it('every requirement of which the specification says that the corpus tests it has a case', () => {
    const without = requirements.filter(
      ({ id, reason }) => reason?.includes('the corpus tests it') && casesOf(id, manifest).length === 0,
    );
    expect(without.map(({ id }) => id)).toEqual(OF_ALL_CASES);
  });

  it('every rule that a requirement names has a case that names the requirement', () => {
    const without = requirements.flatMap(({ id, rules: own }) =>
      own
        .filter((rule) => !manifest.cases.some((one) => one.rule === rule && one.clauses.includes(id)))
        .map((rule) => `${id}: ${rule}`),
    );
    expect(without).toEqual([]);
  });
});

describe('from case to requirement', () => {
  it('every clause of a case is a requirement', () => {
    const known = new Set(requirements.map(({ id }) => id));
    const unknown = [...manifest.cases, ...manifest.conversions].flatMap(({ id, clauses: own }) =>
      own.filter((clause) => !known.has(clause)).map((clause) => `${id}: ${clause}`),
    );
    expect(unknown).toEqual([]);
  });

  it('the first clause of a case is one that its rule checks', () => {
    const other = manifest.cases.filter(({ rule, clauses: [first] }) => !clauses.get(rule)?.includes(first));
    expect(other.map(({ id }) => id)).toEqual([]);
  });
});

describe('the reader of requirements', () => {
  it('takes one or several rules, or the reason', () => {
    const text = [
      '**AHX-CON-1** A. (rule: a-b)',
      'between',
      '**AHX-CON-2** B MUST c. (rules: a, b)',
      '**AHX-CON-3** C. (not checked: why)',
    ];
    expect(requirementsIn(text.join('\n'), '02.md')).toEqual([
      { id: 'AHX-CON-1', text: 'A.', chapter: '02.md', rules: ['a-b'] },
      { id: 'AHX-CON-2', text: 'B MUST c.', chapter: '02.md', rules: ['a', 'b'] },
      { id: 'AHX-CON-3', text: 'C.', chapter: '02.md', rules: [], reason: 'why' },
    ]);
  });

  it('refuses a requirement that says neither', () => {
    expect(() => requirementsIn('**AHX-CON-1** A MUST b.', '02.md')).toThrow(/without rules or reason/);
  });

  it('refuses a rule that no requirement names, and a name that is no rule', () => {
    const one = requirementsIn('**AHX-CON-1** A. (rule: a)', '02.md');
    expect(() => clausesByRule(one, ['a', 'b'])).toThrow(/names the rule b/);
    expect(() => clausesByRule(one, [])).toThrow(/AHX-CON-1 names the rule a, which there is not/);
  });
});
