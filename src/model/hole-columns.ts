import type { PositionTolerance } from '../generated/shared.js';
import { type HoleRow, holeNumbers, holeReferences } from './hole-row.js';
import { IdIndex } from './id-index.js';
import { type Names, resized } from './names.js';

/** Index of each number in {@link HoleRow.numbers}. */
const X = 0;
const Y = 1;
const Z = 2;
const AXIS = 3;
const DIAMETER = 6;
const DEPTH = 7;
/** Of the position tolerance: radius, then the limits along, across and of the height. */
const TOLERANCE = 8;
const LIMITS = ['along', 'across', 'height'] as const;

const SMALLEST = 64;

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
  x = new Float64Array(SMALLEST);
  y = new Float64Array(SMALLEST);
  /** NaN where the height is "on the surface as found". */
  z = new Float64Array(SMALLEST);
  /** Index into {@link axes}, or -1 where the axis is square to the face. */
  axis = new Int32Array(SMALLEST);
  /** NaN where the hole type rules; empty when it rules for all. */
  diameter = new Float64Array(0);
  depth = new Float64Array(0);
  /** Hash of the tag, see `tagHash`; 0 where a hole has none; empty when none has. */
  tagHash = new Int32Array(0);
  /** Offset of the record in the input. */
  byte = new Float64Array(SMALLEST);
  /** 0 for a record that is judged; see {@link HoleColumns.BROKEN_RECORD}. */
  broken = new Uint8Array(SMALLEST);
  /** The distinct axes, three numbers each, as written (no unit vectors). */
  readonly axes: number[] = [];
  private readonly axisIndex = new Map<string, number>();
  private lastAxis = -1;
  /** The numbers of position tolerances, in the order of the row. */
  private readonly tolerance = holeNumbers.slice(TOLERANCE).map(() => new Float64Array(0));
  private readonly references: Int32Array[] = holeReferences.map(() => new Int32Array(0));
  private readonly ids = new IdIndex();

  /** Value of {@link broken} for a record that broke a rule of the text or the schema. */
  static readonly BROKEN_RECORD = 1;
  /** Value of {@link broken} for a record that a rule of the references stage gave up. */
  static readonly GIVEN_UP = 2;

  /**
   * @param names for each of `holeReferences` the names of the collection it points into
   * @param totalBytes size of the input, where it is known: arrays are then made as long as they will have
   *   to be, which spares the copies of growing ones
   */
  constructor(
    private readonly names: readonly Names[],
    private readonly totalBytes = 0,
  ) {}

  /** Pairs of a hole and the first one before it that has the same id. */
  get duplicates(): readonly [hole: number, first: number][] {
    return this.ids.duplicates;
  }

  /** Pairs of a hole and the first one before it whose id differs only in the case of the letters A to Z. */
  get lookalikes(): readonly [hole: number, first: number][] {
    return this.ids.lookalikes;
  }

  /** The column of a reference: a number among the names of its collection, or -1; shorter than `count` when the last holes have none. */
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

  /** Hash of the tag of hole `i`: equal for equal tags, and for few others; 0 where it has none. */
  tagHashOf(i: number): number {
    return i < this.tagHash.length ? this.tagHash[i] : 0;
  }

  /** Whether hole `i` has a position tolerance of its own. */
  hasPositionTolerance(i: number): boolean {
    for (const column of this.tolerance) if (i < column.length && !Number.isNaN(column[i])) return true;
    return false;
  }

  /** The position tolerance of hole `i` itself, millimetres; undefined where the hole type rules. */
  positionToleranceOf(i: number): PositionTolerance | undefined {
    const [radius, ...limits] = this.tolerance.map((column) => (i < column.length ? column[i] : Number.NaN));
    const found: PositionTolerance = {};
    if (!Number.isNaN(radius)) found.radius = radius;
    LIMITS.forEach((name, k) => {
      const [lower, upper] = [limits[2 * k], limits[2 * k + 1]];
      if (!Number.isNaN(lower) && !Number.isNaN(upper)) found[name] = [lower, upper];
    });
    return Object.keys(found).length === 0 ? undefined : found;
  }

  /** Marks a hole as one that later stages do not judge. */
  giveUp(i: number): void {
    if (this.broken[i] !== 0) return;
    this.broken[i] = HoleColumns.GIVEN_UP;
    this.brokenCount++;
  }

  /** Id of hole `i`; empty for a broken record without a readable one. */
  id(i: number): string {
    return this.ids.text(i);
  }

  /** Index of the first hole with this id, or -1. */
  find(id: string): number {
    return this.ids.find(id);
  }

  /** Adds a hole and returns its index. */
  push(row: HoleRow, byte: number, isBroken: boolean): number {
    const i = this.count++;
    if (i === this.x.length) this.grow(byte);
    const { numbers } = row;
    this.x[i] = numbers[X];
    this.y[i] = numbers[Y];
    this.z[i] = numbers[Z];
    const ax = numbers[AXIS];
    this.axis[i] = Number.isNaN(ax) ? -1 : this.axisOf(ax, numbers[AXIS + 1], numbers[AXIS + 2]);
    this.byte[i] = byte;
    if (isBroken) {
      this.broken[i] = HoleColumns.BROKEN_RECORD;
      this.brokenCount++;
    }
    const diameter = numbers[DIAMETER];
    if (!Number.isNaN(diameter)) {
      if (i >= this.diameter.length) this.diameter = resized(this.diameter, this.x.length, Number.NaN);
      this.diameter[i] = diameter;
    }
    const depth = numbers[DEPTH];
    if (!Number.isNaN(depth)) {
      if (i >= this.depth.length) this.depth = resized(this.depth, this.x.length, Number.NaN);
      this.depth[i] = depth;
    }
    if (row.tagHash !== 0) {
      if (i >= this.tagHash.length) this.tagHash = resized(this.tagHash, this.x.length);
      this.tagHash[i] = row.tagHash;
    }
    this.pushTolerance(numbers, i);
    this.pushReferences(row, i);
    if (row.idStart < 0) this.ids.add(row.bytes, 0, 0);
    else this.ids.add(row.bytes, row.idStart, row.idEnd);
    return i;
  }

  private pushTolerance(numbers: Float64Array, i: number): void {
    const { tolerance } = this;
    for (let k = 0; k < tolerance.length; k++) {
      const value = numbers[TOLERANCE + k];
      if (Number.isNaN(value)) continue;
      if (i >= tolerance[k].length) tolerance[k] = resized(tolerance[k], this.x.length, Number.NaN);
      tolerance[k][i] = value;
    }
  }

  private pushReferences({ bytes, refStarts, refEnds }: HoleRow, i: number): void {
    const { references, names } = this;
    for (let k = 0; k < references.length; k++) {
      const start = refStarts[k];
      if (start < 0) continue;
      if (i >= references[k].length) references[k] = resized(references[k], this.x.length, -1);
      references[k][i] = names[k].add(bytes, start, refEnds[k]);
    }
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

  /** @param byte offset of the hole that has no place yet */
  private grow(byte: number): void {
    const length = this.lengthFor(byte);
    this.x = resized(this.x, length);
    this.y = resized(this.y, length);
    this.z = resized(this.z, length);
    this.axis = resized(this.axis, length);
    this.byte = resized(this.byte, length);
    this.broken = resized(this.broken, length);
    this.ids.reserve(length);
  }

  /** Half as long again; or, once the length of the records is known, what the rest of the input will take and a little more. */
  private lengthFor(byte: number): number {
    const held = this.x.length;
    const perHole = (byte - this.byte[0]) / held;
    const rest = perHole > 0 && held >= 16 * SMALLEST ? Math.ceil(((this.totalBytes - byte) / perHole) * 1.03) : 0;
    return rest > 0 ? held + rest + SMALLEST : held * 2;
  }
}
