import { describe, expect, it, vi } from 'vitest';
import type { Primitive } from '../../../src/draw/primitive.js';
import { check } from '../../../src/jobs/check.js';
import { sheetsOf } from '../../../src/jobs/sheet.js';
import type { CrewSheet } from '../../../src/report/sheet/crew-sheets.js';
import { typeWidth } from '../../../src/report/sheet/fit-lines.js';
import { hole } from '../../jobs/small-layout.js';
import { exampleSource, holesInSquare, hostileLayout, packaged, sheetSource } from './sheet-source.js';

const MONDAY = { package: 'P' };

/** Texts of a drawing with the box that each takes, mm. */
function textsOf(
  primitives: readonly Primitive[],
): { text: string; size: number; left: number; right: number; y: number }[] {
  return primitives.flatMap((one) => {
    if (one.kind === 'group') return textsOf(one.children);
    if (one.kind !== 'text') return [];
    return one.items.map(({ at: [x, y], text }) => {
      const width = typeWidth(text, one.size, one.isBold);
      const left = x - (one.anchor === 'middle' ? width / 2 : one.anchor === 'end' ? width : 0);
      return { text, size: one.size, left, right: left + width, y };
    });
  });
}

const allText = ({ drawing }: CrewSheet) =>
  textsOf(drawing.children)
    .map(({ text }) => text)
    .join(' ');

/** No text goes over the edge of the paper. */
function expectOneSide(sheets: readonly CrewSheet[]): void {
  for (const { drawing } of sheets) {
    for (const { left, right, y } of textsOf(drawing.children)) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(drawing.width);
      expect(y).toBeLessThanOrEqual(drawing.height - 6);
    }
  }
}

vi.setConfig({ testTimeout: 60_000 });

describe('the sheets of a package', () => {
  it('name every hole once, in order', () => {
    for (const paper of ['a4', 'letter'] as const) {
      const { sheets, holeCount } = sheetsOf(
        exampleSource('ferry-terminal/sprinkler.ahx.json'),
        { package: 'FP-day-1' },
        { paper },
      );
      const rows = sheets.flatMap((sheet) => sheet.rows);
      expect(holeCount).toBe(20);
      expect(rows.map(({ number }) => number)).toEqual(rows.map((_, k) => k + 1));
      expect(new Set(rows.map(({ tag }) => tag)).size).toBe(20);
      expectOneSide(sheets);
    }
  });

  it('say what one works by', () => {
    const { sheets } = sheetsOf(exampleSource('ferry-terminal/duct.ahx.json'), { area: 'pour-1' });
    const text = allText(sheets[0]);
    for (const part of [
      'Revision',
      'supersedes A',
      'Check limit',
      'Holds',
      'M1: may shift',
      'Key plan',
      'Call',
      'not mirrored',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).toContain('Layout data only. Not a design, not a permit to drill.');
    expect(text.replace(/Confirm scan clearance/, '')).not.toMatch(/\b(safe|clear|approved|OK)\b/);
  });

  it('have type of 5 mm where one works, and no type on them below 2.3 mm', () => {
    const { sheets } = sheetsOf(exampleSource('ferry-terminal/sprinkler.ahx.json'), { package: 'FP-day-1' });
    const texts = textsOf(sheets[0].drawing.children);
    for (const work of ['1/2 in', 'B1-4', `7'-6 3/8" E of 1`]) {
      expect(texts.find(({ text }) => text === work)?.size).toBe(5);
    }
    expect(Math.min(...texts.map(({ size }) => size))).toBeGreaterThan(2.3);
  });

  it('do not part a group that has room on the next sheet', () => {
    const { sheets } = sheetsOf(exampleSource('ferry-terminal/sprinkler.ahx.json'), {
      level: 'L1',
      trade: 'sprinkler',
    });
    const sheetOf = new Map<string, number>();
    for (const { rows, number } of sheets) {
      for (const {
        hole: { hole: one },
      } of rows) {
        if (one.group === undefined) continue;
        expect(sheetOf.get(one.group) ?? number).toBe(number);
        sheetOf.set(one.group, number);
      }
    }
    expect(sheetOf.size).toBe(8);
  });

  it('are made for one hole, and for a layout with no levels, gridlines, control or parties', () => {
    const { sheets } = sheetsOf(packaged([hole('H-1', [1, 2])]), MONDAY);
    expect(sheets).toHaveLength(1);
    const text = allText(sheets[0]);
    expect(text).toContain('No control points are given: ask.');
    expect(text).toContain('nobody is named in the layout');
    expect(text).toContain('no allowance given: ask before any shift.');
    expect(text).toMatch(/Check limit .*none/);
    expect(text).toContain('Sheet 1 of 1');
    expectOneSide(sheets);
  });

  it('are made for 5,000 holes, each on one sheet', () => {
    const { sheets, holeCount } = sheetsOf(packaged(holesInSquare(5000)), MONDAY);
    expect(holeCount).toBe(5000);
    expect(sheets.flatMap(({ rows }) => rows.map(({ tag }) => tag))).toEqual(
      Array.from({ length: 5000 }, (_, k) => `H-${k}`),
    );
    expect(allText(sheets[sheets.length - 1])).toContain(`Sheet ${sheets.length} of ${sheets.length}`);
    expectOneSide([sheets[0], sheets[sheets.length - 1]]);
  });

  it('keep a level to itself', () => {
    const levels = [
      { id: 'L1', name: 'One' },
      { id: 'L2', name: 'Two' },
    ];
    const holes = ['L1', 'L2', 'L1'].map((level, k) => hole(`H-${k}`, [k * 500, 0, 0], { level }));
    const { sheets } = sheetsOf(packaged(holes, { levels }), MONDAY);
    expect(sheets.map(({ rows }) => rows.map(({ hole: one }) => one.level))).toEqual([['L1', 'L1'], ['L2']]);
  });
});

describe('a sheet that is full of long and hostile texts', () => {
  const hostile = hostileLayout();

  it('is still one side of paper, without anything but text', () => {
    for (const paper of ['a4', 'letter'] as const) {
      const set = sheetsOf(sheetSource(hostile), { package: 'P' }, { paper });
      expectOneSide(set.sheets);
      const page = [...set.html()].join('');
      for (const text of [page, ...set.svg()]) {
        expect(text).not.toContain('<script');
        expect(text.match(/<style/g)?.length ?? 0).toBe(text === page ? 1 : 0);
        expect(text).not.toContain('\u202e');
      }
    }
  });

  it('carries nothing but text from other layouts, a revision before and a check either', () => {
    const own = JSON.parse(JSON.stringify(hostile));
    const other = { ...own, id: 'T-2', bores: [] as unknown[] };
    other.trades = [{ ...own.trades[0], id: 'XX' }];
    other.holes = own.holes.map((one: object) => ({ ...one, trade: 'XX' }));
    other.bores = own.keepOuts.map(({ id }: { id: string }) => ({
      id,
      point: [0, 0, 0],
      end: 'partial',
      knownFrom: 'scan',
    }));
    const before = {
      ...own,
      holes: own.holes.map((one: { id: string }) => ({ ...one, id: `before ${one.id}`, point: [9e5, 9e5, 0] })),
    };
    const report = check([{ name: own.id, data: JSON.stringify(own) }], { purpose: 'for-drilling' });
    expect(report.findings.length).toBeGreaterThan(0);
    const set = sheetsOf(
      sheetSource(own),
      { package: 'P' },
      {
        others: [sheetSource(other)],
        parent: sheetSource(before),
        check: { report, input: 0, together: [own.trades[0].name], apart: [own.trades[0].name] },
      },
    );
    expectOneSide(set.sheets);
    for (const text of [[...set.html()].join(''), ...set.svg()]) {
      expect(text).not.toContain('<script');
      expect(text).not.toContain('\u202e');
    }
    const said = set.sheets
      .map(({ texts }) => [...texts.bores, ...texts.changes, ...texts.findings].join(' '))
      .join(' ');
    for (const word of ['</text></svg>', 'Taken out since', 'partial', 'Checked together with'])
      expect(said).toContain(word);
  });

  it('says that texts were cut', () => {
    expect(allText(sheetsOf(sheetSource(hostile), { package: 'P' }).sheets[0])).toContain(
      'Texts that end in … are cut',
    );
  });
});

describe('a sheet of holes that lie badly', () => {
  it.each([
    ['at the two ends of the world', [hole('a', [1e9, -1e9, 0]), hole('b', [-1e9, 1e9, 5])]],
    ['at one place', [hole('a', [5, 5, 0]), hole('b', [5, 5, 0]), hole('c', [5, 5, 0])]],
    ['askew to the face', [hole('a', [5, 5, 0], { axis: [1, 0, 1] })]],
  ])('is made for holes %s', (_, holes) => {
    const { sheets } = sheetsOf(packaged(holes), MONDAY);
    expect(sheets.flatMap(({ rows }) => rows)).toHaveLength(holes.length);
    expectOneSide(sheets);
    expect(allText(sheets[0]).includes('off square to the face: ask how to set it.')).toBe(holes[0].axis !== undefined);
  });
});
