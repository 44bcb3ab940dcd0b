import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellText, guardFormula, unguardFormula } from '../../src/model/formula-guard.js';

describe('the guard against formulas', () => {
  it('puts an apostrophe in front of what a spreadsheet would compute', () => {
    for (const text of ['=1+1', '+1', '-1', '@x', '\tx', '\rx', "'=1", "''-1"]) {
      expect([text, guardFormula(text)]).toEqual([text, `'${text}`]);
    }
    for (const text of ['', 'x', '1-2', "'x", "'", ' =1', 'H-1']) {
      expect([text, guardFormula(text)]).toEqual([text, text]);
    }
  });

  it('is taken off again from every text, and from no other', () => {
    const text = fc.string({ unit: fc.constantFrom("'", '=', '+', '-', '@', '\t', '\r', 'a', ' ') });
    fc.assert(
      fc.property(text, (given) => {
        expect(unguardFormula(guardFormula(given))).toBe(given);
        expect('=+-@\t\r'.includes(guardFormula(given)[0] ?? '')).toBe(given === '');
      }),
      { seed: 81 },
    );
  });

  it('stands inside the blanks of a cell', () => {
    expect(cellText("  '-12 ")).toBe('-12');
    expect(cellText(" 'x ")).toBe("'x");
  });
});
