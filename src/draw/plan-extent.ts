import { PlanBox } from '../geometry/plan-box.js';
import type { PlanHoles, PlanLevel } from './plan-level.js';

/** Least side of the piece that a plan shows, mm of the building. */
const LEAST_SIDE_MM = 2000;
/** Where the holes take up less than this of the outlines, they alone are shown; the key plan says where. */
const LEAST_SHARE = 1 / 6;
/** What is shown around holes that are shown alone, mm. */
const AROUND_MM = 2500;
const FEW = 0.05;

/**
 * The piece of a level that its plan shows: the outlines with the holes near them, else the holes without those far
 * from all others, else the gridlines. A hole of a mistaken unit so does not make the plan too small to read.
 */
export function planExtent(level: PlanLevel): PlanBox {
  const outlines = new PlanBox();
  for (const { outline } of level.substrates) for (const [x, y] of outline?.points ?? []) addFinite(outlines, x, y);
  const holes = boxOfMost(level.holes);
  const box = isEmpty(outlines) ? holes : isEmpty(holes) ? outlines : together(outlines, holes, level.holes);
  if (isEmpty(box)) for (const { from, to } of level.gridlines) for (const [x, y] of [from, to]) addFinite(box, x, y);
  if (isEmpty(box)) addFinite(box, 0, 0);
  return withGridEnds(padded(box), level);
}

function together(outlines: PlanBox, holes: PlanBox, all: PlanHoles): PlanBox {
  const side = Math.max(holes.longerSide, LEAST_SIDE_MM);
  const isApart =
    holes.distanceTo(middle(outlines.xLow, outlines.xHigh), middle(outlines.yLow, outlines.yHigh)) > outlines.diagonal;
  if (isApart || side < outlines.longerSide * LEAST_SHARE) return grown(holes, AROUND_MM + side / 2);
  const box = grown(outlines, 0);
  const reach = outlines.diagonal / 4;
  let outside = 0;
  for (let i = 0; i < all.count; i++) {
    if (outlines.distanceTo(all.x[i], all.y[i]) <= reach) box.add(all.x[i], all.y[i]);
    else outside++;
  }
  if (isFew(outside, all.count)) return box;
  box.add(holes.xLow, holes.yLow);
  box.add(holes.xHigh, holes.yHigh);
  return box;
}

/** The box of the holes without a few that lie more than three times the width of the middle half beyond it. */
function boxOfMost({ count, x, y }: PlanHoles): PlanBox {
  const [lowX, highX] = usualRange(x, count);
  const [lowY, highY] = usualRange(y, count);
  const [usual, all] = [new PlanBox(), new PlanBox()];
  let outside = 0;
  for (let i = 0; i < count; i++) {
    addFinite(all, x[i], y[i]);
    if (x[i] >= lowX && x[i] <= highX && y[i] >= lowY && y[i] <= highY) usual.add(x[i], y[i]);
    else outside++;
  }
  return isFew(outside, count) ? usual : all;
}

/** Whether holes may be left outside of a plan: a mistaken place here and there, no wing of a building. */
function isFew(outside: number, count: number): boolean {
  return outside <= Math.max(1, count * FEW);
}

function usualRange(values: ArrayLike<number>, count: number): [low: number, high: number] {
  const sorted = Float64Array.from({ length: count }, (_, i) => values[i]).sort();
  const [low, high] = [sorted[Math.floor((count - 1) * 0.25)], sorted[Math.ceil((count - 1) * 0.75)]];
  const reach = 3 * (high - low) + 10_000;
  return [low - reach, high + reach];
}

/** Ends of gridlines a little outside, so that names stand beside the plan and not in it. */
function withGridEnds(box: PlanBox, { gridlines }: PlanLevel): PlanBox {
  const near = grown(box, box.longerSide * 0.12);
  const wider = grown(box, 0);
  for (const { from, to } of gridlines) {
    for (const [x, y] of [from, to]) if (near.distanceTo(x, y) === 0) wider.add(x, y);
  }
  return wider;
}

function padded(box: PlanBox): PlanBox {
  const more = (size: number) => Math.max((LEAST_SIDE_MM - size) / 2, 0);
  const wider = new PlanBox();
  const [dx, dy] = [more(box.xHigh - box.xLow), more(box.yHigh - box.yLow)];
  wider.add(box.xLow - dx, box.yLow - dy);
  wider.add(box.xHigh + dx, box.yHigh + dy);
  return wider;
}

function grown({ xLow, yLow, xHigh, yHigh }: PlanBox, by: number): PlanBox {
  const box = new PlanBox();
  box.add(xLow - by, yLow - by);
  box.add(xHigh + by, yHigh + by);
  return box;
}

function isEmpty({ xLow, xHigh }: PlanBox): boolean {
  return xLow > xHigh;
}

function addFinite(box: PlanBox, x: number, y: number): void {
  if (Number.isFinite(x) && Number.isFinite(y)) box.add(x, y);
}

function middle(low: number, high: number): number {
  return low + (high - low) / 2;
}
