import type { Layout } from '../generated/layout.js';
import { type Collection as CollectionName, identified, references } from '../generated/schema-tables.js';
import { HoleColumns } from './hole-columns.js';
import { holeReferences } from './hole-row.js';
import { Names } from './names.js';

/** Type of one record of a collection. */
export type RecordOf<K extends CollectionName> = NonNullable<Layout[K]>[number];

/** The records of one member of a layout, in the order of the document. */
export class Collection<T> {
  /** Ids that are defined here, and ids that other records refer to. */
  readonly names = new Names();
  /** The records; undefined for one that broke a rule of the text or the schema. */
  readonly records: (T | undefined)[] = [];
  /** Offset of each record in the input. */
  readonly bytes: number[] = [];
  /** For each record its id as far as one could be read. */
  readonly ids: (string | undefined)[] = [];
  /** Pairs of a record and the first one before it that has the same id. */
  readonly duplicates: [index: number, first: number][] = [];
  private readonly definedAt: number[] = [];
  private readonly givenUp = new Set<number>();
  private readonly reduced = new Map<number, T>();
  /** The records as they are judged, until another one is given up or reduced. */
  private kept: readonly (T | undefined)[] | undefined;

  /** The records that later stages judge: undefined also for those that the references stage gave up. */
  get judged(): readonly (T | undefined)[] {
    const { givenUp, reduced, records } = this;
    if (givenUp.size + reduced.size === 0) return records;
    this.kept ??= records.map((record, k) => (givenUp.has(k) ? undefined : (reduced.get(k) ?? record)));
    return this.kept;
  }

  /** Whether a record is not judged in later stages. */
  get hasBroken(): boolean {
    return this.givenUp.size + this.reduced.size > 0 || this.records.includes(undefined);
  }

  /** Marks a record as one that later stages do not judge. */
  giveUp(index: number): void {
    this.givenUp.add(index);
    this.kept = undefined;
  }

  /** Has later stages judge a record without what is broken in it. */
  reduce(index: number, record: T): void {
    this.reduced.set(index, record);
    this.kept = undefined;
  }

  /** Adds a record. */
  define(id: string | undefined, record: T | undefined, byte: number): void {
    const index = this.records.push(record) - 1;
    this.kept = undefined;
    this.bytes.push(byte);
    this.ids.push(id);
    if (id === undefined) return;
    const name = this.names.addText(id);
    const earlier = this.indexOf(name);
    if (earlier < 0) this.definedAt[name] = index;
    else this.duplicates.push([index, earlier]);
  }

  /** Index of the record that the name with this number defines, or -1. */
  indexOf(name: number): number {
    return this.definedAt[name] ?? -1;
  }

  isDefined(id: string): boolean {
    const name = this.names.find(id);
    return name >= 0 && this.indexOf(name) >= 0;
  }

  /** Ids of all records that have one, broken records included. */
  definedIds(): string[] {
    return this.ids.filter((id) => id !== undefined);
  }
}

/**
 * A layout as it was read: the many holes in columns, everything else as parsed records.
 *
 * A record that broke a rule of the text or the schema is kept by its id and place only.
 */
export class LayoutModel {
  /** Members of the root that are no collections; broken ones are left out. */
  readonly header: Partial<Layout> = {};
  /** Whether a member of the root that is no collection broke a rule: together they are one record. */
  isHeaderBroken = false;
  /** Names of all members that the root has. */
  readonly present = new Set<string>();
  /** Collections that should be there and are not, or are no arrays: what refers into them cannot be judged. */
  readonly unreadable = new Set<string>();
  /** Offset of each member of the root in the input. */
  readonly memberBytes = new Map<string, number>();
  readonly holes: HoleColumns;
  private readonly collections = new Map<string, Collection<unknown>>();

  /** @param totalBytes size of the input, where it is known */
  constructor(totalBytes = 0) {
    for (const name of identified) if (name !== 'holes') this.collections.set(name, new Collection());
    this.collections.set('changes', new Collection());
    this.holes = new HoleColumns(
      holeReferences.map((path) => {
        const target = references.holes.find((reference) => reference.path === path)?.target;
        if (target === undefined) throw new Error(`the schema has no reference ${path} in holes`);
        return this.collection(target as Exclude<CollectionName, 'holes'>).names;
      }),
      totalBytes,
    );
  }

  /** Whether a record broke a rule, so that later stages do not judge it. */
  get hasBroken(): boolean {
    const { isHeaderBroken, holes, collections } = this;
    return isHeaderBroken || holes.brokenCount > 0 || [...collections.values()].some(({ hasBroken }) => hasBroken);
  }

  collection<K extends Exclude<CollectionName, 'holes'>>(name: K): Collection<RecordOf<K>> {
    return this.collections.get(name) as Collection<RecordOf<K>>;
  }
}
