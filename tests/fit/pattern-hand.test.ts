import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handOf, showsHand } from '../../src/fit/pattern-hand.js';

const coordinate = fc.double({ min: -1000, max: 1000, noNaN: true });
const patterns = fc
  .array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 6 })
  .map((points) => [0, 0, ...points.flat()]);
const turns = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });

/** A pattern that is turned, shifted and, for -1, turned over. */
function moved(pattern: readonly number[], turn: number, [dx, dy]: readonly number[], hand: 1 | -1): number[] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const points: number[] = [];
  for (let k = 0; k < pattern.length; k += 2) {
    const [along, across] = [pattern[k], hand * pattern[k + 1]];
    points.push(cos * along - sin * across + dx, sin * along + cos * across + dy);
  }
  return points;
}

describe('the hand of a pattern', () => {
  it('is that with which the points were made, wherever they lie and however they are turned', () => {
    fc.assert(
      fc.property(patterns, turns, fc.tuple(coordinate, coordinate), (pattern, turn, shift) => {
        fc.pre(showsHand(pattern, 1, true));
        expect(handOf(moved(pattern, turn, shift, 1), pattern, 0.001, true)).toBe('declared');
        expect(handOf(moved(pattern, turn, shift, -1), pattern, 0.001, true)).toBe('mirrored');
      }),
    );
  });

  it('is told without a turn only where the points are not turned', () => {
    const angle = [0, 0, 400, 0, 0, 150];
    expect(handOf(moved(angle, 0, [5, 6], -1), angle, 0.001, false)).toBe('mirrored');
    expect(handOf(moved(angle, 1, [5, 6], 1), angle, 0.001, false)).toBe('neither');
  });

  it('is shown by no row of points that may be turned, and by one across its run that may not', () => {
    const row = [0, 0, 0, 150, 0, 300];
    expect(showsHand(row, 1, true)).toBe(false);
    expect(showsHand(row, 1, false)).toBe(true);
    expect(handOf(row, row, 1, true)).toBe('both');
  });

  it('is shown by no pattern that is its own mirror image within twice the tolerance', () => {
    expect(showsHand([0, 0, 400, 5], 5, false)).toBe(false);
    expect(showsHand([0, 0, 400, 5.001], 5, false)).toBe(true);
  });
});
