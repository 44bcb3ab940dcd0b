const encoder = new TextEncoder();
const decoder = new TextDecoder();

/**
 * A set of texts, each with a small number: 0 for the first one added, then 1, 2, …
 *
 * Texts are kept as UTF-8 in one array and found by hash, so that a million of them cost their bytes
 * and about 16 more. A match of hashes is always confirmed by the bytes.
 */
export class Names {
  /** Number of texts. */
  count = 0;
  private arena = new Uint8Array(1 << 10);
  private ends = new Uint32Array(1 << 6);
  private table = new Int32Array(1 << 8).fill(-1);
  private last = -1;

  /** Number of the text at `from..to` of `b`; adds it when it is new. */
  add(b: Uint8Array, from: number, to: number): number {
    // Neighbouring records mostly name the same type, trade and level.
    if (this.last >= 0 && this.equals(this.last, b, from, to)) return this.last;
    const slot = this.slot(b, from, to);
    const found = this.table[slot];
    this.last = found >= 0 ? found : this.append(b, from, to, slot);
    return this.last;
  }

  addText(name: string): number {
    const b = encoder.encode(name);
    return this.add(b, 0, b.length);
  }

  /** Number of a text, or -1 when it was never added. */
  find(name: string): number {
    const b = encoder.encode(name);
    return this.table[this.slot(b, 0, b.length)];
  }

  /** The text with number `index`. */
  text(index: number): string {
    return decoder.decode(this.arena.subarray(index === 0 ? 0 : this.ends[index - 1], this.ends[index]));
  }

  private equals(index: number, b: Uint8Array, from: number, to: number): boolean {
    const { arena, ends } = this;
    const start = index === 0 ? 0 : ends[index - 1];
    if (ends[index] - start !== to - from) return false;
    for (let k = start, j = from; j < to; k++, j++) if (arena[k] !== b[j]) return false;
    return true;
  }

  /** Slot of the text, or the free slot where it belongs. */
  private slot(b: Uint8Array, from: number, to: number): number {
    const { table } = this;
    const mask = table.length - 1;
    let slot = hashBytes(b, from, to) & mask;
    while (table[slot] >= 0 && !this.equals(table[slot], b, from, to)) slot = (slot + 1) & mask;
    return slot;
  }

  private append(b: Uint8Array, from: number, to: number, slot: number): number {
    const index = this.count++;
    const start = index === 0 ? 0 : this.ends[index - 1];
    const end = start + to - from;
    if (end > this.arena.length) this.arena = grown(this.arena, end);
    if (index === this.ends.length) this.ends = grown(this.ends, index + 1);
    for (let k = start, j = from; j < to; k++, j++) this.arena[k] = b[j];
    this.ends[index] = end;
    this.table[slot] = index;
    if (this.count * 2 > this.table.length) this.rehash();
    return index;
  }

  private rehash(): void {
    const table = new Int32Array(this.table.length * 2).fill(-1);
    const mask = table.length - 1;
    for (let index = 0, start = 0; index < this.count; index++) {
      const end = this.ends[index];
      let slot = hashBytes(this.arena, start, end) & mask;
      while (table[slot] >= 0) slot = (slot + 1) & mask;
      table[slot] = index;
      start = end;
    }
    this.table = table;
  }
}

/** FNV-1a over bytes, with the high bits folded in so that a power-of-two table sees all of them. */
export function hashBytes(b: Uint8Array, from: number, to: number): number {
  let h = 0x811c9dc5;
  for (let k = from; k < to; k++) h = Math.imul(h ^ b[k], 0x01000193);
  h ^= h >>> 15;
  return Math.imul(h, 0x2c1b3c6d) >>> 1;
}

type Column = Uint8Array | Uint32Array | Int32Array | Float64Array;

/** A copy with room for at least `least` elements, half as long again. */
export function grown<T extends Column>(array: T, least: number): T {
  return resized(array, Math.max(least, array.length + (array.length >> 1) + 16));
}

/** A copy of exactly `length` elements; the new ones hold `value`. */
export function resized<T extends Column>(array: T, length: number, value = 0): T {
  const copy = new (array.constructor as new (length: number) => T)(length);
  copy.set(array);
  if (value !== 0) copy.fill(value, array.length);
  return copy;
}
