import type { Assignment, Column, ColumnProfile } from '../generated/column-profile.js';

/** What a column of a table can be. */
export type ColumnField = Column['field'];

/** Members of a hole that a code or a constant can give, in the order of the hole. */
export const assignable = [
  'trade',
  'holeType',
  'substrate',
  'level',
  'area',
  'group',
  'role',
  'axis',
] as const satisfies readonly (keyof Assignment)[];

const lengthFields: ReadonlySet<ColumnField> = new Set(['x', 'y', 'z', 'diameter', 'depth']);
const axisFields: ReadonlySet<ColumnField> = new Set(['axis.x', 'axis.y', 'axis.z']);
const neededFields: ReadonlySet<ColumnField> = new Set(['id', 'x', 'y', 'diameter', 'depth']);

/** Whether the field is a length and needs a unit. */
export function isLengthField(field: ColumnField): boolean {
  return lengthFields.has(field);
}

/** Whether the field is a component of the axis, a plain number. */
export function isAxisField(field: ColumnField): boolean {
  return axisFields.has(field);
}

/** Whether an empty cell in the column stands for "not given". Never so for the id and the plan point. */
export function mayBeEmpty(column: Column): boolean {
  if (column.field === 'id' || column.field === 'x' || column.field === 'y') return false;
  return column.optional ?? !neededFields.has(column.field);
}

/** The number of the column, from 1, that a key such as `#3` names; undefined for a key that is a name. */
export function columnNumber(key: string): number | undefined {
  return /^#[1-9][0-9]*$/.test(key) ? Number(key.slice(1)) : undefined;
}

/** JSON Pointer, relative to the hole, of the member that a field becomes. */
export function fieldPointer(field: ColumnField): string {
  if (field === 'x') return '/point/0';
  if (field === 'y') return '/point/1';
  if (field === 'z') return '/point/2';
  return `/${field.replace('axis.x', 'axis/0').replace('axis.y', 'axis/1').replace('axis.z', 'axis/2').replace('.', '/')}`;
}

type HeightKind = NonNullable<ColumnProfile['height']>;

/** Member of a level that holds the height which a reference measures from. */
const levelMember = {
  'finished-floor': 'finishedFloor',
  'structural-top': 'structuralTop',
  'soffit-down': 'soffits',
} as const;

/**
 * Turns heights of a table into z of the site frame and back, both millimetres, after the height
 * reference of the profile and the levels of its layout.
 *
 * `soffit-down` counts downwards from the one soffit of the level; a level with several soffits does
 * not say which, and has no reference height.
 */
export class HeightReference {
  readonly kind: HeightKind;
  private readonly heights = new Map<string, number>();

  constructor(profile: ColumnProfile) {
    this.kind = profile.height ?? 'datum';
    const levels: unknown = profile.layout?.levels;
    if (this.kind === 'datum' || !Array.isArray(levels)) return;
    const member = levelMember[this.kind];
    for (const level of levels as unknown[]) {
      if (typeof level !== 'object' || level === null) continue;
      const { id, [member]: held } = level as Record<string, unknown>;
      const height: unknown = Array.isArray(held) && held.length === 1 ? held[0] : held;
      if (typeof id === 'string' && typeof height === 'number') this.heights.set(id, height);
    }
  }

  /** Member of a level that is measured from; undefined for the datum, which needs no level. */
  get member(): string | undefined {
    return this.kind === 'datum' ? undefined : levelMember[this.kind];
  }

  /** Whether heights at this level can be turned. */
  knows(level: string | undefined): boolean {
    return this.kind === 'datum' || (level !== undefined && this.heights.has(level));
  }

  /** z of a height in the table; undefined where the level has no reference height. */
  toZ(height: number, level: string | undefined): number | undefined {
    if (this.kind === 'datum') return height;
    const base = level === undefined ? undefined : this.heights.get(level);
    if (base === undefined) return undefined;
    return this.kind === 'soffit-down' ? base - height : base + height;
  }

  /** Height in the table of a z; undefined where the level has no reference height. */
  fromZ(z: number, level: string | undefined): number | undefined {
    if (this.kind === 'datum') return z;
    const base = level === undefined ? undefined : this.heights.get(level);
    if (base === undefined) return undefined;
    return this.kind === 'soffit-down' ? base - z : z - base;
  }
}
