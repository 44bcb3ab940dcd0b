import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOfLevel } from '../../src/draw/plan-of-level.js';
import { type DrawnLayout, sitePlan } from '../../src/draw/site-plan.js';
import { svgText } from '../../src/draw/svg.js';
import { LayoutReader } from '../../src/read/layout-reader.js';

function drawn(bytes: Uint8Array): DrawnLayout {
  const reader = new LayoutReader(() => {});
  reader.write(bytes);
  reader.end();
  const { holes } = JSON.parse(new TextDecoder().decode(bytes)) as { holes: { tag?: string }[] };
  return { layout: reader.model, tagOf: (hole) => holes[hole].tag };
}

const example = (file: string) => drawn(readFileSync(new URL(`../../examples/${file}`, import.meta.url)));

interface Given {
  holes: object[];
  [member: string]: unknown;
}

/** An invented layout; holes need only say where they are. */
function layout({ holes, ...given }: Given): DrawnLayout {
  const document = {
    ahx: '0.1',
    kind: 'layout',
    id: 'invented',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'floor' },
    trades: [{ id: 'A', name: 'Alpha' }],
    holeTypes: [{ id: 'T', name: 'T', principle: 'screw', form: 'blind', diameter: 10, depth: 60 }],
    ...given,
    holes: holes.map((hole, k) => ({ id: `H-${k}`, trade: 'A', holeType: 'T', point: [k * 100, 0], ...hole })),
  };
  return drawn(new TextEncoder().encode(JSON.stringify(document)));
}

const levels = [
  { id: 'L1', name: 'Level 1' },
  { id: 'L2', name: 'Level 2' },
];
const slab = (id: string, z: number, level?: string) => ({
  id,
  kind: 'solid-slab',
  ...(level !== undefined && { level }),
  face: { point: [0, 0, z], inward: [0, 0, 1] },
  outline: {
    points: [
      [0, 0, z],
      [9000, 0, z],
      [9000, 9000, z],
    ],
  },
  thickness: 200,
});

describe('sitePlan', () => {
  it('puts the layouts of one slab on one plan and draws what they share once', () => {
    const site = sitePlan([example('ferry-terminal/sprinkler.ahx.json'), example('ferry-terminal/duct.ahx.json')]);
    expect(site.levels).toHaveLength(1);
    const [level] = site.levels;
    expect(level).toMatchObject({ name: 'Level 1, waiting hall', building: 'Terminal', display: { length: 'ft-in' } });
    expect(level.frame).toEqual({ trueNorthDeg: 12.5, projectNorthDeg: 0 });
    expect([level.holes.count, level.substrates.length, level.keepOuts.length, level.gridlines.length]).toEqual([
      60, 1, 4, 7,
    ]);
    expect(level.trades.map(({ name }) => name)).toEqual(['Fire sprinkler', 'Ventilation duct']);
    expect([level.holes.tag(0), level.holes.x[0], level.holes.y[0]]).toEqual(['M1R', -457.2, 4171.95]);
    expect(new Set(Array.from(level.holes.group)).size).toBe(19);
    const drawing = planOfLevel(level, { paper: 'A4' });
    expect([drawing.scaleName, drawing.notes]).toEqual([`1/8" = 1'-0"`, []]);
  });

  it('takes the level of a hole, else that of its substrate, and puts what has none last', () => {
    const site = sitePlan([
      layout({
        levels,
        substrates: [slab('S', 3000, 'L2')],
        holes: [{}, { substrate: 'S' }, { substrate: 'S', level: 'L1' }, { level: 'elsewhere' }],
      }),
    ]);
    expect(site.levels.map(({ name, holes }) => [name, holes.count])).toEqual([
      ['Level 1', 1],
      ['Level 2', 1],
      ['elsewhere', 1],
      [undefined, 1],
    ]);
    // The slab of level 2 is drawn where its holes are reached from, too.
    expect(site.levels.map(({ substrates }) => substrates.length)).toEqual([1, 1, 0, 0]);
  });

  it('tells levels of one id apart by their names', () => {
    const site = sitePlan([
      layout({ levels, holes: [{ level: 'L1' }] }),
      layout({ levels: [{ id: 'L1', name: 'Mezzanine' }], holes: [{ level: 'L1' }] }),
    ]);
    expect(site.levels.map(({ name }) => name)).toEqual(['Level 1', 'Mezzanine']);
  });

  it('draws a keep-out or bore without a substrate where its height is that of the concrete, else counts it', () => {
    const ball = (id: string, z: number) => ({
      id,
      kind: 'embed',
      shape: { sphere: { centre: [500, 500, z], radius: 50 } },
      standoff: 10,
      knownFrom: 'scan',
    });
    const bore = (id: string, point: number[]) => ({ id, point, end: 'abandoned', knownFrom: 'survey' });
    const site = sitePlan([
      layout({
        levels,
        substrates: [slab('S1', 3000, 'L1'), slab('S2', 7000, 'L2')],
        keepOuts: [
          ball('in 1', 3100),
          ball('in 2', 7100),
          ball('between', 5000),
          { ...ball('of 2', 0), substrate: 'S2' },
        ],
        bores: [bore('b1', [0, 0, 3000]), bore('unknown', [0, 0])],
        holes: [{ level: 'L1' }, { level: 'L2' }],
      }),
    ]);
    expect(site.levels.map(({ keepOuts }) => keepOuts.map(({ id }) => id))).toEqual([['in 1'], ['in 2', 'of 2']]);
    expect(site.levels.map(({ bores }) => bores.map(({ id }) => id))).toEqual([['b1'], []]);
    expect(site.levels[0].leftOut).toEqual({ keepOuts: 1, bores: 1, holes: 0 });
  });

  it('leaves out holes that cannot be read, and counts them', () => {
    const site = sitePlan([layout({ holes: [{}, { point: ['x'] }, { point: [1, 2] }] })]);
    expect([site.levels[0].holes.count, site.levels[0].leftOut.holes]).toEqual([2, 1]);
  });

  it('gives causes to the levels of their holes', () => {
    const site = sitePlan([
      layout({ levels, holes: [{ level: 'L1' }, { level: 'L2' }, { level: 'L2' }] }),
      layout({ levels, holes: [{ level: 'L2' }] }),
    ]);
    const causes = [
      { number: 1, layout: 0, holes: ['H-2', 'H-0', 'unknown'] },
      { number: 2, layout: 1, holes: ['H-0'] },
      { number: 3, layout: 9, holes: ['H-0'] },
    ];
    expect(site.causesByLevel(causes)).toEqual([
      [{ number: 1, holes: [0] }],
      [
        { number: 1, holes: [1] },
        { number: 2, holes: [2] },
      ],
    ]);
  });

  it('has no levels where there are no holes', () => {
    expect(sitePlan([layout({ levels, holes: [] })]).levels).toEqual([]);
    expect(sitePlan([]).levels).toEqual([]);
  });

  it('draws 10,000 holes on ten levels in less than 600 kB together', () => {
    const ten = Array.from({ length: 10 }, (_, k) => ({ id: `L${k}`, name: `Level ${k}` }));
    const site = sitePlan([
      layout({
        levels: ten,
        substrates: ten.map(({ id }, k) => slab(`S${k}`, k * 4000, id)),
        trades: [{ id: 'A', name: 'Alpha', symbol: { text: 'A', shape: 'triangle', rgb: '#884400' } }],
        groups: Array.from({ length: 5000 }, (_, k) => ({ id: `G${k}`, kind: 'trapeze' })),
        // No two alike, so that nothing is spared: a step that never comes back to a place.
        holes: Array.from({ length: 10_000 }, (_, k) => ({
          tag: `TAG-${k}`,
          level: `L${k % 10}`,
          substrate: `S${k % 10}`,
          group: `G${Math.floor(k / 2)}`,
          point: [(k * 7919) % 9001, (k * 104729) % 8999, (k % 10) * 4000],
        })),
      }),
    ]);
    const sizes = site.levels.map((level) => svgText(planOfLevel(level, { paper: 'A4' }), { idPrefix: 'p' }).length);
    expect(sizes).toHaveLength(10);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(600_000);
  });
});
