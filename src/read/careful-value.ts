import { SINGLED_OUT } from './beyond-schema.js';
import { carefulNumberEnd } from './careful-number.js';
import type { CarefulText } from './careful-text.js';
import { plainSequence } from './lexemes.js';
import type { Notes } from './notes.js';
import { sameSpan } from './open-value.js';
import { blanks } from './scan.js';
import { sameBytes } from './shape.js';

const MOST_DEPTH = 8;
/** With more names in the objects that are open the value is left to the scanner, which has better ways to find a name twice. */
const MOST_NAMES = 32;

const LONGEST_URI = 1024;

const encoder = new TextEncoder();
const singledOut = SINGLED_OUT.map((name) => encoder.encode(name));

/**
 * Passes over values that the schema has no word for: those of unknown members, additions, and values of a
 * wrong type. Notes what I-JSON finds wrong in them, and gives up where more might be said of them.
 */
export class CarefulValue {
  /** Beginnings and ends of the names of the objects that are open. */
  private readonly names = new Int32Array(2 * MOST_NAMES);
  private nameCount = 0;

  constructor(
    private readonly text: CarefulText,
    private readonly notes: Notes,
  ) {}

  /**
   * Returns the position behind the value at `p`, or -1.
   *
   * @param isAddition whether it is the value of `ext`: no name inside has a meaning, but the first ones are URIs
   */
  pass(b: Uint8Array, p: number, place: number, isAddition: boolean): number {
    this.nameCount = 0;
    return this.value(b, p, place, isAddition, 0);
  }

  private value(b: Uint8Array, p: number, place: number, isAddition: boolean, depth: number): number {
    const c = b[p];
    if (c === 34) {
      const end = this.text.read(b, p + 1, place, this.notes);
      return end < 0 ? -1 : end + 1;
    }
    if (c === 45 || (c >= 48 && c <= 57)) return carefulNumberEnd(b, p, place, this.notes);
    if (c === 123) return depth === MOST_DEPTH ? -1 : this.object(b, p, place, isAddition, depth + 1);
    if (c === 91) return depth === MOST_DEPTH ? -1 : this.list(b, p, place, isAddition, depth + 1);
    return wordEnd(b, p);
  }

  private list(b: Uint8Array, start: number, place: number, isAddition: boolean, depth: number): number {
    let p = blanks(b, start + 1);
    if (b[p] === 93) return p + 1;
    for (;;) {
      p = this.value(b, p, place, isAddition, depth);
      if (p < 0) return -1;
      p = blanks(b, p);
      if (b[p] === 93) return p + 1;
      if (b[p] !== 44) return -1;
      p = blanks(b, p + 1);
    }
  }

  private object(b: Uint8Array, start: number, place: number, isAddition: boolean, depth: number): number {
    const first = this.nameCount;
    let p = blanks(b, start + 1);
    if (b[p] === 125) return p + 1;
    for (;;) {
      const end = b[p] === 34 ? nameEnd(b, p + 1) : -1;
      if (end < 0 || !this.isNew(b, p + 1, end, first)) return -1;
      if (isAddition && depth === 1 && !isUri(b, p + 1, end)) return -1;
      const colon = blanks(b, end + 1);
      if (b[colon] !== 58) return -1;
      const value = blanks(b, colon + 1);
      if (!isAddition && mayMatter(b, p + 1, end, b[value])) return -1;
      p = this.value(b, value, place, isAddition, depth);
      // A text under the name `id` is to be in normalisation form C wherever it stands.
      if (p < 0 || (b[value] === 34 && !isAddition && !this.text.isComposed)) return -1;
      p = blanks(b, p);
      if (b[p] === 125) break;
      if (b[p] !== 44) return -1;
      p = blanks(b, p + 1);
    }
    this.nameCount = first;
    return p + 1;
  }

  private isNew(b: Uint8Array, from: number, to: number, first: number): boolean {
    const { names } = this;
    if (this.nameCount === MOST_NAMES) return false;
    for (let k = first; k < this.nameCount; k++) {
      if (sameSpan(b, names[2 * k], names[2 * k + 1], from, to)) return false;
    }
    names[2 * this.nameCount] = from;
    names[2 * this.nameCount + 1] = to;
    this.nameCount++;
    return true;
  }
}

/** Position of the closing quote of a name without escapes, or -1. */
export function nameEnd(b: Uint8Array, p: number): number {
  let end = p;
  for (;;) {
    const c = b[end];
    if (c === 34) return end;
    if (c < 32 || c === 92 || c === 127) return -1;
    const length = c < 128 ? 1 : plainSequence(b, end);
    if (length === 0) return -1;
    end += length;
  }
}

/** Whether a name is an absolute URI of printable ASCII; others are left to the validator. */
function isUri(b: Uint8Array, from: number, to: number): boolean {
  let p = from;
  for (; p < to && b[p] !== 58; p++) {
    const c = b[p];
    const isLetter = (c | 32) >= 97 && (c | 32) <= 122;
    if (!isLetter && (p === from || !((c >= 48 && c <= 57) || c === 43 || c === 45 || c === 46))) return false;
  }
  if (p === from || p + 1 >= to || to - from > LONGEST_URI) return false;
  while (++p < to) if (b[p] <= 32 || b[p] > 126) return false;
  return true;
}

/** Whether a member of this name, with a value that begins with `c`, may be judged beyond the schema or fill a column. */
function mayMatter(b: Uint8Array, from: number, to: number, c: number): boolean {
  // A list written as an object with its indexes as names is read as the list by some.
  if (b[from] >= 48 && b[from] <= 57) return true;
  return (c === 91 || c === 123) && singledOut.some((name) => sameBytes(name, b, from, to));
}

/** Position behind the word `true`, `false` or `null` at `p`, or -1. */
export function wordEnd(b: Uint8Array, p: number): number {
  const c = b[p];
  if (c === 116) return b[p + 1] === 114 && b[p + 2] === 117 && b[p + 3] === 101 ? p + 4 : -1;
  if (c === 110) return b[p + 1] === 117 && b[p + 2] === 108 && b[p + 3] === 108 ? p + 4 : -1;
  if (c !== 102) return -1;
  return b[p + 1] === 97 && b[p + 2] === 108 && b[p + 3] === 115 && b[p + 4] === 101 ? p + 5 : -1;
}
