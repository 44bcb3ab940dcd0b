import { keyPlan } from '../../draw/key-plan.js';
import { moved } from '../../draw/moved.js';
import { northArrows } from '../../draw/north-arrows.js';
import type { Primitive } from '../../draw/primitive.js';
import { unitSystemOf } from '../../draw/scale.js';
import type { ControlPoint } from '../../generated/layout.js';
import { printable } from '../../model/printable.js';
import { heightsInWords } from './heights-in-words.js';
import { LINE_MM, labelled, paragraphs, type SheetBlock, stacked, textAt, TYPE_MM } from './sheet-block.js';
import type { SheetCaps } from './sheet-caps.js';
import type { SheetContext } from './sheet-context.js';
import { drillDirection } from './sheet-hole.js';
import { sheetPlan } from './sheet-plan.js';
import { checkLimitInWords } from './sheet-texts.js';
import type { SheetRow } from './sheet-row.js';

const SIDE_MM = 79;
const KEY_PLAN_MM = { width: 50, height: 17 };
/** Beyond these the nearest ones are given. */
const MOST_POINTS = 6;

/** The band with the plan at the left, and key plan, north and control at its right; below it how the plan is seen. */
export interface SheetBand {
  readonly heightMm: number;
  readonly isCut: boolean;
  /** Draws it, and says what the plan does not show. */
  draw(top: number): { primitives: Primitive[]; leftOut: string[]; otherTrades: ReadonlyMap<string, number> };
}

/** @param extraMm what the paper has free, for a larger plan */
export function sheetBand(
  rows: readonly SheetRow[],
  context: SheetContext,
  box: { left: number; width: number },
  caps: SheetCaps,
  extraMm = 0,
): SheetBand {
  const { words } = context;
  const sideLeft = box.left + box.width - SIDE_MM;
  const keyMm = LINE_MM['look-up'] + KEY_PLAN_MM.height + 1.5;
  const side = { left: sideLeft, width: SIDE_MM };
  const control = stacked([controlBlock(rows, context, side, caps), limitBlock(rows, context, side)]);
  // How many of them the plan shows is known when it is drawn.
  const most = { otherTrades: context.otherTrades };
  const bandMm = Math.max(caps.bandMm, keyMm + control.heightMm) + extraMm;
  const scaleName = LONGEST_SCALE[unitSystemOf(context.records.header.display)];
  const caption = captionOf(rows, context, { scaleName, ...most }, box, caps);
  return {
    heightMm: bandMm + 1 + caption.heightMm + 1,
    isCut: control.isCut || caption.isCut,
    draw(top) {
      const level = context.planLevel(rows);
      const frame = { left: box.left, top, right: sideLeft - 3, bottom: top + bandMm };
      const plan = sheetPlan(rows, level, frame);
      const north = northArrows(level.frame, words.plan);
      const key = {
        left: sideLeft,
        top: top + LINE_MM['look-up'],
        right: sideLeft + KEY_PLAN_MM.width,
        bottom: top + LINE_MM['look-up'] + KEY_PLAN_MM.height,
      };
      const drawnKey = keyPlan(level, plan.view.shown, key);
      const keyTitle = drawnKey.length === 0 ? `${words.keyPlan}: ${words.noOutline}` : words.keyPlan;
      return {
        primitives: [
          ...plan.primitives,
          textAt([sideLeft, top + 3.2], keyTitle, TYPE_MM['look-up']),
          { kind: 'group', name: 'key-plan', clip: { at: [key.left, key.top], ...KEY_PLAN_MM }, children: drawnKey },
          { kind: 'group', name: 'north', children: moved(north.primitives, sideLeft + SIDE_MM - 10, top + 12) },
          ...control.draw(top + keyMm),
          ...captionOf(rows, context, plan, box, caps).draw(top + bandMm + 1),
        ],
        otherTrades: plan.otherTrades,
        leftOut: [
          ...(plan.labelsLeftOut > 0 ? [words.labelsLeftOut(plan.labelsLeftOut)] : []),
          ...(plan.shapesLeftOut > 0 ? [words.shapesLeftOut(plan.shapesLeftOut)] : []),
        ],
      };
    },
  };
}

/** No round scale of the holes of a sheet has a longer name. */
const LONGEST_SCALE = { metric: '1:2000', imperial: `3/32" = 1'-0"` };

/** How the plan is seen: below it. */
function captionOf(
  rows: readonly SheetRow[],
  context: SheetContext,
  { scaleName, otherTrades }: { scaleName: string; otherTrades: ReadonlyMap<string, number> },
  box: { left: number; width: number },
  caps: SheetCaps,
): SheetBlock {
  const { words, records } = context;
  const directions = [...new Set(rows.map(({ hole }) => drillDirection(hole)))];
  const others = [...otherTrades.values()].reduce((sum, count) => sum + count, 0);
  const caption = [
    `${words.planScale(scaleName)}.`,
    words.seenFromAbove,
    ...heightsInWords(rows, context),
    ...directions.map((direction) => words.drilled[direction]),
    ...(others > 0 ? [words.otherHoles(others, printable([...otherTrades.keys()].join(', ')))] : []),
    ...northArrows(records.header.frame, words.plan).words.map((text) => `${text}.`),
  ].join(' ');
  return paragraphs([caption], box, 'look-up', caps.caption);
}

/** Control points that set-ups of the level are made from: those of the level or of none that nothing replaces. */
export function controlOf(rows: readonly SheetRow[], { records: { header } }: SheetContext): ControlPoint[] {
  const level = rows[0].hole.level;
  const used = (header.control ?? []).filter(
    (point) =>
      point.replacedBy === undefined && (point.level === undefined || level === undefined || point.level === level),
  );
  if (used.length <= MOST_POINTS) return used;
  const mean = (axis: 0 | 1) => rows.reduce((sum, { hole }) => sum + hole.hole.point[axis] / rows.length, 0);
  const [x, y] = [mean(0), mean(1)];
  const far = ({ point }: ControlPoint) => Math.hypot(point[0] - x, point[1] - y);
  return used
    .map((point) => ({ point, distance: far(point) }))
    .sort((a, b) => a.distance - b.distance)
    .map(({ point }) => point);
}

function controlBlock(
  rows: readonly SheetRow[],
  context: SheetContext,
  box: { left: number; width: number },
  caps: SheetCaps,
): SheetBlock {
  const { words, records, lengths } = context;
  const points = controlOf(rows, context);
  if (points.length === 0) return paragraphs([words.noControl], box, 'look-up', 2, true);
  const most = caps.points;
  const rest = points.length - most;
  return stacked([
    paragraphs([words.controlHead(printable(records.header.frame.name), lengths.unitBeside)], box, 'look-up', 2, true),
    paragraphs(
      points.slice(0, most).map((point) => controlText(point, context)),
      box,
      'look-up',
      2,
    ),
    paragraphs(rest > 0 ? [words.moreControl(rest)] : [], box, 'look-up', 1),
  ]);
}

/** The check limit in the type to work by. */
function limitBlock(
  rows: readonly SheetRow[],
  context: SheetContext,
  box: { left: number; width: number },
): SheetBlock {
  const [limit] = checkLimitInWords(rows, context);
  return labelled(context.words.labels.checkLimit, [limit], { ...box, labelWidth: 38 }, 'work', 1);
}

/** A control point with its coordinates, printable. */
export function controlText({ id, point, class: use }: ControlPoint, { lengths, words }: SheetContext): string {
  const [x, y, z] = point;
  const say = (mm: number) => lengths.bare(lengths.distance(mm));
  const height = z === undefined ? words.noHeight : say(z);
  return `${printable(id)}${use === 'check' ? ` ${words.checkPoint}` : ''}: ${say(x)}, ${say(y)}, ${height}`;
}
