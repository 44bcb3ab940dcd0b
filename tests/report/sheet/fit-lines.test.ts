import { describe, expect, it } from 'vitest';
import { fitLines, typeWidth } from '../../../src/report/sheet/fit-lines.js';

describe('a text in lines', () => {
  it('is cut at blanks, and within a word only where there is no other way', () => {
    const { lines, isCut } = fitLines('one two three four', 20, 5, 9);
    expect(lines.join(' ')).toBe('one two three four');
    expect(isCut).toBe(false);
    for (const line of lines) expect(typeWidth(line, 5)).toBeLessThanOrEqual(20);
    expect(fitLines('ABCDEFGHIJ', 12, 5, 9).lines.join('')).toBe('ABCDEFGHIJ');
  });

  it('ends with an ellipsis and says so where it finds no room', () => {
    const { lines, isCut } = fitLines('one two three four', 20, 5, 1);
    expect(isCut).toBe(true);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^one.*…$/);
    expect(typeWidth(lines[0], 5)).toBeLessThanOrEqual(20);
  });

  it('keeps characters beyond the first plane whole', () => {
    expect(fitLines('🙂🙂🙂🙂', 8, 5, 9).lines.join('')).toBe('🙂🙂🙂🙂');
  });

  it('takes time for what it shows only', () => {
    expect(fitLines('x'.repeat(1e6), 20, 5, 2).lines).toHaveLength(2);
    expect(fitLines('', 20, 5, 2)).toEqual({ lines: [], isCut: false });
  });
});
