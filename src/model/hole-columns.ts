import { type HoleRow, holeReferences } from './hole-row.js';
import { grown, type Names } from './names.js';

/** Index of each number in {@link HoleRow.numbers}. */
const X = 0;
const Y = 1;
const Z = 2;
const AXIS = 3;
const DIAMETER = 6;
const DEPTH = 7;

export type HoleReference = (typeof holeReferences)[number];

/**
 * The holes of a layout, one array per member, in the order of the document.
 *
 * Lengths are millimetres in the site frame. An absent number is NaN, an absent reference -1; a
 * reference is the number of the id among the names of the collection it points into. Arrays may be
 * longer than `count`.
 */
export class HoleColumns {
  count = 0;
  /** Holes that are not judged further; they count and keep their id. */
  brokenCount = 0;
  x = new Float64Array(64);
  y = new Float64Array(64);
  /** NaN where the height is "on the surface as found". */
  z = new Float64Array(64);
  /** Index into {@link axes}, or -1 where the axis is square to the face. */
  axis = new Int32Array(64);
  /** NaN where the hole type rules. */
  diameter = new Float64Array(0);
  depth = new Float64Array(0);
  /** Offset of the record in the input. */
  byte = new Float64Array(64);
  /** 0 for a record that is judged; see {@link HoleColumns.BROKEN_RECORD}. */
  broken = new Uint8Array(64);
  /** The distinct axes, three numbers each, as written (no unit vectors). */
  readonly axes: number[] = [];
  private readonly axisIndex = new Map<string, number>();
  private lastAxis = -1;
  private readonly references: Int32Array[] = holeReferences.map(() => new Int32Array(0));
  private ids = new Uint8Array(1 << 10);
  private idEnds = new Uint32Array(64);
  private idTable = new Int32Array(1 << 8).fill(-1);

  /** Pairs of a hole and the first one before it that has the same id. */
  readonly duplicates: [hole: number, first: number][] = [];
  /** Pairs of a hole and the first one before it whose id differs only in the case of the letters A to Z. */
  readonly lookalikes: [hole: number, first: number][] = [];

  /** Value of {@link broken} for a record that broke a rule of the text or the schema. */
  static readonly BROKEN_RECORD = 1;
  /** Value of {@link broken} for a record that a rule of the references stage gave up. */
  static readonly GIVEN_UP = 2;

  /** @param names for each of `holeReferences` the names of the collection it points into */
  constructor(private readonly names: readonly Names[]) {}

  /** The column of a reference: a number among the names of its collection, or -1; empty when no hole has it. */
  reference(path: HoleReference): Int32Array {
    return this.references[holeReferences.indexOf(path)];
  }

  /** Reference `path` of hole `i`, or -1. */
  referenceOf(path: HoleReference, i: number): number {
    const column = this.reference(path);
    return i < column.length ? column[i] : -1;
  }

  diameterOf(i: number): number {
    return i < this.diameter.length ? this.diameter[i] : Number.NaN;
  }

  depthOf(i: number): number {
    return i < this.depth.length ? this.depth[i] : Number.NaN;
  }

  /** Adds a hole and returns its index. */
  push(row: HoleRow, byte: number, isBroken: boolean): number {
    const i = this.count++;
    if (i === this.x.length) this.grow();
    const { numbers } = row;
    this.x[i] = numbers[X];
    this.y[i] = numbers[Y];
    this.z[i] = numbers[Z];
    const ax = numbers[AXIS];
    this.axis[i] = !Number.isNaN(ax) ? this.axisOf(ax, numbers[AXIS + 1], numbers[AXIS + 2]) : -1;
    this.byte[i] = byte;
    this.broken[i] = isBroken ? 1 : 0;
    if (isBroken) this.brokenCount++;
    const diameter = numbers[DIAMETER];
    if (!Number.isNaN(diameter)) {
      if (i >= this.diameter.length) this.diameter = grownWith(this.diameter, this.x.length, Number.NaN);
      this.diameter[i] = diameter;
    }
    const depth = numbers[DEPTH];
    if (!Number.isNaN(depth)) {
      if (i >= this.depth.length) this.depth = grownWith(this.depth, this.x.length, Number.NaN);
      this.depth[i] = depth;
    }
    for (let k = 0; k < this.references.length; k++) {
      const start = row.refStarts[k];
      if (start < 0) continue;
      let column = this.references[k];
      if (i >= column.length) {
        column = grownWith(column, this.x.length, -1);
        this.references[k] = column;
      }
      column[i] = this.names[k].add(row.bytes, start, row.refEnds[k]);
    }
    this.pushId(row, i);
    return i;
  }

  /** Marks a hole as one that later stages do not judge. */
  giveUp(i: number): void {
    if (this.broken[i] !== 0) return;
    this.broken[i] = HoleColumns.GIVEN_UP;
    this.brokenCount++;
  }

  /** Id of hole `i`; empty for a broken record without a readable one. */
  id(i: number): string {
    return decoder.decode(this.ids.subarray(this.idStart(i), this.idEnds[i]));
  }

  /** Index of the first hole with this id, or -1. */
  find(id: string): number {
    const b = encoder.encode(id);
    const mask = this.idTable.length - 1;
    let slot = foldedHash(b, 0, b.length) & mask;
    while (this.idTable[slot] >= 0) {
      if (this.sameId(this.idTable[slot], b, 0, b.length)) return this.idTable[slot];
      slot = (slot + 1) & mask;
    }
    return -1;
  }

  private idStart(i: number): number {
    return i === 0 ? 0 : this.idEnds[i - 1];
  }

  private pushId(row: HoleRow, i: number): void {
    const { bytes, idStart } = row;
    const start = this.idStart(i);
    const length = idStart < 0 ? 0 : row.idEnd - idStart;
    const end = start + length;
    if (end > this.ids.length) this.ids = grown(this.ids, end);
    for (let k = 0; k < length; k++) this.ids[start + k] = bytes[idStart + k];
    this.idEnds[i] = end;
    if (length === 0) return;
    this.enter(i, true);
    if (this.count * 2 > this.idTable.length) {
      this.idTable = new Int32Array(this.idTable.length * 4).fill(-1);
      for (let j = 0; j <= i; j++) if (this.idEnds[j] > this.idStart(j)) this.enter(j, false);
    }
  }

  /**
   * Puts hole `i` in the table unless an equal id is there. The hash leaves case out, so that ids that
   * differ only in case are met on the way.
   */
  private enter(i: number, isNew: boolean): void {
    const { ids, idEnds, idTable } = this;
    const from = this.idStart(i);
    const to = idEnds[i];
    const mask = idTable.length - 1;
    let slot = foldedHash(ids, from, to) & mask;
    let lookalike = -1;
    for (let j = idTable[slot]; j >= 0; j = idTable[slot]) {
      if (this.sameFolded(j, from, to)) {
        if (this.sameId(j, ids, from, to)) {
          if (isNew) this.duplicates.push([i, j]);
          return;
        }
        if (lookalike < 0) lookalike = j;
      }
      slot = (slot + 1) & mask;
    }
    idTable[slot] = i;
    if (isNew && lookalike >= 0) this.lookalikes.push([i, lookalike]);
  }

  private sameId(j: number, b: Uint8Array, from: number, to: number): boolean {
    const start = this.idStart(j);
    if (this.idEnds[j] - start !== to - from) return false;
    for (let k = from, m = start; k < to; k++, m++) if (this.ids[m] !== b[k]) return false;
    return true;
  }

  private sameFolded(j: number, from: number, to: number): boolean {
    const { ids } = this;
    const start = this.idStart(j);
    if (this.idEnds[j] - start !== to - from) return false;
    for (let k = from, m = start; k < to; k++, m++) {
      if (ids[m] !== ids[k] && foldCase(ids[m]) !== foldCase(ids[k])) return false;
    }
    return true;
  }

  private axisOf(ax: number, ay: number, az: number): number {
    const { axes, lastAxis } = this;
    if (lastAxis >= 0 && axes[lastAxis * 3] === ax && axes[lastAxis * 3 + 1] === ay && axes[lastAxis * 3 + 2] === az) {
      return lastAxis;
    }
    const key = `${ax},${ay},${az}`;
    let index = this.axisIndex.get(key);
    if (index === undefined) {
      index = axes.length / 3;
      axes.push(ax, ay, az);
      this.axisIndex.set(key, index);
    }
    this.lastAxis = index;
    return index;
  }

  private grow(): void {
    this.x = grown(this.x, 0);
    const length = this.x.length;
    this.y = grownWith(this.y, length, 0);
    this.z = grownWith(this.z, length, 0);
    this.axis = grownWith(this.axis, length, 0);
    this.byte = grownWith(this.byte, length, 0);
    this.broken = grownWith(this.broken, length, 0);
    this.idEnds = grownWith(this.idEnds, length, 0);
  }
}

const encoder = new TextEncoder();
const decoder = new TextDecoder();

function foldCase(c: number): number {
  return c >= 65 && c <= 90 ? c + 32 : c;
}

/** Hash (FNV-1a) that is equal for ids that differ only in the case of ASCII letters, and for few others; the bytes tell those apart. */
function foldedHash(b: Uint8Array, from: number, to: number): number {
  let h = 0x811c9dc5;
  for (let k = from; k < to; k++) h = Math.imul(h ^ (b[k] | 32), 0x01000193);
  return h ^ (h >>> 15);
}

/** A copy of exactly `length` elements; the new ones hold `value`. */
function grownWith<T extends Uint8Array | Uint32Array | Int32Array | Float64Array>(
  array: T,
  length: number,
  value: number,
): T {
  const copy = new (array.constructor as new (length: number) => T)(length);
  copy.set(array);
  if (value !== 0) copy.fill(value, array.length);
  return copy;
}
