import { blanks, describeByte, type Fault, type Outcome, Scanner } from './scan.js';
import { nameText } from './text-of.js';
import { Window } from './window.js';

/** A value of the document, whole in the window. Positions are valid during the call only. */
export interface Piece {
  bytes: Uint8Array;
  /** Position of the first byte of the value. */
  start: number;
  /** Position behind its last byte. */
  end: number;
  /** Offset in the input of position 0. */
  base: number;
  /** Faults in its text; empty for sound ones. */
  faults: readonly Fault[];
}

/** Takes the parts of a document in the order of the text. */
export interface DocumentSink {
  /** Whether the elements of the array under this name are handed over one by one. */
  isCollection(name: string): boolean;
  /** Whether elements of the collection may be taken without the scanner. */
  takesFast(name: string): boolean;
  /**
   * Tries to take the element at `start` without the scanner. Returns the position behind it, or -1 to
   * have it scanned; a text that is cut off or in any way unusual must give -1.
   */
  takeFast(name: string, bytes: Uint8Array, start: number, base: number): number;
  /** An element of a collection. */
  element(name: string, index: number, piece: Piece): void;
  /** A member of the root that is no collection, or a collection's value that is no array; its name stands at `nameByte`. */
  member(name: string, piece: Piece, nameByte: number): void;
  /** The end of a collection. */
  collectionEnd(name: string, count: number): void;
  /** A value that is no object, where the document should be one. */
  root(piece: Piece): void;
  /** A fault between the values; `pointer` is the place nearest to it. */
  fault(fault: { rule: string; byte: number; data: Record<string, unknown> }, pointer: string): void;
}

type State =
  | 'before'
  | 'first-name'
  | 'name'
  | 'first-element'
  | 'element'
  | 'after-element'
  | 'after-member'
  | 'after'
  | 'stopped';

/** Most elements are much shorter than this. */
const TAIL = 1 << 12;

/**
 * Reads one JSON text in any number of chunks and hands its parts to a sink.
 *
 * Only one member of the root, or one element of a collection, is held at a time. Memory is bounded by
 * the largest of them.
 */
export class DocumentReader {
  private readonly window = new Window();
  private readonly scanner = new Scanner();
  private readonly seen = new Set<string>();
  private state: State = 'before';
  private collection = '';
  private index = 0;
  private fastBytes = 0;
  private ended = false;

  constructor(private readonly sink: DocumentSink) {}

  /** Offset in the input behind the last byte taken. */
  get byteLength(): number {
    return this.window.base + this.window.limit;
  }

  /** Bytes looked at so far; a byte that was looked at twice counts twice. */
  get scanned(): number {
    return this.scanner.scanned + this.fastBytes;
  }

  /** Offset in the input of the first byte of the document; 0 before it has come. */
  rootByte = 0;

  /** Whether the text was sound JSON to its end; tells only after {@link end}. */
  get complete(): boolean {
    return this.ended && this.state === 'after';
  }

  write(chunk: Uint8Array): void {
    const { window } = this;
    let from = 0;
    while (from < chunk.length) {
      if (window.full) window.makeRoom();
      from += window.take(chunk, from);
      if (window.full) this.work(false);
    }
  }

  end(): void {
    this.work(true);
    this.ended = true;
    if (this.state !== 'after' && this.state !== 'stopped') this.stop(this.window.limit, 'more of the document');
  }

  private work(final: boolean): void {
    while (this.step(final));
    if (this.state === 'stopped') this.window.start = this.window.limit;
  }

  /** Takes one part of the text; false when the window holds no whole one. */
  private step(final: boolean): boolean {
    const { window } = this;
    if (this.state === 'stopped') return false;
    const p = blanks(window.bytes, window.start);
    window.start = p;
    if (p >= window.limit) return false;
    const c = window.bytes[p];
    switch (this.state) {
      case 'before':
        return this.begin(p, c, final);
      case 'first-name':
        return c === 125 ? this.advance(p + 1, 'after') : this.member(p, final);
      case 'name':
        return this.member(p, final);
      case 'first-element':
        return c === 93 ? this.closeCollection(p) : this.element(p, final);
      case 'element':
        return this.element(p, final);
      case 'after-element':
        if (c === 44) return this.advance(p + 1, 'element');
        return c === 93 ? this.closeCollection(p) : this.stop(p, 'a comma or ]');
      case 'after-member':
        if (c === 44) return this.advance(p + 1, 'name');
        return c === 125 ? this.advance(p + 1, 'after') : this.stop(p, 'a comma or }');
      default:
        return this.stop(p, 'nothing after the document');
    }
  }

  private advance(start: number, state: State): true {
    this.window.start = start;
    this.state = state;
    return true;
  }

  private begin(p: number, c: number, final: boolean): boolean {
    const { bytes, base, limit } = this.window;
    if (base + p === 0) {
      if (limit < 4 && !final) return false;
      if (c === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) {
        this.sink.fault({ rule: 'byte-order-mark', byte: 0, data: {} }, '');
        this.window.start = 3;
        return true;
      }
      const wide = wideEncoding(bytes, limit);
      if (wide !== undefined) {
        this.sink.fault({ rule: 'not-utf8', byte: 0, data: { found: wide } }, '');
        this.state = 'stopped';
        return false;
      }
    }
    this.rootByte = base + p;
    if (c === 123) return this.advance(p + 1, 'first-name');
    return this.value(p, 0, final, (piece) => this.sink.root(piece), 'after');
  }

  private member(p: number, final: boolean): boolean {
    const { bytes, limit, base } = this.window;
    if (bytes[p] !== 34) return this.stop(p, 'a member name in double quotes');
    const outcome = this.scanner.scan(bytes, p, limit, final);
    if (outcome !== 'whole') return this.notWhole(outcome);
    const nameFaults = [...this.scanner.faults];
    const colon = blanks(bytes, this.scanner.end);
    const start = blanks(bytes, colon + 1);
    if (start >= limit && !final) return false;
    if (bytes[colon] !== 58 || start >= limit) {
      this.report(nameFaults, undefined);
      return bytes[colon] !== 58 ? this.stop(colon, 'a colon') : this.stop(start, 'a value');
    }
    const name = nameText(bytes, p + 1, this.scanner.end - 1);
    if (bytes[start] === 91 && this.sink.isCollection(name) && !this.seen.has(name)) {
      this.report(nameFaults, name);
      this.seen.add(name);
      this.collection = name;
      this.index = 0;
      return this.advance(start + 1, 'first-element');
    }
    const take = (piece: Piece) => {
      this.report(nameFaults, name);
      if (this.seen.has(name))
        this.sink.fault({ rule: 'duplicate-name', byte: base + p, data: { name } }, pointerTo(name));
      else this.sink.member(name, piece, base + p);
      this.seen.add(name);
    };
    return this.value(start, 1, final, take, 'after-member', nameFaults);
  }

  private element(p: number, final: boolean): boolean {
    const { window, sink, collection } = this;
    const { bytes, base, limit } = window;
    // Elements near the end of the window may be cut: they wait for the next one, because a record that
    // breaks off runs into every rare branch of the decoder and makes the engine compile it anew.
    const last = final ? limit : limit - TAIL;
    if (p > last) return false;
    // The tight loop of the reader: one element after the other, as long as they are plain and whole.
    let start = p;
    const isFast = sink.takesFast(collection);
    while (isFast) {
      const end = sink.takeFast(collection, bytes, start, base);
      if (end < 0) break;
      this.fastBytes += end - start;
      this.index++;
      const comma = blanks(bytes, end);
      if (bytes[comma] !== 44) return this.advance(comma, 'after-element');
      start = blanks(bytes, comma + 1);
      if (start > last) return this.advance(start, 'element');
    }
    this.state = 'element';
    window.start = start;
    const take = (piece: Piece) => {
      // What the decoder gave up it has looked at as well, at most to its end.
      if (isFast) this.fastBytes += piece.end - piece.start;
      sink.element(collection, this.index++, piece);
    };
    return this.value(start, 2, final, take, 'after-element');
  }

  private closeCollection(p: number): true {
    this.sink.collectionEnd(this.collection, this.index);
    return this.advance(p + 1, 'after-member');
  }

  /** Takes the value at `start`, inside `depth` arrays and objects; where it is broken, the faults of its name come before its own. */
  private value(
    start: number,
    depth: number,
    final: boolean,
    take: (piece: Piece) => void,
    next: State,
    nameFaults: readonly Fault[] = [],
  ): boolean {
    const { bytes, base, limit } = this.window;
    const outcome = this.scanner.scan(bytes, start, limit, final, depth);
    if (outcome === 'broken') this.report(nameFaults, undefined);
    if (outcome !== 'whole') return this.notWhole(outcome);
    const { end } = this.scanner;
    take({ bytes, start, end, base, faults: this.scanner.faults });
    return this.advance(end, next);
  }

  private notWhole(outcome: Outcome): false {
    if (outcome === 'broken') {
      this.report(this.scanner.faults, undefined);
      this.state = 'stopped';
    }
    return false;
  }

  private report(faults: readonly Fault[], name: string | undefined): void {
    for (const { rule, at, data } of faults) {
      this.sink.fault(
        { rule, byte: this.window.base + at, data },
        name === undefined ? this.pointer() : pointerTo(name),
      );
    }
  }

  private pointer(): string {
    return this.state.endsWith('element') ? `${pointerTo(this.collection)}/${this.index}` : '';
  }

  private stop(p: number, expected: string): false {
    const { bytes, base, limit } = this.window;
    const data = { expected, found: describeByte(bytes, p, limit) };
    this.sink.fault({ rule: 'json-syntax', byte: base + p, data }, this.pointer());
    this.state = 'stopped';
    return false;
  }
}

/** JSON Pointer (RFC 6901) to a member of the root. */
function pointerTo(name: string): string {
  return `/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`;
}

/** The encoding whose marks or zero bytes begin the text, if it is none that AHX reads. */
function wideEncoding(b: Uint8Array, limit: number): string | undefined {
  if (limit < 2) return undefined;
  if (b[0] === 0xff && b[1] === 0xfe) return 'UTF-16, little-endian';
  if (b[0] === 0xfe && b[1] === 0xff) return 'UTF-16, big-endian';
  if (limit >= 4 && b[0] !== 0 && b[1] === 0 && b[2] !== 0 && b[3] === 0) return 'UTF-16, little-endian';
  if (limit >= 4 && b[0] === 0 && b[1] !== 0 && b[2] === 0 && b[3] !== 0) return 'UTF-16, big-endian';
  return undefined;
}
