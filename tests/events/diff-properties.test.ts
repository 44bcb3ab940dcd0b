import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diffLayouts } from '../../src/events/diff-layouts.js';
import type { LayoutChanges } from '../../src/events/layout-changes.js';
import type { Hole, Layout } from '../../src/generated/layout.js';
import { hole, layout, source } from './revisions.js';

const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const coordinate = fc.constantFrom(0, 0.0004, 0.001, 0.7, 1.4, 500);
const point = fc.oneof(fc.tuple(coordinate, coordinate), fc.tuple(coordinate, coordinate, coordinate));

const holes: fc.Arbitrary<Hole[]> = fc
  .uniqueArray(
    fc.record({
      id: fc.integer({ min: 0, max: 40 }).map(String),
      point,
      trade: fc.constantFrom('FP', 'EL'),
      level: some(fc.constantFrom('E1', 'E2')),
      tag: some(fc.constantFrom('1', '2')),
      depth: some(fc.constantFrom(60, 60.0004, 70)),
      replaces: some(fc.integer({ min: 0, max: 40 }).map(String)),
      note: some(fc.string()),
    }),
    { selector: ({ id }) => id, maxLength: 24 },
  )
  .map((records) => records.map(({ id, ...members }) => hole(id, members)));

const layouts = fc.tuple(holes, fc.constantFrom(60, 65)).map(([list, depth]) => {
  const { holeTypes } = layout([]);
  return layout(list, { holeTypes: holeTypes.map((type) => ({ ...type, depth })) });
});

/** The layout with all its ids given anew. */
function withNewIds(one: Layout): Layout {
  return { ...one, holes: one.holes.map((each) => ({ ...each, id: `n${each.id}` })) };
}

const pairsOfLayouts = fc.oneof(
  fc.tuple(layouts, layouts),
  fc.tuple(layouts, layouts).map(([a, b]): [Layout, Layout] => [a, withNewIds(b)]),
  layouts.map((one): [Layout, Layout] => [one, withNewIds(one)]),
);

function lists({
  moved,
  respecified,
  reassigned,
  renumbered,
  redefined,
  header,
  others,
  added,
  removed,
}: LayoutChanges) {
  return [moved, respecified, reassigned, renumbered, redefined, header, others, added, removed];
}

const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);

describe('the difference of two layouts', () => {
  it('is empty between a layout and itself', () => {
    fc.assert(
      fc.property(layouts, (one) => {
        const found = diffLayouts(source(one), source(structuredClone(one)));
        expect(lists(found).flat()).toEqual([]);
        expect(found).toMatchObject({ paired: one.holes.length, unchanged: one.holes.length, replaced: [] });
        expect(found.newIds).toBeUndefined();
      }),
    );
  });

  it('is mirrored when the layouts are swapped', () => {
    fc.assert(
      fc.property(pairsOfLayouts, ([a, b]) => {
        const [there, back] = [diffLayouts(source(a), source(b)), diffLayouts(source(b), source(a))];
        const ids = (list: { id: string }[]) => list.map(({ id }) => id).toSorted();
        expect(ids(back.added)).toEqual(ids(there.removed));
        expect(ids(back.removed)).toEqual(ids(there.added));
        expect([back.paired, back.unchanged]).toEqual([there.paired, there.unchanged]);
        const mirrored = there.moved.map((move) => ({
          id: move.was ?? move.id,
          from: move.to,
          to: move.from,
          distance: move.distance,
          height: move.height && (move.height === 'now-known' ? 'now-unknown' : 'now-known'),
        }));
        const moves = back.moved.map(({ id, from, to, distance, height }) => ({ id, from, to, distance, height }));
        expect(moves.toSorted(byId)).toEqual(mirrored.toSorted(byId));
        expect(back.respecified.length).toBe(there.respecified.length);
        expect(back.newIds?.matched).toBe(there.newIds?.matched);
      }),
      { numRuns: 300 },
    );
  });

  it('accounts for each hole once', () => {
    fc.assert(
      fc.property(pairsOfLayouts, ([a, b]) => {
        const found = diffLayouts(source(a), source(b));
        expect(found.paired + found.added.length).toBe(b.holes.length);
        expect(found.paired + found.removed.length).toBe(a.holes.length);
      }),
    );
  });

  it('changes nothing and is the same each time', () => {
    fc.assert(
      fc.property(pairsOfLayouts, ([a, b]) => {
        const before = structuredClone([a, b]);
        const first = JSON.stringify(diffLayouts(source(a), source(b)));
        expect(JSON.stringify(diffLayouts(source(a), source(b)))).toBe(first);
        expect([a, b]).toEqual(before);
      }),
    );
  });
});

describe('values that the schema does not allow', () => {
  const awkward = fc.oneof(
    fc.jsonValue(),
    fc.constantFrom(undefined, Number.NaN, Number.POSITIVE_INFINITY, 1e308, '__proto__', 'constructor', []),
    fc.constant(JSON.parse('{"__proto__":{"id":"A"},"constructor":1,"id":"hasOwnProperty"}') as unknown),
  );
  const names = fc.constantFrom(
    'id',
    'tag',
    'trade',
    'holeType',
    'level',
    'point',
    'above',
    'origin',
    'replaces',
    'axis',
    '__proto__',
  );
  const record = fc.oneof(
    awkward,
    fc.array(fc.tuple(names, awkward)).map((pairs) => Object.fromEntries(pairs) as unknown),
  );
  const collections = [
    'levels',
    'trades',
    'holeTypes',
    'groups',
    'substrates',
    'keepOuts',
    'control',
    'grids',
    'packages',
  ];
  const members = fc.constantFrom(...collections, 'buildings', 'changes', 'parent', 'revision', 'frame', 'ext', 'id');
  const wild = fc
    .tuple(fc.array(record, { maxLength: 6 }), fc.array(fc.tuple(members, fc.oneof(awkward, fc.array(record)))))
    .map(([list, pairs]) => ({ ...Object.fromEntries(pairs), holes: list }));

  it('are compared as they are, and nothing is thrown', () => {
    fc.assert(
      fc.property(wild, wild, (a, b) => {
        const found = diffLayouts(source(a), source(b));
        expect(found.paired + found.added.length).toBe(b.holes.length);
        expect(lists(diffLayouts(source(a), source(structuredClone(a)))).flat()).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  it('do not reach what objects inherit', () => {
    const holes = [{ id: '__proto__' }, { id: 'constructor' }, { id: 'toString', trade: 'valueOf' }];
    const found = diffLayouts(source({ holes }), source({ holes: holes.slice(1), levels: [{ id: '__proto__' }] }));
    expect(found.removed).toEqual([{ id: '__proto__', isDeclared: false }]);
    expect(found.redefined).toMatchObject([{ id: '__proto__', state: 'added', holes: 0 }]);
  });

  it('list a point that is none as another value, not as moved', () => {
    const found = diffLayouts(source(layout([hole('A')])), source(layout([hole('A', { point: ['1', 2] as never })])));
    expect(found.moved).toEqual([]);
    expect(found.others).toMatchObject([{ id: 'A', members: [{ member: 'point', to: ['1', 2] }] }]);
  });
});
