import { isNoncharacter } from './scan.js';
import { NOTE, type Notes } from './notes.js';

/** Bytes of all texts of a record that are kept. */
const ROOM = 1 << 16;
/** A text of more bytes is left to the scanner. */
const LONGEST = 1 << 15;

/** Bytes that stand for themselves in a text and have nothing to them: printable ASCII but the quote and the backslash. */
const PLAIN = Uint8Array.from({ length: 256 }, (_, c) => (c >= 32 && c < 127 && c !== 34 && c !== 92 ? 1 : 0));
/** What the letter after a backslash stands for; 0 where it needs more than a look. */
const ESCAPED = new Uint8Array(256);
for (const [letter, stands] of ['""', '\\\\', '//', 'b\b', 'f\f', 'n\n', 'r\r', 't\t'])
  ESCAPED[letter.charCodeAt(0)] = stands.charCodeAt(0);

/**
 * Reads texts in JSON, escapes resolved, and judges their characters as the schema and I-JSON do.
 *
 * It goes by the grammar of the scanner and gives up where that would.
 */
export class CarefulText {
  /** The texts as UTF-8. */
  readonly out = new Uint8Array(ROOM);
  /** Where the last text begins and ends in `out`. */
  start = 0;
  end = 0;
  /** Code points of the last text, and how many of them take two units in UTF-16. */
  points = 0;
  pairs = 0;
  /** Whether the last text is one line without control characters and blanks at its ends, and not empty. */
  isOneLine = false;
  /** Whether the last text has no control characters but tab and line feed, and is not empty. */
  isText = false;
  /** Whether the last text is in Unicode normalisation form C beyond doubt. */
  isComposed = false;
  /** Whether the last text is in `out` as a parser would give it. */
  isExact = false;
  /** The code point that an escape or a sequence stands for, and the position behind it. */
  private point = 0;
  private next = 0;

  /** Forgets the texts that are kept. */
  clear(): void {
    this.end = 0;
    this.start = 0;
  }

  /** Reads the text behind the quote before `p`, over the last one; returns the position of its closing quote, or -1. */
  read(b: Uint8Array, p: number, place: number, notes: Notes): number {
    const { out, start } = this;
    const most = start + LONGEST;
    let at = start;
    let blankEnd = -1;
    this.pairs = 0;
    this.isOneLine = true;
    this.isText = true;
    this.isComposed = true;
    this.isExact = true;
    let points = 0;
    for (;;) {
      const run = p;
      let c = b[p];
      while (PLAIN[c] === 1 && at < most) {
        out[at++] = c;
        c = b[++p];
      }
      points += p - run;
      if (c === 34) break;
      if (at >= most || !this.unusual(b, p, place, notes)) return -1;
      p = this.next;
      const { point } = this;
      at = encodePoint(out, at, point);
      this.judge(point);
      if (isBlank(point)) {
        if (points === 0) this.isOneLine = false;
        blankEnd = at;
      }
      points++;
    }
    if (points === 0) this.isText = false;
    if (points === 0 || out[start] === 32 || out[at - 1] === 32 || blankEnd === at) this.isOneLine = false;
    this.points = points;
    this.end = at;
    return p;
  }

  /** Keeps the last text: the next one is put behind it. */
  keep(): void {
    this.start = this.end;
  }

  private judge(point: number): void {
    if (point > 0xffff) this.pairs++;
    if (point < 32 || (point >= 127 && point < 160)) {
      this.isOneLine = false;
      if (point < 128 && point !== 9 && point !== 10) this.isText = false;
    }
    if (!isInert(point)) this.isComposed = false;
  }

  /** An escape, a sequence of UTF-8 or the character DEL at `p`; false where the grammar does not go on. */
  private unusual(b: Uint8Array, p: number, place: number, notes: Notes): boolean {
    const c = b[p];
    if (c === 92) return this.escape(b, p, place, notes);
    if (c >= 128) return this.sequence(b, p, place, notes);
    this.point = c;
    this.next = p + 1;
    return c === 127;
  }

  private escape(b: Uint8Array, p: number, place: number, notes: Notes): boolean {
    this.point = ESCAPED[b[p + 1]];
    this.next = p + 2;
    if (this.point !== 0) return true;
    const unit = b[p + 1] === 117 ? hexAt(b, p + 2) : -1;
    if (unit < 0) return false;
    this.point = unit;
    this.next = p + 6;
    if (unit >= 0xd800 && unit <= 0xdfff) {
      let low = 0;
      if (unit <= 0xdbff && b[p + 6] === 92 && b[p + 7] === 117) {
        low = hexAt(b, p + 8);
        if (low < 0) return false;
      }
      if (low < 0xdc00 || low > 0xdfff) {
        notes.add(place, NOTE.loneSurrogate);
        this.point = 0xfffd;
        return true;
      }
      this.point = (unit - 0xd800) * 0x400 + (low - 0xdc00) + 0x10000;
      this.next = p + 12;
    }
    if (isNoncharacter(this.point)) notes.add(place, NOTE.noncharacter);
    return true;
  }

  private sequence(b: Uint8Array, p: number, place: number, notes: Notes): boolean {
    const c = b[p];
    const length = c >= 0xc2 && c <= 0xdf ? 2 : (c & 0xf0) === 0xe0 ? 3 : c >= 0xf0 && c <= 0xf4 ? 4 : 0;
    let point = length === 0 ? -1 : c & (0xff >> (length + 1));
    for (let k = 1; k < length && point >= 0; k++) {
      // A zero may be the end of the window.
      if (b[p + k] === 0) return false;
      point = (b[p + k] & 0xc0) === 0x80 ? point * 64 + (b[p + k] & 0x3f) : -1;
    }
    this.next = p + length;
    const least = length === 2 ? 0x80 : length === 3 ? 0x800 : 0x10000;
    if (point < least || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff)) {
      notes.add(place, NOTE.notUtf8);
      this.isExact = false;
      point = 0xfffd;
      this.next = p + 1;
      while ((b[this.next] & 0xc0) === 0x80) this.next++;
    } else if (isNoncharacter(point)) {
      notes.add(place, NOTE.noncharacter);
    }
    this.point = point;
    return true;
  }
}

/** Four hexadecimal digits, or -1. */
function hexAt(b: Uint8Array, p: number): number {
  let unit = 0;
  for (let k = p; k < p + 4; k++) {
    const c = b[k];
    const digit = c >= 48 && c <= 57 ? c - 48 : (c | 32) >= 97 && (c | 32) <= 102 ? (c | 32) - 87 : -1;
    if (digit < 0) return -1;
    unit = unit * 16 + digit;
  }
  return unit;
}

/** Writes a code point as UTF-8; returns the position behind it. */
function encodePoint(out: Uint8Array, at: number, point: number): number {
  if (point < 0x80) {
    out[at] = point;
    return at + 1;
  }
  const length = point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
  let rest = point;
  for (let k = length - 1; k > 0; k--) {
    out[at + k] = 0x80 | (rest & 63);
    rest >>= 6;
  }
  out[at] = ((0xf00 >> length) & 0xff) | rest;
  return at + length;
}

/** Blanks that a line must not begin or end with, as the schema lists them. */
function isBlank(point: number): boolean {
  if (point === 32 || point === 0xa0) return true;
  if (point < 0x1680) return false;
  if (point >= 0x2000 && point <= 0x200a) return true;
  return (
    point === 0x1680 ||
    point === 0x2028 ||
    point === 0x2029 ||
    point === 0x202f ||
    point === 0x205f ||
    point === 0x3000 ||
    point === 0xfeff
  );
}

/** Code points of which every text is in Unicode normalisation form C: Latin, Cyrillic, Chinese, syllables of Hangul; there are more of them. */
export function isInert(point: number): boolean {
  if (point < 0x300) return true;
  if (point < 0x4000) return (point >= 0x400 && point <= 0x47f) || (point >= 0x2010 && point <= 0x203f);
  return point <= 0x9fff || (point >= 0xac00 && point <= 0xd7a3);
}
