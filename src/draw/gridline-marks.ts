import type { Gridline } from '../generated/layout.js';
import { boxAbout, type LabelRoom } from './label-room.js';
import { cutSegment, type PlanView } from './plan-view.js';
import type { Primitive, Spot, Style } from './primitive.js';
import type { ShapeBudget } from './shape-budget.js';
import { shortened, textWidth } from './text-width.js';

const LINE: Style = { stroke: 'ink', strokeWidth: 0.16, strokeOpacity: 0.6, dash: [7, 1.2, 1.2, 1.2] };
const BUBBLE: Style = { stroke: 'ink', strokeWidth: 0.25, fill: 'paper' };
const TYPE_MM = 2.6;
/** Room that a bubble needs outside of the plan, mm. */
export const BUBBLE_MM = 6.4;
const WIDEST_MM = 22;

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
  const bubbles: Primitive[] = [];
  const items: { at: Spot; text: string }[] = [];
  let namesLeftOut = 0;
  for (const { name, from, to } of gridlines) {
    if (budget.take([from, to]).length === 0) continue;
    const piece = cutSegment(view.spot(...from), view.spot(...to), view.box);
    if (piece === undefined) continue;
    lines.push(piece);
    const text = shortened(name, TYPE_MM, WIDEST_MM);
    const width = Math.max(BUBBLE_MM, textWidth(text, TYPE_MM) + 2.4);
    const spots = spotsAt(piece, width);
    const taken = room.takeFirst(spots.map((spot) => boxAbout(spot, width, BUBBLE_MM)));
    if (taken < 0) {
      namesLeftOut++;
      continue;
    }
    const [x, y] = spots[taken];
    bubbles.push({
      kind: 'rect',
      at: [x - width / 2, y - BUBBLE_MM / 2],
      width,
      height: BUBBLE_MM,
      corner: BUBBLE_MM / 2,
      style: BUBBLE,
    });
    items.push({ at: [x, y + TYPE_MM * 0.36], text });
  }
  if (items.length > 0) {
    bubbles.push({ kind: 'text', items, size: TYPE_MM, anchor: 'middle', isBold: true, style: { fill: 'ink' } });
  }
  return { lines: lines.length === 0 ? [] : [{ kind: 'polyline', lines, style: LINE }], bubbles, namesLeftOut };
}

/** Middles of a bubble beyond each end of a line, that towards the upper left first, then a little inside of the ends. */
function spotsAt([a, b]: readonly [Spot, Spot], width: number): Spot[] {
  const [first, last] = a[0] + a[1] <= b[0] + b[1] ? [a, b] : [b, a];
  const length = Math.hypot(last[0] - first[0], last[1] - first[1]);
  const [dx, dy] = length === 0 ? [0, 1] : [(last[0] - first[0]) / length, (last[1] - first[1]) / length];
  // From the middle of a lying pill to its rim in that direction.
  const reach = Math.min(BUBBLE_MM / 2 / Math.max(Math.abs(dy), 1e-9), width / 2);
  const at = ([x, y]: Spot, by: number): Spot => [x + dx * by, y + dy * by];
  const spots = [at(first, -reach), at(last, reach)];
  return length > 4 * reach ? [...spots, at(first, reach * 1.2), at(last, -reach * 1.2)] : spots;
}
