import { applyPatch, parsePatch } from 'diff';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edited, type TextEdit } from '../../src/edit/text-edit.js';
import { LONGEST_LINE, unifiedDiff } from '../../src/edit/unified-diff.js';
import { texts } from './random-edits.js';

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

/** The edit of the only place where a text holds `from`. */
function change(text: string, from: string, to: string): TextEdit {
  const at = text.indexOf(from);
  expect(text.indexOf(from, at + 1)).toBe(-1);
  const start = encoder.encode(text.slice(0, at)).length;
  return { start, end: start + encoder.encode(from).length, text: encoder.encode(to) };
}

function diffOf(text: string, edits: readonly TextEdit[]): string {
  return (unifiedDiff('file', encoder.encode(text), edits) ?? ['too long']).join('');
}

const lines = Array.from({ length: 20 }, (_, k) => `line ${String(k + 1).padStart(2, '0')}`);

describe('a unified diff', () => {
  it('shows the lines that change with three around them, and joins what lies near', () => {
    const text = `${lines.join('\n')}\n`;
    expect(diffOf(text, [change(text, '02', 'B'), change(text, '08', 'H'), change(text, '17', 'Q')])).toBe(
      [
        '--- file',
        '+++ file',
        '@@ -1,11 +1,11 @@',
        ...[' line 01', '-line 02', '+line B', ' line 03', ' line 04', ' line 05', ' line 06', ' line 07'],
        ...['-line 08', '+line H', ' line 09', ' line 10', ' line 11'],
        '@@ -14,7 +14,7 @@',
        ...[' line 14', ' line 15', ' line 16', '-line 17', '+line Q', ' line 18', ' line 19', ' line 20', ''],
      ].join('\n'),
    );
  });

  it('counts on behind lines that went', () => {
    const text = `${lines.join('\n')}\n`;
    const diff = diffOf(text, [change(text, 'line 03\n', ''), change(text, '15', 'P')]);
    expect(diff.match(/^@@.*$/gm)).toEqual(['@@ -1,6 +1,5 @@', '@@ -12,7 +11,7 @@']);
  });

  it('says where the last line has no end', () => {
    expect(diffOf('a\nb', [change('a\nb', 'b', 'c')])).toBe(
      '--- file\n+++ file\n@@ -1,2 +1,2 @@\n a\n-b\n\\ No newline at end of file\n+c\n\\ No newline at end of file\n',
    );
  });

  it('keeps carriage returns and the byte order mark', () => {
    const text = '\uFEFF{ "a": 1,\r\n  "b": 2 }\r\n';
    const diff = diffOf(text, [{ start: 0, end: 3, text: new Uint8Array() }, change(text, '2', '3')]);
    expect(diff).toContain('-\uFEFF{ "a": 1,\r\n');
    expect(diff).toContain('+{ "a": 1,\r\n');
    expect(diff).toContain('+  "b": 3 }\r\n');
  });

  it('is nothing where nothing changes', () => {
    expect(diffOf('a\n', [])).toBe('');
  });

  it('is not made of lines that nobody can read', () => {
    const text = `[1, "${'x'.repeat(LONGEST_LINE)}"]`;
    expect(unifiedDiff('file', encoder.encode(text), [change(text, '1', '2')])).toBeUndefined();
  });

  // Against the package diff 9.0.0, which applies it.
  it('makes of the old text the new one', () => {
    const edit = fc.tuple(fc.nat(80), fc.nat(10), fc.constantFrom('', 'x', '\n', 'y\nz', '\r\n'));
    fc.assert(
      fc.property(texts, fc.array(edit, { minLength: 1, maxLength: 4 }), (text, all) => {
        const bytes = encoder.encode(text);
        // Edits begin and end between characters.
        const isStart = (at: number) => at >= bytes.length || (bytes[at] & 0xc0) !== 0x80;
        let free = 0;
        const edits: TextEdit[] = [];
        for (const [start, size, now] of all.sort(([a], [b]) => a - b)) {
          const end = Math.min(bytes.length, start + size);
          if (start < free || start > bytes.length || !isStart(start) || !isStart(end)) continue;
          edits.push({ start, end, text: encoder.encode(now) });
          free = end + 1;
        }
        const result = decoder.decode(edited(bytes, edits));
        fc.pre(result !== text);
        const diff = diffOf(text, edits);
        expect(parsePatch(diff)).toHaveLength(1);
        expect(applyPatch(text, diff, { autoConvertLineEndings: false })).toBe(result);
      }),
      { numRuns: 500, seed: 11 },
    );
  });
});
