import { describe, expect, it } from 'vitest';
import { printable } from '../../src/model/printable.js';

describe('printable', () => {
  it('leaves letters, signs and emoji alone', () => {
    for (const plain of ['', 'H-1', 'größe 10′-6″', '中間 😀', 'a\u0301']) expect(printable(plain)).toBe(plain);
  });

  it('shows control characters, line separators and marks of direction as escapes', () => {
    expect(printable('\u0000\t\n\u001b\u007f\u009b\u2028\u202e\u2066')).toBe(
      '\\u0000\\u0009\\u000a\\u001b\\u007f\\u009b\\u2028\\u202e\\u2066',
    );
  });

  it('shows what is no character as escapes, and pairs of surrogates as they are', () => {
    expect(printable('\ud800 \udc00\ud800 \u{1f600} \ufffe \u{1fffe} \u061c')).toBe(
      '\\ud800 \\udc00\\ud800 \u{1f600} \\ufffe \\u{1fffe} \\u061c',
    );
  });
});
