import { blanks, nameText, Scanner } from './scan.js';

/** How many bytes of an input are looked at to tell its kind. */
export const SNIFFED_BYTES = 1 << 18;

/**
 * The `kind` that a document names in its first bytes; undefined where it names none there.
 *
 * @param b the bytes, followed by at least 32 zeros
 * @param limit number of bytes
 */
export function sniffKind(b: Uint8Array, limit: number): string | undefined {
  const scanner = new Scanner();
  const whole = (p: number) => p < limit && scanner.scan(b, p, limit, false) === 'whole';
  let p = blanks(b, b[0] === 0xef ? 3 : 0);
  if (b[p] !== 123) return undefined;
  p = blanks(b, p + 1);
  while (b[p] === 34 && whole(p)) {
    const name = nameText(b, p + 1, scanner.end - 1);
    const value = blanks(b, blanks(b, scanner.end) + 1);
    if (!whole(value)) return undefined;
    if (name === 'kind') return b[value] === 34 ? nameText(b, value + 1, scanner.end - 1) : undefined;
    p = blanks(b, scanner.end);
    if (b[p] !== 44) return undefined;
    p = blanks(b, p + 1);
  }
  return undefined;
}
