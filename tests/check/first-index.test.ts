import { describe, expect, it } from 'vitest';
import { firstIndex } from '../../src/check/first-index.js';

describe('the first index that is reached', () => {
  it('is that which a search from the start finds', () => {
    for (let count = 0; count < 20; count++)
      for (let from = 0; from <= count; from++) expect(firstIndex(count, (index) => index >= from)).toBe(from);
  });

  it('is found with few looks', () => {
    let looks = 0;
    const isReached = (index: number) => {
      looks++;
      return index >= 777_777;
    };
    expect(firstIndex(1_000_000, isReached)).toBe(777_777);
    expect(looks).toBeLessThanOrEqual(20);
  });
});
