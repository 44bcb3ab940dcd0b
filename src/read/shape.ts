import { holeNumbers, holeReferences } from '../model/hole-row.js';
import { DEVIATIONS, DIRECTIONS } from './beyond-schema.js';

/** What the schema says of one value of a hole, and of the values inside it: made from the schema. */
export type ShapeSource =
  | { kind: 'text'; isOneLine: boolean; maxLength: number }
  | {
      kind: 'number';
      isWhole?: boolean;
      minimum?: number;
      maximum?: number;
      exclusiveMinimum?: number;
      exclusiveMaximum?: number;
    }
  | { kind: 'choice'; choices: readonly string[] }
  | { kind: 'boolean' }
  | { kind: 'additions' }
  | { kind: 'list'; minItems: number; maxItems: number; item: ShapeSource }
  | {
      kind: 'object';
      minProperties: number;
      required: readonly string[];
      members: Readonly<Record<string, ShapeSource>>;
    };

/** Slots for the names of an object; twice as many as it may have members. */
const SLOTS = 64;

const encoder = new TextEncoder();

/**
 * One value of a hole, with what is needed to judge it and to put it into a row.
 *
 * All shapes have all members, so that the engine sees one form of object.
 */
export class Shape {
  readonly kind: ShapeSource['kind'];
  /** Number of this place in a hole, from 1: all items of a list are one place. */
  readonly place: number;
  readonly isOneLine: boolean = false;
  readonly maxLength: number = 0;
  readonly isWhole: boolean = false;
  readonly minimum: number = Number.NEGATIVE_INFINITY;
  readonly maximum: number = Number.POSITIVE_INFINITY;
  readonly exclusiveMinimum: number = Number.NEGATIVE_INFINITY;
  readonly exclusiveMaximum: number = Number.POSITIVE_INFINITY;
  readonly choices: readonly Uint8Array[] = [];
  /** Least and most items or members. */
  readonly least: number = 0;
  readonly most: number = Number.POSITIVE_INFINITY;
  /** Whether a list is a direction, which has to have a length, or a pair of limits, the lower one first. */
  readonly isDirection: boolean;
  readonly isLimits: boolean;
  readonly item: Shape | undefined = undefined;
  readonly members: readonly Shape[] = [];
  /** A bit for each member that must be there. */
  readonly required: number = 0;
  /** Index of its text among the references of a row; -1 where it is none. */
  readonly reference: number;
  /** Index of its number among those of a row; of a list, for each item. */
  readonly columns: readonly number[];
  private readonly slots = new Int8Array(SLOTS).fill(-1);
  private readonly names: readonly Uint8Array[] = [];

  /**
   * @param path members from the hole to here, with dots between
   * @param numbered gives each shape the next number
   */
  constructor(
    source: ShapeSource,
    readonly path: string = '',
    numbered: { last: number } = { last: 0 },
  ) {
    this.kind = source.kind;
    this.place = ++numbered.last;
    this.reference = holeReferences.indexOf(path as never);
    this.columns = columnsOf(source, path);
    const name = path.slice(path.lastIndexOf('.') + 1);
    this.isDirection = DIRECTIONS.has(name);
    this.isLimits = DEVIATIONS.has(name);
    if (source.kind === 'text') {
      this.isOneLine = source.isOneLine;
      this.maxLength = source.maxLength;
    } else if (source.kind === 'number') {
      this.isWhole = source.isWhole === true;
      this.minimum = source.minimum ?? this.minimum;
      this.maximum = source.maximum ?? this.maximum;
      this.exclusiveMinimum = source.exclusiveMinimum ?? this.exclusiveMinimum;
      this.exclusiveMaximum = source.exclusiveMaximum ?? this.exclusiveMaximum;
    } else if (source.kind === 'choice') {
      this.choices = source.choices.map((choice) => encoder.encode(choice));
    } else if (source.kind === 'list') {
      this.least = source.minItems;
      this.most = source.maxItems;
      this.item = new Shape(source.item, `${path}.*`, numbered);
    } else if (source.kind === 'object') {
      const names = Object.keys(source.members);
      this.least = source.minProperties;
      this.members = names.map(
        (name) => new Shape(source.members[name], path === '' ? name : `${path}.${name}`, numbered),
      );
      this.required = source.required.reduce((mask, name) => mask | (1 << names.indexOf(name)), 0);
      this.names = names.map((name) => encoder.encode(name));
      this.names.forEach((name, k) => {
        let slot = slotOf(name, 0, name.length);
        while (this.slots[slot] >= 0) slot = (slot + 1) & (SLOTS - 1);
        this.slots[slot] = k;
      });
    }
  }

  /** Index of the member whose name stands at `from..to`, or -1. */
  find(b: Uint8Array, from: number, to: number): number {
    const { slots, names } = this;
    let slot = slotOf(b, from, to);
    for (let k = slots[slot]; k >= 0; k = slots[slot]) {
      if (sameBytes(names[k], b, from, to)) return k;
      slot = (slot + 1) & (SLOTS - 1);
    }
    return -1;
  }
}

function columnsOf(source: ShapeSource, path: string): number[] {
  if (source.kind !== 'list') return [holeNumbers.indexOf(path as never)];
  return Array.from({ length: source.maxItems }, (_, k) => holeNumbers.indexOf(`${path}.${k}` as never));
}

function slotOf(b: Uint8Array, from: number, to: number): number {
  return (b[from] * 3 + b[to - 1] * 5 + (to - from) * 7) & (SLOTS - 1);
}

/** Whether `name` stands at `from..to` of `b`. */
export function sameBytes(name: Uint8Array, b: Uint8Array, from: number, to: number): boolean {
  if (name.length !== to - from) return false;
  for (let k = 0; k < name.length; k++) if (name[k] !== b[from + k]) return false;
  return true;
}
