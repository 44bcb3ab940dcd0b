import { losesDigits } from './loses-digits.js';
import { OpenValue } from './open-value.js';
import { shorten, textOf } from './text-of.js';

/**
 * The grammar of JSON (RFC 8259) over bytes, with what I-JSON (RFC 7493) adds.
 *
 * The scanner builds nothing. It says where a value ends, whether it is whole, and which faults it has;
 * whoever wants the value takes the bytes and parses them with the platform's parser.
 */

/** A fault in the text, at a byte of the window. */
export interface Fault {
  rule: string;
  /** Position in the scanned array. */
  at: number;
  data: Record<string, unknown>;
  /** How many faults of the rule it stands for: beyond the first thousand of a value the last one counts the others. */
  count?: number;
}

export type Outcome = 'whole' | 'incomplete' | 'broken';

/** Deepest nesting that is read; AHX itself needs less than ten. */
export const MAX_DEPTH = 128;

/** Most faults of one rule in one value that are told one by one. */
const MOST_FAULTS = 1000;

const PLAIN = 0;
const QUOTE = 1;
const BACKSLASH = 2;
const CONTROL = 3;
const HIGH = 4;
const STRING_CLASS = Uint8Array.from({ length: 256 }, (_, c) =>
  c === 34 ? QUOTE : c === 92 ? BACKSLASH : c < 32 ? CONTROL : c >= 128 ? HIGH : PLAIN,
);

/**
 * Scans one JSON value.
 *
 * The bytes after `limit` must be zeros (at least 16): a zero at or after `limit` means that the text
 * has not arrived yet, unless `final` is set.
 */
export class Scanner {
  /** Position after the value when it is whole; of the offending byte when it is broken. */
  end = 0;
  /** Faults of the last value, in order. */
  readonly faults: Fault[] = [];
  /** Bytes looked at since the scanner was made. */
  scanned = 0;
  private readonly lastOfRule = new Map<string, { fault: Fault; kept: number }>();
  private b: Uint8Array = new Uint8Array(16);
  private limit = 0;
  private final = false;
  private readonly frames: OpenValue[] = [];
  private mostFrames = MAX_DEPTH;

  /** Scans the value that starts at `start` (no blanks before it), inside `depth` arrays and objects. */
  scan(b: Uint8Array, start: number, limit: number, final: boolean, depth = 0): Outcome {
    this.mostFrames = MAX_DEPTH - depth;
    this.b = b;
    this.limit = limit;
    this.final = final;
    this.faults.length = 0;
    this.lastOfRule.clear();
    this.frames.length = 0;
    const outcome = this.value(start);
    this.scanned += this.end - start;
    return outcome;
  }

  private value(start: number): Outcome {
    const { b, frames } = this;
    let p = start;
    for (;;) {
      // One value begins at p; afterwards p stands behind it.
      const c = b[p];
      if (c === 34) {
        p = this.string(p + 1);
        if (p < 0) return this.stopped;
      } else if (c === 123 || c === 91) {
        if (frames.length === this.mostFrames) return this.tooDeep(p);
        const frame = new OpenValue(c === 123);
        frames.push(frame);
        p = blanks(b, p + 1);
        if (b[p] === (c === 123 ? 125 : 93)) {
          p++;
          frames.pop();
        } else if (frame.isObject) {
          p = this.name(p, frame);
          if (p < 0) return this.stopped;
          continue;
        } else {
          continue;
        }
      } else if (c === 45 || (c >= 48 && c <= 57)) {
        p = this.number(p);
        if (p < 0) return this.stopped;
      } else {
        p = this.literal(p);
        if (p < 0) return this.stopped;
      }
      // Close what ends here; go on where a comma stands.
      for (;;) {
        if (frames.length === 0) {
          this.end = p;
          return 'whole';
        }
        const frame = frames[frames.length - 1];
        p = blanks(b, p);
        const d = b[p];
        if (d === 44) {
          p = blanks(b, p + 1);
          if (frame.isObject) {
            p = this.name(p, frame);
            if (p < 0) return this.stopped;
          }
          break;
        }
        if (d !== (frame.isObject ? 125 : 93)) {
          this.fail(p, frame.isObject ? 'a comma or }' : 'a comma or ]');
          return this.stopped;
        }
        frames.pop();
        p++;
      }
    }
  }

  private stopped: Outcome = 'broken';

  /** Notes that the text cannot go on at `p`; returns -1 for the caller to hand on. */
  private fail(p: number, expected: string): -1 {
    this.end = p;
    if (p >= this.limit && !this.final) {
      this.stopped = 'incomplete';
      return -1;
    }
    this.stopped = 'broken';
    this.faults.push({ rule: 'json-syntax', at: p, data: { expected, found: describeByte(this.b, p, this.limit) } });
    return -1;
  }

  private tooDeep(p: number): Outcome {
    this.end = p;
    this.faults.push({ rule: 'nested-too-deep', at: p, data: { limit: MAX_DEPTH } });
    return 'broken';
  }

  private fault(rule: string, at: number, data: Record<string, unknown>): void {
    const last = this.lastOfRule.get(rule);
    if (last !== undefined && last.kept >= MOST_FAULTS) {
      last.fault.count = (last.fault.count ?? 1) + 1;
      return;
    }
    const fault: Fault = { rule, at, data };
    this.faults.push(fault);
    this.lastOfRule.set(rule, { fault, kept: (last?.kept ?? 0) + 1 });
  }

  /** A member name, its colon and the blanks after; `p` at the opening quote. */
  private name(p: number, frame: OpenValue): number {
    const { b } = this;
    if (b[p] !== 34) return this.fail(p, 'a member name in double quotes');
    const end = this.string(p + 1);
    if (end < 0) return -1;
    const twin = frame.add(b, p + 1, end - 1);
    if (twin !== undefined) this.fault('duplicate-name', p, { name: twin });
    const colon = blanks(b, end);
    if (b[colon] !== 58) return this.fail(colon, 'a colon');
    return blanks(b, colon + 1);
  }

  /** The rest of a string after its opening quote; returns the position after the closing one. */
  private string(p: number): number {
    const { b } = this;
    for (;;) {
      let kind = STRING_CLASS[b[p]];
      while (kind === PLAIN) kind = STRING_CLASS[b[++p]];
      if (kind === QUOTE) return p + 1;
      if (kind === BACKSLASH) p = this.escape(p);
      else if (kind === HIGH) p = this.sequence(p);
      else return this.fail(p, 'a closing quote; control characters in a text are written as escapes');
      if (p < 0) return -1;
    }
  }

  /** An escape; `p` at the backslash. */
  private escape(p: number): number {
    const c = this.b[p + 1];
    if (c !== 117) {
      if (c === 34 || c === 92 || c === 47 || c === 98 || c === 102 || c === 110 || c === 114 || c === 116)
        return p + 2;
      return this.fail(p + 1, 'one of " \\ / b f n r t u after the backslash');
    }
    const unit = this.hex(p + 2);
    if (unit < 0) return -1;
    if (unit < 0xd800 || unit > 0xdfff) {
      if (isNoncharacter(unit)) this.fault('noncharacter', p, { codePoint: codePointName(unit) });
      return p + 6;
    }
    if (unit <= 0xdbff && this.b[p + 6] === 92 && this.b[p + 7] === 117) {
      const low = this.hex(p + 8);
      if (low < 0) return -1;
      if (low >= 0xdc00 && low <= 0xdfff) {
        const point = (unit - 0xd800) * 0x400 + (low - 0xdc00) + 0x10000;
        if (isNoncharacter(point)) this.fault('noncharacter', p, { codePoint: codePointName(point) });
        return p + 12;
      }
    } else if (unit <= 0xdbff && p + 8 > this.limit && !this.final) {
      return this.fail(this.limit, 'the rest of the text');
    }
    this.fault('lone-surrogate', p, { codePoint: codePointName(unit) });
    return p + 6;
  }

  /** Four hexadecimal digits at `p`, or -1. */
  private hex(p: number): number {
    let unit = 0;
    for (let k = p; k < p + 4; k++) {
      const c = this.b[k];
      const digit = c >= 48 && c <= 57 ? c - 48 : (c | 32) >= 97 && (c | 32) <= 102 ? (c | 32) - 87 : -1;
      if (digit < 0) return this.fail(k, 'four hexadecimal digits after \\u');
      unit = unit * 16 + digit;
    }
    return unit;
  }

  /**
   * A UTF-8 sequence (RFC 3629) in a string; `p` at its first byte. A bad one is a fault together with the
   * continuation bytes behind it; the scan goes on.
   */
  private sequence(p: number): number {
    const { b } = this;
    const c = b[p];
    const length = c >= 0xc2 && c <= 0xdf ? 2 : (c & 0xf0) === 0xe0 ? 3 : c >= 0xf0 && c <= 0xf4 ? 4 : 0;
    if (length > 0 && p + length > this.limit && !this.final) return this.fail(this.limit, 'the rest of the text');
    let point = length === 0 ? -1 : c & (0xff >> (length + 1));
    for (let k = 1; k < length && point >= 0; k++) {
      point = (b[p + k] & 0xc0) === 0x80 ? point * 64 + (b[p + k] & 0x3f) : -1;
    }
    const least = length === 2 ? 0x80 : length === 3 ? 0x800 : 0x10000;
    if (point < least || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff)) {
      this.fault('not-utf8', p, { found: hexByte(c) });
      let next = p + 1;
      while ((b[next] & 0xc0) === 0x80) next++;
      return next;
    }
    if (isNoncharacter(point)) this.fault('noncharacter', p, { codePoint: codePointName(point) });
    return p + length;
  }

  /** A number; `p` at its first character. */
  private number(p: number): number {
    const { b } = this;
    const start = p;
    if (b[p] === 45) p++;
    if (!isDigit(b[p])) return this.fail(p, 'a digit');
    const firstDigit = p;
    if (b[p] === 48) {
      p++;
      if (isDigit(b[p])) return this.fail(p, 'no digit after a leading zero');
    } else while (isDigit(b[p])) p++;
    let digits = p - firstDigit;
    if (b[p] === 46) {
      const point = p++;
      while (isDigit(b[p])) p++;
      if (p === point + 1) return this.fail(p, 'a digit after the decimal point');
      digits += p - point - 1;
    }
    let hasExponent = false;
    if (b[p] === 101 || b[p] === 69) {
      hasExponent = true;
      p++;
      if (b[p] === 43 || b[p] === 45) p++;
      const exponent = p;
      while (isDigit(b[p])) p++;
      if (p === exponent) return this.fail(p, 'a digit in the exponent');
    }
    if (p >= this.limit && !this.final) return this.fail(p, 'the rest of the number');
    if (digits > 15 || hasExponent) this.judgeNumber(start, p);
    return p;
  }

  private judgeNumber(start: number, end: number): void {
    const written = textOf(this.b, start, end);
    const value = Number(written);
    if (!Number.isFinite(value)) this.fault('number-out-of-range', start, { written: shorten(written) });
    else if (losesDigits(written, value))
      this.fault('number-loses-digits', start, { written: shorten(written), read: String(value) });
  }

  private literal(p: number): number {
    const { b } = this;
    const word = b[p] === 116 ? 'true' : b[p] === 102 ? 'false' : b[p] === 110 ? 'null' : '';
    if (word === '') return this.fail(p, 'a value');
    for (let k = 1; k < word.length; k++) {
      if (b[p + k] !== word.charCodeAt(k)) return this.fail(p + k, `the word ${word}`);
    }
    return p + word.length;
  }
}

/** First position at or after `p` that is no JSON blank. */
export function blanks(b: Uint8Array, p: number): number {
  let c = b[p];
  while (c <= 32 && (c === 32 || c === 10 || c === 13 || c === 9)) c = b[++p];
  return p;
}

/** Noncharacters of Unicode: U+FDD0 to U+FDEF and the last two code points of each plane. */
export function isNoncharacter(point: number): boolean {
  return (point & 0xfffe) === 0xfffe || (point >= 0xfdd0 && point <= 0xfdef);
}

function isDigit(c: number): boolean {
  return c >= 48 && c <= 57;
}

function codePointName(point: number): string {
  return `U+${point.toString(16).toUpperCase().padStart(4, '0')}`;
}

function hexByte(c: number): string {
  return `0x${c.toString(16).toUpperCase().padStart(2, '0')}`;
}

/** What stands at `p`, for a sentence. */
export function describeByte(b: Uint8Array, p: number, limit: number): string {
  if (p >= limit) return 'the end of the text';
  const c = b[p];
  if (c > 32 && c < 127) return String.fromCharCode(c);
  if (c === 32) return 'a blank';
  if (c === 10 || c === 13) return 'the end of the line';
  if (c === 9) return 'a tab';
  return `byte ${hexByte(c)}`;
}
