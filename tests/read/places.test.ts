import { describe, expect, it } from 'vitest';
import { KeptBytes } from '../../src/model/byte-source.js';
import { byteInRecord, lineColumns, recordBytes } from '../../src/read/places.js';
import { newRandom, pick } from './random.js';

const encoder = new TextEncoder();
/** Size of the pieces that the text is looked at in. */
const BORDER = 1 << 18;

function source(text: string): KeptBytes {
  const kept = new KeptBytes();
  kept.add(encoder.encode(text));
  return kept;
}

function place(text: string, byte: number): [line: number, column: number] {
  const [{ line, column }] = lineColumns(source(text), [byte]);
  return [line, column];
}

/** Line and column of each character of a text by another way: lines are cut first. */
function placesOfCharacters(text: string): Map<number, [line: number, column: number]> {
  const places = new Map<number, [number, number]>();
  let byte = 0;
  const lines = text.split(/(?<=\r\n|\r(?!\n)|\n)/);
  lines.forEach((content, index) => {
    let column = 1;
    for (const character of content) {
      places.set(byte, [index + 1, column]);
      byte += encoder.encode(character).length;
      column += character.length;
    }
  });
  return places;
}

describe('lineColumns', () => {
  it('counts lines and columns from 1', () => {
    expect(place('abc', 0)).toEqual([1, 1]);
    expect(place('abc', 2)).toEqual([1, 3]);
    expect(place('', 0)).toEqual([1, 1]);
  });

  it('ends a line behind LF, CR LF, or CR alone', () => {
    expect(place('a\nb', 2)).toEqual([2, 1]);
    expect(place('a\r\nb', 3)).toEqual([2, 1]);
    expect(place('a\rb', 2)).toEqual([2, 1]);
    expect(place('a\n\rb', 3)).toEqual([3, 1]);
    expect(place('\r\r\n\n\rx', 5)).toEqual([5, 1]);
  });

  it('takes the ends of a line as part of it', () => {
    expect(place('ab\ncd', 2)).toEqual([1, 3]);
    expect(place('ab\r\ncd', 2)).toEqual([1, 3]);
    expect(place('ab\r\ncd', 3)).toEqual([1, 4]);
  });

  it('counts UTF-16 code units: two for a character beyond the basic plane, one for a tab', () => {
    expect(place('é|', 2)).toEqual([1, 2]);
    expect(place('中|', 3)).toEqual([1, 2]);
    expect(place('😀|', 4)).toEqual([1, 3]);
    expect(place('\t\t|', 2)).toEqual([1, 3]);
  });

  it('gives the end of the text where a byte lies behind it', () => {
    expect(place('ab\nc', 4)).toEqual([2, 2]);
    expect(place('ab\nc', 99)).toEqual([2, 2]);
    expect(place('ab\r', 3)).toEqual([2, 1]);
  });

  it('answers in the order of the question, each as often as asked', () => {
    const places = lineColumns(source('a\nbc\nd'), [5, 0, 3, 5, 99]);
    expect(places.map(({ line, column }) => [line, column])).toEqual([
      [3, 1],
      [1, 1],
      [2, 2],
      [3, 1],
      [3, 2],
    ]);
    expect(lineColumns(source('abc'), [])).toEqual([]);
  });

  it('agrees with lines that are cut first, on random texts', () => {
    const random = newRandom(31);
    const letters = ['a', 'é', '中', '😀', '\t', '\r', '\n', '\r\n', '\u2028'];
    for (let k = 0; k < 500; k++) {
      const text = Array.from({ length: 40 }, () => pick(random, letters)).join('');
      const places = placesOfCharacters(text);
      const found = lineColumns(source(text), [...places.keys()]);
      expect([text, found.map(({ line, column }) => [line, column])]).toEqual([text, [...places.values()]]);
    }
  });

  it.each([
    ['a line feed', '\n'],
    ['a carriage return and a line feed', '\r\n'],
    ['a carriage return', '\r'],
    ['a character of four bytes', '😀'],
    ['a character of three bytes', '中'],
  ])('sees no border between pieces in %s', (_, letters) => {
    const size = encoder.encode(letters).length;
    for (let before = BORDER - size - 1; before <= BORDER + 1; before++) {
      const first = `${'x'.repeat(before - 3)}\n`;
      const rest = `y|${letters}z\n!`;
      const places = [...placesOfCharacters(rest)];
      const found = lineColumns(
        source(first + rest),
        places.map(([byte]) => first.length + byte),
      );
      expect([before, found.map(({ line, column }) => [line - 1, column])]).toEqual([
        before,
        places.map(([, at]) => at),
      ]);
    }
  });

  it('finds the end of a text that ends at a border', () => {
    expect(place(`${'x'.repeat(BORDER - 1)}\n`, BORDER)).toEqual([2, 1]);
    expect(place(`${'x'.repeat(BORDER - 1)}\r`, BORDER)).toEqual([2, 1]);
    expect(place('x'.repeat(BORDER), BORDER)).toEqual([1, BORDER + 1]);
  });
});

describe('recordBytes', () => {
  const decode = (bytes: Uint8Array | undefined) => bytes && new TextDecoder().decode(bytes);

  it('gives the bytes of the value at a place, whatever its size', () => {
    const large = JSON.stringify({ note: 'x'.repeat(100_000) });
    const kept = source(`[{"a":[1]},${large},7]`);
    expect(decode(recordBytes(kept, 1))).toBe('{"a":[1]}');
    expect(decode(recordBytes(kept, 11))).toBe(large);
    expect(decode(recordBytes(kept, 12 + large.length))).toBe('7');
  });

  it('gives nothing where there is no whole value', () => {
    expect(recordBytes(source('{"a":'), 0)).toBeUndefined();
    expect(recordBytes(source('[1,]'), 3)).toBeUndefined();
    expect(recordBytes(source(`"${'x'.repeat(5000)}`), 0)).toBeUndefined();
  });

  it('takes a number at the end of the text for whole', () => {
    expect(decode(recordBytes(source('12'), 0))).toBe('12');
    expect(decode(recordBytes(source(`${' '.repeat(4)}${'1'.repeat(4096)}`), 4))).toBe('1'.repeat(4096));
  });
});

describe('byteInRecord', () => {
  it('finds a member inside a record by a pointer from the record', () => {
    const text = '{"holes":[{"id":"A","point":[1,2]},{"id":"B","point":[3,4]}]}';
    const record = text.indexOf('{"id":"B"');
    expect(byteInRecord(source(text), record, '')).toBe(record);
    expect(byteInRecord(source(text), record, '/point')).toBe(text.lastIndexOf('['));
    expect(byteInRecord(source(text), record, '/point/1')).toBe(text.lastIndexOf('4'));
  });

  it('stays at the record where its text is no JSON', () => {
    expect(byteInRecord(source('[{"id":'), 1, '/id')).toBe(1);
  });
});
