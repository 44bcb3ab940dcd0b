import { describe, expect, it } from 'vitest';
import { diffLayouts } from '../../src/events/diff-layouts.js';
import type { Hole, Layout } from '../../src/generated/layout.js';
import { hole, layout, source } from './revisions.js';

const holes = [hole('A'), hole('B', { holeType: 'T12', level: 'E2', area: 'P1' }), hole('C', { group: 'G' })];

function diff(before: Partial<Layout>, after: Partial<Layout>, holesAfter: Hole[] = holes) {
  return diffLayouts(source(layout(holes, before)), source(layout(holesAfter, after)));
}

/** One record of a collection with other members. */
function edited(
  collection: 'holeTypes' | 'levels' | 'substrates' | 'trades' | 'buildings',
  id: string,
  members: object,
) {
  const records = (layout([])[collection] ?? []) as { id: string }[];
  return { [collection]: records.map((record) => (record.id === id ? { ...record, ...members } : record)) };
}

describe('a definition that was changed', () => {
  it.each([
    ['holeTypes', 'T10', { depth: 65, diameter: 10.0004 }, [{ member: 'depth', from: 60, to: 65 }], 2],
    ['holeTypes', 'T12', { rod: 'r' }, [{ member: 'rod', to: 'r' }], 1],
    [
      'levels',
      'E2',
      { name: 'Two', building: undefined },
      [
        { member: 'building', from: 'B' },
        { member: 'name', from: 'Level 2', to: 'Two' },
      ],
      1,
    ],
    ['substrates', 'S', { thickness: 200 }, [{ member: 'thickness', to: 200 }], 3],
    ['trades', 'EL', { firm: 'F' }, [{ member: 'firm', to: 'F' }], 0],
    ['buildings', 'B', { turnDeg: 1 }, [{ member: 'turnDeg', to: 1 }], 3],
  ] as const)('in %s %s says what was, what is, and for how many holes', (collection, id, members, changed, count) => {
    const found = diff({}, edited(collection, id, members));
    const isDeclared = count === 0 ? {} : { isDeclared: 'for-none' };
    expect(found.redefined).toEqual([
      { collection, id, state: 'changed', members: changed, holes: count, ...isDeclared },
    ]);
    expect(found).toMatchObject({ unchanged: 3, respecified: [] });
  });

  it('in a note or an extension alone is apart', () => {
    const found = diff({}, edited('substrates', 'S', { note: 'n', ext: { 'urn:x': 1 } }));
    expect(found.redefined).toEqual([]);
    expect(found.others.map(({ collection, id, members }) => [collection, id, members.length])).toEqual([
      ['substrates', 'S', 2],
    ]);
  });

  it('is for the holes of its substrate, its level or its package where holes do not name it', () => {
    const shape = { sphere: { centre: [0, 0, 3100] as [number, number, number], radius: 10 } };
    const keepOut = { id: 'K', kind: 'tendon' as const, shape, standoff: 50, knownFrom: 'scan' as const };
    const [from, to] = [
      [0, 0],
      [1, 1],
    ] as [[number, number], [number, number]];
    const found = diff(
      {},
      {
        keepOuts: [
          { ...keepOut, substrate: 'S' },
          { ...keepOut, id: 'K2' },
        ],
        control: [{ id: 'CP', point: [0, 0, 0], level: 'E2' }],
        grids: [{ id: 'GR', levels: ['E1', 'E2'], lines: [{ name: '1', from, to }] }],
        packages: [{ id: 'PK', holes: ['A', 'B', 'Z', 'A'], areas: ['P1'] }],
      },
    );
    expect(found.redefined.map(({ id, state, holes: count }) => [id, state, count])).toEqual([
      ['GR', 'added', 3],
      ['CP', 'added', 1],
      ['K', 'added', 3],
      ['K2', 'added', undefined],
      ['PK', 'added', 2],
    ]);
  });

  it('counts a hole once that is reached from one level of a grid and goes through to another', () => {
    const through = [hole('A', { above: { level: 'E2' } })];
    const grid = { id: 'GR', levels: ['E1', 'E2'], lines: [] };
    expect(diff({}, { grids: [grid] }, through).redefined[0].holes).toBe(1);
  });

  it('was removed from under the holes of the earlier layout', () => {
    const moved = holes.map((each) => ({ ...each, holeType: 'T12' }));
    const { holeTypes } = layout([]);
    const found = diff({}, { holeTypes: holeTypes.slice(1) }, moved);
    expect(found.redefined).toEqual([{ collection: 'holeTypes', id: 'T10', state: 'removed', members: [], holes: 2 }]);
    expect(found.respecified).toHaveLength(2);
  });
});

describe('declared changes', () => {
  const because = { reason: 'coordination' };

  it('declare what they name, in their kind', () => {
    const after = [hole('A', { point: [0, 0, 0], depth: 90, tag: '1' }), holes[1], hole('N', { level: 'E2' })];
    const found = diff(
      {},
      {
        changes: [
          { kind: 'moved', holes: ['A', 'B'], ...because },
          { kind: 'added', holes: ['N'], ...because },
          { kind: 'renumbered', holes: ['C'], ...because },
          { kind: 'reassigned', ...because },
          { kind: 'removed', holes: ['C', 'gone', 'gone'], ...because },
        ],
      },
      after,
    );
    expect(found.moved.map(({ id, isDeclared }) => [id, isDeclared])).toEqual([['A', true]]);
    expect(found.respecified.map(({ id, isDeclared }) => [id, isDeclared])).toEqual([['A', false]]);
    expect(found.renumbered.map(({ id, isDeclared }) => [id, isDeclared])).toEqual([['A', false]]);
    expect(found.added.map(({ id, isDeclared }) => [id, isDeclared])).toEqual([['N', true]]);
    expect(found.removed.map(({ id, isDeclared }) => [id, isDeclared])).toEqual([['C', true]]);
    expect(found.declared).toEqual({
      count: 5,
      notFound: [
        { index: 0, kind: 'moved', holes: ['B'] },
        { index: 2, kind: 'renumbered', holes: ['C'] },
        { index: 3, kind: 'reassigned', holes: [] },
        { index: 4, kind: 'removed', holes: ['gone'] },
      ],
    });
  });

  it.each([
    [['A', 'C'], 'for-all', []],
    [['A'], 'for-some', []],
    [['B'], 'for-none', [{ index: 0, kind: 'redefined', holes: ['B'] }]],
  ])('of a definition name its holes: %j', (named, isDeclared, notFound) => {
    const changes: Layout['changes'] = [{ kind: 'redefined', holes: named, ...because }];
    const found = diff({}, { ...edited('holeTypes', 'T10', { depth: 65 }), changes });
    expect(found.redefined).toMatchObject([{ id: 'T10', holes: 2, isDeclared }]);
    expect(found.declared.notFound).toEqual(notFound);
  });

  it('of a definition are found without holes where any definition differs', () => {
    const changes: Layout['changes'] = [{ kind: 'redefined', ...because }];
    expect(diff({}, { changes }).declared.notFound).toHaveLength(1);
    expect(diff({}, { ...edited('holeTypes', 'T10', { depth: 65 }), changes }).declared.notFound).toEqual([]);
  });

  it('may tell of a replacement by what became of the hole', () => {
    const after = [holes[1], holes[2], hole('A2', { replaces: 'A', point: [0, 0, 0], depth: 9 })];
    const changes: Layout['changes'] = [
      { kind: 'moved', holes: ['A'], ...because },
      { kind: 'respecified', holes: ['A2'], ...because },
      { kind: 'reassigned', holes: ['A2'], ...because },
    ];
    expect(diff({}, { changes }, after).declared.notFound.map(({ index }) => index)).toEqual([2]);
  });
});
