import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import type { ByteSource } from '../model/byte-source.js';
import { FileTrouble, reasonOf } from './file-trouble.js';

const CHUNK = 1 << 18;

/** An input that cannot be read from where it is. */
export class UnreadableInput extends FileTrouble {
  constructor(name: string, cause: unknown) {
    super(`${name} cannot be read: ${reasonOf(cause)}.`);
  }
}

/** A file that can be read more than once. */
export class InputFile implements ByteSource {
  readonly byteLength: number;
  private readonly fd: number;
  private readonly buffer = new Uint8Array(CHUNK);

  /** @throws UnreadableInput */
  constructor(readonly path: string) {
    try {
      this.fd = openSync(path, 'r');
      const stat = fstatSync(this.fd);
      if (stat.isDirectory()) throw Object.assign(new Error(), { code: 'EISDIR' });
      this.isSeekable = stat.isFile();
      this.byteLength = stat.size;
    } catch (error) {
      throw new UnreadableInput(path, error);
    }
  }

  /** Whether the bytes can be looked at again; a pipe has them once. */
  readonly isSeekable: boolean;

  slice(start: number, end: number): Uint8Array {
    const wanted = Math.max(0, end - start);
    const target = wanted <= CHUNK ? this.buffer : new Uint8Array(wanted);
    return target.subarray(0, this.read(target, wanted, start));
  }

  /** The bytes from beginning to end; each chunk is valid until the next. */
  *chunks(): Generator<Uint8Array> {
    const chunk = new Uint8Array(CHUNK);
    for (;;) {
      const n = this.read(chunk, CHUNK, null);
      if (n === 0) return;
      yield n === CHUNK ? chunk : chunk.subarray(0, n);
    }
  }

  close(): void {
    closeSync(this.fd);
  }

  private read(target: Uint8Array, wanted: number, position: number | null): number {
    try {
      let n = 0;
      while (n < wanted) {
        const got = readSync(this.fd, target, n, wanted - n, position === null ? null : position + n);
        if (got === 0) break;
        n += got;
      }
      return n;
    } catch (error) {
      throw new UnreadableInput(this.path, error);
    }
  }
}
