import { describe, expect, it } from 'vitest';
import { sheetsOf } from '../../../src/jobs/sheet.js';
import { hole } from '../../jobs/small-layout.js';
import { drawn, drawnText } from './checked-sheets.js';
import { packaged } from './sheet-source.js';

const keepOut = (id: string, x: number) => ({
  id,
  name: `Tendon ${id}`,
  kind: 'tendon',
  shape: {
    path: {
      points: [
        [x, -500, 50],
        [x, 500, 50],
      ],
      radius: 10,
    },
  },
  standoff: 25,
  knownFrom: 'shop-drawing',
});
const bore = (id: string, x: number) => ({
  id,
  point: [x, 0, 0],
  diameter: 14,
  depth: 50,
  end: 'abandoned',
  knownFrom: 'survey',
});

const own = packaged([hole('a', [0, 0, 0])], { keepOuts: [keepOut('T1', 200)], bores: [bore('B1', 100)] });
const ducts = packaged(
  [
    hole('d1', [600, 0, 0], { trade: 'DU' }),
    hole('d2', [1e6, 0, 0], { trade: 'DU' }),
    hole('d3', [600, 0, 9000], { trade: 'DU' }),
  ],
  {
    id: 'T-2',
    trades: [{ id: 'DU', name: 'Ducts' }],
    keepOuts: [keepOut('T1', 200), keepOut('T2', -300)],
    bores: [bore('B2', -150)],
  },
);
/** Broken rings, one for each hole of another trade. */
const rings = (sheet: Parameters<typeof drawn>[0]) =>
  drawn(sheet, 'marks')
    .filter(({ sign: [first] }) => first.kind === 'circle' && first.style.dash !== undefined)
    .flatMap(({ at }) => at);

describe('sheets of several layouts', () => {
  const [sheet] = sheetsOf(own, { package: 'P' }, { others: [ducts] }).sheets;

  it('list the keep-outs of all, those that are alike once', () => {
    expect(sheet.texts.noDrill.map((line) => line.split(' (')[0])).toEqual(['Tendon T1', 'Tendon T2']);
  });

  it('list the existing bores of all, the nearest first', () => {
    expect(sheet.texts.bores).toEqual([
      'B1 (abandoned, dia. 14 mm, 50 mm deep): nearest No. 1, 100 mm from middle to middle.',
      'B2 (abandoned, dia. 14 mm, 50 mm deep): nearest No. 1, 150 mm from middle to middle.',
    ]);
  });

  it('draw the holes of others near, at these heights, without a number', () => {
    expect(rings(sheet)).toHaveLength(1);
    expect(drawnText(sheet)).toContain('Broken rings: 1 hole of other trades (Ducts).');
    expect(sheet.rows.map(({ tag }) => tag)).toEqual(['a']);
  });

  it('draw holes of other trades of the same layout too', () => {
    const both = packaged([hole('a', [0, 0, 0]), hole('d', [700, 0, 0], { trade: 'DU' })], {
      trades: [
        { id: 'FP', name: 'Sprinkler' },
        { id: 'DU', name: 'Ducts' },
      ],
      packages: [{ id: 'P', holes: ['a'] }],
    });
    const [one] = sheetsOf(both, { package: 'P' }).sheets;
    expect(rings(one)).toHaveLength(1);
    expect(rings(sheetsOf(own, { package: 'P' }).sheets[0])).toHaveLength(0);
  });
});
