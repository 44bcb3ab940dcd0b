import { describe, expect, it } from 'vitest';
import { PlanView } from '../../src/draw/plan-view.js';

const box = { left: 10, top: 20, right: 110, bottom: 80 };
/** 1:100, plan point (5000, 3000) in the middle, at (60, 50). */
const view = new PlanView(box, 100, 5000, 3000);

describe('PlanView', () => {
  it('has x to the right and y upward', () => {
    expect(view.spot(5000, 3000)).toEqual([60, 50]);
    expect(view.spot(6000, 5000)).toEqual([70, 30]);
    expect(view.shown).toEqual({ xLow: 0, yLow: 0, xHigh: 10000, yHigh: 6000 });
    expect([view.holds([10, 20]), view.holds([9.99, 20])]).toEqual([true, false]);
  });

  it('keeps places apart a thousand kilometres from the origin', () => {
    const far = new PlanView(box, 50, 1e9, -1e9);
    expect(far.spot(1e9 + 5, -1e9)).toEqual([60.1, 50]);
  });

  it('cuts lines to the box', () => {
    expect(
      view.line(
        [
          [-1e9, 3000],
          [1e9, 3000],
        ],
        0,
      ),
    ).toEqual([
      [
        [10, 50],
        [110, 50],
      ],
    ]);
    expect(
      view.line(
        [
          [-1e9, -1e9],
          [-1e9, 1e9],
        ],
        0,
      ),
    ).toEqual([]);
    // Out at the right and in again: two pieces.
    const pieces = view.line(
      [
        [9000, 1000],
        [11000, 1000],
        [11000, 2000],
        [9000, 2000],
      ],
      0,
    );
    expect(pieces).toEqual([
      [
        [100, 70],
        [110, 70],
      ],
      [
        [110, 60],
        [100, 60],
      ],
    ]);
  });

  it('cuts a ring around the box to the box', () => {
    const around = view.ring(
      [
        [-1e9, -1e9],
        [1e9, -1e9],
        [1e9, 1e9],
        [-1e9, 1e9],
      ],
      0,
    );
    expect(around.map(([x, y]) => `${Math.round(x)} ${Math.round(y)}`).sort()).toEqual([
      '10 20',
      '10 80',
      '110 20',
      '110 80',
    ]);
    expect(
      view.ring(
        [
          [2e4, 0],
          [3e4, 0],
          [3e4, 1e4],
        ],
        0,
      ),
    ).toEqual([]);
  });

  it('leaves out points that nobody can see, but never the end of a line', () => {
    const fine = Array.from({ length: 1001 }, (_, k) => [k / 10, 0] as const);
    const [line] = view.line(fine);
    expect(line.length).toBeLessThan(40);
    expect(line.at(-1)).toEqual(view.spot(100, 0));
  });
});
