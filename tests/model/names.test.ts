import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grown, hashBytes, Names } from '../../src/model/names.js';

const encoder = new TextEncoder();

describe('a set of names', () => {
  it('numbers texts in the order in which they come', () => {
    const names = new Names();
    expect(['b', 'a', 'b', '', 'é', 'a'].map((name) => names.addText(name))).toEqual([0, 1, 0, 2, 3, 1]);
    expect(names.count).toBe(4);
    expect([0, 1, 2, 3].map((index) => names.text(index))).toEqual(['b', 'a', '', 'é']);
  });

  it('takes a text from the middle of an array', () => {
    const names = new Names();
    const bytes = encoder.encode('"FP","EL"');
    expect([names.add(bytes, 1, 3), names.add(bytes, 6, 8), names.add(bytes, 1, 3)]).toEqual([0, 1, 0]);
    expect([names.text(0), names.text(1)]).toEqual(['FP', 'EL']);
  });

  it('finds no text that was not added', () => {
    const names = new Names();
    expect(names.find('a')).toBe(-1);
    names.addText('a');
    expect([names.find('a'), names.find('A'), names.find('aa'), names.find('')]).toEqual([0, -1, -1, -1]);
  });

  it('tells texts apart whose beginnings are the same, and canonical equivalents', () => {
    const names = new Names();
    const texts = ['a', 'ab', 'abc', 'caf\u00e9', 'cafe\u0301'];
    expect(texts.map((text) => names.addText(text))).toEqual([0, 1, 2, 3, 4]);
  });

  it('agrees with a map on two hundred thousand texts', () => {
    const names = new Names();
    const map = new Map<string, number>();
    for (let k = 0; k < 200_000; k++) {
      // A permutation of the numbers below 2^18 with repeats: some texts are new, some known.
      const text = `H-${(k * 40_503) % 120_011}`;
      const known = map.get(text);
      if (known === undefined) map.set(text, map.size);
      if (names.addText(text) !== map.get(text)) expect([text, names.find(text)]).toEqual([text, map.get(text)]);
    }
    expect(names.count).toBe(map.size);
    for (const [text, index] of map)
      if (names.find(text) !== index || names.text(index) !== text) expect(text).toBe(names.text(index));
  });

  it('agrees with a map on random texts', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 3 })), (texts) => {
        const names = new Names();
        const order = [...new Set(texts)];
        expect(texts.map((text) => names.addText(text))).toEqual(texts.map((text) => order.indexOf(text)));
      }),
      { seed: 61 },
    );
  });
});

describe('grown', () => {
  it('copies an array into one that is longer by half, or as long as asked', () => {
    const array = Float64Array.of(1, 2, 3, 4);
    expect([...grown(array, 0).subarray(0, 5)]).toEqual([1, 2, 3, 4, 0]);
    expect(grown(array, 0).length).toBeGreaterThan(5);
    expect(grown(array, 100)).toHaveLength(100);
    expect(grown(Int32Array.of(-1), 0)).toBeInstanceOf(Int32Array);
  });
});

describe('hashBytes', () => {
  it('is never negative and hangs on every byte', () => {
    const hashes = new Set<number>();
    for (let k = 0; k < 5000; k++) {
      const bytes = encoder.encode(`hole ${k}`);
      const hash = hashBytes(bytes, 0, bytes.length);
      expect(hash).toBeGreaterThanOrEqual(0);
      hashes.add(hash);
    }
    expect(hashes.size).toBeGreaterThan(4990);
  });
});
