import type { ByteSource } from '../model/byte-source.js';
import { fromPointer, positionOf } from './locate.js';
import { Scanner } from './scan.js';

/** Line and column of a byte, from 1; the column counts UTF-16 code units. */
export interface LineColumn {
  line: number;
  column: number;
}

const CHUNK = 1 << 18;
const SENTINEL = 32;
/** Most records are shorter than this. */
const FIRST_LOOK = 1 << 10;

/**
 * Lines and columns of bytes of a text, in the order of `bytes`.
 *
 * One pass over the text up to the last of them, so that a clean file costs nothing and a faulty one is
 * looked at once more. A line ends behind a line feed, or behind a carriage return that none follows.
 */
export function lineColumns(source: ByteSource, bytes: readonly number[]): LineColumn[] {
  const order = bytes.map((_, k) => k).sort((a, b) => bytes[a] - bytes[b]);
  const found: LineColumn[] = new Array(bytes.length);
  let line = 1;
  let column = 1;
  let isAfterReturn = false;
  let next = 0;
  for (let base = 0; next < order.length; base += CHUNK) {
    const chunk = source.slice(base, base + CHUNK);
    const isLast = chunk.length < CHUNK;
    for (let k = 0; next < order.length; k++) {
      if (k === chunk.length && !isLast) break;
      // A line feed right behind a carriage return ends the same line as the return.
      const c = chunk[k];
      if (isAfterReturn && c !== 10) {
        line++;
        column = 1;
      }
      isAfterReturn = isAfterReturn && c === 10;
      while (next < order.length && (bytes[order[next]] <= base + k || (isLast && k === chunk.length))) {
        found[order[next++]] = { line, column };
      }
      if (k === chunk.length) break;
      if (c === 10) {
        line++;
        column = 1;
        isAfterReturn = false;
      } else if (c === 13) {
        isAfterReturn = true;
        column++;
      } else {
        column += units(c);
      }
    }
  }
  return found;
}

/** UTF-16 code units that begin at a byte of UTF-8. */
function units(c: number): number {
  return (c & 0xc0) === 0x80 ? 0 : c >= 0xf0 ? 2 : 1;
}

/** Byte of what `within`, a JSON Pointer, leads to inside the record at `recordByte`: the value, or the name of the member. */
export function byteInRecord(source: ByteSource, recordByte: number, within: string, isName = false): number {
  const tokens = fromPointer(within);
  if (tokens.length === 0) return recordByte;
  const record = recordBytes(source, recordByte);
  return record === undefined ? recordByte : recordByte + positionOf(record, 0, tokens, isName ? 'name' : 'value');
}

/** The bytes of the value at `start`; undefined where it is not whole. They may be looked at 32 bytes beyond their end. */
export function recordBytes(source: ByteSource, start: number): Uint8Array | undefined {
  const scanner = new Scanner();
  for (let size = FIRST_LOOK; ; size *= 4) {
    const part = source.slice(start, start + size);
    const padded = new Uint8Array(part.length + SENTINEL);
    padded.set(part);
    const outcome = scanner.scan(padded, 0, part.length, part.length < size);
    if (outcome === 'whole') return padded.subarray(0, scanner.end);
    if (outcome === 'broken' || part.length < size) return undefined;
  }
}
