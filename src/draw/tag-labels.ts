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

export interface Labels {
  readonly primitives: readonly Primitive[];
  readonly leftOut: number;
}

/** Tags beside their marks, each where it covers nothing; those that find no such place are left out and counted. */
export function tagLabels(
  drawn: readonly { readonly hole: number; readonly at: Spot }[],
  tag: (hole: number) => string,
  markSize: number,
  room: LabelRoom,
): Labels {
  const starts: { at: Spot; text: string }[] = [];
  const ends: { at: Spot; text: string }[] = [];
  let placed = 0;
  for (const { hole, at } of drawn.slice(0, MOST_TRIED)) {
    const text = shortened(tag(hole), TAG_MM, WIDEST_MM);
    const [x, y] = at;
    const width = textWidth(text, TAG_MM);
    const sides = SIDES.flatMap(([dx, dy]) => GAPS_MM.map((gap) => [dx, dy, markSize / 2 + gap] as const));
    const boxes = sides.map(([dx, dy, gap]): PaperBox => {
      const inward = dy === 0 ? gap : gap * 0.5;
      const middleY = y + dy * (gap + TAG_MM * 0.35);
      return boxAbout([x + dx * (inward + width / 2), middleY], width, TAG_MM * 0.95);
    });
    const taken = room.takeFirst(boxes);
    if (taken < 0) continue;
    placed++;
    const { left, right, top, bottom } = boxes[taken];
    const baseLine = (top + bottom) / 2 + TAG_MM * 0.36;
    if (sides[taken][0] > 0) starts.push({ at: [left, baseLine], text });
    else ends.push({ at: [right, baseLine], text });
  }
  const texts = (items: typeof starts, anchor: 'start' | 'end'): Primitive[] =>
    items.length === 0 ? [] : [{ kind: 'text', items, size: TAG_MM, anchor, hasRim: true, style: { fill: 'ink' } }];
  return { primitives: [...texts(starts, 'start'), ...texts(ends, 'end')], leftOut: drawn.length - placed };
}

/** Names of keep-outs on their lines; those that find no room are left out and counted. */
export function nameLabels(names: readonly { readonly at: Spot; readonly text: string }[], room: LabelRoom): Labels {
  const items: { at: Spot; text: string }[] = [];
  for (const { at, text: full } of names.slice(0, MOST_NAMES)) {
    const text = shortened(full, TAG_MM, WIDEST_MM * 1.5);
    const width = textWidth(text, TAG_MM);
    const spots = [0, 1, -1, 2, -2].flatMap((step): Spot[] => [
      [at[0] + step * 9, at[1] - 2.2],
      [at[0] + step * 9, at[1]],
    ]);
    const taken = room.takeFirst(spots.map((spot) => boxAbout(spot, width, TAG_MM)));
    if (taken >= 0) items.push({ at: [spots[taken][0], spots[taken][1] + TAG_MM * 0.36], text });
  }
  const primitives: Primitive[] =
    items.length === 0
      ? []
      : [
          {
            kind: 'text',
            items,
            size: TAG_MM,
            anchor: 'middle',
            hasRim: true,
            style: { fill: 'ink', fillOpacity: 0.8 },
          },
        ];
  return { primitives, leftOut: names.length - items.length };
}
