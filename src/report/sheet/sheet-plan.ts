import { boreMarks } from '../../draw/bore-marks.js';
import { gridlineMarks, roomForNames } from '../../draw/gridline-marks.js';
import { keepOutMarks } from '../../draw/keep-out-marks.js';
import { boxAbout, LabelRoom } from '../../draw/label-room.js';
import type { PlanLevel } from '../../draw/plan-level.js';
import { type PaperBox, PlanView } from '../../draw/plan-view.js';
import type { Primitive, Spot } from '../../draw/primitive.js';
import { roundScale, scaleBar, unitSystemOf } from '../../draw/scale.js';
import { ShapeBudget } from '../../draw/shape-budget.js';
import { structureMarks } from '../../draw/structure-marks.js';
import { symbolSign } from '../../draw/symbol-sign.js';
import { PlanBox } from '../../geometry/plan-box.js';
import { printable } from '../../model/printable.js';
import { fitLines, typeWidth } from './fit-lines.js';
import { LOOK_UP_TYPE_MM } from './sheet-paper.js';
import type { OtherHole } from './other-layouts.js';
import { closedMarks, otherHoleMarks } from './plan-extras.js';
import type { SheetRow } from './sheet-row.js';

/** The plan of the holes of one sheet. */
export interface SheetPlan {
  readonly primitives: Primitive[];
  readonly view: PlanView;
  readonly scaleName: string;
  /** How many holes of each other trade are drawn, by its name. */
  readonly otherTrades: ReadonlyMap<string, number>;
  readonly labelsLeftOut: number;
  readonly shapesLeftOut: number;
}

/** What is shown around the holes, mm of the building. */
const AROUND_MM = 1000;
const LEAST_SIDE_MM = 3000;
const SIGN_MM = 3.2;
const NUMBER_MM = 4.4;
const NAME_WIDTH_MM = 34;
/** Room for the scale bar at the foot of the plan. */
const BAR_ROOM_MM = 6;
/** How far from its mark a number may stand, and in how many directions it is tried. */
const REACHES_MM = [4.2, 6.5, 9, 12, 16];
const DIRECTIONS = 12;

/** Draws the holes with their numbers, and around them structure, gridlines, existing bores and keep-outs, at the largest round scale. */
export function sheetPlan(
  rows: readonly SheetRow[],
  level: PlanLevel & { readonly otherHoles: readonly OtherHole[] },
  frame: PaperBox,
): SheetPlan {
  const { view, scaleName } = viewOf(rows, level, frame);
  const budget = new ShapeBudget();
  const inside = {
    left: frame.left + 0.5,
    top: frame.top + 0.5,
    right: frame.right - 0.5,
    bottom: frame.bottom - BAR_ROOM_MM,
  };
  const room = new LabelRoom(inside);
  const structure = structureMarks(level.substrates, view, budget);
  const keepOuts = keepOutMarks(level.keepOuts, view, budget);
  const grid = gridlineMarks(level.gridlines, view, room, budget);
  const marks = rows.map(({ hole: { hole } }) => view.spot(hole.point[0], hole.point[1]));
  for (const at of marks) room.take(boxAbout(at, SIGN_MM, SIGN_MM));
  const rings = otherHoleMarks(level.otherHoles, view);
  const numbers = numberLabels(rows, marks, room);
  const names = keepOutNames(keepOuts.names, room);
  const signs = rows.map(
    ({ look }, k): Primitive => ({ kind: 'marks', sign: symbolSign(look, SIGN_MM, false), at: [marks[k]] }),
  );
  const drawn = [
    ...keepOuts.primitives,
    ...grid.lines,
    ...structure,
    ...boreMarks(level.bores, view),
    ...rings.primitives,
    ...numbers.leaders,
    ...signs,
    ...closedMarks(rows, marks, SIGN_MM),
    ...names.primitives,
    ...numbers.texts,
    ...grid.bubbles,
    ...barMarks(level, view, frame),
  ];
  return {
    primitives: framed(drawn, frame),
    view,
    scaleName,
    otherTrades: rings.trades,
    labelsLeftOut: numbers.leftOut + names.leftOut + grid.namesLeftOut,
    shapesLeftOut: budget.leftOut + rings.leftOut,
  };
}

/** The plan in its frame, outside of which nothing of it is seen. */
function framed(children: Primitive[], { left, top, right, bottom }: PaperBox): Primitive[] {
  const box = { at: [left, top] as const, width: right - left, height: bottom - top };
  return [
    { kind: 'group', name: 'plan', clip: box, children },
    { kind: 'rect', ...box, style: { stroke: 'ink', strokeWidth: 0.3 } },
  ];
}

function viewOf(rows: readonly SheetRow[], level: PlanLevel, frame: PaperBox): { view: PlanView; scaleName: string } {
  const box = new PlanBox();
  for (const { hole } of rows) box.add(hole.hole.point[0], hole.hole.point[1]);
  const { start, end } = roomForNames(level.gridlines);
  const paper = {
    left: frame.left + Math.max(start, 1),
    top: frame.top + Math.max(start, 1),
    right: frame.right - Math.max(end, 1),
    bottom: frame.bottom - BAR_ROOM_MM - end,
  };
  const shown = (low: number, high: number) => Math.max(high - low + 2 * AROUND_MM, LEAST_SIDE_MM);
  const [width, height] = [shown(box.xLow, box.xHigh), shown(box.yLow, box.yHigh)];
  const least = Math.max(width / (paper.right - paper.left), height / (paper.bottom - paper.top));
  const scale = roundScale(least, unitSystemOf(level.display));
  const [x, y] = [(box.xLow + box.xHigh) / 2, (box.yLow + box.yHigh) / 2];
  return { view: new PlanView(paper, scale.denominator, x, y), scaleName: scale.name };
}

/** Numbers of the list beside the marks, with a line to those that stand apart. */
function numberLabels(rows: readonly SheetRow[], marks: readonly Spot[], room: LabelRoom) {
  const texts: Primitive[] = [];
  const leaders: Primitive[] = [];
  let leftOut = 0;
  for (const [k, { number }] of rows.entries()) {
    const text = String(number);
    const width = typeWidth(text, NUMBER_MM, true);
    const spots = REACHES_MM.flatMap((reach) => around(marks[k], reach, width / 2));
    const taken = room.takeFirst(spots.map((spot) => boxAbout(spot, width, NUMBER_MM * 0.9)));
    if (taken < 0) {
      leftOut++;
      continue;
    }
    const [x, y] = spots[taken];
    if (taken >= DIRECTIONS) {
      leaders.push({ kind: 'line', from: marks[k], to: spots[taken], style: { stroke: 'ink', strokeWidth: 0.2 } });
    }
    texts.push({
      kind: 'text',
      items: [{ at: [x, y + NUMBER_MM * 0.36], text }],
      size: NUMBER_MM,
      anchor: 'middle',
      isBold: true,
      hasRim: true,
      style: { fill: 'ink' },
    });
  }
  return { texts, leaders, leftOut };
}

/** Places around a spot, first to the right, then to the left and so on. */
function around([x, y]: Spot, reach: number, halfWidth: number): Spot[] {
  return Array.from({ length: DIRECTIONS }, (_, k): Spot => {
    const turn = (k % 2 === 0 ? k : k - 1) / 2 + (k % 2 === 0 ? 0 : DIRECTIONS / 2);
    const angle = (2 * Math.PI * turn) / DIRECTIONS;
    return [x + Math.cos(angle) * (reach - 1.5 + halfWidth), y - Math.sin(angle) * reach];
  });
}

function keepOutNames(
  names: readonly { at: Spot; text: string }[],
  room: LabelRoom,
): { primitives: Primitive[]; leftOut: number } {
  const primitives: Primitive[] = [];
  let leftOut = 0;
  for (const { at, text } of names) {
    const [line] = fitLines(printable(text), NAME_WIDTH_MM, LOOK_UP_TYPE_MM, 1).lines;
    if (line === undefined) continue;
    const spots = [0, -1, 1, -2, 2].flatMap((step): Spot[] => [
      [at[0] + step * 10, at[1] - 3.4],
      [at[0] + step * 10, at[1] + 3.4],
    ]);
    const width = typeWidth(line, LOOK_UP_TYPE_MM);
    const taken = room.takeFirst(spots.map((spot) => boxAbout(spot, width, LOOK_UP_TYPE_MM)));
    if (taken < 0) {
      leftOut++;
      continue;
    }
    const [x, y] = spots[taken];
    primitives.push({
      kind: 'text',
      items: [{ at: [x, y + LOOK_UP_TYPE_MM * 0.36], text: line }],
      size: LOOK_UP_TYPE_MM,
      anchor: 'middle',
      hasRim: true,
      style: { fill: 'ink' },
    });
  }
  return { primitives, leftOut };
}

const MOST_BAR_MM = 40;

function barMarks({ display }: PlanLevel, { denominator }: PlanView, frame: PaperBox): Primitive[] {
  const { lengthMm, value, unit } = scaleBar(MOST_BAR_MM * denominator, display);
  const width = lengthMm / denominator;
  const at: Spot = [frame.left + 2, frame.bottom - 3.4];
  return [
    { kind: 'rect', at, width, height: 1.6, style: { stroke: 'ink', strokeWidth: 0.25, fill: 'paper' } },
    { kind: 'rect', at, width: width / 2, height: 1.6, style: { fill: 'ink' } },
    {
      kind: 'text',
      items: [{ at: [at[0] + width + 1.5, frame.bottom - 1.4], text: `${value} ${unit}` }],
      size: LOOK_UP_TYPE_MM,
      hasRim: true,
      style: { fill: 'ink' },
    },
  ];
}
