import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/generated/layout.js';
import { exampleJson } from './example-files.js';
import { breaksThrough, depthInRing, nearPairs, outside, overKeepOuts, placedHoles, planOf } from './plan-check.js';

const layout = (path: string) => exampleJson(path) as Layout;
const sprinkler = layout('ferry-terminal/sprinkler.ahx.json');
const duct = layout('ferry-terminal/duct.ahx.json');
const workshop = layout('workshop-deck/workshop.ahx.json');
const poor = layout('poor/poor.ahx.json');

describe.each([
  ['sprinkler and duct together', [sprinkler, duct], 60],
  ['workshop deck', [workshop], 30],
])('the holes of %s', (_name, layouts, count) => {
  const placed = placedHoles(layouts);

  it('are all placed in a substrate', () => {
    expect(placed).toHaveLength(count);
  });

  it('lie apart as their types and groups ask', () => {
    expect(nearPairs(placed)).toEqual({ same: [], close: [] });
  });

  it('lie inside the slab and outside its openings', () => {
    expect(outside(placed)).toEqual([]);
  });

  it('leave their backing behind them', () => {
    expect(breaksThrough(placed)).toEqual([]);
  });

  it('stay away from the keep-outs even where heights are forgotten', () => {
    expect(overKeepOuts(placed)).toEqual([]);
  });

  it('keep the least edge distance of their types', () => {
    const near = placed.filter(({ hole, type, substrate }) => {
      const rings = [substrate.outline, ...(substrate.openings ?? [])];
      const edgeMm = rings.map((ring) =>
        Math.abs(depthInRing(planOf(hole), ring?.points.map(([x, y]) => [x, y]) ?? [])),
      );
      return Math.min(...edgeMm) < (type.minEdge?.value ?? 0);
    });
    expect(near).toEqual([]);
  });
});

describe.each([
  ['sprinkler', sprinkler],
  ['duct', duct],
  ['workshop deck', workshop],
])('the layout of %s', (_name, { groups = [], holes, substrates = [], levels = [] }) => {
  it('has every group drawn to its pattern', () => {
    for (const { id, run, pattern } of groups) {
      const members = holes.filter(({ group }) => group === id).map(planOf);
      const [runX, runY] = run ?? [1, 0, 0];
      const fromFirst = members.map(([x, y]) => {
        const [dx, dy] = [x - members[0][0], y - members[0][1]];
        return [dx * runX + dy * runY, dy * runX - dx * runY];
      });
      expect(fromFirst.map((pair) => pair.map((value) => Number(value.toFixed(6)) + 0))).toEqual(pattern);
    }
  });

  it('has every known height on a soffit of its level', () => {
    const soffits = levels.flatMap((level) => level.soffits ?? []);
    const heights = holes.flatMap(({ point }) => point.slice(2));
    expect(heights.filter((z) => !soffits.includes(z))).toEqual([]);
    expect(substrates.map(({ face }) => face?.point[2]).filter((z) => !soffits.includes(z ?? 0))).toEqual([]);
  });

  it('has no tag twice', () => {
    expect(new Set(holes.map(({ tag }) => tag)).size).toBe(holes.length);
  });
});

describe('the groups with a design spacing', () => {
  it('are nearer than their types allow alone, so that the design spacing counts', () => {
    const alone = [sprinkler, duct, workshop].map((source) => {
      const groups = source.groups?.map(({ designSpacing: _, ...group }) => group);
      return nearPairs(placedHoles([{ ...source, groups }])).close.length;
    });
    expect(alone).toEqual([8, 6, 1]);
  });
});

describe('the workshop deck', () => {
  it('has every hole in the middle of a low flute', () => {
    const [substrate] = workshop.substrates ?? [];
    const { deck, face } = substrate;
    if (!deck || !face) throw new Error('no deck');
    expect(deck.run).toEqual([0, 1, 0]);
    // The left of a run along y is minus x.
    const middle = face.point[0] - (deck.phase ?? 0);
    const offsets = workshop.holes.map(({ point }) => (point[0] - middle) % deck.pitch);
    expect(offsets.filter((offset) => offset !== 0)).toEqual([]);
  });
});

describe('the poor layout', () => {
  // A record that breaks the schema is not judged further.
  const broken = ['P-12', 'P-13', 'P-14'];
  const holes = poor.holes.filter(({ id }) => !broken.includes(id));
  const placed = placedHoles([{ ...poor, holes }]);

  it('has one pair at one place and one pair too close', () => {
    expect(nearPairs(placed)).toEqual({ same: ['P-05 P-06'], close: ['P-07 P-08'] });
  });

  it('has one hole outside the slab, one that breaks through and one through a tendon', () => {
    expect(outside(placed)).toEqual(['P-09']);
    expect(breaksThrough(placed)).toEqual(['P-10']);
    expect(overKeepOuts(placed)).toEqual(['P-11']);
  });

  it('has one id twice and one trade that is not defined', () => {
    const ids = poor.holes.map(({ id }) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual(['P-03']);
    const trades = poor.trades.map(({ id }) => id);
    expect(poor.holes.map(({ trade }) => trade).filter((id) => !trades.includes(id))).toEqual(['sprinker']);
  });
});
