import { describe, expect, it } from 'vitest';
import { sizeOfBit, suspectSizes } from '../../src/check/suspect-sizes.js';
import type { HoleType } from '../../src/generated/layout.js';

describe('the size that is stamped on a bit', () => {
  it.each([
    ['1/2 in', 12.7],
    ['1/2"', 12.7],
    ['1-1/8 in', 28.575],
    ['12 mm', 12],
    ['12mm', 12],
    ['12,5 mm', 12.5],
    ['1.2 cm', 12],
  ])('is read from %s', (nominal, size) => {
    expect(sizeOfBit(nominal)).toBeCloseTo(size, 9);
  });

  it.each(['1/2', '12', 'M12', 'No. 4', '0 mm', 'mm', ''])('is not read from "%s"', (nominal) => {
    expect(sizeOfBit(nominal)).toBeUndefined();
  });
});

const type = (diameter: number, depth?: number): HoleType => ({
  id: 'T',
  name: 'T',
  principle: 'screw',
  form: 'blind',
  diameter,
  ...(depth !== undefined && { depth }),
});

describe('sizes', () => {
  it('say nothing where there are none', () => {
    expect(suspectSizes([], [])).toBeUndefined();
  });

  it('are inches where they would be sound as inches and as metres', () => {
    expect(suspectSizes([type(0.19, 0.6)], [])?.reading).toBe('inches');
  });

  it('are what more kinds of them speak for', () => {
    const slab = { id: 'S', kind: 'solid-slab' as const, thickness: 0.2 };
    expect(suspectSizes([type(0.19, 0.6)], [slab])).toMatchObject({
      reading: 'metres',
      kinds: ['diameter', 'depth', 'thickness'],
      of: 3,
    });
  });
});
