/** Bytes that can be looked at again: a file, or what was kept of a stream. */
export interface ByteSource {
  readonly byteLength: number;
  /** The bytes from `start` up to `end`; fewer where the source ends. The result is read only and may be reused by the next call. */
  slice(start: number, end: number): Uint8Array;
}

/** Keeps chunks as they come, for inputs that cannot be read twice. */
export class KeptBytes implements ByteSource {
  byteLength = 0;
  private readonly chunks: Uint8Array[] = [];
  private readonly starts: number[] = [];

  add(chunk: Uint8Array): void {
    if (chunk.length === 0) return;
    this.starts.push(this.byteLength);
    this.chunks.push(chunk.slice());
    this.byteLength += chunk.length;
  }

  slice(start: number, end: number): Uint8Array {
    const to = Math.min(end, this.byteLength);
    const result = new Uint8Array(Math.max(0, to - start));
    let index = this.chunkAt(start);
    for (let at = start; at < to; index++) {
      const from = at - this.starts[index];
      const part = this.chunks[index].subarray(from, from + to - at);
      result.set(part, at - start);
      at += part.length;
    }
    return result;
  }

  /** Index of the chunk that holds a byte. */
  private chunkAt(byte: number): number {
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle] <= byte) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}
