import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { idEnd, labelEnd, labelHash, numberEnd, numberRead } from '../../src/read/lexemes.js';
import { tagHash } from '../../src/model/tag-hash.js';
import { Scanner } from '../../src/read/scan.js';
import { padded } from './padded.js';
import { newRandom, pick } from './random.js';

const schema = JSON.parse(readFileSync('schema/0.1/shared.schema.json', 'utf8')) as {
  $defs: Record<'id' | 'label', { pattern: string; maxLength: number }>;
};

describe('numberEnd', () => {
  const digits = (random: () => number, count: number) =>
    Array.from({ length: count }, () => Math.floor(random() * 10)).join('');

  it('reads a hundred thousand random decimals as Number() does', () => {
    const random = newRandom(11);
    let plain = 0;
    for (let k = 0; k < 100_000; k++) {
      const whole = String(Number(digits(random, 1 + Math.floor(random() * 12))));
      const fraction = random() < 0.7 ? digits(random, 1 + Math.floor(random() * 12)) : '';
      const text = `${random() < 0.4 ? '-' : ''}${whole}${fraction === '' ? '' : `.${fraction}`}`;
      const { bytes } = padded(`${text}${pick(random, [',', ']', '}', ' ', '\n'])}`);
      const end = numberEnd(bytes, 0);
      if (whole.length + fraction.length > 15) {
        expect([text, end]).toEqual([text, -1]);
        continue;
      }
      plain++;
      if (end !== text.length || !Object.is(numberRead[0], Number(text))) {
        expect([text, end, numberRead[0]]).toEqual([text, text.length, Number(text)]);
      }
    }
    expect(plain).toBeGreaterThan(50_000);
  });

  it('reads 15 digits with the point at any place as Number() does', () => {
    const random = newRandom(12);
    for (let k = 0; k < 20_000; k++) {
      const all = `${1 + Math.floor(random() * 9)}${digits(random, 14)}`;
      const point = Math.floor(random() * 15);
      const text = point === 0 ? all : `${all.slice(0, point)}.${all.slice(point)}`;
      expect([text, numberEnd(padded(`${text},`).bytes, 0), numberRead[0]]).toEqual([text, text.length, Number(text)]);
    }
  });

  it('keeps the sign of zero', () => {
    expect(numberEnd(padded('-0.0,').bytes, 0)).toBe(4);
    expect(numberRead[0]).toBe(-0);
  });

  it('leaves everything unusual or unfinished to the scanner', () => {
    const texts = [
      '',
      '-',
      '+1,',
      '.5,',
      '01,',
      '-01,',
      '1.,',
      '1.x,',
      '1e3,',
      '1E3,',
      '1.5e3,',
      '1',
      '1.5',
      'x',
      '"1"',
    ];
    for (const text of texts) expect([text, numberEnd(padded(text).bytes, 0)]).toEqual([text, -1]);
  });
});

/** Code points around every limit of the patterns, of UTF-8, and of what escapes and quotes are. */
const points = [
  0x00, 0x08, 0x09, 0x0a, 0x1f, 0x20, 0x21, 0x22, 0x2f, 0x41, 0x5c, 0x7e, 0x7f, 0x80, 0x85, 0x9f, 0xa0, 0xa1, 0xbf,
  0xc0, 0xe9, 0xff, 0x100, 0x301, 0x7ff, 0x800, 0x1680, 0x1fff, 0x2000, 0x200a, 0x200b, 0x200f, 0x2010, 0x2027, 0x2028,
  0x2029, 0x202f, 0x2030, 0x2032, 0x2033, 0x203f, 0x2040, 0x205f, 0x3000, 0x3001, 0x3fff, 0x4000, 0x4e2d, 0xcfff,
  0xd000, 0xd7ff, 0xe000, 0xfdd0, 0xfeff, 0xfffd, 0xffff, 0x10000, 0x1f600, 0x10ffff,
];

/** A JSON string of the text, with some characters escaped that need not be. */
function quoted(random: () => number, text: string): string {
  const parts = [...text].map((letter) => {
    if (letter === '/' && random() < 0.5) return '\\/';
    if (random() < 0.05 && letter.length === 1) return `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`;
    return JSON.stringify(letter).slice(1, -1);
  });
  return `"${parts.join('')}"`;
}

const readers = [
  { name: 'idEnd', read: idEnd, ...schema.$defs.id, isPlain: /^[!-[\]-~]([ -[\]-~]*[!-[\]-~])?$/, without: /"/ },
  { name: 'labelEnd', read: labelEnd, ...schema.$defs.label, isPlain: /^[!-~]([ -~]*[!-~])?$/, without: /(?!)/ },
];

describe.each(readers)('$name', ({ read, pattern, maxLength, isPlain, without }) => {
  const fits = (text: string) => new RegExp(pattern, 'u').test(text) && [...text].length <= maxLength;

  it('accepts only texts that fit the pattern of the schema, and ends at their closing quote', () => {
    const random = newRandom(13);
    let accepted = 0;
    for (let k = 0; k < 60_000; k++) {
      const ascii = random() < 0.5;
      const length = Math.floor(random() * 6);
      const letters = Array.from({ length }, () =>
        String.fromCodePoint(ascii ? 0x1f + Math.floor(random() * 0x61) : pick(random, points)),
      );
      const text = letters.join('');
      const json = quoted(random, text);
      const { bytes, limit } = padded(`${json},`);
      const end = read(bytes, 1, maxLength);
      if (end < 0) continue;
      accepted++;
      if (end !== limit - 2 || !fits(text)) expect([json, end, fits(text)]).toEqual([json, limit - 2, true]);
    }
    expect(accepted).toBeGreaterThan(5000);
  });

  it('accepts every plain text of printable ASCII', () => {
    const random = newRandom(14);
    for (let k = 0; k < 20_000; k++) {
      const length = 1 + Math.floor(random() * 8);
      const text = Array.from({ length }, () => String.fromCharCode(0x20 + Math.floor(random() * 0x5f))).join('');
      if (!isPlain.test(text) || without.test(text)) continue;
      const json = JSON.stringify(text);
      expect([json, read(padded(json).bytes, 1, maxLength)]).toEqual([json, json.length - 1]);
    }
  });

  it('counts characters up to the limit of the schema', () => {
    expect(read(padded(`"${'x'.repeat(maxLength)}"`).bytes, 1, maxLength)).toBe(maxLength + 1);
    expect(read(padded(`"${'x'.repeat(maxLength + 1)}"`).bytes, 1, maxLength)).toBe(-1);
    expect(read(padded('""').bytes, 1, maxLength)).toBe(-1);
  });

  it('accepts no bytes that the scanner finds fault with, whatever they are', () => {
    const random = newRandom(15);
    const edges = [
      0x00, 0x1f, 0x20, 0x22, 0x2f, 0x41, 0x5c, 0x7f, 0x80, 0x90, 0x9f, 0xa7, 0xa8, 0xb0, 0xbf, 0xc2, 0xc3, 0xdf,
    ];
    edges.push(0xe0, 0xe2, 0xe3, 0xe4, 0xec, 0xed, 0xef, 0xf0, 0xf4, 0xff);
    for (let k = 0; k < 100_000; k++) {
      const body = Array.from({ length: Math.floor(random() * 6) }, () => pick(random, edges));
      const { bytes, limit } = padded([0x22, ...body, 0x22]);
      const end = read(bytes, 1, maxLength);
      if (end < 0) continue;
      const scanner = new Scanner();
      const outcome = scanner.scan(bytes, 0, limit, true);
      if (outcome !== 'whole' || scanner.faults.length > 0 || scanner.end !== end + 1) {
        expect([body, outcome, scanner.faults, scanner.end]).toEqual([body, 'whole', [], end + 1]);
      }
    }
  });
});

describe('labelEnd', () => {
  it('takes the marks of feet and inches, letters of Latin, Greek and Cyrillic, and Chinese characters', () => {
    for (const text of ['10′-6″', 'Überzug', 'größe', 'Ωmega', 'Потолок', '中間']) {
      const json = JSON.stringify(text);
      expect([text, labelEnd(padded(json).bytes, 1, 256)]).toEqual([text, new TextEncoder().encode(json).length - 1]);
    }
  });

  it('leaves the hash of the text that the escapes stand for', () => {
    const random = newRandom(16);
    let accepted = 0;
    for (let k = 0; k < 30_000; k++) {
      const length = 1 + Math.floor(random() * 6);
      const text = String.fromCodePoint(...Array.from({ length }, () => pick(random, points)));
      const json = quoted(random, text);
      if (labelEnd(padded(json).bytes, 1, 256) < 0) continue;
      accepted++;
      if (labelHash[0] !== tagHash(text)) expect([json, labelHash[0]]).toEqual([json, tagHash(text)]);
    }
    expect(accepted).toBeGreaterThan(500);
  });

  it('counts code points, not bytes', () => {
    expect(labelEnd(padded('"é中é"').bytes, 1, 3)).toBeGreaterThan(0);
    expect(labelEnd(padded('"é中é"').bytes, 1, 2)).toBe(-1);
    expect(labelEnd(padded('"\\"\\\\\\/"').bytes, 1, 3)).toBeGreaterThan(0);
    expect(labelEnd(padded('"\\"\\\\\\/"').bytes, 1, 2)).toBe(-1);
  });
});
