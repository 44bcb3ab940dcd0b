import { describe, expect, it } from 'vitest';
import type { PlanLevel } from '../../src/draw/plan-level.js';
import { planOfLevel } from '../../src/draw/plan-of-level.js';
import type { Marks, Polygon, Polyline, Primitive, Spot } from '../../src/draw/primitive.js';
import { svgText } from '../../src/draw/svg.js';
import { textWidth } from '../../src/draw/text-width.js';
import type { KeepOut } from '../../src/generated/layout.js';
import { box, flat, inGroup, levelWith, ring, slab, texts } from './invented-level.js';

const floor = slab(box(0, 0, 20_000, 12_000));
const row: Spot[] = Array.from({ length: 8 }, (_, k) => [2000 + k * 2000, 6000]);
const lines = (drawn: readonly Primitive[]) =>
  inGroup(drawn, 'plan').filter((one): one is Polyline => one.kind === 'polyline');
const marks = (drawn: readonly Primitive[]) =>
  inGroup(drawn, 'plan').filter((one): one is Marks => one.kind === 'marks');
const svg = (drawing: Parameters<typeof svgText>[0]) => svgText(drawing, { idPrefix: 'p' });

describe('planOfLevel', () => {
  it('draws the same twice', () => {
    const level = levelWith(row, { substrates: [floor] });
    expect(svg(planOfLevel(level, { paper: 'A4' }))).toBe(svg(planOfLevel(level, { paper: 'A4' })));
  });

  it('fills the sheet at the largest round scale', () => {
    const level = levelWith(row, { substrates: [floor] });
    expect(planOfLevel(level, { paper: 'A4' })).toMatchObject({
      width: 297,
      height: 210,
      scaleName: '1:100',
      notes: [],
    });
    expect(planOfLevel(level, { paper: 'Letter' })).toMatchObject({ width: 279.4, height: 215.9, scaleName: '1:100' });
    const inFeet = planOfLevel({ ...level, display: { length: 'ft-in' } }, { paper: 'A4' });
    expect(inFeet.scaleName).toBe(`1/8" = 1'-0"`);
    const narrow = planOfLevel(level, { paper: { width: 150, mostHeight: 200 } });
    expect(narrow.scaleName).toBe('1:200');
    expect(narrow.height).toBeLessThan(120);
  });

  it('draws y upward and holes in the symbol of their project', () => {
    const { children } = planOfLevel(
      levelWith(
        [
          [1000, 1000],
          [1000, 9000],
        ],
        { substrates: [floor] },
      ),
      { paper: 'A4' },
    );
    const [mark] = marks(children);
    expect(mark.sign[0]).toMatchObject({ kind: 'polygon', style: { fill: '#123456', stroke: 'ink' } });
    expect((mark.sign[0] as Polygon).rings[0]).toHaveLength(4);
    expect(mark.at[0][0]).toBe(mark.at[1][0]);
    // 8 m at 1:100.
    expect(mark.at[0][1] - mark.at[1][1]).toBeCloseTo(80, 9);
  });

  it('draws a plain circle where a project gives no symbol, and says so', () => {
    const { children } = planOfLevel(levelWith(row, { trades: [{ id: 'A', name: 'Pipe' }] }), { paper: 'A4' });
    expect(marks(children)[0].sign).toMatchObject([{ kind: 'circle', style: { fill: 'paper', stroke: 'ink' } }]);
    expect(texts(children)).toContain('Pipe (no symbol given)');
  });

  it('writes letters into marks where only they tell two trades apart, and says where nothing does', () => {
    const two = (...symbols: object[]): PlanLevel => {
      const level = levelWith(row, { trades: symbols.map((symbol, k) => ({ id: `${k}`, name: `T${k}`, symbol })) });
      return { ...level, holes: { ...level.holes, trade: row.map((_, k) => k % 2) } };
    };
    const letters = (level: PlanLevel) =>
      marks(planOfLevel(level, { paper: 'A4' }).children).flatMap(({ sign }) => texts(sign));
    expect(letters(two({ text: 'P' }, { text: 'Q' }))).toEqual(['P', 'Q']);
    expect(letters(two({ text: 'P', shape: 'circle' }, { text: 'Q', shape: 'square' }))).toEqual([]);
    expect(planOfLevel(two({ rgb: '#ff0000' }, { rgb: '#00ff00' }), { paper: 'A4' }).notes).toEqual([
      'Some trades differ in colour only: the layout gives them no other shape or letters.',
    ]);
    expect(planOfLevel(two({ colour: 'red' }, {}), { paper: 'A4' }).notes[0]).toMatch(/^Some trades look alike/);
  });

  it('tells kinds of edges apart without colour, crosses openings and dashes zones', () => {
    const edges = ['free', 'movement-joint', 'construction-joint', 'continuous'] as const;
    const substrate = slab(box(0, 0, 20_000, 12_000), {
      outline: { points: ring(box(0, 0, 20_000, 12_000)), edges: [...edges] },
      openings: [{ points: ring(box(5000, 5000, 1000, 1000)), edges: Array(4).fill('opening') }],
      zones: [{ kind: 'drop', outline: { points: ring(box(9000, 5000, 1000, 1000)) }, thickness: 300 }],
    });
    const { children } = planOfLevel(levelWith(row, { substrates: [substrate] }), { paper: 'A4' });
    const looks = lines(children).map(
      ({ style }) => `${style.strokeWidth} ${style.dash ?? ''} ${style.strokeOpacity ?? ''}`,
    );
    expect(new Set(looks).size).toBe(looks.length);
    expect(looks).toHaveLength(7);
    const cross = lines(children).find(({ style }) => style.strokeWidth === 0.15);
    expect(cross?.lines).toHaveLength(2);
    expect(texts(children)).toEqual(
      expect.arrayContaining([
        'Movement joint',
        'Construction joint',
        'Free edge',
        'Concrete goes on',
        'Opening',
        'Other thickness or height',
      ]),
    );
  });

  it('draws an upright face as its trace, with the concrete behind it', () => {
    const wall = slab([], {
      face: { point: [2000, 6000, 0], inward: [0, 1, 0] },
      outline: {
        points: [
          [2000, 6000, 0],
          [8000, 6000, 0],
          [8000, 6000, 2500],
          [2000, 6000, 2500],
        ],
      },
      thickness: 200,
    });
    const { children } = planOfLevel(levelWith(row, { substrates: [wall] }), { paper: 'A4' });
    const face = lines(children).find(({ style }) => style.strokeWidth === 0.6)?.lines[0] as Spot[];
    // 6 m at 1:100, level.
    expect(Math.abs(face[1][0] - face[0][0])).toBeCloseTo(6000 / 100, 9);
    expect(face[1][1]).toBeCloseTo(face[0][1], 9);
    const concrete = inGroup(children, 'plan').find((one): one is Polygon => one.kind === 'polygon')
      ?.rings[0] as Spot[];
    expect(Math.min(...concrete.map(([, y]) => y)) - face[0][1]).toBeCloseTo(-200 / 100, 9);
  });

  it('draws a keep-out with a band as wide as radius, standoff and position tolerance together', () => {
    const tendon: KeepOut = {
      id: 'T',
      kind: 'tendon',
      shape: {
        path: {
          points: [
            [0, 3000, 3100],
            [20_000, 3000, 3050],
          ],
          radius: 20,
        },
      },
      standoff: 60,
      positionTolerance: 20,
      knownFrom: 'scan',
    };
    const { children } = planOfLevel(levelWith(row, { substrates: [floor], keepOuts: [tendon] }), { paper: 'A4' });
    // 2 · (20 + 60 + 20) mm at 1:100.
    expect(lines(children)[0].style).toMatchObject({ strokeWidth: 2, strokeOpacity: 0.13 });
    expect(texts(children)).toEqual(expect.arrayContaining(['T', 'Keep-out: tendon', 'Standoff and tolerance']));
  });

  it('points causes out at their first three holes that lie apart, with their number', () => {
    const causes = [
      { number: 7, holes: [0, 0, 1, 2, 3] },
      { number: 120, holes: [5] },
      { number: 8, holes: [] },
    ];
    const drawing = planOfLevel(levelWith(row, { substrates: [floor] }), { paper: 'A4', causes });
    const numbers = inGroup(drawing.children, 'plan')
      .filter((one) => one.kind === 'text' && one.style.fill === 'paper')
      .flatMap((one) => texts([one]));
    expect(numbers).toEqual(['7', '7', '7', '120']);
    expect(drawing.notes).toEqual([]);
    const many = Array.from({ length: 200 }, (_, k) => ({ number: k + 1, holes: [k % 8] }));
    expect(planOfLevel(levelWith(row), { paper: 'A4', causes: many }).notes[0]).toMatch(/^\d+ causes not pointed out/);
  });

  it('lets no tag cover another one or a mark, and counts those left out', () => {
    const crowd: Spot[] = Array.from({ length: 300 }, (_, k) => [
      (k % 20) * 900 + (k % 7) * 40,
      Math.floor(k / 20) * 700,
    ]);
    const drawing = planOfLevel(levelWith(crowd), { paper: 'A4' });
    const [mark] = marks(drawing.children);
    const tags = inGroup(drawing.children, 'plan').flatMap((one) => {
      if (one.kind !== 'text' || one.hasRim !== true) return [];
      return one.items.map(({ at: [x, y], text }) => {
        const width = textWidth(text, one.size);
        const left = one.anchor === 'end' ? x - width : x;
        return { left, right: left + width, top: y - one.size * 0.8, bottom: y };
      });
    });
    expect(tags.length).toBeGreaterThan(150);
    const covers = tags.filter((a, k) =>
      tags.some((b, j) => j > k && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom),
    );
    expect(covers).toEqual([]);
    const onMarks = tags.filter((a) =>
      mark.at.some(([x, y]) => x > a.left && x < a.right && y > a.top && y < a.bottom),
    );
    expect(onMarks).toEqual([]);
    const said = tags.length === 300 ? [] : [`Tags of ${300 - tags.length} of 300 holes left out where crowded.`];
    expect(drawing.notes).toEqual(said);
  });

  it('draws only tags of holes that are pointed out where less than half find room', () => {
    const dense: Spot[] = Array.from({ length: 2500 }, (_, k) => [(k % 50) * 300, Math.floor(k / 50) * 300]);
    const drawing = planOfLevel(levelWith(dense), { paper: 'A4', causes: [{ number: 1, holes: [0] }] });
    expect(texts(drawing.children).filter((text) => text.startsWith('A-'))).toEqual(['A-0']);
    expect(drawing.notes).toContain('Tags of 2499 of 2500 holes left out where crowded.');
  });

  it('says how it is seen and where north is, as far as the frame tells', () => {
    const words = (frame: PlanLevel['frame']) =>
      texts(planOfLevel(levelWith(row, { frame }), { paper: 'A4' }).children);
    expect(words({})).toEqual(
      expect.arrayContaining(['Plan orientation, as if seen from above', 'North is not given', 'x', 'y']),
    );
    expect(words({ trueNorthDeg: 10, projectNorthDeg: 0 })).toEqual(expect.arrayContaining(['N', 'PN']));
    expect(words({ trueNorthDeg: 360, projectNorthDeg: 0 })).toContain('N = PN');
  });

  it('shows the holes alone where they take up a corner of a large slab, and that corner in the key plan', () => {
    const large = slab(box(0, 0, 200_000, 200_000));
    const level = levelWith(
      [
        [1000, 1000],
        [3000, 2000],
      ],
      { substrates: [large], around: [large.outline?.points ?? []] },
    );
    const drawing = planOfLevel(level, { paper: 'A4' });
    expect(drawing.scaleName).toBe('1:100');
    const key = inGroup(drawing.children, 'key-plan').filter((one): one is Polygon => one.kind === 'polygon');
    const width = (polygon: Polygon) => {
      const x = polygon.rings[0].map((spot) => spot[0]);
      return Math.max(...x) - Math.min(...x);
    };
    expect(width(key[2])).toBeLessThan(width(key[1]) / 6);
  });

  it('counts holes outside, in one place, and what the level leaves out', () => {
    const level = levelWith([...row, row[0], [1e9, -1e9]], { leftOut: { keepOuts: 2, bores: 1, holes: 3 } });
    expect(planOfLevel(level, { paper: 'A4' }).notes).toEqual([
      '1 hole lies outside of this plan.',
      '3 holes of the layouts cannot be read and are on no plan.',
      '1 hole lies at the plan position of another one.',
      'Tags of 1 of 9 holes left out where crowded.',
      '2 keep-outs of unknown level on no plan.',
      '1 existing bore of unknown level on no plan.',
    ]);
  });
});

describe('planOfLevel, on what no plan is made for', () => {
  const far: Spot = [1e9, -1e9];
  it.each<[string, PlanLevel]>([
    ['nothing at all', levelWith([])],
    ['holes without a place', levelWith([[Number.NaN, 0]])],
    ['a single hole', levelWith([[5, 5]])],
    ['a single hole a thousand kilometres away', levelWith([far])],
    ['all holes at one place', levelWith(Array(50).fill([7, 7]))],
    ['holes and slab far apart', levelWith([far], { substrates: [floor] })],
    ['holes at both ends of the world', levelWith([far, [-1e9, 1e9]])],
    ['a slab without an outline', levelWith(row, { substrates: [slab([], { outline: undefined })] })],
    ['an outline at one place', levelWith(row, { substrates: [slab(Array(3).fill([0, 0]))] })],
    ['an outline as large as the world', levelWith(row, { substrates: [slab(box(-1e9, -1e9, 2e9, 2e9))] })],
    [
      'gridlines without length and across the world',
      levelWith([], {
        gridlines: [
          { name: '1', from: [0, 0], to: [0, 0] },
          { name: '2', from: [-1e9, 0], to: [1e9, 1] },
        ],
      }),
    ],
    [
      'keep-outs as large as the world',
      levelWith(row, {
        keepOuts: [
          {
            id: 'a',
            kind: 'other',
            standoff: 1e9,
            knownFrom: 'scan',
            shape: { sphere: { centre: [0, 0, 0], radius: 1e9 } },
          },
          {
            id: 'b',
            kind: 'bar',
            standoff: 0,
            knownFrom: 'scan',
            shape: {
              path: {
                points: [
                  [0, 0, 0],
                  [0, 0, 9],
                ],
                radius: 0,
              },
            },
          },
          {
            id: 'c',
            kind: 'bar',
            standoff: 1e9,
            knownFrom: 'scan',
            shape: {
              path: {
                points: [
                  [0, 0, 0],
                  [1e9, 0, 9],
                ],
                radius: 1e9,
              },
            },
          },
        ],
      }),
    ],
    [
      'a wall that is its own direction',
      levelWith(row, {
        substrates: [slab(box(0, 0, 0, 0), { face: { point: [1e9, 0, 0], inward: [1e-200, 0, 0] } })],
      }),
    ],
  ])('%s', (_what, level) => {
    for (const paper of ['A4', { width: 1, mostHeight: 1 }] as const) {
      const drawing = planOfLevel(level, { paper, causes: [{ number: 1, holes: [0] }] });
      const text = svg(drawing);
      expect(text).not.toMatch(/NaN|Infinity|undefined|e[+-]\d/);
      for (const one of flat(drawing.children)) {
        if (one.kind !== 'text') continue;
        for (const { at } of one.items) {
          expect(at[0]).toBeGreaterThanOrEqual(0);
          expect(at[0]).toBeLessThanOrEqual(drawing.width);
          expect(at[1]).toBeLessThanOrEqual(drawing.height);
        }
      }
    }
  });

  it('writes hostile names as they are, and no longer than there is room', () => {
    const bad = `"><script>alert(1)</script>\u202e${'x'.repeat(500)}`;
    const level = levelWith(row, {
      name: bad,
      building: bad,
      trades: [{ id: bad, name: bad, symbol: { text: bad, shape: bad, colour: bad, rgb: '#12"/>' } }],
      gridlines: [{ name: bad, from: [0, 0], to: [0, 9000] }],
      keepOuts: [
        {
          id: bad,
          name: bad,
          kind: 'embed',
          standoff: 1,
          knownFrom: 'scan',
          shape: { sphere: { centre: [3000, 3000, 0], radius: 9 } },
        },
      ],
    });
    const text = svg(planOfLevel({ ...level, holes: { ...level.holes, tag: () => bad } }, { paper: 'A4' }));
    expect(text).not.toMatch(/<script|\u202e|x{200}.*x{200}.*x{200}/);
    const names = new Set([...text.matchAll(/<\/?([^\s>/]+)/g)].map((match) => match[1]));
    expect([...names].sort()).toEqual(['circle', 'clipPath', 'g', 'marker', 'path', 'rect', 'svg', 'text']);
  });

  it('stays small with 200,000 holes and outlines of 200,000 corners, and says what it merged and left out', () => {
    const many: Spot[] = Array.from({ length: 200_000 }, (_, k) => [(k % 500) * 100, Math.floor(k / 500) * 100]);
    const jagged: Spot[] = Array.from({ length: 200_000 }, (_, k) => [k / 4, k % 2 === 0 ? 0 : 40_000]);
    const drawing = planOfLevel(levelWith(many, { substrates: [floor, slab(jagged)] }), { paper: 'A4' });
    expect(svg(drawing).length).toBeLessThan(600_000);
    expect(drawing.notes).toEqual(
      expect.arrayContaining([expect.stringMatching(/^1\d\d\d\d\d holes within \S+ mm of another/)]),
    );
    expect(drawing.notes).toContain('1 outline or keep-out beyond the most that are drawn left out.');
  });
});
