import { describe, expect, it } from 'vitest';
import { ahx } from './run-ahx.js';
import { layoutText, hole } from '../jobs/small-layout.js';

const offBy = (mm: number) => layoutText({ holes: [hole('H-1', [0, 0, mm])] });

describe('an option of a rule', () => {
  it('is set for one run, long and short', () => {
    expect(ahx(['check', '-q', '-'], { input: offBy(16) }).code).toBe(1);
    expect(ahx(['check', '-q', '--option', 'off-surface.limit=20', '-'], { input: offBy(16) }).code).toBe(0);
    expect(ahx(['check', '-q', '-o', 'off-surface.limit=10', '-'], { input: offBy(11) }).code).toBe(1);
  });

  it.each([
    ['off-surface.limit', '--option needs RULE.NAME=NUMBER, not "off-surface.limit"'],
    ['off-surface.limit=wide', '--option needs RULE.NAME=NUMBER'],
    ['off-surfaces.limit=20', 'There is no rule "off-surfaces". Did you mean "off-surface"?'],
    ['off-surface.limits=20', 'The rule "off-surface" has no option "limits". Did you mean "limit"?'],
    ['off-surface.limit=-1', 'Option "limit" of rule "off-surface" is a number from 0 to 10000 (mm), not -1.'],
  ])('that cannot be set is wrong use: %s', (setting, why) => {
    const { code, err } = ahx(['check', '--option', setting, '-'], { input: offBy(0) });
    expect([code, err]).toEqual([2, expect.stringContaining(why)]);
  });
});
