import { TAG_HASH_START, tagHashEnd, tagHashStep } from '../model/tag-hash.js';

/**
 * The small pieces that decoders are made of: each reads one lexeme of JSON at a byte position.
 *
 * All of them share three promises. They return the position after the lexeme, or -1 when the bytes
 * are anything but the plain, valid case; -1 is no verdict, it sends the record to the scanner, which
 * knows the whole grammar and names the fault. They never read past a zero byte, so a window that ends
 * in zeros needs no bounds checks. And they accept nothing that the schema or the grammar would not.
 */

/** Where {@link numberEnd} leaves the value that it read. A typed array, so that nothing is boxed. */
export const numberRead = new Float64Array(1);

/** 10^0 to 10^22: the powers of ten that a double holds exactly. */
const POWER_OF_TEN = Float64Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));

/**
 * Reads a decimal number without exponent and with at most 15 digits.
 *
 * Such a number is the quotient of two integers that a double holds exactly, so one division gives the
 * correctly rounded value (Clinger, "How to read floating point numbers accurately", 1990).
 */
export function numberEnd(b: Uint8Array, p: number): number {
  let c = b[p];
  const negative = c === 45;
  if (negative) c = b[++p];
  if (c < 48 || c > 57) return -1;
  const start = p;
  let value = c - 48;
  c = b[++p];
  if (value === 0) {
    if (c >= 48 && c <= 57) return -1;
  } else {
    while (c >= 48 && c <= 57) {
      value = value * 10 + (c - 48);
      c = b[++p];
    }
  }
  let digits = p - start;
  if (c === 46) {
    const point = p;
    c = b[++p];
    while (c >= 48 && c <= 57) {
      value = value * 10 + (c - 48);
      c = b[++p];
    }
    const decimals = p - point - 1;
    digits += decimals;
    if (decimals === 0 || digits > 15) return -1;
    value /= POWER_OF_TEN[decimals];
  }
  if (digits > 15 || c === 101 || c === 69 || c === 0) return -1;
  numberRead[0] = negative ? -value : value;
  return p;
}

/** 0 for the characters that a plain text may hold anywhere: printable ASCII but the quote and the backslash. */
const STOPS = Uint8Array.from({ length: 256 }, (_, c) => (c < 32 || c > 126 || c === 34 || c === 92 ? 1 : 0));

/**
 * Reads the rest of an identifier after its opening quote: printable ASCII without escapes, no blank at
 * either end, 1 to `max` characters. Returns the position of the closing quote.
 */
export function idEnd(b: Uint8Array, p: number, max: number): number {
  let end = p;
  while (STOPS[b[end]] === 0) end++;
  if (b[end] !== 34 || end === p || end - p > max || b[p] === 32 || b[end - 1] === 32) return -1;
  return end;
}

/** Where {@link labelEnd} leaves the hash of the text that it read, see `tagHash`. */
export const labelHash = new Int32Array(1);

/**
 * Reads the rest of one line of text after its opening quote: no blank at either end, 1 to `max` code
 * points. Takes escapes and the common part of UTF-8; leaves the rest to the scanner. Returns the position
 * of the closing quote; the hash is of the text that the escapes stand for.
 */
export function labelEnd(b: Uint8Array, p: number, max: number): number {
  let end = p;
  let extra = 0;
  let hash = TAG_HASH_START;
  for (;;) {
    let c = b[end];
    while (STOPS[c] === 0) {
      hash = tagHashStep(hash, c);
      c = b[++end];
    }
    if (c === 34) break;
    if (c === 92) {
      const d = b[end + 1];
      if (d === 34 || d === 92 || d === 47) {
        hash = tagHashStep(hash, d);
        end += 2;
        extra++;
        continue;
      }
      const point = d === 117 ? plainEscape(b, end + 2) : -1;
      if (point < 0) return -1;
      hash = tagHashOfPoint(hash, point);
      end += 6;
      extra += 5;
    } else {
      const length = c >= 128 ? plainSequence(b, end) : 0;
      if (length === 0) return -1;
      for (const after = end + length; end < after; end++) hash = tagHashStep(hash, b[end]);
      extra += length - 1;
    }
  }
  const points = end - p - extra;
  if (points === 0 || points > max || b[p] === 32 || b[end - 1] === 32) return -1;
  labelHash[0] = tagHashEnd(hash);
  return end;
}

/** Length of the UTF-8 sequence at `p` if it is a letter or sign that a line of text may hold anywhere, else 0. */
export function plainSequence(b: Uint8Array, p: number): number {
  const c = b[p];
  const d = b[p + 1];
  if ((d & 0xc0) !== 0x80) return 0;
  if (c >= 0xc3 && c <= 0xdf) return 2;
  if ((c & 0xf0) !== 0xe0 || (b[p + 2] & 0xc0) !== 0x80) return 0;
  const point = ((c & 15) << 12) | ((d & 63) << 6) | (b[p + 2] & 63);
  // Below U+0800 the three bytes are too long a form, which is no UTF-8.
  return point >= 0x800 && isPlainPoint(point) ? 3 : 0;
}

/** The code point of the four hexadecimal digits at `p` if a line of text may hold it anywhere, else -1. */
function plainEscape(b: Uint8Array, p: number): number {
  let point = 0;
  for (let k = p; k < p + 4; k++) {
    const c = b[k];
    const digit = c >= 48 && c <= 57 ? c - 48 : (c | 32) >= 97 && (c | 32) <= 102 ? (c | 32) - 87 : -1;
    if (digit < 0) return -1;
    point = point * 16 + digit;
  }
  return isPlainPoint(point) ? point : -1;
}

/**
 * Code points of the first plane that are no control character, blank, surrogate or noncharacter: not all of
 * them. Between U+0800 and U+4000 only U+2010 to U+2027 and U+2030 to U+203F are taken: dashes, quotation
 * marks and the primes of feet and inches. The blanks lie between and around.
 */
function isPlainPoint(point: number): boolean {
  if (point < 0x7f) return point > 32;
  if (point < 0x800) return point >= 0xc0;
  if (point < 0x4000) return (point >= 0x2010 && point <= 0x2027) || (point >= 0x2030 && point <= 0x203f);
  return point <= 0xcfff;
}

function tagHashOfPoint(hash: number, point: number): number {
  if (point < 0x80) return tagHashStep(hash, point);
  const last = 0x80 | (point & 63);
  if (point < 0x800) return tagHashStep(tagHashStep(hash, 0xc0 | (point >> 6)), last);
  return tagHashStep(tagHashStep(tagHashStep(hash, 0xe0 | (point >> 12)), 0x80 | ((point >> 6) & 63)), last);
}
