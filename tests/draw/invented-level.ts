import type { PlanLevel } from '../../src/draw/plan-level.js';
import type { Primitive, Spot } from '../../src/draw/primitive.js';
import type { Substrate } from '../../src/generated/layout.js';

/** A level with holes at plan points, all of one trade, without anything else but what is given. */
export function levelWith(points: readonly Spot[], given: Partial<PlanLevel> = {}): PlanLevel {
  return {
    name: 'Level 1',
    frame: {},
    gridlines: [],
    substrates: [],
    keepOuts: [],
    bores: [],
    trades: [{ id: 'A', name: 'Invented trade', symbol: { text: 'A', shape: 'square', rgb: '#123456' } }],
    holes: {
      count: points.length,
      x: points.map(([x]) => x),
      y: points.map(([, y]) => y),
      trade: points.map(() => 0),
      group: points.map(() => -1),
      tag: (hole) => `A-${hole}`,
    },
    around: [],
    leftOut: { keepOuts: 0, bores: 0, holes: 0 },
    ...given,
  };
}

/** A slab with corners in plan at a height of 3 m. */
export function slab(corners: readonly Spot[], given: Partial<Substrate> = {}): Substrate {
  return {
    id: 'slab',
    kind: 'solid-slab',
    face: { point: [0, 0, 3000], inward: [0, 0, 1] },
    outline: { points: ring(corners) },
    ...given,
  };
}

export function ring(corners: readonly Spot[]): [number, number, number][] {
  return corners.map(([x, y]) => [x, y, 3000]);
}

export function box(x: number, y: number, width: number, height: number): Spot[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** All primitives of a drawing, those in groups too. */
export function flat(primitives: readonly Primitive[]): Exclude<Primitive, { kind: 'group' }>[] {
  return primitives.flatMap((one) => (one.kind === 'group' ? flat(one.children) : [one]));
}

/** What lies in the group of that name. */
export function inGroup(primitives: readonly Primitive[], name: string): Exclude<Primitive, { kind: 'group' }>[] {
  return primitives.flatMap((one) => (one.kind === 'group' && one.name === name ? flat(one.children) : []));
}

export function texts(primitives: readonly Primitive[]): string[] {
  return flat(primitives).flatMap((one) => (one.kind === 'text' ? one.items.map(({ text }) => text) : []));
}
