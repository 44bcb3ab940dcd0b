/** Bytes that can be looked at again: a file, or what was kept of a stream. */
export interface ByteSource {
  readonly byteLength: number;
  /** The bytes from `start` up to `end`; fewer where the source ends. The result is read only and may be reused by the next call. */
  slice(start: number, end: number): Uint8Array;
}

const BLOCK = 1 << 18;

/** Keeps the bytes of an input that cannot be read twice. */
export class KeptBytes implements ByteSource {
  byteLength = 0;
  private readonly blocks: Uint8Array[] = [];

  add(chunk: Uint8Array): void {
    for (let from = 0; from < chunk.length; ) {
      const at = this.byteLength % BLOCK;
      if (at === 0) this.blocks.push(new Uint8Array(BLOCK));
      const part = chunk.subarray(from, from + BLOCK - at);
      this.blocks[this.blocks.length - 1].set(part, at);
      this.byteLength += part.length;
      from += part.length;
    }
  }

  slice(start: number, end: number): Uint8Array {
    const to = Math.min(end, this.byteLength);
    const result = new Uint8Array(Math.max(0, to - start));
    for (let at = start; at < to; ) {
      const from = at % BLOCK;
      const part = this.blocks[Math.floor(at / BLOCK)].subarray(from, from + to - at);
      result.set(part, at - start);
      at += part.length;
    }
    return result;
  }
}
