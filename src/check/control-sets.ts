import type { ControlPoint } from '../generated/layout.js';
import type { LayoutModel } from '../model/layout-model.js';
import { PlanCells } from './plan-cells.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** Two control points this near are one place. Our own definition. */
export const ONE_PLACE_MM = 1;

/** Points of no level times levels of a layout of which the sets are judged. Our own definition. */
const MOST_SHARED = 1_000_000;

/** Why sets of control are left out that are too many for the points in all of them. */
export const TOO_MANY_SETS = 'too many control points without a level for so many levels';

/** Why the control of a layout is left out that may have a point which cannot be read. */
export const CONTROL_BROKEN = 'a record of the control broken';

/** A control point that is not replaced by another one. Millimetres, site frame. */
export interface UsedPoint {
  record: ControlPoint;
  /** Index in `control`. */
  index: number;
  x: number;
  y: number;
  /** NaN where it has no height. */
  z: number;
}

/** The control that a set-up sees: all of a layout, or that of one level. */
export interface ControlSet {
  /** Id of the level; absent where no point of the layout names one. */
  level?: string;
  /** The points of the set that are more than {@link ONE_PLACE_MM} apart in plan from all before them. */
  places: UsedPoint[];
  /** The point that speaks for the set: the first one that names its level, or the first at all. */
  first: UsedPoint;
}

const used = new WeakMap<LayoutModel, readonly UsedPoint[]>();
const sets = new WeakMap<LayoutModel, readonly ControlSet[]>();

/** The used control points of a layout, in the order of the document. Made once. */
export function usedControl(layout: LayoutModel): readonly UsedPoint[] {
  const known = used.get(layout) ?? newUsed(layout);
  used.set(layout, known);
  return known;
}

function newUsed(layout: LayoutModel): UsedPoint[] {
  return layout.collection('control').judged.flatMap((record, index) => {
    if (record === undefined || record.replacedBy !== undefined) return [];
    const [x, y, z = Number.NaN] = record.point;
    return [{ record, index, x, y, z }];
  });
}

/** Whether the control of a layout is not known as a whole, because a record of it is broken or it is no list at all. */
export function isControlBroken(layout: LayoutModel): boolean {
  return layout.unreadable.has('control') || layout.collection('control').hasBroken;
}

/** Used points by the level that they name, or undefined; levels in the order in which the points name them. */
export function controlByLevel(layout: LayoutModel): ReadonlyMap<string | undefined, readonly UsedPoint[]> {
  const byLevel = new Map<string | undefined, UsedPoint[]>();
  for (const point of usedControl(layout)) {
    const known = byLevel.get(point.record.level);
    if (known === undefined) byLevel.set(point.record.level, [point]);
    else known.push(point);
  }
  return byLevel;
}

/** How many sets the control of a layout has, if points of no level would be in so many that nobody waits for it; else 0. */
export function tooManySets(layout: LayoutModel): number {
  const byLevel = controlByLevel(layout);
  const inAll = byLevel.get(undefined)?.length ?? 0;
  const levels = byLevel.size - (inAll > 0 ? 1 : 0);
  return inAll * levels > MOST_SHARED ? levels : 0;
}

/** The sets of control of a layout, levels in the order in which the points name them. Made once. */
export function controlSets(layout: LayoutModel): readonly ControlSet[] {
  const known = sets.get(layout) ?? newSets(layout);
  sets.set(layout, known);
  return known;
}

function newSets(layout: LayoutModel): ControlSet[] {
  const points = usedControl(layout);
  if (points.length === 0) return [];
  const isAlone = alone(points);
  const byLevel = controlByLevel(layout);
  const inAll = byLevel.get(undefined) ?? [];
  if (inAll.length === points.length) return [{ places: places(points, isAlone), first: points[0] }];
  return [...byLevel].flatMap(([level, own]) => {
    if (level === undefined) return [];
    return [{ level, places: places(inOrder(inAll, own), isAlone), first: own[0] }];
  });
}

/** The points of two lists in the order of the document, in which each of them is. */
function inOrder(a: readonly UsedPoint[], b: readonly UsedPoint[]): UsedPoint[] {
  const both: UsedPoint[] = [];
  for (let k = 0, j = 0; k < a.length || j < b.length; )
    both.push(j >= b.length || (k < a.length && a[k].index < b[j].index) ? a[k++] : b[j++]);
  return both;
}

/** Points that have no other near them, of whatever set: they are places of each set that they are in. */
function alone(points: readonly UsedPoint[]): ReadonlySet<UsedPoint> {
  const cells = new PlanCells<{ count: number }>();
  for (const { x, y } of points) cells.at(x, y, () => ({ count: 0 })).count++;
  return new Set(
    points.filter(({ x, y }) => {
      const around = cells.around(x, y);
      return around.length === 1 && around[0].count === 1;
    }),
  );
}

function places(points: readonly UsedPoint[], isAlone: ReadonlySet<UsedPoint>): UsedPoint[] {
  const before = new PlanCells<UsedPoint[]>();
  return points.filter((point) => {
    if (isAlone.has(point)) return true;
    const { x, y } = point;
    if (before.around(x, y).some((cell) => cell.some((other) => isOnePlace(point, other)))) return false;
    before.at(x, y, () => []).push(point);
    return true;
  });
}

/** Whether two points lie at one place in plan. */
export function isOnePlace(a: UsedPoint, b: UsedPoint): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) <= ONE_PLACE_MM + LENGTH_SLACK_MM;
}

/** "The control" or "The control of level …", for the beginning of a message. */
export function controlOf(level: unknown): string {
  return level === undefined ? 'The control' : `The control of level "${level}"`;
}
