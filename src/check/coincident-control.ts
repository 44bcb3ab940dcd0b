import { isOnePlace, ONE_PLACE_MM, type UsedPoint } from './control-sets.js';
import { cellOf, PlanCells } from './plan-cells.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** Points in the order of the document: all, and by the level that they name or undefined. */
interface Listed {
  all: UsedPoint[];
  ofLevel: Map<string | undefined, UsedPoint[]>;
}

/** The points of a cell, as they are compared with one that has a height and with one that has none. */
interface Column {
  atHeight: Map<number, UsedPoint[]>;
  withoutHeight: Listed;
  any: Listed;
}

/**
 * Finds control points at the place of one before. Points may stand one above the other by thousands, so they
 * are sorted by their heights and levels, too.
 */
export class CoincidentControl {
  /** Number of pairs of points that were compared. */
  tests = 0;
  private readonly columns = new PlanCells<Column>();

  /** The first of the points added before that lies at the place of this one, which is then added. */
  add(point: UsedPoint): UsedPoint | undefined {
    let first: UsedPoint | undefined;
    for (const column of this.columns.around(point.x, point.y))
      for (const list of listsFor(point, column)) first = this.earlier(point, list, first);
    // What lies at the place of a second one like the first is found by the first.
    if (first === undefined || !isLike(point, first)) this.keep(point);
    return first;
  }

  /** The first of a list that lies at the place of a point, if it comes before `first`; else that. */
  private earlier(point: UsedPoint, list: readonly UsedPoint[], first: UsedPoint | undefined): UsedPoint | undefined {
    for (const other of list) {
      if (first !== undefined && other.index >= first.index) break;
      this.tests++;
      if (isOnePlace(point, other) && isAtHeight(point, other)) return other;
    }
    return first;
  }

  private keep(point: UsedPoint): void {
    const column = this.columns.at(point.x, point.y, newColumn);
    list(column.any, point);
    if (Number.isNaN(point.z)) list(column.withoutHeight, point);
    else pushTo(column.atHeight, cellOf(point.z), point);
  }
}

/**
 * The lists of a column that have all points with which one is compared. Where a height is not known, points on
 * two levels may well be one above the other.
 */
function listsFor({ z, record: { level } }: UsedPoint, { atHeight, withoutHeight, any }: Column): UsedPoint[][] {
  const { all, ofLevel } = Number.isNaN(z) ? any : withoutHeight;
  const lists = level === undefined ? [all] : [ofLevel.get(level), ofLevel.get(undefined)];
  if (!Number.isNaN(z)) for (let dz = -1; dz <= 1; dz++) lists.push(atHeight.get(cellOf(z) + dz));
  return lists.filter((one) => one !== undefined);
}

function isAtHeight(a: UsedPoint, b: UsedPoint): boolean {
  const distance = Math.abs(a.z - b.z);
  return Number.isNaN(distance) || distance <= ONE_PLACE_MM + LENGTH_SLACK_MM;
}

function isLike(a: UsedPoint, b: UsedPoint): boolean {
  return a.x === b.x && a.y === b.y && Object.is(a.z, b.z) && a.record.level === b.record.level;
}

function newColumn(): Column {
  const newListed = (): Listed => ({ all: [], ofLevel: new Map() });
  return { atHeight: new Map(), withoutHeight: newListed(), any: newListed() };
}

function list({ all, ofLevel }: Listed, point: UsedPoint): void {
  all.push(point);
  pushTo(ofLevel, point.record.level, point);
}

function pushTo<K>(lists: Map<K, UsedPoint[]>, key: K, point: UsedPoint): void {
  const known = lists.get(key);
  if (known === undefined) lists.set(key, [point]);
  else known.push(point);
}
