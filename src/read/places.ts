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
/** In place of an end: no whole value, whatever may follow. */
const BROKEN = 0;

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

/**
 * The bytes of the value at `start`; undefined where it is not whole. They may be looked at 32 bytes beyond
 * their end. Of an object or an array the grammar has to be sound.
 */
export function recordBytes(source: ByteSource, start: number): Uint8Array | undefined {
  for (let size = FIRST_LOOK; ; size *= 4) {
    const part = source.slice(start, start + size);
    const isLast = part.length < size;
    const padded = new Uint8Array(part.length + SENTINEL);
    padded.set(part);
    const isOpening = padded[0] === 123 || padded[0] === 91;
    const end = isOpening ? closingEnd(padded) : wordEnd(padded, part.length, isLast);
    if (end > 0) return padded.subarray(0, end);
    if (isLast || end === BROKEN) return undefined;
  }
}

/** Position behind a value that is no object and no array; -1 where more of it may follow. */
function wordEnd(b: Uint8Array, limit: number, isLast: boolean): number {
  const scanner = new Scanner();
  const outcome = scanner.scan(b, 0, limit, isLast);
  return outcome === 'whole' ? scanner.end : outcome === 'broken' ? BROKEN : -1;
}

/** Position behind the bracket that closes the first one; -1 where there is none. */
function closingEnd(b: Uint8Array): number {
  let depth = 0;
  for (let p = 0; p < b.length; p++) {
    const c = b[p];
    if (c === 34) {
      while (++p < b.length && b[p] !== 34) if (b[p] === 92) p++;
    } else if (c === 123 || c === 91) {
      depth++;
    } else if (c === 125 || c === 93) {
      if (--depth === 0) return p + 1;
    }
  }
  return -1;
}
