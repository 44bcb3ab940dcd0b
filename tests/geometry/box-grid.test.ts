import { describe, expect, it } from 'vitest';
import { BoxGrid } from '../../src/geometry/box-grid.js';
import { BoxTree } from '../../src/geometry/box-tree.js';
import { seeded } from '../bench/make-layout.js';

type Six = readonly [number, number, number, number, number, number];

function meets(a: Six, b: Six): boolean {
  return [0, 1, 2].every((k) => a[k] <= b[k + 3] && a[k + 3] >= b[k]);
}

function randomBox(random: () => number, spread: number, size: number): Six {
  const low = [random() * spread, random() * spread, random() * spread];
  return [low[0], low[1], low[2], low[0] + random() * size, low[1] + random() * size, low[2] + random() * size];
}

const indexes = {
  grid: (boxes: Float64Array) => new BoxGrid(boxes, 100),
  tree: (boxes: Float64Array) => new BoxTree(boxes),
};

describe.each(['grid', 'tree'] as const)('boxes in a %s', (name) => {
  function searchIn(boxes: readonly Six[]): (wanted: Six, most?: number) => number[] | undefined {
    const index = indexes[name](Float64Array.from(boxes.flat()));
    const room = new Int32Array(boxes.length);
    return (wanted, most = boxes.length) => {
      const count = index.meeting(...wanted, room, most);
      return count < 0 ? undefined : [...room.subarray(0, count)].sort((a, b) => a - b);
    };
  }
  const sought = (boxes: readonly Six[], wanted: Six) => boxes.flatMap((box, k) => (meets(box, wanted) ? [k] : []));

  it.each([
    ['few and small', 7, 1000, 50],
    ['many and small', 3000, 1000, 30],
    ['many in one place', 3000, 50, 50],
    ['larger than cells', 300, 1000, 900],
  ])('are found as by a plain search where they are %s', (_, count, spread, size) => {
    const random = seeded(count);
    const boxes = Array.from({ length: count }, () => randomBox(random, spread, size));
    const found = searchIn(boxes);
    let hits = 0;
    for (let n = 0; n < 60; n++) {
      const wanted = randomBox(random, spread, n % 2 === 0 ? 20 : spread);
      const expected = sought(boxes, wanted);
      hits += expected.length;
      expect(found(wanted)).toEqual(expected);
    }
    expect(hits).toBeGreaterThan(2);
  });

  it('are found beside others that lie far away or reach over everything', () => {
    const random = seeded(1);
    const boxes = Array.from({ length: 500 }, () => randomBox(random, 1000, 20));
    boxes.push([-1e10, -1e10, -1e10, 1e10, 1e10, 1e10], [9e9, 9e9, 9e9, 9.1e9, 9.1e9, 9.1e9]);
    const found = searchIn(boxes);
    for (let n = 0; n < 20; n++) {
      const wanted = randomBox(random, 1000, 100);
      expect(found(wanted)).toEqual(sought(boxes, wanted));
    }
    expect(found([9.05e9, 9.05e9, 9.05e9, 9.2e9, 9.2e9, 9.2e9])).toEqual([500, 501]);
  });

  it('are found where they only touch', () => {
    expect(searchIn([[0, 0, 0, 1, 1, 1]])([1, 1, 1, 2, 2, 2])).toEqual([0]);
    expect(searchIn([[0, 0, 0, 1, 1, 1]])([1, 1, 1.0001, 2, 2, 2])).toEqual([]);
  });

  it('are all found by a search that is no number, and none where there are none', () => {
    const none = Number.NaN;
    expect(searchIn([[0, 0, 0, 1, 1, 1]])([none, none, none, none, none, none])).toEqual([0]);
    expect(searchIn([])([0, 0, 0, 1, 1, 1])).toEqual([]);
  });

  it('are given up where more are found than wanted', () => {
    const boxes = Array.from({ length: 100 }, (): Six => [0, 0, 0, 1, 1, 1]);
    const found = searchIn(boxes);
    expect(found([0, 0, 0, 1, 1, 1], 99)).toBeUndefined();
    expect(found([0, 0, 0, 1, 1, 1], 100)).toHaveLength(100);
    expect(found([2, 0, 0, 3, 1, 1], 0)).toEqual([]);
  });
});
