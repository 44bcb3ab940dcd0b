import type { ControlPoint } from '../generated/layout.js';
import type { LayoutModel } from '../model/layout-model.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** Two control points this near are one place. Our own definition. */
export const ONE_PLACE_MM = 1;

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

/** The used control points of a layout, in the order of the document. */
export function usedControl(layout: LayoutModel): UsedPoint[] {
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

/** The sets of control of a layout, levels in the order in which the points name them. */
export function controlSets(layout: LayoutModel): ControlSet[] {
  const points = usedControl(layout);
  if (points.length === 0) return [];
  const levels = new Set(points.flatMap(({ record }) => record.level ?? []));
  if (levels.size === 0) return [{ places: places(points), first: points[0] }];
  return [...levels].map((level) => {
    const seen = points.filter(({ record }) => record.level === undefined || record.level === level);
    return { level, places: places(seen), first: seen.find(({ record }) => record.level === level) as UsedPoint };
  });
}

function places(points: readonly UsedPoint[]): UsedPoint[] {
  const before = new PlanCells();
  return points.filter((point) => {
    const isNew = before.firstNear(point) === undefined;
    if (isNew) before.add(point);
    return isNew;
  });
}

/** "The control" or "The control of level …", for the beginning of a message. */
export function controlOf(level: unknown): string {
  return level === undefined ? 'The control' : `The control of level "${level}"`;
}

/** Control points by where they lie in plan, so that those at one place are found without looking at all. */
export class PlanCells {
  private readonly cells = new Map<string, UsedPoint[]>();

  add(point: UsedPoint): void {
    const key = keyOf(cellOf(point.x), cellOf(point.y));
    const cell = this.cells.get(key);
    if (cell === undefined) this.cells.set(key, [point]);
    else cell.push(point);
  }

  /** The first point of the document that lies at the plan position of another one and is accepted. */
  firstNear(point: UsedPoint, accepts: (other: UsedPoint) => boolean = () => true): UsedPoint | undefined {
    let first: UsedPoint | undefined;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        const cell = this.cells.get(keyOf(cellOf(point.x) + dx, cellOf(point.y) + dy)) ?? [];
        for (const other of cell) {
          if (first !== undefined && other.index >= first.index) break;
          const distance = Math.hypot(other.x - point.x, other.y - point.y);
          if (distance <= ONE_PLACE_MM + LENGTH_SLACK_MM && accepts(other)) first = other;
        }
      }
    }
    return first;
  }
}

/** A cell is wider than a place, so that what lies near is in it or in one of its neighbours. */
const CELL_MM = 2;

function cellOf(coordinate: number): number {
  return Math.floor(coordinate / CELL_MM);
}

function keyOf(cellX: number, cellY: number): string {
  return `${cellX},${cellY}`;
}
