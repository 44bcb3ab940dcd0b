import { holeShape } from '../generated/hole-shape.js';
import { clearRow, type HoleRow, LONGEST_TEXT } from '../model/hole-row.js';
import { tagHashOf } from '../model/tag-hash.js';
import { carefulNumberEnd } from './careful-number.js';
import { CarefulText } from './careful-text.js';
import { CarefulValue, nameEnd, wordEnd } from './careful-value.js';
import { idEnd, labelEnd, labelHash, numberRead } from './lexemes.js';
import { NOTE, Notes } from './notes.js';
import { blanks } from './scan.js';
import { forget, setText } from './row-of-shape.js';
import { Shape, sameBytes } from './shape.js';
import { UnknownNames } from './unknown-names.js';

/** A list of more items is left to the scanner. */
const MOST_ITEMS = 8;

/**
 * Decodes holes that have something wrong with them, and goes on behind it.
 *
 * It fills the row as the parser would, and notes what the schema and I-JSON find wrong without making a
 * finding of it. It knows the whole grammar but gives up on what is rare: then the scanner, the parser and
 * the validator look at the record. A record without notes is valid.
 */
export class CarefulDecoder {
  /** What is wrong with the last record. */
  readonly notes = new Notes();
  /** Members that the schema does not know: notes refer to their numbers. */
  readonly unknown = new UnknownNames();
  private readonly shape = new Shape(holeShape);
  private readonly text = new CarefulText();
  private readonly strange = new CarefulValue(this.text, this.notes);
  /** Whether the decoder gave up because a text does not stand in the input as the row needs it. */
  private needsCopy = false;
  private b: Uint8Array = new Uint8Array(0);

  /** Decodes the value at `p` into the row, whose texts are valid until the next call; returns the position behind it, or -1. */
  decode(b: Uint8Array, p: number, row: HoleRow): number {
    if (b[p] !== 123) return -1;
    this.b = b;
    row.bytes = b;
    const end = this.hole(p, row);
    if (end >= 0 || !this.needsCopy) return end;
    // The row has one array for its texts: where one of them has escapes, all of them are copied.
    row.bytes = this.text.out;
    return this.hole(p, row);
  }

  private hole(p: number, row: HoleRow): number {
    clearRow(row);
    this.text.clear();
    this.notes.clear();
    this.unknown.open = 0;
    this.needsCopy = false;
    const end = this.object(this.shape, p, row);
    return this.notes.areTooMany ? -1 : end;
  }

  private value(shape: Shape, p: number, row: HoleRow): number {
    const c = this.b[p];
    switch (shape.kind) {
      case 'text':
        return c === 34 ? this.line(shape, p, row) : this.wrongType(shape, p);
      case 'number':
        return isNumber(c) ? this.number(shape, shape.columns[0], p, row) : this.wrongType(shape, p);
      case 'list':
        return c === 91 ? this.list(shape, p, row) : this.wrongType(shape, p);
      case 'object':
        return c === 123 ? this.object(shape, p, row) : this.wrongType(shape, p);
      case 'choice':
        return c === 34 ? this.choice(shape, p) : this.wrongType(shape, p);
      case 'boolean':
        return c === 116 || c === 102 ? wordEnd(this.b, p) : this.wrongType(shape, p);
      default:
        return c === 123 ? this.strange.pass(this.b, p, shape.place, true) : this.wrongType(shape, p);
    }
  }

  private wrongType(shape: Shape, p: number): number {
    this.notes.add(shape.place, NOTE.wrongType);
    return this.strange.pass(this.b, p, shape.place, false);
  }

  private object(shape: Shape, start: number, row: HoleRow): number {
    const { b, unknown } = this;
    const firstUnknown = unknown.open;
    let seen = 0;
    let p = blanks(b, start + 1);
    let isEmpty = true;
    while (b[p] !== 125 || !isEmpty) {
      isEmpty = false;
      const end = b[p] === 34 ? nameEnd(b, p + 1) : -1;
      if (end < 0) return -1;
      const colon = blanks(b, end + 1);
      if (b[colon] !== 58) return -1;
      const k = shape.find(b, p + 1, end);
      const value = blanks(b, colon + 1);
      if (k < 0) {
        if (unknown.areTooMany) return -1;
        this.noteUnknown(shape, p + 1, end, firstUnknown);
        p = this.strange.pass(b, value, shape.place, false);
      } else {
        const member = shape.members[k];
        if ((seen & (1 << k)) !== 0) this.noteTwice(member, row);
        seen |= 1 << k;
        p = this.value(member, value, row);
      }
      if (p < 0) return -1;
      p = blanks(b, p);
      if (b[p] === 125) break;
      if (b[p] !== 44) return -1;
      p = blanks(b, p + 1);
    }
    unknown.open = firstUnknown;
    this.noteLack(shape, shape.required & ~seen, isEmpty);
    return p + 1;
  }

  /** @param missing a bit for each member that should be there and is not */
  private noteLack(shape: Shape, missing: number, isEmpty: boolean): void {
    const { notes } = this;
    if (missing !== 0) {
      notes.add(shape.place, NOTE.membersMissing);
      notes.put(missing);
    }
    if (isEmpty && shape.least > 0) notes.add(shape.place, NOTE.tooFew);
  }

  private noteUnknown(shape: Shape, from: number, to: number, first: number): void {
    const { notes, unknown } = this;
    const name = unknown.add(this.b, from, to);
    notes.add(shape.place, unknown.isTwice(first) ? NOTE.memberTwice : NOTE.unknownMember);
    notes.put(name);
  }

  /** Of two members of one name the parser keeps the last. */
  private noteTwice(member: Shape, row: HoleRow): void {
    this.notes.add(member.place, NOTE.memberTwice);
    forget(member, row);
  }

  private line(shape: Shape, p: number, row: HoleRow): number {
    const { b } = this;
    const isId = shape.path === 'id';
    if (!isId && shape.reference < 0) return this.label(shape, p, row);
    const end = row.bytes === b ? idEnd(b, p + 1, shape.maxLength) : -1;
    if (end < 0) return this.unusualId(shape, p, row);
    setText(shape, row, p + 1, end);
    return end + 1;
  }

  /** An id or a reference that may break the schema, or has to be copied. */
  private unusualId(shape: Shape, p: number, row: HoleRow): number {
    const { b, text } = this;
    const end = this.judgedText(shape, p);
    if (end < 0 || !text.isExact || (shape.path === 'id' && !text.isComposed)) return -1;
    if (text.points + text.pairs > LONGEST_TEXT) return end + 1;
    if (row.bytes !== b) {
      setText(shape, row, text.start, text.end);
      text.keep();
    } else if (text.end - text.start === end - p - 1) {
      setText(shape, row, p + 1, end);
    } else {
      this.needsCopy = true;
      return -1;
    }
    return end + 1;
  }

  private label(shape: Shape, p: number, row: HoleRow): number {
    const { b, text } = this;
    const plainEnd = labelEnd(b, p + 1, shape.maxLength);
    const end = plainEnd < 0 ? this.judgedText(shape, p) : plainEnd;
    if (end < 0) return -1;
    if (shape.path === 'tag') row.tagHash = plainEnd < 0 ? tagHashOf(text.out, text.start, text.end) : labelHash[0];
    return end + 1;
  }

  private judgedText(shape: Shape, p: number): number {
    const { text, notes } = this;
    const end = text.read(this.b, p + 1, shape.place, notes);
    if (end < 0) return -1;
    if (!(shape.isOneLine ? text.isOneLine : text.isText)) notes.add(shape.place, NOTE.badText);
    if (text.points > shape.maxLength) notes.add(shape.place, NOTE.tooLong);
    return end;
  }

  private number(shape: Shape, column: number, p: number, row: HoleRow): number {
    const { notes } = this;
    const { place } = shape;
    const end = carefulNumberEnd(this.b, p, place, notes);
    if (end < 0) return -1;
    const value = numberRead[0];
    if (shape.isWhole && value % 1 !== 0) notes.add(place, NOTE.wrongType);
    if (value < shape.minimum) notes.add(place, NOTE.belowMinimum);
    if (value > shape.maximum) notes.add(place, NOTE.aboveMaximum);
    if (value <= shape.exclusiveMinimum) notes.add(place, NOTE.notAboveLimit);
    if (value >= shape.exclusiveMaximum) notes.add(place, NOTE.notBelowLimit);
    if (column >= 0) row.numbers[column] = value;
    return end;
  }

  private list(shape: Shape, start: number, row: HoleRow): number {
    const { b, notes } = this;
    const item = shape.item as Shape;
    let count = 0;
    let first = 0;
    let last = 0;
    let isZero = true;
    let p = blanks(b, start + 1);
    while (b[p] !== 93 || count > 0) {
      if (count === MOST_ITEMS) return -1;
      if (isNumber(b[p])) {
        p = this.number(item, count < shape.columns.length ? shape.columns[count] : -1, p, row);
        last = numberRead[0];
      } else {
        p = this.wrongType(item, p);
        last = Number.NaN;
      }
      if (p < 0) return -1;
      if (count++ === 0) first = last;
      if (last !== 0) isZero = false;
      p = blanks(b, p);
      if (b[p] === 93) break;
      if (b[p] !== 44) return -1;
      p = blanks(b, p + 1);
    }
    if (count < shape.least) notes.add(shape.place, NOTE.tooFew);
    if (count > shape.most) notes.add(shape.place, NOTE.tooMany);
    if (shape.isDirection && isZero && count === 3) notes.add(shape.place, NOTE.noDirection);
    if (shape.isLimits && first > last && count === 2) notes.add(shape.place, NOTE.limitsTurned);
    return p + 1;
  }

  private choice(shape: Shape, p: number): number {
    const { text, notes } = this;
    const end = text.read(this.b, p + 1, shape.place, notes);
    if (end < 0) return -1;
    const isChoice = shape.choices.some((choice) => sameBytes(choice, text.out, text.start, text.end));
    if (!isChoice) notes.add(shape.place, NOTE.notAChoice);
    return end + 1;
  }
}

function isNumber(c: number): boolean {
  return c === 45 || (c >= 48 && c <= 57);
}
