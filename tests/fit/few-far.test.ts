import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FewFarFinder } from '../../src/fit/few-far.js';

function found(points: readonly (readonly [number, number])[], limit: number): number[] {
  const x = Float64Array.from(points, ([px]) => px);
  const y = Float64Array.from(points, ([, py]) => py);
  const finder = new FewFarFinder(x, y, 5, 0.0005);
  points.forEach((_, i) => {
    finder.add(i);
  });
  return finder.find(limit)?.far ?? [];
}

/** By definition, with all points at hand: the others of a point are those that are not named. */
function isFarFromOthers(points: readonly (readonly [number, number])[], far: readonly number[], i: number): boolean {
  const others = points.filter((_, k) => !far.includes(k));
  const [xs, ys] = [others.map(([x]) => x), others.map(([, y]) => y)];
  const [xLow, xHigh, yLow, yHigh] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const [px, py] = points[i];
  const distance = Math.hypot(Math.max(xLow - px, 0, px - xHigh), Math.max(yLow - py, 0, py - yHigh));
  return distance > Math.max(xHigh - xLow, yHigh - yLow) + 0.0005;
}

const near = fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 400 }));
const anywhere = fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 }));
/** Two corners, so that the box of the others is as large as it can be. */
const corners: [number, number][] = [
  [0, 0],
  [1000, 400],
];

describe('the few points far from all others', () => {
  it('are far from the box around those that are not named, and nothing not named is', () => {
    fc.assert(
      fc.property(
        fc.array(near, { minLength: 30, maxLength: 60 }),
        fc.array(anywhere, { maxLength: 5 }),
        fc.integer({ min: 1, max: 5 }),
        (crowd, strays, limit) => {
          const points = [...strays, ...corners, ...crowd];
          const far = found(points, limit);
          expect(far.every((i) => isFarFromOthers(points, far, i))).toBe(true);
          const strayed = strays.flatMap((_, i) =>
            isFarFromOthers(
              [...points],
              strays.map((__, k) => k),
              i,
            )
              ? [i]
              : [],
          );
          if (strayed.length <= limit && strayed.length === strays.length) expect(far).toEqual(strayed);
        },
      ),
    );
  });

  it('are none where they are more than the limit, or the points too few', () => {
    const crowd = Array.from({ length: 40 }, (_, k): [number, number] => [25 * k, k]);
    const strays: [number, number][] = [
      [9000, 0],
      [-9000, 0],
    ];
    expect(found([...crowd, ...strays], 2)).toEqual([40, 41]);
    expect(found([...crowd, ...strays], 1)).toEqual([]);
    expect(found([...crowd.slice(0, 2), ...strays], 2)).toEqual([]);
  });

  it('are none where all points lie at one place', () => {
    const crowd = Array.from({ length: 40 }, (): [number, number] => [7, 7]);
    expect(found([...crowd, [8, 7]], 1)).toEqual([]);
  });
});
