import { describe, expect, it } from 'vitest';
import { diffLayouts } from '../../src/events/diff-layouts.js';
import type { Hole, Layout } from '../../src/generated/layout.js';
import { hole, layout, source } from './revisions.js';

function diff(before: Hole[], after: Hole[], membersAfter: Partial<Layout> = {}, membersBefore: Partial<Layout> = {}) {
  return diffLayouts(source(layout(before, membersBefore)), source(layout(after, membersAfter)));
}

describe('holes of two revisions', () => {
  it('are the same whatever the order of holes, members and definitions', () => {
    const before = [hole('A'), hole('B', { tag: '1', depth: 50 })];
    const turned = before.toReversed().map((each) => Object.fromEntries(Object.entries(each).toReversed()) as never);
    const { levels = [], holeTypes } = layout([]);
    const members = { levels: levels.toReversed(), holeTypes: holeTypes.toReversed() };
    expect(diff(before, turned, members)).toEqual({
      before: { layout: 'L-1', revision: 'A', holes: 2 },
      after: { layout: 'L-1', revision: 'A', holes: 2 },
      parent: 'absent',
      paired: 2,
      unchanged: 2,
      added: [],
      removed: [],
      replaced: [],
      moved: [],
      respecified: [],
      reassigned: [],
      renumbered: [],
      redefined: [],
      header: [],
      others: [],
      declared: { count: 0, notFound: [] },
    });
  });

  it('are added and removed by id', () => {
    const found = diff([hole('A'), hole('B', { tag: '7' })], [hole('C', { point: [9, 9, 9] }), hole('A')]);
    expect(found).toMatchObject({ paired: 1, unchanged: 1, moved: [] });
    expect(found.added).toEqual([{ id: 'C', isDeclared: false }]);
    expect(found.removed).toEqual([{ id: 'B', tag: '7', isDeclared: false }]);
  });

  it('are moved by plan and height', () => {
    const found = diff([hole('A')], [hole('A', { tag: undefined, point: [1003, 2004, 3012] })]);
    const [from, to] = [
      [1000, 2000, 3000],
      [1003, 2004, 3012],
    ];
    expect(found.moved).toEqual([
      { id: 'A', isDeclared: false, from, to, deltaX: 3, deltaY: 4, deltaZ: 12, distance: 13 },
    ]);
    expect(found).toMatchObject({ unchanged: 0, respecified: [], others: [] });
  });

  it.each([
    [[1000.0004, 2000, 2999.9996], 0],
    [[1000.001, 2000, 3000], 1],
    [[1000, 1999.999, 3000], 1],
    [[1000, 2000, 3000.001], 1],
  ] as const)('at %j count as moved by the slack of each coordinate: %d', (point, count) => {
    expect(diff([hole('A')], [hole('A', { point: [...point] })]).moved).toHaveLength(count);
  });

  it('are moved in plan where neither height is known', () => {
    const found = diff([hole('A', { point: [0, 0] })], [hole('A', { point: [3, 4] })]);
    expect(found.moved).toEqual([
      { id: 'A', isDeclared: false, from: [0, 0], to: [3, 4], deltaX: 3, deltaY: 4, distance: 5 },
    ]);
  });

  it.each([
    [[3, 4, 5], [3, 4], 'now-unknown', 0],
    [[3, 4], [3, 4, 5], 'now-known', 0],
    [[0, 0], [3, 4, 5], 'now-known', 5],
  ] as const)('from %j to %j have a height that is %s', (from, to, height, distance) => {
    const [move] = diff([hole('A', { point: [...from] })], [hole('A', { point: [...to] })]).moved;
    expect(move).toMatchObject({ from, to, height, distance });
    expect(move).not.toHaveProperty('deltaZ');
  });

  it.each([
    ['holeType', 'T12', 'T10'],
    ['substrate', 'S2', 'S'],
    ['diameter', 14, 10],
    ['depth', 61, 60],
    ['depthTolerance', [0, 5], undefined],
    ['positionTolerance', { radius: 3 }, undefined],
    ['moveAllowance', { along: 5, across: 5, ask: 'ask-first' }, undefined],
    ['axis', [0, 1, 1], [0, 0, 1]],
    ['above', { firestop: 'F' }, undefined],
  ])('are re-specified in %s', (member, value, held) => {
    const [other, from] = [{ to: value }, held === undefined ? {} : { from: held }];
    const found = diff([hole('A')], [hole('A', { [member]: value })]);
    expect(found.respecified).toEqual([{ id: 'A', isDeclared: false, members: [{ member, ...from, ...other }] }]);
    expect(found).toMatchObject({ moved: [], reassigned: [], renumbered: [], others: [] });
  });

  it.each([
    ['trade', 'EL', 'FP'],
    ['level', 'E2', 'E1'],
    ['area', 'P1', undefined],
    ['group', 'G', undefined],
    ['role', 'rod', undefined],
  ])('are reassigned in %s', (member, to, from) => {
    const found = diff([hole('A'), hole('B')], [hole('A', { [member]: to }), hole('B')]);
    expect(found.reassigned).toEqual([
      { id: 'A', isDeclared: false, members: [{ member, ...(from && { from }), to }] },
    ]);
    expect(found).toMatchObject({ moved: [], respecified: [], renumbered: [], others: [] });
  });

  it('are renumbered by tag', () => {
    const before = [hole('A', { tag: '1' }), hole('B', { tag: '2' }), hole('C')];
    const after = [hole('A', { tag: '3' }), hole('B'), hole('C', { tag: '4' })];
    expect(diff(before, after).renumbered).toEqual([
      { id: 'A', tag: '3', isDeclared: false, from: '1', to: '3' },
      { id: 'B', isDeclared: false, from: '2' },
      { id: 'C', tag: '4', isDeclared: false, to: '4' },
    ]);
  });

  it('may be in several lists', () => {
    const found = diff([hole('A')], [hole('A', { point: [0, 0, 0], depth: 5, level: 'E2', tag: 'x' })]);
    expect(
      found.moved.concat(found.respecified as never, found.reassigned as never, found.renumbered as never),
    ).toHaveLength(4);
    expect(found).toMatchObject({ paired: 1, unchanged: 0 });
  });

  it('have notes, origins, extensions and unknown members apart', () => {
    const members = { note: 'n', origin: { row: 2 }, ext: { 'urn:x': 1 }, replaces: 'Z', later: true };
    const found = diff([hole('A')], [hole('A', members)]);
    expect(found.others).toEqual([
      {
        collection: 'holes',
        id: 'A',
        members: Object.entries(members)
          .map(([member, to]) => ({ member, to }))
          .toSorted((a, b) => (a.member < b.member ? -1 : 1)),
      },
    ]);
    expect(found).toMatchObject({ unchanged: 0, respecified: [], reassigned: [], replaced: [] });
  });

  it('do not differ where a value is written out that held before', () => {
    const written = { diameter: 10, depth: 60, axis: [0, 0, 5] as [number, number, number] };
    expect(diff([hole('A')], [hole('A', written)])).toMatchObject({ unchanged: 1, respecified: [] });
    expect(diff([hole('A', written)], [hole('A')])).toMatchObject({ unchanged: 1, respecified: [] });
  });

  it('take the tolerance from the group before the type', () => {
    const { holeTypes } = layout([]);
    const members = {
      groups: [{ id: 'G', kind: 'plate' as const, positionTolerance: { radius: 2 } }],
      holeTypes: holeTypes.map((type) => ({ ...type, positionTolerance: { radius: 9 } })),
    };
    const before = hole('A', { group: 'G', positionTolerance: { radius: 2 } });
    expect(diff([before], [hole('A', { group: 'G' })], members, members).respecified).toEqual([]);
    const [own, taken] = [hole('A', { positionTolerance: { radius: 2 } }), hole('A')];
    expect(diff([own], [taken], members, members).respecified[0].members).toEqual([
      { member: 'positionTolerance', from: { radius: 2 }, to: { radius: 9 } },
    ]);
  });
});

describe('a hole that replaces another', () => {
  const before = [hole('A'), hole('B', { point: [5000, 0, 3000] })];

  it('is paired with it, and stays added as the other stays removed', () => {
    const next = hole('A2', { replaces: 'A', tag: '5', point: [1000, 2100, 3000], depth: 80 });
    const found = diff(before, [before[1], next]);
    expect(found.added).toEqual([{ id: 'A2', tag: '5', isDeclared: false, replaces: 'A' }]);
    expect(found.removed).toEqual([{ id: 'A', isDeclared: false, replacedBy: ['A2'] }]);
    expect(found.replaced).toMatchObject([
      { id: 'A2', was: 'A', move: { deltaX: 0, deltaY: 100, deltaZ: 0, distance: 100 } },
    ]);
    expect(found.replaced[0].members.map(({ member }) => member)).toEqual(['depth', 'tag']);
    expect(found).toMatchObject({ moved: [], respecified: [] });
    expect(found.newIds).toBeUndefined();
  });

  it('may do so together with a third', () => {
    const found = diff(before, [before[1], hole('C', { replaces: 'A' }), hole('D', { replaces: 'A' })]);
    expect(found.removed).toEqual([{ id: 'A', isDeclared: false, replacedBy: ['C', 'D'] }]);
    expect(found.replaced.map(({ id, was }) => [id, was])).toEqual([
      ['C', 'A'],
      ['D', 'A'],
    ]);
  });

  it('is only added where the other is still there or was never', () => {
    const found = diff(before, [...before, hole('C', { replaces: 'A' }), hole('D', { replaces: 'Z' })]);
    expect(found).toMatchObject({ replaced: [], removed: [] });
    expect(found.added).toEqual([
      { id: 'C', isDeclared: false },
      { id: 'D', isDeclared: false },
    ]);
  });
});

describe('the header', () => {
  it('is compared member by member, without the revision', () => {
    const found = diff([], [], {
      id: 'L-2',
      revision: { label: 'B' },
      title: 'New',
      frame: { name: 'site', heightDatum: 'sea', georeference: undefined, note: 'n' },
      display: { length: 'ft-in' },
      ext: { 'urn:x': { a: 1 } },
    });
    expect(found.header).toEqual([
      { member: 'id', from: 'L-1', to: 'L-2' },
      { member: 'display', to: { length: 'ft-in' } },
      { member: 'frame/heightDatum', from: 'level 0', to: 'sea' },
      { member: 'title', to: 'New' },
    ]);
    expect(found.others).toEqual([
      {
        collection: 'header',
        id: 'L-2',
        members: [
          { member: 'ext', to: { 'urn:x': { a: 1 } } },
          { member: 'frame/note', to: 'n' },
        ],
      },
    ]);
  });

  it.each([
    ['matches', { layout: 'L-1', revision: 'A' }],
    ['differs', { layout: 'L-1', revision: 'B' }],
    ['differs', { layout: 'L-0', revision: 'A' }],
    ['differs', null],
    ['absent', undefined],
  ])('has a parent that %s: %j', (state, parent) => {
    expect(diff([], [], { parent: parent as never }).parent).toBe(state);
  });
});
