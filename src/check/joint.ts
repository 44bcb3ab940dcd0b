import type { Collection } from '../generated/schema-tables.js';
import type { HoleReference } from '../model/hole-columns.js';
import type { RecordOf } from '../model/layout-model.js';
import type { SitePart } from './site-part.js';

type RecordCollection = Exclude<Collection, 'holes'>;

/** Where a record stands. */
export interface RecordPlace {
  part: SitePart;
  /** Index in its collection. */
  index: number;
}

/**
 * What the holes of all layouts refer to by one member, such as their trades.
 *
 * A name has one number over all layouts: names of two layouts share it where `sameAs` gives their records
 * the same key. Costs nothing a hole where there is one layout.
 */
export class Joint<K extends RecordCollection> {
  /** The records by number of the name; undefined where it is broken or there is none. */
  readonly records: (RecordOf<K> | undefined)[] = [];
  readonly places: (RecordPlace | undefined)[] = [];
  private readonly ids: string[] = [];
  private readonly column: Int32Array;
  /** For each layout the numbers of its own names. */
  private readonly numbers = new Map<SitePart, Int32Array>();

  /** @param sameAs key that equal records of two layouts share; absent: records of two layouts are never the same */
  constructor(
    parts: readonly SitePart[],
    private readonly collection: K,
    path: HoleReference,
    sameAs?: (record: RecordOf<K>) => string,
  ) {
    const byKey = new Map<string, number>();
    const numbers = parts.map((part) => this.take(part, byKey, sameAs));
    for (const [p, part] of parts.entries()) this.numbers.set(part, numbers[p]);
    if (parts.length === 1) {
      this.column = parts[0].layout.holes.reference(path);
      return;
    }
    const last = parts[parts.length - 1];
    this.column = new Int32Array(last.firstHole + last.layout.holes.count).fill(-1);
    parts.forEach(({ layout: { holes }, firstHole }, p) => {
      const own = holes.reference(path);
      const count = Math.min(holes.count, own.length);
      for (let i = 0; i < count; i++) if (own[i] >= 0) this.column[firstHole + i] = numbers[p][own[i]];
    });
  }

  /** Number of names. */
  get count(): number {
    return this.ids.length;
  }

  /** Number of the name that hole `i` refers to, or -1. */
  nameOf(i: number): number {
    return i < this.column.length ? this.column[i] : -1;
  }

  /** The record that hole `i` refers to; undefined where it names none or a broken one. */
  of(i: number): RecordOf<K> | undefined {
    const name = this.nameOf(i);
    return name < 0 ? undefined : this.records[name];
  }

  /** The number of the name by which a record of a layout refers to another one, or -1. */
  numberOf(part: SitePart, id: string): number {
    const own = part.layout.collection(this.collection).names.find(id);
    return this.numbers.get(part)?.[own] ?? -1;
  }

  id(name: number): string {
    return this.ids[name];
  }

  private take(
    part: SitePart,
    byKey: Map<string, number>,
    sameAs: ((record: RecordOf<K>) => string) | undefined,
  ): Int32Array {
    const own = part.layout.collection(this.collection);
    const { judged, names } = own;
    return Int32Array.from({ length: names.count }, (_, name) => {
      const index = own.indexOf(name);
      const record = judged[index];
      const key = record && sameAs?.(record);
      const known = key === undefined ? undefined : byKey.get(key);
      if (known !== undefined) return known;
      const number = this.ids.push(names.text(name)) - 1;
      this.records[number] = record;
      this.places[number] = index < 0 ? undefined : { part, index };
      if (key !== undefined) byKey.set(key, number);
      return number;
    });
  }
}
