import { grown, resized } from './names.js';

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

/**
 * The ids of a list of records, in order, with the repeated ones found as they come.
 *
 * Ids are kept as UTF-8 in one array; a table finds them by hash and the bytes confirm it. The hash leaves
 * the case of ASCII letters out, so that ids that differ only in case meet in the same chain.
 */
export class IdIndex {
  count = 0;
  /** Pairs of a record and the first one before it that has the same id. */
  readonly duplicates: [index: number, first: number][] = [];
  /** Pairs of a record and the first one before it whose id differs only in the case of the letters A to Z. */
  readonly lookalikes: [index: number, first: number][] = [];
  private arena = new Uint8Array(1 << 10);
  private ends = new Uint32Array(64);
  private table = new Int32Array(1 << 8).fill(-1);

  /** Makes room for `records` ids of the length that ids had so far. */
  reserve(records: number): void {
    const used = this.count === 0 ? 0 : this.ends[this.count - 1];
    const bytes = Math.ceil((used / Math.max(1, this.count)) * records);
    if (bytes > this.arena.length) this.arena = resized(this.arena, bytes);
    if (records > this.ends.length) this.ends = resized(this.ends, records);
    let slots = this.table.length;
    while (slots < records * 2) slots *= 2;
    if (slots > this.table.length) this.rehash(slots);
  }

  /** Adds the id at `from..to` of `b`; an empty one for a record without an id that can be read. */
  add(b: Uint8Array, from: number, to: number): void {
    const index = this.count++;
    const start = this.start(index);
    const end = start + to - from;
    if (end > this.arena.length) this.arena = grown(this.arena, end);
    if (index === this.ends.length) this.ends = grown(this.ends, index + 1);
    const { arena } = this;
    for (let k = start, j = from; j < to; k++, j++) arena[k] = b[j];
    this.ends[index] = end;
    if (end === start) return;
    this.enter(index, true);
    if (this.count * 2 > this.table.length) this.rehash(this.table.length * 4);
  }

  text(index: number): string {
    return decoder.decode(this.arena.subarray(this.start(index), this.ends[index]));
  }

  /** Index of the first record with this id, or -1. */
  find(id: string): number {
    const b = encoder.encode(id);
    const { table } = this;
    const mask = table.length - 1;
    let slot = foldedHash(b, 0, b.length) & mask;
    while (table[slot] >= 0 && !this.same(table[slot], b, 0, b.length)) slot = (slot + 1) & mask;
    return table[slot];
  }

  private start(index: number): number {
    return index === 0 ? 0 : this.ends[index - 1];
  }

  private rehash(slots: number): void {
    this.table = new Int32Array(slots).fill(-1);
    for (let index = 0; index < this.count; index++) {
      if (this.ends[index] > this.start(index)) this.enter(index, false);
    }
  }

  /** Puts a record in the table unless an equal id is there. */
  private enter(index: number, isNew: boolean): void {
    const { arena, ends, table } = this;
    const from = this.start(index);
    const to = ends[index];
    const mask = table.length - 1;
    let slot = foldedHash(arena, from, to) & mask;
    let lookalike = -1;
    for (let j = table[slot]; j >= 0; j = table[slot]) {
      if (this.sameFolded(j, from, to)) {
        if (this.same(j, arena, from, to)) {
          if (isNew) this.duplicates.push([index, j]);
          return;
        }
        if (lookalike < 0) lookalike = j;
      }
      slot = (slot + 1) & mask;
    }
    table[slot] = index;
    if (isNew && lookalike >= 0) this.lookalikes.push([index, lookalike]);
  }

  private same(j: number, b: Uint8Array, from: number, to: number): boolean {
    const start = this.start(j);
    if (this.ends[j] - start !== to - from) return false;
    const { arena } = this;
    for (let k = from, m = start; k < to; k++, m++) if (arena[m] !== b[k]) return false;
    return true;
  }

  private sameFolded(j: number, from: number, to: number): boolean {
    const { arena } = this;
    const start = this.start(j);
    if (this.ends[j] - start !== to - from) return false;
    for (let k = from, m = start; k < to; k++, m++) {
      if (FOLDED[arena[m]] !== FOLDED[arena[k]]) return false;
    }
    return true;
  }
}

/** Each byte with the letters A to Z as their small ones. */
const FOLDED = Uint8Array.from({ length: 256 }, (_, c) => (c >= 65 && c <= 90 ? c + 32 : c));

/** Hash (FNV-1a) that is equal for ids that differ only in the case of ASCII letters, and for few others; the bytes tell those apart. */
function foldedHash(b: Uint8Array, from: number, to: number): number {
  let h = 0x811c9dc5;
  for (let k = from; k < to; k++) h = Math.imul(h ^ FOLDED[b[k]], 0x01000193);
  return h ^ (h >>> 15);
}
