import { describe, expect, it } from 'vitest';
import { Utf8Check } from '../../src/read/utf8-check.js';

const strict = new TextDecoder('utf-8', { fatal: true });

/** Bytes on both sides of every limit of RFC 3629. */
const leads = [0x00, 0x41, 0x7f, 0x80, 0xbf, 0xc0, 0xc1, 0xc2, 0xdf, 0xe0, 0xe1, 0xec, 0xed, 0xee, 0xef];
const longLeads = [0xf0, 0xf1, 0xf3, 0xf4, 0xf5, 0xf7, 0xf8, 0xff];
const follows = [0x00, 0x41, 0x7f, 0x80, 0x8f, 0x90, 0x9f, 0xa0, 0xbf, 0xc0, 0xc2, 0xe0, 0xff];

function firstBad(...chunks: number[][]): number | undefined {
  const check = new Utf8Check();
  for (const chunk of chunks) check.write(Uint8Array.from(chunk));
  check.end();
  return check.firstBad?.byte;
}

function isUtf8(bytes: readonly number[]): boolean {
  try {
    strict.decode(Uint8Array.from(bytes));
    return true;
  } catch {
    return false;
  }
}

/** Length of the longest beginning that is UTF-8, where the whole is not. */
function oracle(bytes: readonly number[]): number | undefined {
  if (isUtf8(bytes)) return undefined;
  let length = bytes.length - 1;
  while (!isUtf8(bytes.slice(0, length))) length--;
  return length;
}

function expectAsDecoder(bytes: number[]): void {
  const expected = oracle(bytes);
  const found = firstBad(bytes);
  if (found !== expected) expect([bytes, found]).toEqual([bytes, expected]);
}

describe('the check for UTF-8', () => {
  it('agrees with a strict decoder on every byte and every pair of bytes', () => {
    for (let a = 0; a < 256; a++) {
      expectAsDecoder([a]);
      for (let b = 0; b < 256; b++) expectAsDecoder([a, b]);
    }
  });

  it('agrees with a strict decoder on three and four bytes around the limits', () => {
    for (const a of [...leads, ...longLeads]) {
      for (const b of follows) {
        for (const c of follows) {
          expectAsDecoder([a, b, c]);
          expectAsDecoder([0x41, a, b, c, 0x42]);
          if (a >= 0xf0) for (const d of follows) expectAsDecoder([a, b, c, d]);
        }
      }
    }
  });

  it('finds the same byte wherever the chunks are cut', () => {
    for (const a of [...leads, ...longLeads]) {
      for (const b of follows) {
        const bytes = [0xc3, 0xa9, a, b, 0x80, 0x80, 0x41];
        for (let cut = 1; cut < bytes.length; cut++) {
          const found = firstBad(bytes.slice(0, cut), [], bytes.slice(cut));
          expect([bytes, cut, found]).toEqual([bytes, cut, oracle(bytes)]);
        }
        expect(firstBad(...bytes.map((byte) => [byte]))).toBe(oracle(bytes));
      }
    }
  });

  it('names the byte that begins no sequence, in two digits', () => {
    const check = new Utf8Check();
    check.write(Uint8Array.of(0x41, 0xe9, 0x0a, 0xff));
    check.end();
    expect(check.firstBad).toEqual({ byte: 1, found: '0xE9' });
  });

  it('takes a sequence that is cut off at the end as bad from its first byte', () => {
    expect(firstBad([0x41, 0xe2, 0x82])).toBe(1);
    expect(firstBad([0xf0], [0x9f], [0x98], [0x80])).toBeUndefined();
  });
});
