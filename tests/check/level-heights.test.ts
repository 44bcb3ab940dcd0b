import { describe, expect, it } from 'vitest';
import { heightsOfLevel } from '../../src/check/level-heights.js';
import type { SitePart } from '../../src/check/site-part.js';
import type { Level } from '../../src/generated/layout.js';
import { LayoutModel } from '../../src/model/layout-model.js';
import { seeded } from '../bench/make-layout.js';

function partOf(levels: readonly Level[]): SitePart {
  const layout = new LayoutModel();
  for (const level of levels) layout.collection('levels').define(level.id, level, 0);
  return { layout, input: 0, name: 'invented', observe: () => {}, firstHole: 0 };
}

/** The heights by their definition: all levels looked at. */
function plainHeights(levels: readonly Level[], { elevation: low = 0, building, soffits = [] }: Level) {
  const others = levels.flatMap((one) => (one.building === building ? (one.elevation ?? []) : []));
  return { low, high: Math.max(Math.min(...others.filter((elevation) => elevation > low)), ...soffits) };
}

describe('the heights of a level', () => {
  it('are those that a look at all levels gives, with levels of one height and of none', () => {
    const random = seeded(5);
    const levels = Array.from({ length: 60 }, (_, k): Level => {
      const elevation = 1000 * Math.floor(random() * 25) - 5000;
      return {
        id: `L${k}`,
        name: `L${k}`,
        ...(k % 7 !== 0 && { elevation }),
        ...(k % 3 !== 0 && { building: `B${k % 3}` }),
        ...(k % 4 === 0 && { soffits: [elevation + 900, elevation + 2400] }),
      };
    });
    const part = partOf(levels);
    for (const level of levels) {
      const found = heightsOfLevel(part, level.id);
      if (level.elevation === undefined) {
        expect(found).toBeUndefined();
        continue;
      }
      expect(found).toMatchObject({ id: level.id, ...plainHeights(levels, level) });
      for (const z of [-6000, level.elevation, level.elevation - 0.001, 1e6]) {
        const at = levels.find(({ id }) => id === found?.levelAt(z));
        const below = levels.filter(
          ({ building, elevation = Number.NaN }) => building === level.building && elevation <= z,
        );
        expect(at?.elevation).toBe(
          below.length === 0 ? undefined : Math.max(...below.map((one) => one.elevation ?? 0)),
        );
        if (at !== undefined) expect(at.building).toBe(level.building);
      }
    }
    expect(heightsOfLevel(part, 'none')).toBeUndefined();
  });

  it('are found for each of a hundred thousand levels', () => {
    const count = 100_000;
    const part = partOf(
      Array.from({ length: count }, (_, k) => ({ id: `L${k}`, name: 'L', elevation: 10 * ((k * 7919) % count) })),
    );
    for (let k = 0; k < count; k++) {
      const low = 10 * ((k * 7919) % count);
      const found = heightsOfLevel(part, `L${k}`);
      if (found?.low !== low || found.levelAt(low + 9) !== `L${k}`) throw new Error(`level ${k}`);
      if (found.high !== (low === 10 * (count - 1) ? Number.POSITIVE_INFINITY : low + 10))
        throw new Error(`level ${k}`);
    }
  });

  it('reach to the highest of very many soffits', () => {
    const soffits = Array.from({ length: 300_000 }, (_, k) => k / 100);
    const part = partOf([
      { id: 'L1', name: 'L1', elevation: 0, soffits },
      { id: 'L2', name: 'L2', elevation: 2000 },
    ]);
    expect(heightsOfLevel(part, 'L1')?.high).toBe(2999.99);
  });
});
