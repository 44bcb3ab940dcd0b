import { boreLegend, boreMarks } from './bore-marks.js';
import { CALLOUT_SAMPLE, calloutMarks } from './callout-marks.js';
import { gridlineMarks, roomForNames } from './gridline-marks.js';
import { type HoleMarks, holeLegend, holeMarks, type TradeLooks, tradeLooks } from './hole-marks.js';
import { keepOutLegend, keepOutMarks } from './keep-out-marks.js';
import { boxAbout, LabelRoom } from './label-room.js';
import type { LegendEntry } from './legend.js';
import { planExtent } from './plan-extent.js';
import type { PlanCause, PlanLevel } from './plan-level.js';
import { type PlanPaper, planSheet } from './plan-sheet.js';
import { type PaperBox, PlanView } from './plan-view.js';
import { PLAN_WORDS, type PlanWords } from './plan-words.js';
import type { Drawing, Primitive } from './primitive.js';
import { unitSystemOf } from './scale.js';
import { ShapeBudget } from './shape-budget.js';
import { keyPlanMarks, legendMarks, noteLines, noteMarks, scaleMarks, titleMarks } from './sheet-marks.js';
import { structureLegend, structureMarks } from './structure-marks.js';
import { nameLabels, tagLabels } from './tag-labels.js';

export interface PlanOptions {
  readonly paper: PlanPaper;
  /** What is pointed out, the gravest first. */
  readonly causes?: readonly PlanCause[];
  /** Absent: English. */
  readonly words?: PlanWords;
}

/** A plan, and what is said of it. */
export interface LevelPlan extends Drawing {
  /** Name of the scale, which holds when it is printed at full size. */
  readonly scaleName: string;
  /** What the drawing says it leaves out, as sentences. */
  readonly notes: readonly string[];
}

/**
 * The plan of one level: seen from above, y upward, at the largest round scale that the paper allows.
 *
 * Holes in the symbols of their project, a plain circle where it gives none. Marks are as large as the spacing of the
 * holes allows. Tags and names stand where they cover nothing; what finds no room, lies outside of the plan or is more
 * than a plan can show is left out and counted in the notes. The size of the drawing has a limit whatever a layout
 * holds. The same input gives the same drawing.
 */
export function planOfLevel(level: PlanLevel, { paper, causes = [], words = PLAN_WORDS }: PlanOptions): LevelPlan {
  const looks = tradeLooks(level);
  const legend = legendOf(level, looks, causes.length > 0, words);
  const extent = planExtent(level);
  const size = { width: extent.xHigh - extent.xLow, height: extent.yHigh - extent.yLow };
  const sheet = planSheet(paper, size, roomForNames(level.gridlines), legend, unitSystemOf(level.display));
  const [x, y] = [extent.xLow + size.width / 2, extent.yLow + size.height / 2];
  const view = new PlanView(sheet.plan, sheet.scale.denominator, x, y);
  const plan = planMarks(level, looks, causes, { view, frame: sheet.frame }, words);
  const lines = noteLines(plan.notes, sheet);
  const { left, top, right, bottom } = sheet.frame;
  const frame = { at: [left, top] as const, width: right - left, height: bottom - top };
  return {
    width: sheet.width,
    height: sheet.heightWith(lines.length),
    label: `${level.name ?? words.noLevel}: ${words.holes(level.holes.count)}. ${words.scale(sheet.scale.name)}. ${words.seenFromAbove}.`,
    scaleName: sheet.scale.name,
    notes: plan.notes,
    children: [
      ...titleMarks(level, sheet, words),
      { kind: 'group', name: 'plan', clip: frame, children: plan.children },
      { kind: 'rect', ...frame, style: { stroke: 'ink', strokeWidth: 0.2, strokeOpacity: 0.6 } },
      ...keyPlanMarks(level, view, sheet, words),
      { kind: 'group', name: 'legend', children: legendMarks(sheet) },
      ...scaleMarks(level, view, sheet, words),
      ...noteMarks(lines, sheet),
    ],
  };
}

function legendOf(level: PlanLevel, looks: TradeLooks, hasCauses: boolean, words: PlanWords): LegendEntry[] {
  return [
    ...holeLegend(level, looks, words),
    ...(hasCauses ? [{ sample: CALLOUT_SAMPLE, text: words.cause }] : []),
    ...boreLegend(level.bores, words),
    ...keepOutLegend(level.keepOuts, words),
    ...structureLegend(level.substrates, words),
  ];
}

function planMarks(
  level: PlanLevel,
  looks: TradeLooks,
  causes: readonly PlanCause[],
  { view, frame }: { readonly view: PlanView; readonly frame: PaperBox },
  words: PlanWords,
): { children: Primitive[]; notes: string[] } {
  const budget = new ShapeBudget();
  const room = new LabelRoom(frame);
  const structure = structureMarks(level.substrates, view, budget);
  const keepOuts = keepOutMarks(level.keepOuts, view, budget);
  const grid = gridlineMarks(level.gridlines, view, room, budget);
  const holes = holeMarks(level, looks, view);
  for (const { at } of holes.drawn) room.take(boxAbout(at, holes.size, holes.size));
  const bores = boreMarks(level.bores, view);
  for (const bore of bores) {
    if (bore.kind === 'marks') for (const at of bore.at) room.take(boxAbout(at, 1.8, 1.8));
  }
  const spotOf = (hole: number) => {
    const spot = view.spot(level.holes.x[hole], level.holes.y[hole]);
    return view.holds(spot) ? spot : undefined;
  };
  const callouts = calloutMarks(causes, spotOf, holes.size, room, new LabelRoom(view.box));
  const names = nameLabels(keepOuts.names, room);
  const tags = tagLabels(holes.drawn, (hole) => level.holes.tag(hole), callouts.holes, holes.size, room);
  const children = [
    ...keepOuts.primitives,
    ...grid.lines,
    ...structure,
    ...bores,
    ...holes.primitives,
    ...names.primitives,
    ...tags.primitives,
    ...grid.bubbles,
    ...callouts.primitives,
  ];
  const shown = level.holes.count - holes.outside;
  const leftOut = { tags: shown - tags.placed, names: names.leftOut + grid.namesLeftOut, causes: callouts.leftOut };
  return { children, notes: notesOf(level, looks, holes, leftOut, budget.leftOut, words) };
}

function notesOf(
  { leftOut, holes: counts }: PlanLevel,
  { alike }: TradeLooks,
  holes: HoleMarks,
  crowded: { tags: number; names: number; causes: number },
  shapes: number,
  words: PlanWords,
): string[] {
  const counted = (count: number, say: (count: number) => string) => (count > 0 ? [say(count)] : []);
  return [
    ...counted(crowded.causes, words.causesLeftOut),
    ...counted(holes.outside, words.holesOutside),
    ...counted(leftOut.holes, words.holesUnread),
    ...counted(holes.inOnePlace, words.holesInOnePlace),
    ...counted(holes.merged, (count) => words.holesMerged(count, `${holes.mergedMm} mm`)),
    ...counted(crowded.tags, (count) => words.tagsLeftOut(count, counts.count - holes.outside)),
    ...counted(crowded.names, words.namesLeftOut),
    ...(alike === 'all' ? [words.alike] : alike === 'but-for-colour' ? [words.alikeButForColour] : []),
    ...(holes.lettersLeftOut ? [words.lettersLeftOut] : []),
    ...counted(leftOut.keepOuts, words.keepOutsWithoutLevel),
    ...counted(leftOut.bores, words.boresWithoutLevel),
    ...counted(shapes, words.shapesLeftOut),
  ];
}
