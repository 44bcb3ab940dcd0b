import { blanks, Scanner } from './scan.js';
import { nameText } from './text-of.js';

/** How many bytes of an input are looked at to tell its kind. */
export const SNIFFED_BYTES = 1 << 18;

/** What the first bytes of a document say it is. */
export interface Sniffed {
  kind?: string;
  /** Where the value of `kind` stands. */
  kindByte?: number;
  ahx?: string;
}

/**
 * The `kind` and the `ahx` that a document names in its first bytes, as far as it does.
 *
 * @param b the bytes, followed by at least 32 zeros
 * @param limit number of bytes
 */
export function sniffKind(b: Uint8Array, limit: number): Sniffed {
  const scanner = new Scanner();
  const found: Sniffed = {};
  const whole = (p: number) => p < limit && scanner.scan(b, p, limit, false) === 'whole';
  let p = blanks(b, b[0] === 0xef ? 3 : 0);
  if (b[p] !== 123) return found;
  p = blanks(b, p + 1);
  while (b[p] === 34 && whole(p)) {
    const name = nameText(b, p + 1, scanner.end - 1);
    const value = blanks(b, blanks(b, scanner.end) + 1);
    if (!whole(value)) return found;
    // Of equal names the first counts, as for the reader.
    if ((name === 'kind' || name === 'ahx') && b[value] === 34 && found[name] === undefined) {
      found[name] = nameText(b, value + 1, scanner.end - 1);
      if (name === 'kind') found.kindByte = value;
    }
    if (found.kind !== undefined && found.ahx !== undefined) return found;
    p = blanks(b, scanner.end);
    if (b[p] !== 44) return found;
    p = blanks(b, p + 1);
  }
  return found;
}
