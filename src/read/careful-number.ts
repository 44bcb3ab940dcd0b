import { numberEnd, numberRead } from './lexemes.js';
import { losesDigits } from './loses-digits.js';
import { NOTE, type Notes } from './notes.js';
import { textOf } from './text-of.js';

/**
 * Reads any number of JSON; leaves its value in `numberRead` and notes what I-JSON finds wrong with it.
 * Returns the position behind it, or -1 where the grammar does not go on or the end of the window may cut it.
 */
export function carefulNumberEnd(b: Uint8Array, p: number, place: number, notes: Notes): number {
  const plain = numberEnd(b, p);
  if (plain >= 0) return plain;
  const end = grammarEnd(b, p);
  if (end < 0 || b[end] === 0) return -1;
  const written = textOf(b, p, end);
  const value = Number(written);
  if (!Number.isFinite(value)) notes.add(place, NOTE.outOfRange);
  else if (losesDigits(written, value)) notes.add(place, NOTE.losesDigits);
  numberRead[0] = value;
  return end;
}

function grammarEnd(b: Uint8Array, start: number): number {
  let p = b[start] === 45 ? start + 1 : start;
  const whole = p;
  p = digitsEnd(b, p);
  if (p === whole || (b[whole] === 48 && p > whole + 1)) return -1;
  if (b[p] === 46) {
    const fraction = p + 1;
    p = digitsEnd(b, fraction);
    if (p === fraction) return -1;
  }
  if (b[p] !== 101 && b[p] !== 69) return p;
  p++;
  if (b[p] === 43 || b[p] === 45) p++;
  const exponent = p;
  p = digitsEnd(b, p);
  return p === exponent ? -1 : p;
}

function digitsEnd(b: Uint8Array, start: number): number {
  let p = start;
  while (b[p] >= 48 && b[p] <= 57) p++;
  return p;
}
