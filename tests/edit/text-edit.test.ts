import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composed, edited, type TextEdit } from '../../src/edit/text-edit.js';

const bytes = fc.uint8Array({ maxLength: 40 });

/** Edits of a text of this length: in order, apart from each other. */
function editsFor(length: number): fc.Arbitrary<TextEdit[]> {
  return fc.array(fc.tuple(fc.nat(length), fc.nat(4), fc.uint8Array({ maxLength: 4 })), { maxLength: 5 }).map((all) => {
    const edits: TextEdit[] = [];
    let free = 0;
    for (const [at, size, text] of all.sort(([a], [b]) => a - b)) {
      if (at < free) continue;
      const end = Math.min(length, at + size);
      edits.push({ start: at, end, text });
      free = end + 1;
    }
    return edits;
  });
}

describe('edits of a text', () => {
  it('change what they name and leave the rest', () => {
    const b = new TextEncoder().encode('one two three');
    const text = (word: string) => new TextEncoder().encode(word);
    const result = edited(b, [
      { start: 0, end: 3, text: text('1') },
      { start: 7, end: 7, text: text('!') },
      { start: 8, end: 13, text: text('') },
    ]);
    expect(new TextDecoder().decode(result)).toBe('1 two! ');
  });

  it('made one after the other are edits of the first text', () => {
    const twice = bytes.chain((b) =>
      editsFor(b.length).chain((first) => editsFor(edited(b, first).length).map((second) => ({ b, first, second }))),
    );
    fc.assert(
      fc.property(twice, ({ b, first, second }) => {
        const both = composed(b.length, first, second);
        expect(edited(b, both)).toEqual(edited(edited(b, first), second));
        both.reduce((end, edit) => {
          expect(edit.start).toBeGreaterThanOrEqual(end);
          return edit.end;
        }, 0);
      }),
      { numRuns: 500, seed: 7 },
    );
  });

  it('that do nothing compose to none', () => {
    expect(composed(9, [], [])).toEqual([]);
  });
});
