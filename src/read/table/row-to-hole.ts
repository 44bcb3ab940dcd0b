import type { Assignment, Column, ColumnProfile } from '../../generated/column-profile.js';
import type { Hole, Origin, Position, Vector3 } from '../../generated/layout.js';
import { cellText } from '../../model/formula-guard.js';
import type { Observe } from '../../model/observation.js';
import {
  type ColumnField,
  fieldPointer,
  HeightReference,
  isAxisField,
  isLengthField,
  mayBeEmpty,
} from '../../model/table-profile.js';
import { roundMm } from '../../units/format-mm.js';
import { parseLength } from '../../units/parse-length.js';
import { parseNumber } from '../../units/parse-number.js';
import type { DecimalSign } from '../../units/scan-decimal.js';
import type { BoundColumns } from './bind-columns.js';
import { levelExpected } from './check-profile.js';

/** What the cells of one row say, before it is a hole. */
interface RowValues {
  texts: Partial<Record<ColumnField, string>>;
  numbers: Partial<Record<ColumnField, number>>;
}

interface CellPlan {
  readonly column: Column;
  readonly index: number;
  readonly map: ReadonlyMap<string, string> | undefined;
  readonly mayBeEmpty: boolean;
  readonly kind: 'text' | 'length' | 'number';
}

const axisFields = ['axis.x', 'axis.y', 'axis.z'] as const;
const assignedTexts = ['trade', 'holeType', 'substrate', 'level', 'area', 'group', 'role'] as const;
const REPLACEMENT = '\uFFFD';
const LONGEST_SHOWN = 60;

/** Makes holes from the rows of one table. */
export class RowToHole {
  private readonly cells: readonly CellPlan[];
  private readonly decimal: DecimalSign;
  private readonly heights: HeightReference;

  constructor(
    profile: ColumnProfile,
    private readonly bound: BoundColumns,
    private readonly observe: Observe,
  ) {
    this.cells = bound.columns.map(({ column, index }) => ({
      column,
      index,
      map: column.map === undefined ? undefined : new Map(Object.entries(column.map)),
      mayBeEmpty: mayBeEmpty(column),
      kind: isLengthField(column.field) ? 'length' : isAxisField(column.field) ? 'number' : 'text',
    }));
    this.decimal = profile.table?.decimal ?? 'point';
    this.heights = new HeightReference(profile);
  }

  /**
   * The hole of a row, or undefined where a cell is bad; every bad cell of the row is observed.
   * `given` is what the code of the row and the constants give, `code` the code itself.
   */
  make(cells: readonly string[], row: number, given: Assignment, code: string | undefined): Hole | undefined {
    const values: RowValues = { texts: {}, numbers: {} };
    let sound = true;
    for (const plan of this.cells) if (!this.readCell(cells[plan.index], plan, row, values)) sound = false;
    if (!sound || !this.hasWholeAxis(values.numbers, row)) return undefined;
    for (const name of ['trade', 'holeType'] as const) {
      if (values.texts[name] === undefined && given[name] === undefined) return this.observeEmpty(name, row);
    }
    const point = this.readPoint(values.numbers, values.texts.level ?? given.level, row);
    return point && assemble(values, given, point, makeOrigin(row, values.texts, code));
  }

  /** Reads one cell into the values; false where it is bad. */
  private readCell(written: string, plan: CellPlan, row: number, values: RowValues): boolean {
    const { column, map, kind } = plan;
    const cell = kind === 'text' ? cellText(written) : written.trim();
    const at = { row, column: plan.index + 1 };
    const text = map === undefined ? cell : (map.get(cell) ?? '');
    if (map !== undefined && cell !== '' && !map.has(cell)) {
      const data = { column: column.column, code: shorten(cell) };
      this.observe({ rule: 'code-unmapped', at, data, cause: `${column.column}=${cell}` });
      return false;
    }
    if (text === '') {
      if (!plan.mayBeEmpty)
        this.observe({ rule: 'cell-empty', at, data: { column: column.column }, cause: column.column });
      return plan.mayBeEmpty;
    }
    if (kind === 'text') {
      if (text.includes(REPLACEMENT)) this.observeLostCharacter(text, column.column, at);
      values.texts[column.field] = text;
      return true;
    }
    const number =
      kind === 'length' ? parseLength(text, column.unit ?? 'mm', this.decimal) : parseNumber(text, this.decimal);
    if (typeof number === 'number') {
      values.numbers[column.field] = number;
      return true;
    }
    const data = { column: column.column, expected: number.expected, found: number.found };
    this.observe({ rule: 'cell-unreadable', at, data, cause: `${column.column}: ${number.expected}` });
    return false;
  }

  /** The point with its height in the site frame; undefined where the level of the height is not known. */
  private readPoint(numbers: RowValues['numbers'], level: string | undefined, row: number): Position | undefined {
    const { x, y, z } = numbers;
    if (x === undefined || y === undefined) return undefined;
    if (z === undefined) return [x, y];
    if (this.heights.kind === 'datum') return [x, y, z];
    const height = this.heights.toZ(z, level);
    if (height !== undefined) return [x, y, roundMm(height)];
    if (level === undefined) return this.observeEmpty('level', row);
    const column = this.planOf('level')?.column.column;
    const expected = levelExpected(this.heights);
    const data = { column, expected, found: shorten(level) };
    const at = { row, column: this.bound.columnOf.get('/level') };
    this.observe({ rule: 'cell-unreadable', at, data, cause: `${column}: ${expected}: ${level}` });
    return undefined;
  }

  /** Whether the row gives all components of an axis or none. */
  private hasWholeAxis(numbers: RowValues['numbers'], row: number): boolean {
    const empty = axisFields.filter((field) => numbers[field] === undefined);
    if (empty.length === 0 || empty.length === axisFields.length) return true;
    for (const field of empty) this.observeEmpty(field, row);
    return false;
  }

  private observeEmpty(field: ColumnField, row: number): undefined {
    const column = this.planOf(field)?.column.column ?? field;
    const at = { row, column: this.bound.columnOf.get(fieldPointer(field)) };
    this.observe({ rule: 'cell-empty', at, data: { column }, cause: column });
    return undefined;
  }

  private planOf(field: ColumnField): CellPlan | undefined {
    return this.cells.find(({ column }) => column.field === field);
  }

  private observeLostCharacter(text: string, column: string, at: { row: number; column: number }): void {
    const expected = 'text without U+FFFD, which stands where a character was lost';
    const data = { column, expected, found: shorten(text) };
    this.observe({ rule: 'cell-unreadable', at, data, cause: `${column}: ${expected}`, severity: 'warning' });
  }
}

/** A hole with its members in the order of the schema. */
function assemble({ texts, numbers }: RowValues, given: Assignment, point: Position, origin: Origin): Hole {
  const hole: Partial<Hole> = { id: texts.id };
  if (texts.tag !== undefined) hole.tag = texts.tag;
  for (const name of assignedTexts) {
    const value = texts[name] ?? given[name];
    if (value !== undefined) hole[name] = value;
  }
  hole.point = point;
  const axis = axisOf(numbers) ?? given.axis;
  if (axis !== undefined) hole.axis = [...axis];
  if (numbers.diameter !== undefined) hole.diameter = numbers.diameter;
  if (numbers.depth !== undefined) hole.depth = numbers.depth;
  hole.origin = origin;
  if (texts.note !== undefined) hole.note = texts.note;
  return hole as Hole;
}

function axisOf({ 'axis.x': x, 'axis.y': y, 'axis.z': z }: RowValues['numbers']): Vector3 | undefined {
  return x === undefined || y === undefined || z === undefined ? undefined : [x, y, z];
}

function makeOrigin(row: number, texts: RowValues['texts'], code: string | undefined): Origin {
  const origin: Origin = { row };
  const element = texts['origin.element'];
  const ownCode = texts['origin.code'] ?? code;
  if (element !== undefined) origin.element = element;
  if (ownCode !== undefined && ownCode !== '') origin.code = ownCode;
  return origin;
}

function shorten(text: string): string {
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN - 1)}…` : text;
}
