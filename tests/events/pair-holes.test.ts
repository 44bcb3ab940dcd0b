import { describe, expect, it } from 'vitest';
import { diffLayouts } from '../../src/events/diff-layouts.js';
import type { Hole, Position } from '../../src/generated/layout.js';
import { hole, layout, source } from './revisions.js';

function diff(before: Hole[], after: Hole[]) {
  return diffLayouts(source(layout(before)), source(layout(after)));
}

/** Holes in a row, 500 mm apart. */
function row(count: number, prefix: string, members: (k: number) => Partial<Hole> = () => ({})): Hole[] {
  return Array.from({ length: count }, (_, k) => hole(`${prefix}${k}`, { point: [k * 500, 0, 3000], ...members(k) }));
}

describe('ids that were all given anew', () => {
  it('are one fact with its rates, and the holes are compared as pairs', () => {
    const after = [
      ...row(19, 'new', (k) => ({ point: [k * 500 + 0.6, 0.6, 3000.5] })).toReversed(),
      hole('old5', { point: [90_000, 0, 0] }),
    ];
    const found = diff([...row(19, 'x'), hole('old5', { point: [90_000, 0, 0] })], after);
    expect(found.newIds).toMatchObject({
      trades: ['FP'],
      holesBefore: 20,
      holesAfter: 20,
      sharedIds: 1,
      sharedRate: 0.05,
      matched: 19,
      matchRate: 1,
    });
    expect(found.newIds?.mapping.slice(0, 2)).toEqual([
      { before: 'x18', after: 'new18' },
      { before: 'x17', after: 'new17' },
    ]);
    expect(found).toMatchObject({ paired: 20, unchanged: 1, added: [], removed: [] });
    expect(found.moved).toHaveLength(19);
    expect(found.moved[0]).toMatchObject({ id: 'new18', was: 'x18' });
  });

  it('leave what has no counterpart added and removed', () => {
    const found = diff(
      row(10, 'x'),
      row(12, 'n', (k) => (k < 6 ? {} : { point: [k, 7000, 3000] })),
    );
    expect(found.newIds).toMatchObject({ matched: 6, matchRate: 0.6 });
    expect(found.removed.map(({ id }) => id)).toEqual(['x6', 'x7', 'x8', 'x9']);
    expect(found.added).toHaveLength(6);
  });

  it.each([
    ['the places are others', row(10, 'n', (k) => ({ point: [k * 500, 1.01, 3000] }))],
    ['the heights are others', row(10, 'n', (k) => ({ point: [k * 500, 0, 3001.01] }))],
    ['the hole types are others', row(10, 'n', () => ({ holeType: 'T12' }))],
    ['the trades are others', row(10, 'n', () => ({ trade: 'EL' }))],
    ['fewer than half lie at the places', row(10, 'n', (k) => (k < 4 ? {} : { point: [k, 7000, 3000] }))],
    ['more than a tenth of the ids are known again', [...row(2, 'x'), ...row(10, 'n').slice(2)]],
  ])('are not stated where %s', (_, after) => {
    const found = diff(row(10, 'x'), after);
    expect(found.newIds).toBeUndefined();
    expect(found.added.length).toBe(10 - found.paired);
    expect(found.removed.length).toBe(10 - found.paired);
  });

  it.each([
    [1, 1],
    [1.001, 0],
  ])('are stated up to one millimetre: %d', (off, matched) => {
    const found = diff([hole('A', { point: [0, 0, 0] })], [hole('B', { point: [0, 0, off] })]);
    expect(found.newIds?.matched ?? 0).toBe(matched);
  });

  it('are stated for the trade that gave them', () => {
    const others = row(10, 'e', () => ({ trade: 'EL' }));
    const found = diff([...row(10, 'x'), ...others], [...others, ...row(10, 'n')]);
    expect(found.newIds).toMatchObject({ trades: ['FP'], holesBefore: 10, matched: 10 });
    expect(found).toMatchObject({ paired: 20, unchanged: 20 });
  });

  it.each([
    ['known on neither side', 2, 2],
    ['lost', 3, 2],
    ['new', 2, 3],
  ])('go by the level where heights are %s', (_, wide, wideAfter) => {
    const at = (prefix: string, length: number) =>
      ['E1', 'E2', 'E3'].map((level, k) =>
        hole(`${prefix}${level}`, { level, point: [5, 5, 4000 * k].slice(0, length) as Position }),
      );
    const found = diff(at('x', wide), at('n', wideAfter).toReversed());
    expect(found.newIds?.mapping.map(({ before, after }) => [before, after])).toEqual([
      ['xE3', 'nE3'],
      ['xE2', 'nE2'],
      ['xE1', 'nE1'],
    ]);
  });

  it('pair the nearest, each hole once', () => {
    const at = (id: string, x: number) => hole(id, { point: [x, 0, 0] });
    const found = diff([at('a', 0), at('b', 0.8)], [at('c', 0.7), at('d', -0.5)]);
    expect(found.newIds?.mapping).toEqual([
      { before: 'b', after: 'c' },
      { before: 'a', after: 'd' },
    ]);
  });

  it('pair holes at one place in their order, however many', () => {
    const crowd = (prefix: string) => row(5000, prefix, () => ({ point: [1, 1, 1] }));
    const found = diff(crowd('x'), crowd('n'));
    expect(found.newIds).toMatchObject({ matched: 5000, matchRate: 1 });
    expect(found.newIds?.mapping.every(({ before, after }) => before.slice(1) === after.slice(1))).toBe(true);
  });
});

describe('an id that is there twice', () => {
  it('is paired in the order of the holes', () => {
    const found = diff([hole('A'), hole('A', { depth: 9 })], [hole('A'), hole('A', { depth: 9 }), hole('A')]);
    expect(found).toMatchObject({ paired: 2, unchanged: 2, removed: [] });
    expect(found.added).toEqual([{ id: 'A', isDeclared: false }]);
  });
});
