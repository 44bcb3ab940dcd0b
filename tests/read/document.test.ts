import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DocumentReader, type DocumentSink, type Piece } from '../../src/read/document.js';

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

/** Writes down what the reader hands over, as text and with its place in the input. */
class Notes implements DocumentSink {
  readonly lines: string[] = [];

  isCollection(name: string): boolean {
    return name === 'holes' || name === 'trades';
  }

  takesFast(): boolean {
    return false;
  }

  takeFast(): number {
    return -1;
  }

  element(name: string, index: number, piece: Piece): void {
    this.lines.push(`${name} ${index} ${note(piece)}`);
  }

  member(name: string, piece: Piece, nameByte: number): void {
    this.lines.push(`member ${name} ${nameByte} ${note(piece)}`);
  }

  collectionEnd(name: string, count: number): void {
    this.lines.push(`end ${name} ${count}`);
  }

  root(piece: Piece): void {
    this.lines.push(`root ${note(piece)}`);
  }

  fault({ rule, byte }: { rule: string; byte: number }, pointer: string): void {
    this.lines.push(`fault ${rule} ${byte} ${pointer}`);
  }
}

function note({ bytes, start, end, base, faults }: Piece): string {
  const text = decoder.decode(bytes.subarray(start, end));
  const shown = text.length > 100 ? `${text.length} characters` : text;
  return `${base + start} ${shown}${faults.map(({ rule, at }) => ` !${rule} ${base + at}`).join('')}`;
}

function read(text: string | Uint8Array, chunk = Number.POSITIVE_INFINITY) {
  const bytes = typeof text === 'string' ? encoder.encode(text) : text;
  const notes = new Notes();
  const reader = new DocumentReader(notes);
  for (let at = 0; at < bytes.length; at += chunk) reader.write(bytes.subarray(at, Math.min(bytes.length, at + chunk)));
  reader.end();
  return { lines: notes.lines, complete: reader.complete, byteLength: reader.byteLength, scanned: reader.scanned };
}

describe('the reader of documents', () => {
  it('hands over members, elements and ends in the order of the text, each with its byte', () => {
    expect(read('{ "ahx": "0.1", "holes": [ {"id":"A"}, 7 ], "note": [1], "trades": [] }').lines).toEqual([
      'member ahx 2 9 "0.1"',
      'holes 0 27 {"id":"A"}',
      'holes 1 39 7',
      'end holes 2',
      'member note 44 52 [1]',
      'end trades 0',
    ]);
    expect(read('{}')).toMatchObject({ lines: [], complete: true, byteLength: 2 });
  });

  it('hands over a collection that is no array as a member', () => {
    expect(read('{"holes":{"a":1}}').lines).toEqual(['member holes 1 9 {"a":1}']);
  });

  it('hands over a root that is no object', () => {
    expect(read(' [1,2] ')).toMatchObject({ lines: ['root 1 [1,2]'], complete: true });
    expect(read('"x"').lines).toEqual(['root 0 "x"']);
    expect(read('12').lines).toEqual(['root 0 12']);
  });

  it('finds a name that comes twice and leaves its second value alone', () => {
    expect(read('{"id":1,"holes":[2],"id":3,"\\u0068oles":[4],"x":5}').lines).toEqual([
      'member id 1 6 1',
      'holes 0 17 2',
      'end holes 1',
      'fault duplicate-name 20 /id',
      'fault duplicate-name 27 /holes',
      'member x 44 48 5',
    ]);
  });

  it('reports the faults of a name before those of its value, whatever becomes of the value', () => {
    const bad = (text: string) => Uint8Array.from([...text].map((letter) => letter.charCodeAt(0)));
    expect(read(bad('{"a\xff":1}')).lines).toEqual(['fault not-utf8 3 /a\ufffd', 'member a\ufffd 1 6 1']);
    expect(read(bad('{"\xff":[1,}')).lines).toEqual(['fault not-utf8 2 ', 'fault json-syntax 8 ']);
    expect(read(bad('{"\xff" 1}')).lines).toEqual(['fault not-utf8 2 ', 'fault json-syntax 5 ']);
    expect(read(bad('{"\xff":')).lines).toEqual(['fault not-utf8 2 ', 'fault json-syntax 5 ']);
  });

  it('escapes names in pointers', () => {
    expect(read('{"a/b~":1,"a/b~":2}').lines[1]).toBe('fault duplicate-name 10 /a~1b~0');
  });

  it('skips a byte order mark and says so', () => {
    expect(read('\ufeff{"a":1}')).toMatchObject({
      lines: ['fault byte-order-mark 0 ', 'member a 4 8 1'],
      complete: true,
    });
    expect(read(' \ufeff{}').lines).toEqual(['fault json-syntax 1 ']);
  });

  it.each([
    ['UTF-16, little-endian, with a mark', [0xff, 0xfe, 0x7b, 0, 0x7d, 0]],
    ['UTF-16, big-endian, with a mark', [0xfe, 0xff, 0, 0x7b, 0, 0x7d]],
    ['UTF-16, little-endian', [0x7b, 0, 0x0a, 0, 0x7d, 0]],
    ['UTF-16, big-endian', [0, 0x7b, 0, 0x0a, 0, 0x7d]],
  ])('reads nothing of %s', (_, bytes) => {
    for (const chunk of [1, 2, 100]) {
      expect(read(Uint8Array.from(bytes), chunk)).toMatchObject({ lines: ['fault not-utf8 0 '], complete: false });
    }
  });

  it('stops at the first byte that cannot stand there, and says near which value', () => {
    const cases: [text: string, line: string][] = [
      ['', 'fault json-syntax 0 '],
      ['  ', 'fault json-syntax 2 '],
      ['{"a":1', 'fault json-syntax 6 '],
      ['{"a":1,}', 'fault json-syntax 7 '],
      ['{"a":1}}', 'fault json-syntax 7 '],
      ['{"holes":[1 2]}', 'fault json-syntax 12 /holes/1'],
      ['{"holes":[1,]}', 'fault json-syntax 12 /holes/1'],
      ['{"holes":[{"id":"A"},{"id":B}]}', 'fault json-syntax 27 /holes/1'],
      ['{"holes":[', 'fault json-syntax 10 /holes/0'],
    ];
    for (const [text, line] of cases) {
      const { lines, complete } = read(text);
      expect([text, lines.at(-1), complete]).toEqual([text, line, false]);
    }
  });

  it('hands over the same however the text is cut into chunks', () => {
    const parts = [
      '"a":1',
      '"holes":[{"x":[1]},2 ,"é😀"]',
      '"trades":[ ]',
      '"b":"\\ud800"',
      '"a":2',
      '"n":1e400',
      'x',
      '}',
    ];
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...parts), { maxLength: 6 }),
        fc.integer({ min: 1, max: 9 }),
        (some, chunk) => {
          const text = `{ ${some.join(' ,\r\n')} }`;
          const { lines, complete, byteLength } = read(text);
          expect(read(text, chunk)).toMatchObject({ lines, complete, byteLength });
        },
      ),
      { numRuns: 300, seed: 41 },
    );
  });
});

describe('memory and work of the reader', () => {
  const hole = (k: number, size: number) => `{"id":"H-${k}","note":"${'x'.repeat(size)}"}`;

  it('reads a record larger than its window, wherever it stands', () => {
    for (const size of [262_100, 262_144, 300_000, 700_000]) {
      const text = `{"holes":[${hole(0, 10)},${hole(1, size)},${hole(2, 10)}]}`;
      for (const chunk of [65_536, 262_144, text.length]) {
        const { lines, complete } = read(text, chunk);
        expect(complete).toBe(true);
        expect(lines).toEqual([
          `holes 0 10 ${hole(0, 10)}`,
          `holes 1 43 ${hole(1, size).length} characters`,
          `holes 2 ${44 + hole(1, size).length} ${hole(2, 10)}`,
          'end holes 3',
        ]);
      }
    }
  });

  it('reads a text of three million characters, looking at no byte more than three times', () => {
    const text = `{"note":"${'é'.repeat(3_000_000)}","a":1}`;
    const { lines, complete, byteLength, scanned } = read(text, 65_536);
    expect(complete).toBe(true);
    expect(lines).toEqual([`member note 1 8 ${3_000_002} characters`, 'member a 6000011 6000015 1']);
    expect(byteLength).toBe(6_000_017);
    expect(scanned).toBeLessThan(3 * byteLength);
  });

  it('reads many records, looking at hardly any byte twice', () => {
    const count = 30_000;
    const text = `{"holes":[${Array.from({ length: count }, (_, k) => hole(k, k % 200)).join(',\n')}]}`;
    const { lines, complete, scanned } = read(text, 50_000);
    expect(complete).toBe(true);
    expect(lines).toHaveLength(count + 1);
    expect(lines.at(-1)).toBe(`end holes ${count}`);
    for (const k of [0, 1, 9999, 29_999]) {
      const byte = text.indexOf(`{"id":"H-${k}"`);
      expect(lines[k].split(' ').slice(0, 3)).toEqual(['holes', String(k), String(byte)]);
    }
    expect(scanned).toBeLessThan(1.01 * text.length);
  });

  it('finds a fault behind many records at its byte', () => {
    const text = `{"holes":[${Array.from({ length: 20_000 }, (_, k) => hole(k, 30)).join(',')},{"id":}]}`;
    expect(read(text, 4096).lines.at(-1)).toBe(`fault json-syntax ${text.length - 3} /holes/20000`);
  });

  it('takes nothing in after a fault, and needs no more room', () => {
    const text = `{"a":x${'y'.repeat(2_000_000)}`;
    expect(read(text, 10_000)).toMatchObject({ lines: ['fault json-syntax 5 '], complete: false });
  });
});
