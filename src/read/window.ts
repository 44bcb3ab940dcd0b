/** Zeros behind the last byte, so that readers of short lexemes need no bounds checks. */
const SENTINEL = 32;

/**
 * The part of the input that is being looked at.
 *
 * Bytes arrive at the end and are given up at the front. The window fills up before it is worked on,
 * so what happens depends on the bytes alone and never on how they were cut into chunks.
 */
export class Window {
  bytes: Uint8Array;
  /** Position of the first byte not yet given up. */
  start = 0;
  /** Position behind the last byte. */
  limit = 0;
  /** Offset in the input of position 0. */
  base = 0;

  constructor(capacity = 1 << 18) {
    this.bytes = new Uint8Array(capacity + SENTINEL);
  }

  get capacity(): number {
    return this.bytes.length - SENTINEL;
  }

  get full(): boolean {
    return this.limit === this.capacity;
  }

  /** Takes bytes from `chunk` beginning at `from`; returns how many fitted. */
  take(chunk: Uint8Array, from: number): number {
    const n = Math.min(this.capacity - this.limit, chunk.length - from);
    this.bytes.set(n === chunk.length ? chunk : chunk.subarray(from, from + n), this.limit);
    this.limit += n;
    this.bytes.fill(0, this.limit, this.limit + SENTINEL);
    return n;
  }

  /** Makes room: gives up what lies before `start`; grows where nothing does. */
  makeRoom(): void {
    const { bytes, start, limit } = this;
    if (start < this.capacity / 2) {
      // The record at hand fills most of the window: doubling keeps the cost of looking again linear.
      this.bytes = new Uint8Array(this.capacity * 2 + SENTINEL);
      this.bytes.set(bytes.subarray(start, limit), 0);
    } else {
      bytes.copyWithin(0, start, limit);
    }
    this.base += start;
    this.start = 0;
    this.limit = limit - start;
    this.bytes.fill(0, this.limit, this.limit + SENTINEL);
  }
}
