import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CarefulText, isInert } from '../../src/read/careful-text.js';
import { Notes } from '../../src/read/notes.js';
import { padded } from './padded.js';
import { newRandom, pick } from './random.js';

const schema = JSON.parse(readFileSync('schema/0.1/shared.schema.json', 'utf8')) as {
  $defs: Record<'id' | 'text', { pattern: string }>;
};
const oneLine = new RegExp(schema.$defs.id.pattern, 'u');
const anyText = new RegExp(schema.$defs.text.pattern, 'u');
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

/** Code points of the first plane that are no surrogates, and some beyond it. */
const points = Array.from({ length: 0x10000 }, (_, k) => k).filter((k) => k < 0xd800 || k > 0xdfff);
points.push(0x10000, 0x1f600, 0x1fffe, 0x10ffff);

describe('careful reading of texts', () => {
  it('agrees with the parser and with the patterns of the schema on every character, in every place and form', () => {
    const text = new CarefulText();
    const notes = new Notes();
    for (const point of points) {
      const character = String.fromCodePoint(point);
      for (const value of [character, `${character}a`, `a${character}`, `a${character}b`]) {
        const escaped = [...value].map((letter) => escapes(letter)).join('');
        for (const json of [JSON.stringify(value), `"${escaped}"`]) {
          const { bytes, limit } = padded(json);
          const end = text.read(bytes, 1, 1, notes);
          const read = decoder.decode(text.out.subarray(text.start, text.end));
          const found = [end, read, text.points, text.isOneLine, text.isText];
          const expected = [limit - 1, value, [...value].length, oneLine.test(value), anyText.test(value)];
          if (found.some((part, k) => part !== expected[k])) expect([json, ...found]).toEqual([json, ...expected]);
        }
      }
    }
  });

  it('takes only texts of normalisation form C for such', () => {
    const random = newRandom(61);
    const inert = points.filter(isInert);
    expect(inert.length).toBeGreaterThan(30_000);
    for (const point of inert) expect(String.fromCodePoint(point).normalize('NFC')).toBe(String.fromCodePoint(point));
    for (let k = 0; k < 100_000; k++) {
      const value = String.fromCodePoint(pick(random, inert), pick(random, inert), pick(random, inert));
      if (value.normalize('NFC') !== value) expect(value.normalize('NFC')).toBe(value);
    }
  });

  it('leaves a text that does not end to the scanner', () => {
    const text = new CarefulText();
    for (const json of ['"', '"a', '"a\\', '"a\\"', '"\\u00', '"\\ud83d\\u', '"é'.slice(0, 2), '"a\nb"', '"a\\x"']) {
      expect([json, text.read(padded(json).bytes, 1, 1, new Notes())]).toEqual([json, -1]);
    }
    expect(text.read(padded([0x22, 0xe2, 0x80]).bytes, 1, 1, new Notes())).toBe(-1);
    expect(text.read(padded(`"${'x'.repeat(70_000)}"`).bytes, 1, 1, new Notes())).toBe(-1);
  });

  it('puts a text behind those that are kept, and over the others', () => {
    const text = new CarefulText();
    for (const [json, isKept] of [
      ['"abc"', true],
      ['"de"', false],
      ['"fgh"', true],
    ] as const) {
      text.read(padded(json).bytes, 1, 1, new Notes());
      if (isKept) text.keep();
    }
    expect(decoder.decode(text.out.subarray(0, text.end))).toBe('abcfgh');
    text.clear();
    text.read(padded('"i"').bytes, 1, 1, new Notes());
    expect([text.start, text.end]).toEqual([0, 1]);
  });
});

function escapes(letter: string): string {
  return Array.from(
    { length: letter.length },
    (_, k) => `\\u${letter.charCodeAt(k).toString(16).padStart(4, '0')}`,
  ).join('');
}
