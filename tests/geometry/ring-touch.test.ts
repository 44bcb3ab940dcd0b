import { describe, expect, it } from 'vitest';
import { planeOf, ringOn } from '../../src/geometry/plane-frame.js';
import type { Ring } from '../../src/geometry/ring.js';
import { cornerNearEdge, isOnLine } from '../../src/geometry/ring-touch.js';
import type { Vec3 } from '../../src/geometry/vector.js';

const ring = (...points: [number, number][]): Ring => ({
  u: Float64Array.from(points, ([u]) => u),
  v: Float64Array.from(points, ([, v]) => v),
});

/** A point of a plan, turned about the z axis and tilted about the x axis. */
function turned([x, y]: readonly [number, number], turn: number, tilt: number): Vec3 {
  const [along, across] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
  return [along, across * Math.cos(tilt), across * Math.sin(tilt)];
}

describe('cornerNearEdge', () => {
  const notch: [number, number][] = [
    [0, 0],
    [6000, 0],
    [6000, 4000],
    [3000, 0.0004],
    [0, 4000],
  ];

  it('finds a corner on or near an edge that does not end in it', () => {
    expect(cornerNearEdge(ring(...notch), 0.0005)).toEqual({ corner: 3, edge: 0 });
    expect(cornerNearEdge(ring(...notch), 0.0003)).toBeUndefined();
  });

  it('lets corners lie as near to the edges that end in them as they do', () => {
    expect(cornerNearEdge(ring([0, 0], [6000, 0], [6000, 4000], [0, 4000]), 1)).toBeUndefined();
    expect(cornerNearEdge(ring([0, 0], [6000, 0], [0, 0.01]), 0.0005)).toBeUndefined();
  });

  it('finds it however the ring is turned and tilted', () => {
    const touching = notch.map(([x, y]): [number, number] => [x, y === 0.0004 ? 0 : y]);
    for (let k = 0; k < 50; k++) {
      const points = touching.map((point) => turned(point, k * 0.37, k * 0.61));
      const plane = planeOf(points);
      expect(plane && cornerNearEdge(ringOn(plane, points), 0.0005)).toEqual({ corner: 3, edge: 0 });
    }
  });
});

describe('isOnLine', () => {
  it('tells corners on one line from the thinnest ring beside it', () => {
    expect(isOnLine(ring([0, 0], [3000, 3000], [1000, 1000.0005]), 0.0005)).toBe(true);
    expect(isOnLine(ring([0, 0], [3000, 3000], [1000, 1000.001]), 0.0005)).toBe(false);
    expect(isOnLine(ring([5, 5], [5, 5], [5, 5]), 0.0005)).toBe(true);
  });
});

describe('planeOf', () => {
  it('has the normal of the sense in which a ring runs, far from the origin too', () => {
    const square: [number, number][] = [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ];
    const off = (points: [number, number][]) => points.map(([x, y]): Vec3 => [x + 1e9, y - 1e9, 3000]);
    expect(planeOf(off(square))?.normal).toEqual([0, 0, 1]);
    expect(planeOf(off(square.toReversed()))?.normal).toEqual([0, 0, -1]);
  });

  it('finds the plane of a ring that crosses itself in the middle, which has no sense', () => {
    for (let k = 0; k < 20; k++) {
      const bow = (
        [
          [0, 0],
          [100, 100],
          [100, 0],
          [0, 100],
        ] as const
      ).map((point) => turned(point, k, k * 0.3));
      const plane = planeOf(bow);
      expect(Math.abs((plane?.normal[2] ?? 0) / Math.cos(k * 0.3))).toBeCloseTo(1, 6);
    }
  });

  it('is undefined for points on one line', () => {
    expect(
      planeOf([
        [0, 0, 0],
        [1, 2, 3],
        [2, 4, 6],
      ]),
    ).toBeUndefined();
  });
});
