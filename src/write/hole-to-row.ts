import type { Assignment, Column, ColumnProfile } from '../generated/column-profile.js';
import type { Hole } from '../generated/layout.js';
import { cellText, guardFormula } from '../model/formula-guard.js';
import type { LayoutSource } from '../model/layout-source.js';
import { assignable, type ColumnField, HeightReference, isAxisField, isLengthField } from '../model/table-profile.js';
import { CodeChooser } from './code-chooser.js';
import { HoleCells, memberName, textOf } from './hole-cells.js';
import type { LossTally } from './loss.js';
import { sameJson } from './same-json.js';
import type { Slot } from './table-slots.js';

/** What a row says of a hole when it is read with the profile again. */
interface Reading {
  readonly row: number;
  /** The code in the row; undefined where the profile has no codes. */
  readonly code: string | undefined;
  /** What code and constants give. */
  readonly given: Assignment;
  /** Fields of the hole that a cell holds. */
  readonly inCells: ReadonlySet<ColumnField>;
}

const noWay = 'the profile has no column for it';
const noCode = 'no code of the profile stands for it';
const assigned: readonly string[] = assignable;

/** Writes holes as rows of the table of a profile, and counts what does not travel with them. */
export class HoleToRow {
  private readonly cells: HoleCells;
  private readonly codes: CodeChooser;
  private readonly fields: ReadonlySet<ColumnField>;
  private readonly passing: string;

  constructor(
    private readonly profile: ColumnProfile,
    private readonly slots: readonly (Slot | undefined)[],
    private readonly tally: LossTally,
    header: Pick<LayoutSource['header'], 'levels'>,
  ) {
    const inLayout = new HeightReference({ ...profile, layout: { levels: header.levels } });
    this.cells = new HoleCells(profile, { inProfile: new HeightReference(profile), inLayout }, tally);
    this.codes = new CodeChooser(profile);
    this.fields = new Set(profile.columns.map(({ field }) => field));
    this.passing = ['', 'hole', ...(profile.rows?.keep ?? [])].find((value) => this.passesFilter(value)) ?? '';
  }

  /** The cells of a hole, for the row with this number. */
  make(hole: Hole, row: number): string[] {
    const cells = this.slots.map(() => '');
    const inCells = new Set<ColumnField>();
    // Texts come first: the code may be one of them, and heights hang on the code and the level.
    this.fill(cells, (column) => {
      if (isNumber(column)) return undefined;
      const text = this.cells.text(hole, column);
      if (text !== '' && textOf(hole, column.field) !== undefined) inCells.add(column.field);
      return text;
    });
    const code = this.fillCode(hole, cells);
    const given = { ...this.profile.constants, ...this.codes.members(code) };
    const level = inCells.has('level') ? hole.level : given.level;
    this.fill(cells, (column) => {
      if (!isNumber(column)) return undefined;
      const text = this.cells.number(hole, column, level);
      if (text !== '') inCells.add(column.field);
      return text;
    });
    this.fillFilter(cells);
    this.countMembers(hole, { row, code, given, inCells });
    this.countAdded(hole, given);
    this.countUnreadable(cells, code);
    return cells;
  }

  /** Writes each column of the profile; what shares a column with another field must say the same. */
  private fill(cells: string[], write: (column: Column) => string | undefined): void {
    this.slots.forEach((slot, index) => {
      for (const column of slot?.columns ?? []) {
        const text = write(column);
        if (text === undefined) continue;
        if (column === slot?.columns[0]) cells[index] = text;
        else if (text !== cells[index]) {
          this.tally.add(memberName(column.field), `its column "${column.column}" says something else`, false);
        }
      }
    });
  }

  private fillCode(hole: Hole, cells: string[]): string | undefined {
    const index = this.slots.findIndex((slot) => slot?.hasCode);
    if (index < 0) return undefined;
    if (this.slots[index]?.columns.length === 0) cells[index] = guardFormula(this.codes.choose(hole) ?? '');
    return cellText(cells[index]);
  }

  private fillFilter(cells: string[]): void {
    this.slots.forEach((slot, index) => {
      if (slot?.hasFilter && slot.columns.length === 0 && !slot.hasCode) cells[index] = guardFormula(this.passing);
    });
  }

  private passesFilter(value: string): boolean {
    const { keep, drop } = this.profile.rows ?? {};
    return !drop?.includes(value) && (keep === undefined || keep.includes(value));
  }

  private countMembers(hole: Hole, reading: Reading): void {
    for (const [name, value] of Object.entries(hole)) {
      if (value === undefined) continue;
      if (name === 'origin') this.countOrigin(hole, reading);
      else if (name === 'point') {
        if (hole.point.length === 3 && !this.fields.has('z')) this.tally.add(memberName('z'), noWay, false);
      } else if (assigned.includes(name)) {
        // What a column of its own cannot hold was counted with the cell.
        const field = name === 'axis' ? 'axis.x' : (name as ColumnField);
        const given = reading.given[name as keyof Assignment];
        if (this.fields.has(field) || sameJson(value, given)) continue;
        const unknownCode = reading.code !== undefined && this.codes.members(reading.code) === undefined;
        this.tally.add(`holes/${name}`, unknownCode ? noCode : noWay, false);
      } else if (!this.fields.has(name as ColumnField)) this.tally.add(`holes/${name}`, noWay, false);
    }
  }

  private countOrigin(hole: Hole, { row, code, inCells }: Reading): void {
    for (const [name, value] of Object.entries(hole.origin ?? {})) {
      const carried =
        (name === 'row' && value === row) ||
        (name === 'element' && inCells.has('origin.element')) ||
        (name === 'code' && (inCells.has('origin.code') || value === code));
      if (value === undefined || carried) continue;
      this.tally.add(`holes/origin/${name}`, name === 'row' ? 'the table has rows of its own' : noWay, false);
    }
  }

  /** Counts what the row gives the hole that it does not have. */
  private countAdded(hole: Hole, given: Assignment): void {
    for (const name of assignable) {
      if (hole[name] !== undefined || given[name] === undefined) continue;
      this.tally.add(`holes/${name}`, 'the hole has none, and the row is read as having one', false);
    }
  }

  /** Counts rows that the profile would not read as a hole again. */
  private countUnreadable(cells: readonly string[], code: string | undefined): void {
    const { table, rows } = this.profile;
    const filter = this.slots.findIndex((slot) => slot?.hasFilter);
    if (code !== undefined && this.codes.members(code) === undefined) {
      this.tally.add('holes', `${noCode}; the row cannot be read again`, false);
    } else if (rows !== undefined && !this.passesFilter(cellText(cells[filter]))) {
      this.tally.add('holes', 'the row filter leaves its row out when it is read again', true);
    } else if (table?.end !== undefined && cellText(cells[0]) === table.end) {
      this.tally.add('holes', 'its row begins like the end row and ends the data when it is read again', true);
    }
  }
}

function isNumber({ field }: Column): boolean {
  return isLengthField(field) || isAxisField(field);
}
