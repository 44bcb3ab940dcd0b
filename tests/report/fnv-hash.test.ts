import { describe, expect, it } from 'vitest';
import { fnvHash } from '../../src/report/fnv-hash.js';

describe('fnvHash', () => {
  // Test vectors of draft-eastlake-fnv, FNV-1a with 64 bits.
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('of %j is the published value', (text, hash) => {
    expect(fnvHash(text)).toBe(hash);
  });

  it('is what the definition in whole numbers gives', () => {
    const text = 'größe 中間 😀 '.repeat(20);
    let hash = 0xcbf29ce484222325n;
    for (const byte of Buffer.from(text)) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn;
    expect(fnvHash(text)).toBe(hash.toString(16).padStart(16, '0'));
  });
});
