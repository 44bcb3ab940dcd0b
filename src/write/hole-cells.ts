import type { Column, ColumnProfile } from '../generated/column-profile.js';
import type { Hole } from '../generated/layout.js';
import { cellText, guardFormula } from '../model/formula-guard.js';
import { type ColumnField, type HeightReference, isAxisField } from '../model/table-profile.js';
import { formatLength } from '../units/format-length.js';
import { formatDecimal, roundMm } from '../units/format-mm.js';
import { lengthUnits } from '../units/length-unit.js';
import { parseLength, type TextUnit } from '../units/parse-length.js';
import type { LossTally } from './loss.js';

type TextField = Exclude<ColumnField, LengthField | AxisField>;
type LengthField = 'x' | 'y' | 'z' | 'diameter' | 'depth';
type AxisField = 'axis.x' | 'axis.y' | 'axis.z';

const axisIndex: Readonly<Record<AxisField, number>> = { 'axis.x': 0, 'axis.y': 1, 'axis.z': 2 };
const MOST_DECIMALS = 20;
const HALF_STEP_MM = 0.0000005;
const finest = 'rounded to a millionth of a millimetre';

/** Where heights are measured from, as the layout of the profile has it and as the one that is written. */
export interface Heights {
  readonly inProfile: HeightReference;
  readonly inLayout: HeightReference;
}

/** Writes the members of holes as cells of a table, and counts what a cell cannot hold. */
export class HoleCells {
  private readonly decimal: 'point' | 'comma';
  private readonly texts = new Map<Column, ReadonlyMap<string, string>>();

  constructor(
    profile: ColumnProfile,
    private readonly heights: Heights,
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
    if (texts === undefined) {
      const cell = guardFormula(value ?? '');
      if (value !== undefined && cellText(cell) !== value) {
        this.tally.add(memberName(field), 'blanks around a text are no part of a cell', false);
      }
      return cell;
    }
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
    let text = formatLength(value, { unit, fraction, decimals, decimal: this.decimal });
    let back = parseLength(text, unit, this.decimal);
    if (back === 0 && value > 0 && (field === 'diameter' || field === 'depth')) {
      text = this.everyDigit(value, unit);
      back = parseLength(text, unit, this.decimal);
    }
    if (typeof back !== 'number' || (back !== value && roundMm(back) !== value)) {
      const much = typeof back !== 'number' || Math.abs(back - value) > HALF_STEP_MM;
      this.tally.add(memberName(field), much ? roundingOf(column) : finest, false);
    }
    return text;
  }

  /** A length that is too small for its format, with all its digits: a size of zero would be another statement. */
  private everyDigit(mm: number, unit: TextUnit): string {
    const { numerator, denominator } = lengthUnits[unit === 'ft-in' ? 'in' : unit];
    const value = (mm * denominator) / numerator;
    const shortest = String(value);
    const digits = shortest.includes('e') && unit === 'ft-in' ? formatDecimal(value, MOST_DECIMALS) : shortest;
    const text = this.decimal === 'comma' ? digits.replace('.', ',') : digits;
    return unit === 'ft-in' ? `${text}"` : text;
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
    const { inProfile } = this.heights;
    if (z === undefined || inProfile.kind === 'datum') return z;
    const height = inProfile.fromZ(z, level);
    const misled = height === undefined ? undefined : this.misleading(hole, level);
    if (height === undefined || misled !== undefined) {
      this.tally.add(memberName('z'), misled ?? `its level has no height for ${inProfile.kind}`, false);
      return undefined;
    }
    if (roundMm(z) !== z) this.tally.add(memberName('z'), finest, false);
    return roundMm(height);
  }

  /** Why a height from the level of the row would be one from another level than that of the hole. */
  private misleading(hole: Hole, level: string | undefined): string | undefined {
    if (hole.level !== undefined && hole.level !== level) return 'its row is read with another level';
    const { inProfile, inLayout } = this.heights;
    if (!inLayout.knows(level) || inLayout.toZ(0, level) === inProfile.toZ(0, level)) return undefined;
    return 'the layout of the profile has its level at another height';
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
