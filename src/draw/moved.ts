import type { Primitive, Spot } from './primitive.js';

/** Copies of things, moved. A clip stays where it is. */
export function moved(primitives: readonly Primitive[], dx: number, dy: number): Primitive[] {
  return primitives.map((one) => movedOne(one, dx, dy));
}

function movedOne(one: Primitive, dx: number, dy: number): Primitive {
  const spot = ([x, y]: Spot): Spot => [x + dx, y + dy];
  switch (one.kind) {
    case 'rect':
    case 'circle':
      return { ...one, at: spot(one.at) };
    case 'line':
      return { ...one, from: spot(one.from), to: spot(one.to) };
    case 'polyline':
      return { ...one, lines: one.lines.map((line) => line.map(spot)) };
    case 'polygon':
      return { ...one, rings: one.rings.map((ring) => ring.map(spot)) };
    case 'text':
      return { ...one, items: one.items.map(({ at, text }) => ({ at: spot(at), text })) };
    case 'marks':
      return { ...one, at: one.at.map(spot) };
    case 'group':
      return { ...one, children: moved(one.children, dx, dy) };
  }
}
