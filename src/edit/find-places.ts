import { fromPointer, skipString, skipValue, toPointer } from '../read/locate.js';
import { blanks } from '../read/scan.js';
import { nameText } from '../read/text-of.js';

/** An object or an array, as far as its bytes are of use. */
export interface Holder {
  /** Position of its opening bracket, and of the closing one. */
  open: number;
  close: number;
  isObject: boolean;
}

/** Where a value stands in a text, byte positions from 0. */
export interface Found {
  start: number;
  end: number;
  /** What holds it; undefined for the document itself. */
  holder: Holder | undefined;
  /** The number of the member or element in its holder. */
  index: number;
  /** Where the member begins, with its name, or the element. */
  from: number;
  /** End of the member or element before, and beginning of the one after; absent for the first and the last. */
  before?: number | undefined;
  after?: number | undefined;
  /** Where the name of a member ends; it begins at `from`. */
  nameEnd: number;
}

/** Names and indexes on the way to the wanted values. */
interface Wanted {
  isWanted: boolean;
  children: Map<string, Wanted>;
}

/** The places of values, and the pointers that lead to two values because a name comes twice. */
export interface Places {
  places: ReadonlyMap<string, Found>;
  ambiguous: ReadonlySet<string>;
}

/**
 * Finds values by JSON Pointer (RFC 6901) in one pass. What leads nowhere is left out.
 *
 * @param b a text that is sound JSON to its end, with or without a byte order mark
 */
export function findPlaces(b: Uint8Array, pointers: Iterable<string>): Places {
  const root: Wanted = { isWanted: false, children: new Map() };
  for (const pointer of pointers) {
    let at = root;
    for (const token of fromPointer(pointer)) {
      const next = at.children.get(token) ?? { isWanted: false, children: new Map() };
      at.children.set(token, next);
      at = next;
    }
    at.isWanted = true;
  }
  const search = new Search(b);
  const start = blanks(b, b[0] === 0xef ? 3 : 0);
  search.look(root, { start, end: skipValue(b, start), holder: undefined, index: 0, from: start, nameEnd: start }, []);
  return search;
}

class Search implements Places {
  readonly places = new Map<string, Found>();
  readonly ambiguous = new Set<string>();

  constructor(private readonly b: Uint8Array) {}

  look({ isWanted, children }: Wanted, found: Found, tokens: readonly string[]): void {
    if (isWanted) this.places.set(toPointer(tokens), found);
    const c = this.b[found.start];
    if (children.size === 0 || (c !== 123 && c !== 91)) return;
    const seen = new Set<string>();
    for (const item of itemsOf(this.b, found.start, found.end)) {
      const token = c === 123 ? nameText(this.b, item.from + 1, item.nameEnd - 1) : String(item.index);
      const child = children.get(token);
      if (child === undefined) continue;
      if (seen.has(token)) this.doubt(child, [...tokens, token]);
      else this.look(child, item, [...tokens, token]);
      seen.add(token);
    }
  }

  /** All that was wanted at a place that there is twice. */
  private doubt({ isWanted, children }: Wanted, tokens: readonly string[]): void {
    if (isWanted) this.ambiguous.add(toPointer(tokens));
    for (const [token, child] of children) this.doubt(child, [...tokens, token]);
  }
}

/** The members of the object, or the elements of the array, from `open` up to `end`, in order. */
export function* itemsOf(b: Uint8Array, open: number, end: number): Generator<Found & { holder: Holder }> {
  const holder = { open, close: end - 1, isObject: b[open] === 123 };
  let before: number | undefined;
  let p = blanks(b, open + 1);
  for (let index = 0; p < holder.close; index++) {
    const nameEnd = holder.isObject ? skipString(b, p) : p;
    const start = holder.isObject ? blanks(b, blanks(b, nameEnd) + 1) : p;
    const stop = skipValue(b, start);
    const comma = blanks(b, stop);
    const after = b[comma] === 44 ? blanks(b, comma + 1) : undefined;
    yield { start, end: stop, holder, index, from: p, before, after, nameEnd };
    before = stop;
    p = after ?? holder.close;
  }
}
