import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/model/nearest.js';

/** Restricted distance of Damerau and Levenshtein by its definition, letter by letter from the end. */
function distance(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const known = new Map<string, number>();
  const from = (i: number, j: number): number => {
    if (i === 0 || j === 0) return i + j;
    const key = `${i},${j}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let least = Math.min(from(i - 1, j) + 1, from(i, j - 1) + 1, from(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1));
    if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
      least = Math.min(least, from(i - 2, j - 2) + 1);
    known.set(key, least);
    return least;
  };
  return from(a.length, b.length);
}

describe('nearest', () => {
  it('finds what was most likely meant', () => {
    const members = ['id', 'trade', 'holeType', 'point', 'diameter', 'depth', 'depthTolerance'];
    const meant: [word: string, found: string | undefined][] = [
      ['diametre', 'diameter'],
      ['dept', 'depth'],
      ['hole_type', 'holeType'],
      ['HOLETYPE', 'holeType'],
      ['tarde', 'trade'],
      ['pt', undefined],
      ['colour', undefined],
      ['', undefined],
    ];
    for (const [word, found] of meant) expect([word, nearest(word, members)]).toEqual([word, found]);
  });

  it('takes the first of several that are equally near', () => {
    expect(nearest('abcx', ['abcd', 'abce'])).toBe('abcd');
    expect(nearest('abce', ['abcd', 'abce'])).toBe('abce');
  });

  it('lets a short word differ by one letter only', () => {
    expect(nearest('L', ['R'])).toBe('R');
    expect(nearest('FP', ['EL'])).toBeUndefined();
    expect(nearest('x', [])).toBeUndefined();
  });

  it('does not spend its time on very long words', () => {
    expect(nearest('x'.repeat(201), ['x'.repeat(200)])).toBeUndefined();
    expect(nearest('x'.repeat(200), ['x'.repeat(199)])).toBe('x'.repeat(199));
  });

  it('agrees with the definition of the distance on all words of up to four letters', () => {
    const words = [''];
    for (let k = 0; words[k].length < 4; k++) words.push(`${words[k]}a`, `${words[k]}b`, `${words[k]}c`);
    for (let k = 0; k < words.length; k += 2) {
      for (let m = 0; m < words.length; m += 3) {
        const [a, b] = [words[k], words[m]];
        const allowed = Math.max(1, Math.floor(Math.max(a.length, b.length) / 3));
        const expected = distance(a, b) <= allowed ? b : undefined;
        if (nearest(a, [b]) !== expected) expect([a, b, nearest(a, [b])]).toEqual([a, b, expected]);
      }
    }
  });
});
