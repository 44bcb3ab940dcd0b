import { boxAbout, type LabelRoom } from './label-room.js';
import type { PlanCause } from './plan-level.js';
import type { Primitive, Spot, Style } from './primitive.js';
import { textWidth } from './text-width.js';

const TYPE_MM = 2.5;
const HEIGHT_MM = 4.2;
/** Holes of a cause that are pointed out. */
const HOLES_OF_CAUSE = 3;
const MOST_CALLOUTS = 90;
const DISTANCES_MM = [6, 9, 13, 18, 24];
const DIRECTIONS = 12;
const LEADER: Style = { stroke: 'mark', strokeWidth: 0.25 };

export interface Callouts {
  readonly primitives: readonly Primitive[];
  /** Holes that are pointed out. */
  readonly holes: ReadonlySet<number>;
  /** Causes of which no hole is pointed out, though they have holes on the plan. */
  readonly leftOut: number;
}

/**
 * Points out the first holes of each cause with its number, at the end of a short line. The numbers stand where they
 * cover nothing, else where they cover marks but no other number; for one that has no such place nothing is drawn.
 *
 * @param spotOf place of a hole on paper; undefined where the plan does not show it
 * @param marks room that marks and names have taken; the callouts take theirs
 */
export function calloutMarks(
  causes: readonly PlanCause[],
  spotOf: (hole: number) => Spot | undefined,
  markSize: number,
  marks: LabelRoom,
  callouts: LabelRoom,
): Callouts {
  const pointed = new Set<number>();
  const lines: Spot[][] = [];
  const rings: Primitive[] = [];
  const items: { at: Spot; text: string }[] = [];
  let leftOut = 0;
  for (const { number, holes } of causes) {
    const first = firstPlaces(holes, spotOf);
    const before = items.length;
    const text = String(number);
    const width = Math.max(HEIGHT_MM, textWidth(text, TYPE_MM) + 1.8);
    for (const { hole, spot } of first) {
      const at = items.length < MOST_CALLOUTS ? placeOf(spot, width, marks, callouts) : undefined;
      if (at === undefined) break;
      pointed.add(hole);
      lines.push([spot, at]);
      takeWay(spot, at, markSize, marks);
      rings.push({ kind: 'circle', at: spot, radius: markSize / 2 + 0.6, style: LEADER });
      items.push({ at, text });
    }
    if (items.length === before && first.length > 0) leftOut++;
  }
  return {
    primitives: items.length === 0 ? [] : [...calloutOf(lines), ...rings, ...numbers(items)],
    holes: pointed,
    leftOut,
  };
}

/** Places of the first holes that the plan shows apart from each other. */
function firstPlaces(
  holes: readonly number[],
  spotOf: (hole: number) => Spot | undefined,
): { hole: number; spot: Spot }[] {
  const places: { hole: number; spot: Spot }[] = [];
  for (const hole of holes) {
    const spot = spotOf(hole);
    if (spot !== undefined && !places.some((other) => isSame(other.spot, spot))) places.push({ hole, spot });
    if (places.length === HOLES_OF_CAUSE) break;
  }
  return places;
}

function isSame(a: Spot, b: Spot): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.5;
}

function placeOf([x, y]: Spot, width: number, marks: LabelRoom, callouts: LabelRoom): Spot | undefined {
  const spots = DISTANCES_MM.flatMap((distance) =>
    Array.from({ length: DIRECTIONS }, (_, k): Spot => {
      // Up and to the right first.
      const angle = ((k * 360) / DIRECTIONS + 45) * (Math.PI / 180);
      return [x + distance * Math.cos(angle), y - distance * Math.sin(angle)];
    }),
  );
  const boxes = spots.map((spot) => boxAbout(spot, width + 0.6, HEIGHT_MM + 0.6));
  const isOpen = (k: number) => callouts.isFree(boxes[k]);
  const found = spots.findIndex((_, k) => isOpen(k) && marks.isFree(boxes[k]));
  const taken = found >= 0 ? found : spots.findIndex((_, k) => isOpen(k));
  if (taken < 0) return undefined;
  callouts.take(boxes[taken]);
  marks.take(boxes[taken]);
  return spots[taken];
}

function calloutOf(lines: readonly (readonly Spot[])[]): Primitive[] {
  return [{ kind: 'polyline', lines, style: LEADER }];
}

/** Keeps tags off the ring and the short line. */
function takeWay(from: Spot, to: Spot, markSize: number, room: LabelRoom): void {
  room.take(boxAbout(from, markSize + 1.3, markSize + 1.3));
  for (const t of [0.3, 0.5, 0.7]) {
    room.take(boxAbout([from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])], 0.8, 0.8));
  }
}

/** Numbers on filled pills. */
function numbers(items: readonly { readonly at: Spot; readonly text: string }[]): Primitive[] {
  const pills = items.map(({ at: [x, y], text }): Primitive => {
    const width = Math.max(HEIGHT_MM, textWidth(text, TYPE_MM) + 1.8);
    return {
      kind: 'rect',
      at: [x - width / 2, y - HEIGHT_MM / 2],
      width,
      height: HEIGHT_MM,
      corner: HEIGHT_MM / 2,
      style: { fill: 'mark' },
    };
  });
  const onBaseLine = items.map(({ at: [x, y], text }) => ({ at: [x, y + TYPE_MM * 0.36] as const, text }));
  return [
    ...pills,
    { kind: 'text', items: onBaseLine, size: TYPE_MM, anchor: 'middle', isBold: true, style: { fill: 'paper' } },
  ];
}

/** A callout as the legend shows it. */
export const CALLOUT_SAMPLE: readonly Primitive[] = numbers([{ at: [0, 0], text: '1' }]);
