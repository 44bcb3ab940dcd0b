import { describe, expect, it } from 'vitest';
import { tagHash } from '../../src/model/tag-hash.js';

describe('the hash of a tag', () => {
  it('tells a hundred thousand numbered tags apart but for a few', () => {
    const hashes = new Set<number>();
    for (let k = 0; k < 100_000; k++) hashes.add(tagHash(`L1-FP-${k} 3/8"`));
    // Of n hashes of 32 bits about n² / 2^33 pairs are equal by chance: one or two here.
    expect(hashes.size).toBeGreaterThan(99_980);
  });

  it('is a whole number of 32 bits and never 0', () => {
    for (const tag of ['', 'A', 'é', '👷', 'x'.repeat(5000)]) {
      expect(tagHash(tag) | 0).toBe(tagHash(tag));
      expect(tagHash(tag)).not.toBe(0);
    }
  });
});
