import { blanks } from './scan.js';
import { nameText } from './text-of.js';

/**
 * Finding the way between a byte and a JSON Pointer inside one value. Both walks need a text whose
 * grammar is sound, which the scanner has said before.
 */

/** Where a pointer leads: to the value, or to the name of the member. */
export type Aim = 'value' | 'name';

/**
 * Position of what `tokens` (the unescaped parts of a JSON Pointer) lead to inside the value at `start`.
 * Where the way ends early, the position of the last value on it.
 */
export function positionOf(b: Uint8Array, start: number, tokens: readonly string[], aim: Aim): number {
  let p = start;
  for (let k = 0; k < tokens.length; k++) {
    const isLast = k === tokens.length - 1;
    const next =
      b[p] === 123 ? memberPosition(b, p, tokens[k], isLast ? aim : 'value') : elementPosition(b, p, tokens[k]);
    if (next < 0) return p;
    p = next;
  }
  return p;
}

/** Tokens of the innermost value inside the value at `start` that holds, or is named at, the byte `at`. */
export function tokensTo(b: Uint8Array, start: number, at: number): string[] {
  const tokens: string[] = [];
  let p = start;
  while (b[p] === 123 || b[p] === 91) {
    const isObject = b[p] === 123;
    const found = isObject ? childObject(b, p, at) : childArray(b, p, at);
    if (found === undefined) break;
    tokens.push(found.token);
    p = found.value;
  }
  return tokens;
}

/** Tokens as a JSON Pointer (RFC 6901). */
export function toPointer(tokens: readonly (string | number)[]): string {
  let pointer = '';
  for (const token of tokens) pointer += `/${escaped(String(token))}`;
  return pointer;
}

function escaped(token: string): string {
  if (!token.includes('~') && !token.includes('/')) return token;
  return token.replaceAll('~', '~0').replaceAll('/', '~1');
}

/** Unescaped tokens of a JSON Pointer. */
export function fromPointer(pointer: string): string[] {
  const tokens = pointer.split('/').slice(1);
  return pointer.includes('~') ? tokens.map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~')) : tokens;
}

interface Member {
  name: number;
  nameEnd: number;
  value: number;
}

function* members(b: Uint8Array, object: number): Generator<Member> {
  let p = blanks(b, object + 1);
  while (b[p] === 34) {
    const nameEnd = skipString(b, p);
    const value = blanks(b, blanks(b, nameEnd) + 1);
    yield { name: p, nameEnd, value };
    p = blanks(b, skipValue(b, value));
    if (b[p] !== 44) return;
    p = blanks(b, p + 1);
  }
}

function* elements(b: Uint8Array, array: number): Generator<number> {
  let p = blanks(b, array + 1);
  if (b[p] === 93) return;
  for (;;) {
    yield p;
    p = blanks(b, skipValue(b, p));
    if (b[p] !== 44) return;
    p = blanks(b, p + 1);
  }
}

function memberPosition(b: Uint8Array, object: number, token: string, aim: Aim): number {
  // The last one of equal names is the one that parsers keep.
  let found = -1;
  for (const { name, nameEnd, value } of members(b, object)) {
    if (nameText(b, name + 1, nameEnd - 1) === token) found = aim === 'name' ? name : value;
  }
  return found;
}

function elementPosition(b: Uint8Array, array: number, token: string): number {
  if (b[array] !== 91) return -1;
  let index = 0;
  for (const p of elements(b, array)) if (index++ === Number(token)) return p;
  return -1;
}

function childObject(b: Uint8Array, object: number, at: number): { token: string; value: number } | undefined {
  for (const { name, nameEnd, value } of members(b, object)) {
    if (at < name) return undefined;
    if (at < skipValue(b, value)) return { token: nameText(b, name + 1, nameEnd - 1), value };
  }
  return undefined;
}

function childArray(b: Uint8Array, array: number, at: number): { token: string; value: number } | undefined {
  let index = 0;
  for (const p of elements(b, array)) {
    if (at < p) return undefined;
    if (at < skipValue(b, p)) return { token: String(index), value: p };
    index++;
  }
  return undefined;
}

/** Position behind the string whose opening quote is at `p`. */
export function skipString(b: Uint8Array, p: number): number {
  let k = p + 1;
  while (b[k] !== 34) k += b[k] === 92 ? 2 : 1;
  return k + 1;
}

/** Position behind the value at `p`. */
export function skipValue(b: Uint8Array, p: number): number {
  let depth = 0;
  let k = p;
  for (;;) {
    const c = b[k];
    if (c === 34) k = skipString(b, k);
    else if (c === 123 || c === 91) {
      depth++;
      k++;
    } else if (c === 125 || c === 93) {
      depth--;
      k++;
    } else if (c === 44 || c === 58 || c <= 32) {
      k++;
    } else {
      // A number or a word goes on to the next blank, comma or closing bracket.
      while (b[k] > 32 && b[k] !== 44 && b[k] !== 93 && b[k] !== 125) k++;
    }
    if (depth === 0) return k;
  }
}
