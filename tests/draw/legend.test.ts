import { describe, expect, it } from 'vitest';
import { LEGEND, type LegendEntry, placeLegend } from '../../src/draw/legend.js';
import { planOfLevel } from '../../src/draw/plan-of-level.js';
import { textWidth } from '../../src/draw/text-width.js';
import { levelWith, texts } from './invented-level.js';

const entry = (text: string): LegendEntry => ({ sample: [], text });
const linesOf = (list: readonly string[], width = 92) =>
  placeLegend(list.map(entry), width).entries.map(({ lines }) => lines);

describe('the legend of a plan', () => {
  it('sets long texts on several lines and cuts none of a usual length', () => {
    const name = 'Ventilation duct, supply and return (VD, blue)';
    expect(linesOf([name])[0].length).toBeGreaterThan(1);
    expect(linesOf([name])[0].join(' ')).toBe(name);
    for (const line of linesOf([name])[0])
      expect(textWidth(line, LEGEND.type)).toBeLessThanOrEqual(46 - LEGEND.sample - 2);
  });

  it('cuts what is longer than three lines', () => {
    const [lines] = linesOf(['so '.repeat(300)]);
    expect(lines).toHaveLength(3);
    expect(lines[2]).toMatch(/…$/);
    expect(linesOf(['x'.repeat(300)])[0].join()).toMatch(/^x+…$/);
  });

  it('has columns in which no two texts lie on each other and none leaves the height', () => {
    for (const count of [1, 2, 3, 7, 12]) {
      const list = Array.from({ length: count }, (_, k) => entry('several words '.repeat(1 + ((k * 5) % 4)).trim()));
      const { entries, height } = placeLegend(list, 140);
      expect(new Set(entries.map(({ x }) => x)).size).toBeLessThanOrEqual(3);
      for (const [k, { x, y, lines }] of entries.entries()) {
        const bottom = y + LEGEND.rowHeight + (lines.length - 1) * LEGEND.lineHeight;
        expect(bottom).toBeLessThanOrEqual(height + 1e-6);
        const next = entries[k + 1];
        if (next?.x === x) expect(next.y).toBeGreaterThanOrEqual(bottom - 1e-6);
        else if (next !== undefined) expect(next.x).toBeGreaterThan(x);
      }
    }
    expect(placeLegend([], 140)).toEqual({ entries: [], height: 0 });
  });

  it('stands whole on a plan', () => {
    const trades = [{ id: 'A', name: 'Ventilation duct of the waiting hall' }];
    const { children } = planOfLevel(levelWith([[1000, 1000]], { trades }), { paper: { width: 180, mostHeight: 222 } });
    expect(texts(children).join(' ')).toContain('Ventilation duct of the waiting hall (no symbol given)');
  });
});
