import { describe, expect, it } from 'vitest';
import { sha256 } from '../../src/node/sha256.js';

function digest(...parts: string[]): string {
  const hasher = sha256();
  for (const part of parts) hasher.update(new TextEncoder().encode(part));
  return hasher.hex();
}

describe('sha256', () => {
  it('is that of FIPS 180-4: the one-block and two-block messages of its examples, and the empty one', () => {
    expect(digest('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(digest('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    );
    expect(digest()).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855');
  });

  it('is the same however the bytes are cut', () => {
    expect(digest('a', '', 'bc')).toBe(digest('abc'));
  });
});
