import { describe, expect, it } from 'vitest';
import { KnownHeights } from '../../src/check/known-heights.js';
import { Site } from '../../src/check/site.js';
import type { Surface } from '../../src/check/surface.js';
import type { Level } from '../../src/generated/layout.js';
import { LayoutReader } from '../../src/read/layout-reader.js';
import { seeded } from '../bench/make-layout.js';

/** A site of invented holes: each names a level, or none, and has a height. */
function siteOf(levels: readonly Level[], holes: readonly { level?: string; z: number }[]): Site {
  const reader = new LayoutReader(() => {});
  const layout = {
    ahx: '0.1',
    kind: 'layout',
    id: 'heights',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'floor' },
    trades: [{ id: 'A', name: 'A' }],
    levels,
    holeTypes: [{ id: 'T', name: 'T', principle: 'screw', form: 'blind', diameter: 10, depth: 60 }],
    substrates: [{ id: 'S', kind: 'solid-slab', face: { point: [0, 0, 1e6], inward: [0, 0, 1] } }],
    holes: holes.map(({ level, z }, k) => ({
      id: `H-${k}`,
      trade: 'A',
      holeType: 'T',
      substrate: 'S',
      ...(level !== undefined && { level }),
      point: [k, 0, z],
    })),
  };
  reader.write(new TextEncoder().encode(JSON.stringify(layout)));
  reader.end();
  return new Site([{ layout: reader.model, input: 0, name: 'invented', observe: () => {} }]);
}

function heightsOf(site: Site): (string | undefined)[] {
  const known = new KnownHeights(site);
  const surface = site.surface(0) as Surface;
  return Array.from({ length: site.holeCount }, (_, i) => known.of(i, surface, -1e6));
}

const isSame = (z: number, height: number | undefined) => height !== undefined && Math.abs(z - height) <= 1;

/** What a height is called by the definition: all levels looked at. */
function plainName(levels: readonly Level[], own: Level | undefined, z: number): string | undefined {
  const others = levels.filter((level) => level !== own);
  if (isSame(z, own?.finishedFloor)) return 'the finished floor';
  if (isSame(z, own?.structuralTop)) return 'the structural top';
  if (isSame(z, own?.elevation)) return 'the datum of the level';
  if (isSame(z, 0)) return 'zero';
  if (others.some(({ finishedFloor }) => isSame(z, finishedFloor))) return 'the finished floor of another level';
  if (others.some(({ structuralTop }) => isSame(z, structuralTop))) return 'the structural top of another level';
  return others.some(({ soffits = [] }) => soffits.some((one) => isSame(z, one)))
    ? 'a soffit of another level'
    : undefined;
}

describe('known heights', () => {
  it('are named as if all levels were looked at', () => {
    const random = seeded(3);
    const height = () => 0.5 * Math.floor(random() * 120);
    const levels = Array.from({ length: 8 }, (_, k): Level => {
      const soffits = Array.from({ length: k % 4 }, height);
      return {
        id: `L${k}`,
        name: `L${k}`,
        elevation: height(),
        ...(k % 2 === 0 && { finishedFloor: height() }),
        ...(k % 3 === 0 && { structuralTop: height() }),
        // Some of a level lie between those of others, some next to each other.
        ...(soffits.length > 0 && { soffits: [...soffits, soffits[0] + 0.5] }),
      };
    });
    const holes = Array.from({ length: 1100 }, (_, k) => {
      const own = levels[k % 9];
      return { own, z: 0.5 * Math.floor(k / 9) };
    });
    const site = siteOf(
      levels,
      holes.map(({ own, z }) => ({ ...(own !== undefined && { level: own.id }), z })),
    );
    const expected = holes.map(({ own, z }) => plainName(levels, own, z));
    expect(new Set(expected).size).toBe(8);
    expect(heightsOf(site)).toEqual(expected);
  });

  it('are found for holes on each of very many levels', () => {
    const count = 30_000;
    const levels = Array.from({ length: count }, (_, k): Level => {
      const elevation = 4000 * (k + 1);
      return { id: `L${k}`, name: 'L', elevation, finishedFloor: elevation + 50, soffits: [elevation + 3700] };
    });
    const holes = levels.flatMap(({ id }, k) => {
      const next = 4000 * (k + 2);
      return [next - 300, next + 50, next + 3700, next + 1000].map((z) => ({ level: id, z }));
    });
    const found = heightsOf(siteOf(levels, holes));
    const ofEach = [undefined, 'the finished floor of another level', 'a soffit of another level', undefined];
    const expected = holes.map((_, i) => (i < 4 * (count - 1) ? ofEach[i % 4] : undefined));
    expect(found.findIndex((name, i) => name !== expected[i])).toBe(-1);
  });
});
