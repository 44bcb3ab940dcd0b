import { describe, expect, it } from 'vitest';
import type { Hole } from '../../src/generated/layout.js';
import type { LayoutSource, Loss } from '../../src/model/layout-source.js';
import { writeLayout } from '../../src/write/layout.js';

/** Invented. */
const header = {
  ahx: '0.1',
  kind: 'layout',
  id: 'L',
  revision: { label: 'A' },
  frame: { name: 'site', heightDatum: '0' },
  trades: [],
  holeTypes: [],
} as unknown as LayoutSource['header'];

function write(hole: Partial<Hole>, members: object = {}): { text: string; losses: Loss[] } {
  const losses: Loss[] = [];
  const holes = [{ id: 'H', trade: 'FP', holeType: 'T', point: [1, 2, 3], ...hole } as Hole];
  const text = [...writeLayout({ ...header, ...members }, holes, (loss) => losses.push(loss))].join('');
  return { text, losses };
}

describe('a layout that is written', () => {
  it('loses nothing where lengths have at most 6 decimals', () => {
    expect(write({ point: [1.000001, 2.5, 3], diameter: 0.000001 }).losses).toEqual([]);
  });

  it('counts lengths that are rounded, by member, and no other number', () => {
    const { losses } = write(
      { point: [1.0000001, 2, 1e-9], depth: 25.400000000000002, axis: [0, 0.12345678901, 1] },
      { levels: [{ id: 'L1', name: 'L1', elevation: 1 / 3 }] },
    );
    expect(losses.map(({ field, count }) => [field, count])).toEqual([
      ['levels/elevation', 1],
      ['holes/point', 2],
      ['holes/depth', 1],
    ]);
    for (const { reason } of losses) expect(reason).toBe('rounded to a millionth of a millimetre');
  });

  it('keeps the digits of a size that would become zero', () => {
    const { text, losses } = write({ diameter: 1e-8, depth: 4e-7 });
    expect((JSON.parse(text) as { holes: Hole[] }).holes[0]).toMatchObject({ diameter: 1e-8, depth: 4e-7 });
    expect(losses).toEqual([]);
  });
});
