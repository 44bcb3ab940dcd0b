import type { Column, ColumnProfile } from '../generated/column-profile.js';
import type { Hole } from '../generated/layout.js';
import { guardFormula } from '../model/formula-guard.js';
import { type ColumnField, type HeightReference, isAxisField } from '../model/table-profile.js';
import { formatLength } from '../units/format-length.js';
import { roundMm } from '../units/format-mm.js';
import { parseLength } from '../units/parse-length.js';
import type { LossTally } from './loss.js';

type TextField = Exclude<ColumnField, LengthField | AxisField>;
type LengthField = 'x' | 'y' | 'z' | 'diameter' | 'depth';
type AxisField = 'axis.x' | 'axis.y' | 'axis.z';

const axisIndex: Readonly<Record<AxisField, number>> = { 'axis.x': 0, 'axis.y': 1, 'axis.z': 2 };
const HALF_STEP_MM = 0.0000005;
const finest = 'rounded to a millionth of a millimetre';

/** Writes the members of holes as cells of a table, and counts what a cell cannot hold. */
export class HoleCells {
  private readonly decimal: 'point' | 'comma';
  private readonly texts = new Map<Column, ReadonlyMap<string, string>>();

  constructor(
    profile: ColumnProfile,
    private readonly heights: HeightReference,
    private readonly tally: LossTally,
  ) {
    this.decimal = profile.table?.decimal ?? 'point';
    for (const column of profile.columns) if (column.map !== undefined) this.texts.set(column, invert(column.map));
  }

  /** The cell of a text, guarded against being taken for a formula; empty where the hole has none. */
  text(hole: Hole, column: Column): string {
    const { field } = column;
    const value = textOf(hole, field);
    const texts = this.texts.get(column);
    if (texts === undefined) return guardFormula(value ?? '');
    const text = texts.get(value ?? '');
    if (text !== undefined) return guardFormula(text);
    if (value !== undefined) {
      this.tally.add(memberName(field), `the map of column "${column.column}" has no text for it`, false);
    }
    return '';
  }

  /** The cell of a number; `level` is the level that the row will be read with. */
  number(hole: Hole, column: Column, level: string | undefined): string {
    const { field } = column;
    if (isAxisField(field)) return this.axisCell(hole, axisIndex[field as AxisField]);
    const value = this.lengthOf(hole, field as LengthField, level);
    if (value === undefined) return '';
    const { unit, fraction, decimals } = column;
    if (unit === undefined) throw new Error(`The column "${column.column}" is a length (${field}) and has no unit.`);
    const text = formatLength(value, { unit, fraction, decimals, decimal: this.decimal });
    const back = parseLength(text, unit, this.decimal);
    if (typeof back !== 'number' || (back !== value && roundMm(back) !== value)) {
      const much = typeof back !== 'number' || Math.abs(back - value) > HALF_STEP_MM;
      this.tally.add(memberName(field), much ? roundingOf(column) : finest, false);
    }
    return text;
  }

  private axisCell(hole: Hole, index: number): string {
    const text = hole.axis === undefined ? '' : String(hole.axis[index] + 0);
    return this.decimal === 'comma' ? text.replace('.', ',') : text;
  }

  private lengthOf(hole: Hole, field: LengthField, level: string | undefined): number | undefined {
    if (field === 'diameter' || field === 'depth') return hole[field];
    if (field === 'x') return hole.point[0];
    if (field === 'y') return hole.point[1];
    const z = hole.point[2];
    if (z === undefined || this.heights.kind === 'datum') return z;
    const height = this.heights.fromZ(z, level);
    if (height === undefined) {
      this.tally.add(memberName('z'), `its level has no height for ${this.heights.kind}`, false);
      return undefined;
    }
    if (roundMm(z) !== z) this.tally.add(memberName('z'), finest, false);
    return roundMm(height);
  }
}

/** Name of what a field holds, as losses name it. */
export function memberName(field: ColumnField): string {
  const inPoint = field === 'x' || field === 'y' || field === 'z';
  return inPoint ? `holes/point/${field}` : `holes/${field.replace('.', '/')}`;
}

/** The text that a hole has for a field, if it has one. */
export function textOf(hole: Hole, field: ColumnField): string | undefined {
  if (field === 'origin.element') return hole.origin?.element;
  if (field === 'origin.code') return hole.origin?.code;
  return hole[field as Exclude<TextField, 'origin.element' | 'origin.code'>];
}

function roundingOf({ unit, fraction, decimals }: Column): string {
  return unit === 'ft-in' ? `rounded to 1/${fraction ?? 64} in` : `rounded to ${decimals} decimals of ${unit}`;
}

/** For each value the first text that means it. */
function invert(map: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const [text, value] of Object.entries(map)) if (!texts.has(value)) texts.set(value, text);
  if (!texts.has('') && !Object.hasOwn(map, '')) texts.set('', '');
  return texts;
}
