import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KeptBytes } from '../../src/model/byte-source.js';

describe('kept bytes', () => {
  it('are given back from any place, whatever the chunks were', () => {
    const chunks = fc.array(fc.uint8Array({ maxLength: 5 }), { maxLength: 8 });
    fc.assert(
      fc.property(chunks, fc.nat(50), fc.nat(50), (parts, start, end) => {
        const kept = new KeptBytes();
        for (const part of parts) kept.add(part);
        const all = parts.flatMap((part) => [...part]);
        expect(kept.byteLength).toBe(all.length);
        expect([...kept.slice(start, end)]).toEqual(all.slice(start, Math.max(start, end)));
      }),
      { numRuns: 500, seed: 71 },
    );
  });

  it('stay as they were when the chunk is used again', () => {
    const kept = new KeptBytes();
    const chunk = Uint8Array.of(1, 2, 3);
    kept.add(chunk);
    chunk.fill(9);
    expect([...kept.slice(0, 3)]).toEqual([1, 2, 3]);
  });

  it('are none at first', () => {
    expect([...new KeptBytes().slice(0, 10)]).toEqual([]);
  });
});
