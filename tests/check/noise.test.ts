import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';
import { FAULTS, type Fault } from './planted-faults.js';
import { asOne, type RealisticLayout, realisticLayouts } from './realistic-layout.js';

const OPTIONS = { asOf: '2026-03-02T07:30:00-05:00', sampleLimit: 20_000 };
const layouts = realisticLayouts(7);
const text = JSON.stringify(layouts);

function checked(inputs: readonly RealisticLayout[], purpose: 'for-review' | 'for-drilling' = 'for-review') {
  const named = inputs.map((layout) => ({ name: String(layout.id), data: JSON.stringify(layout) }));
  return check(named, { ...OPTIONS, purpose });
}

/** Rules that are off, or about holes without a face, an outline, or one foot that numbers show. */
const IDLE = ['unused-definition', 'height-stand-in', 'far-from-others', 'feet-mixed'];
const ABOUT_SEVERAL = [
  'frames-differ',
  'definitions-differ',
  'layout-repeated',
  'control-mirrored',
  'control-disagrees',
];

/** The layouts anew, as one file or as one of each trade. */
function fresh(files: number): RealisticLayout[] {
  const copies = JSON.parse(text) as RealisticLayout[];
  return files === 1 ? [asOne(copies)] : copies;
}

describe.each([1, 3])('10,000 holes of three trades that were drawn with care, in %i files', (files) => {
  it.each(['for-review', 'for-drilling'] as const)('give nothing above info %s', (purpose) => {
    const { counts, verdict, causes } = checked(fresh(files), purpose);
    expect(fresh(files).reduce((sum, { holes }) => sum + holes.length, 0)).toBe(10_000);
    expect(causes.filter(({ severity }) => severity !== 'info').map(({ message }) => message)).toEqual([]);
    expect({ counts, verdict }).toMatchObject({
      counts: { error: 0, warning: 0 },
      verdict: { format: 'pass', site: 'pass' },
    });
  });

  it('are judged by all rules but those that they have nothing for', () => {
    const idle = checked(fresh(files), 'for-drilling').coverage.filter(
      ({ outcome, class: of }) => of !== 'format' && (outcome === 'not-applicable' || outcome === 'not-run'),
    );
    const expected = files === 1 ? [...IDLE, ...ABOUT_SEVERAL] : IDLE;
    expect(idle.map(({ rule }) => rule).filter((rule) => !expected.includes(rule))).toEqual([]);
  });
});

type Name = keyof typeof FAULTS;
const FIVES: Name[][] = [
  ['heights', 'tendon', 'owner', 'edge', 'deep'],
  ['near', 'levels', 'flute', 'copy', 'depth'],
  ['bore', 'symbol', 'control', 'tendon', 'copy'],
  ['heights', 'flute', 'near', 'symbol', 'deep'],
  ['edge', 'levels', 'owner', 'depth', 'bore'],
  ['measured', 'tendon', 'owner', 'edge', 'deep'],
];

describe.each(FIVES.map((names) => [names.join(', '), names] as const))('five faults, %s,', (_, names) => {
  const faults: Fault[] = names.map((name) => FAULTS[name]);

  it.each([1, 3])('give at most ten causes, the five among them, in %i files', (files) => {
    const inputs = fresh(files);
    const planted = faults.map(({ rule, plant }) => ({ rule, ids: plant(inputs) }));
    const { causes, findings } = checked(inputs);
    expect(causes.map(({ rule, message }) => `${rule}: ${message}`).length).toBeLessThanOrEqual(10);
    for (const { rule, ids } of planted) {
      const own = findings.filter((finding) => finding.rule === rule && finding.severity !== 'info');
      const named = new Set(own.map(({ id }) => id));
      expect([rule, own.length > 0]).toEqual([rule, true]);
      expect([rule, ids.filter((id) => !named.has(id))]).toEqual([rule, []]);
    }
  });
});
