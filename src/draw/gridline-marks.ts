import type { Gridline } from '../generated/layout.js';
import { boxAbout, type LabelRoom } from './label-room.js';
import { cutSegment, type PlanView } from './plan-view.js';
import type { Circle, Primitive, Rect, Spot, Style } from './primitive.js';
import type { ShapeBudget } from './shape-budget.js';
import { shortened, textWidth } from './text-width.js';

const LINE: Style = { stroke: 'ink', strokeWidth: 0.16, strokeOpacity: 0.6, dash: [7, 1.2, 1.2, 1.2] };
const BUBBLE: Style = { stroke: 'ink', strokeWidth: 0.25, fill: 'paper' };
const TYPE_MM = 2.6;
const BUBBLE_MM = 6.4;
const WIDEST_MM = 22;
/** How far from the end of its line a bubble may stand. */
const STEPS_MM = [0, 4, 8];

/** Gridlines of a plan; names stand in bubbles at the upper or left end of each line. */
export interface GridlineMarks {
  readonly lines: readonly Primitive[];
  readonly bubbles: readonly Primitive[];
  readonly namesLeftOut: number;
}

/** Gridlines in plan, cut at its edge. A name that finds no room at either end is left out and counted. */
export function gridlineMarks(
  gridlines: readonly Gridline[],
  view: PlanView,
  room: LabelRoom,
  budget: ShapeBudget,
): GridlineMarks {
  const lines: Spot[][] = [];
  const bubbles = new Map<number, Spot[]>();
  const items: { at: Spot; text: string }[] = [];
  let namesLeftOut = 0;
  for (const { name, from, to } of gridlines) {
    if (budget.take([from, to]).length === 0) continue;
    const piece = cutSegment(view.spot(...from), view.spot(...to), view.box);
    if (piece === undefined) continue;
    const text = shortened(name, TYPE_MM, WIDEST_MM);
    const width = Math.max(BUBBLE_MM, textWidth(text, TYPE_MM) + 2.4);
    lines.push(piece);
    const places = placesOf(piece, width);
    const taken = room.takeFirst(places.map(({ at }) => boxAbout(at, width, BUBBLE_MM)));
    if (taken < 0) {
      namesLeftOut++;
      continue;
    }
    const { at, stub } = places[taken];
    if (stub[0][0] !== stub[1][0] || stub[0][1] !== stub[1][1]) lines.push([...stub]);
    const [x, y] = at;
    const ofWidth = bubbles.get(width) ?? [];
    bubbles.set(width, ofWidth);
    ofWidth.push(at);
    items.push({ at: [x, y + TYPE_MM * 0.36], text });
  }
  return {
    lines: lines.length === 0 ? [] : [{ kind: 'polyline', lines, style: LINE }],
    bubbles: [
      ...[...bubbles].map(([width, at]): Primitive => ({ kind: 'marks', sign: [bubble(width)], at })),
      ...(items.length === 0
        ? []
        : [{ kind: 'text', items, size: TYPE_MM, anchor: 'middle', isBold: true, style: { fill: 'ink' } } as const]),
    ],
    namesLeftOut,
  };
}

function bubble(width: number): Circle | Rect {
  if (width === BUBBLE_MM) return { kind: 'circle', at: [0, 0], radius: BUBBLE_MM / 2, style: BUBBLE };
  const at = [-width / 2, -BUBBLE_MM / 2] as const;
  return { kind: 'rect', at, width, height: BUBBLE_MM, corner: BUBBLE_MM / 2, style: BUBBLE };
}

/** A place for a bubble, and the way to it from the end of its line. */
interface Place {
  at: Spot;
  stub: readonly [end: Spot, rim: Spot];
}

/** At the upper end of a steep line and the left end of another one, then at the other end; then some way off both. */
function placesOf([a, b]: readonly [Spot, Spot], width: number): Place[] {
  const axis = isSteep(a, b) ? 1 : 0;
  const [first, last] = a[axis] <= b[axis] ? [a, b] : [b, a];
  const length = Math.hypot(last[0] - first[0], last[1] - first[1]);
  const [dx, dy] = length === 0 ? [0, 1] : [(last[0] - first[0]) / length, (last[1] - first[1]) / length];
  // From the middle of a lying pill to its rim in that direction.
  const reach = Math.min(BUBBLE_MM / 2 / Math.max(Math.abs(dy), 1e-9), width / 2);
  const place = (end: Spot, sign: 1 | -1, step: number): Place => {
    const beyond = (by: number): Spot => [end[0] + dx * sign * by, end[1] + dy * sign * by];
    return { at: beyond(step + reach), stub: [end, beyond(step)] };
  };
  return STEPS_MM.flatMap((step) => [place(first, -1, step), place(last, 1, step)]);
}

function isSteep(a: Spot, b: Spot): boolean {
  return Math.abs(b[1] - a[1]) >= Math.abs(b[0] - a[0]);
}

/** Room for names of gridlines at the upper and left side of a plan, and at the others where the grid runs askew, mm. */
export function roomForNames(gridlines: readonly Gridline[]): { start: number; end: number } {
  const askew = gridlines.filter(({ from, to }) => {
    const [dx, dy] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
    return Math.min(dx, dy) > 0.02 * Math.max(dx, dy);
  });
  const names = BUBBLE_MM + 1;
  return { start: gridlines.length > 0 ? names : 0, end: askew.length * 3 > gridlines.length ? names : 0 };
}
