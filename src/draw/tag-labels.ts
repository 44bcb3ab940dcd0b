import { boxAbout, type LabelRoom } from './label-room.js';
import type { PaperBox } from './plan-view.js';
import type { Primitive, Spot } from './primitive.js';
import { shortened, textWidth } from './text-width.js';

export const TAG_MM = 2.1;
const WIDEST_MM = 26;
/** Tags that are tried: a plan has room for fewer. */
const MOST_TRIED = 3000;
const MOST_NAMES = 60;

/** Sides of a mark where a tag may stand, the best first, and how far off; farther where a mark is pointed out. */
const SIDES = [
  [1, 0],
  [-1, 0],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
] as const;
const GAPS_MM = [0.4, 1.1];
/** How far along a thing from its middle its name may stand. */
const NAME_STEPS_MM = [0, 12, -12, 24, -24, 36, -36];

export interface Labels {
  readonly primitives: readonly Primitive[];
  readonly leftOut: number;
}

interface Placed {
  hole: number;
  at: Spot;
  text: string;
  anchor: 'start' | 'end';
}

/**
 * Tags beside their marks, each where it covers nothing; those that find no such place are left out. Where
 * less than half find one, the few would only disturb: then those of the holes that are pointed out alone are drawn.
 */
export function tagLabels(
  drawn: readonly { readonly hole: number; readonly at: Spot }[],
  tag: (hole: number) => string,
  pointedOut: ReadonlySet<number>,
  markSize: number,
  room: LabelRoom,
): { readonly primitives: readonly Primitive[]; readonly placed: number } {
  const first = drawn.filter(({ hole }) => pointedOut.has(hole));
  const rest = drawn.filter(({ hole }) => !pointedOut.has(hole)).slice(0, MOST_TRIED);
  const found = [...first, ...rest].flatMap(({ hole, at }) => placeTag(hole, at, tag, markSize, room) ?? []);
  const kept = found.length * 2 < drawn.length ? found.filter(({ hole }) => pointedOut.has(hole)) : found;
  const primitives = (['start', 'end'] as const).flatMap((anchor): Primitive[] => {
    const items = kept.filter((one) => one.anchor === anchor).map(({ at, text }) => ({ at, text }));
    return items.length === 0
      ? []
      : [{ kind: 'text', items, size: TAG_MM, anchor, hasRim: true, style: { fill: 'ink' } }];
  });
  return { primitives, placed: kept.length };
}

function placeTag(
  hole: number,
  [x, y]: Spot,
  tag: (hole: number) => string,
  markSize: number,
  room: LabelRoom,
): Placed | undefined {
  // Where not even one letter finds room, the tag need not be read.
  if (!boxesBeside([x, y], TAG_MM * 0.4, markSize).some((box) => room.isFree(box))) return undefined;
  const text = shortened(tag(hole), TAG_MM, WIDEST_MM);
  const boxes = boxesBeside([x, y], textWidth(text, TAG_MM), markSize);
  const taken = room.takeFirst(boxes);
  if (taken < 0) return undefined;
  const { left, right, top, bottom } = boxes[taken];
  const anchor = (left + right) / 2 > x ? 'start' : 'end';
  return { hole, at: [anchor === 'start' ? left : right, (top + bottom) / 2 + TAG_MM * 0.36], text, anchor };
}

function boxesBeside([x, y]: Spot, width: number, markSize: number): PaperBox[] {
  return SIDES.flatMap(([dx, dy]) =>
    GAPS_MM.map((more) => {
      const gap = markSize / 2 + more;
      const inward = dy === 0 ? gap : gap * 0.5;
      return boxAbout([x + dx * (inward + width / 2), y + dy * (gap + TAG_MM * 0.35)], width, TAG_MM * 0.95);
    }),
  );
}

/** A name, the middle of what it names, and the direction of that, a unit vector; how far it reaches to either side. */
export interface Named {
  readonly text: string;
  readonly at: Spot;
  readonly direction: Spot;
  readonly reach: number;
}

/** Names of keep-outs beside them; those that find no room are left out and counted. */
export function nameLabels(names: readonly Named[], room: LabelRoom): Labels {
  const items: { at: Spot; text: string }[] = [];
  for (const {
    at,
    text: full,
    direction: [dx, dy],
    reach,
  } of names.slice(0, MOST_NAMES)) {
    const text = shortened(full, TAG_MM, WIDEST_MM * 1.5);
    const width = textWidth(text, TAG_MM);
    const aside = Math.abs(dx) >= Math.abs(dy) ? [0, 2.2] : [width / 2 + 1.2, 0];
    const spots = NAME_STEPS_MM.filter((step) => Math.abs(step) <= reach).flatMap((step): Spot[] => {
      const [x, y] = [at[0] + step * dx, at[1] + step * dy];
      return [
        [x + aside[0], y - aside[1]],
        [x - aside[0], y + aside[1]],
      ];
    });
    const taken = room.takeFirst(spots.map((spot) => boxAbout(spot, width, TAG_MM)));
    if (taken >= 0) items.push({ at: [spots[taken][0], spots[taken][1] + TAG_MM * 0.36], text });
  }
  const style = { fill: 'ink', fillOpacity: 0.8 } as const;
  const primitives: Primitive[] =
    items.length === 0 ? [] : [{ kind: 'text', items, size: TAG_MM, anchor: 'middle', hasRim: true, style }];
  return { primitives, leftOut: names.length - items.length };
}
