import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { losesDigits } from '../../src/read/loses-digits.js';
import { blanks, MAX_DEPTH, Scanner } from '../../src/read/scan.js';
import { padded } from './padded.js';
import { newRandom, pick } from './random.js';

type Found = [rule: string, at: number];

function scan(text: string | readonly number[], final = true) {
  const { bytes, limit } = padded(text);
  const scanner = new Scanner();
  const outcome = scanner.scan(bytes, blanks(bytes, 0), limit, final);
  const found = scanner.faults.map(({ rule, at }): Found => [rule, at]);
  return { outcome, end: scanner.end, found, faults: scanner.faults, after: blanks(bytes, scanner.end) === limit };
}

function found(text: string | readonly number[]): Found[] {
  return scan(text).found;
}

/** Whether the platform takes the text, the fault of too deep nesting apart. */
function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('the scanner', () => {
  it('finds the end of each kind of value and leaves what follows', () => {
    for (const value of ['null', 'true', 'false', '0', '-1.5e3', '""', '"a\\nb"', '[]', '{}', '[1,{"a":[2]}]']) {
      expect([value, scan(`${value} ,x`)]).toMatchObject([value, { outcome: 'whole', end: value.length, found: [] }]);
    }
  });

  it('takes whole texts of random JSON, and wants more of each shorter beginning', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.boolean(), (value, isIndented) => {
        const text = JSON.stringify([value], null, isIndented ? 2 : undefined);
        const bytes = [...new TextEncoder().encode(text)];
        const syntax = scan(text).found.filter(([rule]) => rule === 'json-syntax');
        expect([scan(text).outcome, scan(text).end, syntax]).toEqual(['whole', bytes.length, []]);
        for (let length = 1; length < bytes.length; length++) {
          expect(scan(bytes.slice(0, length), false).outcome).toBe('incomplete');
          const last = scan(bytes.slice(0, length));
          expect(last.outcome).toBe('broken');
          expect(last.found.at(-1)).toEqual(['json-syntax', length]);
        }
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  it('takes and refuses what the parser of the platform does, in texts with one character changed', () => {
    const random = newRandom(2);
    const letters = [...'[]{},:"\\ \n\t0123456789.-+eEtrufalsn/b\u0001'];
    const texts = [
      '{"a":[1,-2.5e3,"x\\u00e9\\n",true,false,null,{"b":{}},[[]]],"c":"","d":0}',
      '[ 10 , 0.1 , -0 , 1E+2 , "\\"\\\\\\/\\b\\f\\r\\t" , { "x" : null } ]',
    ];
    let taken = 0;
    for (let k = 0; k < 20_000; k++) {
      const text = [...pick(random, texts)];
      const at = Math.floor(random() * text.length);
      text.splice(at, random() < 0.3 ? 1 : random() < 0.5 ? 0 : 1, ...(random() < 0.8 ? [pick(random, letters)] : []));
      const changed = text.join('');
      const { outcome, after } = scan(changed);
      const isTaken = outcome === 'whole' && after;
      if (isTaken) taken++;
      expect([changed, isTaken]).toEqual([changed, isJson(changed)]);
    }
    expect(taken).toBeGreaterThan(1000);
    expect(taken).toBeLessThan(19_000);
  });

  it('names what it expected and what it found', () => {
    const cases: [text: string, at: number, expected: string, found: string][] = [
      ['[1 2]', 3, 'a comma or ]', '2'],
      ['{"a":1;}', 6, 'a comma or }', ';'],
      ['{"a" 1}', 5, 'a colon', '1'],
      ['{a:1}', 1, 'a member name in double quotes', 'a'],
      ['[1,]', 3, 'a value', ']'],
      ['[01]', 2, 'no digit after a leading zero', '1'],
      ['[-]', 2, 'a digit', ']'],
      ['[1.]', 3, 'a digit after the decimal point', ']'],
      ['[1e]', 3, 'a digit in the exponent', ']'],
      ['[nulL]', 4, 'the word null', 'L'],
      ['["a\tb"]', 3, 'a closing quote; control characters in a text are written as escapes', 'a tab'],
      ['["a\nb"]', 3, 'a closing quote; control characters in a text are written as escapes', 'the end of the line'],
      ['["\\x"]', 3, 'one of " \\ / b f n r t u after the backslash', 'x'],
      ['["\\u12 4"]', 6, 'four hexadecimal digits after \\u', 'a blank'],
      ['["a', 3, 'a closing quote; control characters in a text are written as escapes', 'the end of the text'],
      ['[\u00a0]', 1, 'a value', 'byte 0xC2'],
    ];
    for (const [text, at, expected, seen] of cases) {
      expect([text, scan(text).faults]).toEqual([text, [{ rule: 'json-syntax', at, data: { expected, found: seen } }]]);
    }
  });

  it('takes a zero byte inside the text for what it is, not for the end', () => {
    expect(scan('[1,\u0000]')).toMatchObject({ outcome: 'broken', found: [['json-syntax', 3]] });
    expect(scan('["\u0000"]', false)).toMatchObject({ outcome: 'broken', found: [['json-syntax', 2]] });
  });

  it('waits for the rest of a number, which may have more digits', () => {
    expect(scan('12', false).outcome).toBe('incomplete');
    expect(scan('12 ', false)).toMatchObject({ outcome: 'whole', end: 2 });
    expect(scan('12')).toMatchObject({ outcome: 'whole', end: 2 });
  });

  it('reads 128 levels and stops at the bracket that opens one more', () => {
    const deep = (levels: number) => `${'['.repeat(levels)}${']'.repeat(levels)}`;
    expect(MAX_DEPTH).toBe(128);
    expect(scan(deep(128))).toMatchObject({ outcome: 'whole', found: [] });
    expect(scan(deep(129))).toMatchObject({ outcome: 'broken', found: [['nested-too-deep', 128]] });
    const mixed = `${'{"a":['.repeat(64)}{}`;
    expect(scan(mixed).found).toEqual([['nested-too-deep', 64 * 6]]);
  });

  it('lists a thousand faults of each rule in one value and counts the others', () => {
    const text = `[${Array.from({ length: 3000 }, () => '1e999').join(',')},{"a":1,"a":2}]`;
    const { bytes, limit } = padded(text);
    const scanner = new Scanner();
    expect(scanner.scan(bytes, 0, limit, true)).toBe('whole');
    expect(scanner.end).toBe(text.length);
    expect(scanner.faults).toHaveLength(1001);
    expect(scanner.faults.reduce((sum, { count = 1 }) => sum + count, 0)).toBe(3001);
    expect(scanner.faults.at(-1)?.rule).toBe('duplicate-name');
  });

  it('counts the bytes that it looked at', () => {
    const { bytes, limit } = padded('[1,2] [3]');
    const scanner = new Scanner();
    scanner.scan(bytes, 0, limit, true);
    scanner.scan(bytes, 6, limit, true);
    expect(scanner.scanned).toBe(8);
  });
});

describe('names in one object', () => {
  it('are told apart and found again, escapes resolved', () => {
    expect(found('{"a":1,"b":2}')).toEqual([]);
    expect(found('{"a":1,"b":2,"a":3}')).toEqual([['duplicate-name', 13]]);
    expect(found('{"a":1,"\\u0061":2}')).toEqual([['duplicate-name', 7]]);
    expect(found('{"\\u0061":1,"a":2}')).toEqual([['duplicate-name', 12]]);
    expect(found('{"\\/":1,"/":2}')).toEqual([['duplicate-name', 8]]);
    expect(found('{"":1,"":2}')).toEqual([['duplicate-name', 6]]);
    expect(found('{"é":1,"e\u0301":2}')).toEqual([]);
    expect(found('{"\ufeffa":1,"a":2}')).toEqual([]);
    expect(found('{"__proto__":1,"__proto__":2}')).toEqual([['duplicate-name', 15]]);
  });

  it('count in their own object only', () => {
    expect(found('{"a":{"a":{"a":1}},"b":{"a":2}}')).toEqual([]);
    expect(found('[{"a":1},{"a":2,"a":3}]')).toEqual([['duplicate-name', 16]]);
  });

  it('are found again among as many as there may be', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(60), { maxLength: 120 }), (numbers) => {
        const members: string[] = [];
        const expected: Found[] = [];
        const seen = new Set<number>();
        let at = 1;
        numbers.forEach((number, k) => {
          if (seen.has(number)) expected.push(['duplicate-name', at]);
          seen.add(number);
          const letter = k % 7 === 0 ? `\\u${(0x4e00 + number).toString(16)}` : String.fromCharCode(0x4e00 + number);
          const member = `"${letter}":${k}`;
          members.push(member);
          at += new TextEncoder().encode(member).length + 1;
        });
        expect(found(`{${members.join(',')}}`)).toEqual(expected);
      }),
      { seed: 3 },
    );
  });
});

describe('numbers', () => {
  it('keep or lose digits as section 2.1 of the specification says', () => {
    const keeps = ['0.1', '0.10000000000000001', '1.50', '0', '-0', '0.000', '1e22', '100000000000000000000', '5e-324'];
    const more = [
      '4.9406564584124654e-324',
      '1.7976931348623157e308',
      '9007199254740992',
      '0.30000000000000004',
      '12E-1',
    ];
    for (const text of [...keeps, ...more]) expect([text, losesDigits(text, Number(text))]).toEqual([text, false]);
    const loses = ['9007199254740993', '0.100000000000000001', '12345678901234567890', '1e-400', '4.9e-324'];
    for (const text of loses) expect([text, losesDigits(text, Number(text))]).toEqual([text, true]);
  });

  it('keep the digits that a double is printed with, and any 15 digits (IEEE 754: DBL_DIG is 15)', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(losesDigits(String(value), value)).toBe(false);
        expect(losesDigits(value.toPrecision(17), value)).toBe(false);
        expect(losesDigits(value.toExponential(), value)).toBe(false);
      }),
      { numRuns: 2000, seed: 4 },
    );
    fc.assert(
      fc.property(fc.bigInt(0n, 999_999_999_999_999n), fc.integer({ min: -290, max: 290 }), (digits, exponent) => {
        const text = `${digits}e${exponent}`;
        expect([text, losesDigits(text, Number(text))]).toEqual([text, false]);
      }),
      { numRuns: 2000, seed: 5 },
    );
  });

  it('lose some of more than 17 digits, since no double is written with so many', () => {
    fc.assert(
      fc.property(fc.bigInt(10n ** 23n, 10n ** 24n - 1n), fc.integer({ min: 1, max: 9 }), (digits, last) => {
        const text = `${digits}${last}`;
        expect([text, losesDigits(text, Number(text))]).toEqual([text, true]);
      }),
      { numRuns: 500, seed: 6 },
    );
  });

  it('are found at their first character, with the value that is read', () => {
    expect(scan('[1, 9007199254740993]').faults).toEqual([
      { rule: 'number-loses-digits', at: 4, data: { written: '9007199254740993', read: '9007199254740992' } },
    ]);
    expect(found('[1e308,-1e309,1.7976931348623159e308]')).toEqual([
      ['number-out-of-range', 7],
      ['number-out-of-range', 14],
    ]);
    expect(scan(`[1${'0'.repeat(400)}]`).faults[0].data.written).toHaveLength(60);
  });
});

describe('escapes', () => {
  it('of one letter are the eight of RFC 8259', () => {
    for (let c = 33; c < 127; c++) {
      const letter = String.fromCharCode(c);
      const isEscape = '"\\/bfnrt'.includes(letter);
      if (letter === 'u') continue;
      expect([letter, found(`["\\${letter}"]`)]).toEqual([letter, isEscape ? [] : [['json-syntax', 3]]]);
    }
  });

  it('of four hexadecimal digits find surrogates without partner', () => {
    expect(found('["\\u00e9\\u00E9"]')).toEqual([]);
    expect(found('["\\uD83D\\uDE00"]')).toEqual([]);
    expect(found('["\\ud800"]')).toEqual([['lone-surrogate', 2]]);
    expect(found('["\\uDC00"]')).toEqual([['lone-surrogate', 2]]);
    expect(found('["\\uDE00\\uD83D"]')).toEqual([
      ['lone-surrogate', 2],
      ['lone-surrogate', 8],
    ]);
    expect(found('["\\uD83D\\uD83D\\uDE00"]')).toEqual([['lone-surrogate', 2]]);
    expect(found('["\\uD83Dx\\uDE00"]')).toEqual([
      ['lone-surrogate', 2],
      ['lone-surrogate', 9],
    ]);
    expect(found('{"\\uD83D":1}')).toEqual([['lone-surrogate', 2]]);
    expect(found('["\\uD83D\\uDEx0"]')).toEqual([['json-syntax', 12]]);
  });

  it('find the 66 noncharacters of Unicode and no other code point, written out or escaped', () => {
    const points = [...Array.from({ length: 0x10000 - 0xe000 }, (_, k) => 0xe000 + k), 0x41, 0xe9, 0xd7ff];
    for (let plane = 1; plane <= 16; plane++) for (let k = -4; k < 4; k++) points.push(plane * 0x10000 + k);
    for (let k = -4; k < 0; k++) points.push(0x110000 + k);
    const seen = new Set<number>();
    for (const point of points) {
      const text = String.fromCodePoint(point);
      const escaped = [...Array(text.length).keys()].map(
        (k) => `\\u${text.charCodeAt(k).toString(16).padStart(4, '0')}`,
      );
      const raw = found(`["${text}"]`);
      expect([point, found(`["${escaped.join('')}"]`)]).toEqual([point, raw]);
      if (raw.length > 0) {
        expect(raw).toEqual([['noncharacter', 2]]);
        seen.add(point);
      }
    }
    const expected = Array.from({ length: 32 }, (_, k) => 0xfdd0 + k);
    for (let plane = 0; plane <= 16; plane++) expected.push(plane * 0x10000 + 0xfffe, plane * 0x10000 + 0xffff);
    expect([...seen].sort((a, b) => a - b)).toEqual(expected.sort((a, b) => a - b));
    expect(seen.size).toBe(66);
  });
});

describe('bytes in a text that are not UTF-8', () => {
  const inText = (...bytes: number[]) => [0x5b, 0x22, ...bytes, 0x22, 0x5d];

  it('are found one by one, and the scan goes on', () => {
    expect(scan(inText(0xe9))).toMatchObject({ outcome: 'whole', found: [['not-utf8', 2]] });
    expect(scan(inText(0x80, 0x41, 0xff)).found).toEqual([
      ['not-utf8', 2],
      ['not-utf8', 4],
    ]);
    expect(scan(inText(0xe9)).faults[0].data).toEqual({ found: '0xE9' });
  });

  it('include overlong forms, surrogates and what lies beyond U+10FFFF', () => {
    for (const bytes of [
      [0xc0, 0xaf],
      [0xe0, 0x9f, 0xbf],
      [0xf0, 0x8f, 0xbf, 0xbf],
      [0xed, 0xa0, 0x80],
      [0xed, 0xbf, 0xbf],
      [0xf4, 0x90, 0x80, 0x80],
    ]) {
      expect(scan(inText(...bytes)).found[0]).toEqual(['not-utf8', 2]);
    }
  });

  it('do not include the first and the last sequence of each length, and those beside the surrogates', () => {
    for (const point of [0x80, 0x7ff, 0x800, 0xd7ff, 0xe000, 0xfffd, 0x10000, 0x10fffd]) {
      expect([point, found(`["${String.fromCodePoint(point)}"]`)]).toEqual([point, []]);
    }
  });

  it('are the ones that a strict decoder refuses', () => {
    const strict = new TextDecoder('utf-8', { fatal: true });
    const random = newRandom(7);
    const edges = [
      0x20, 0x41, 0x7f, 0x80, 0x8f, 0x90, 0x9f, 0xa0, 0xbf, 0xc0, 0xc1, 0xc2, 0xdf, 0xe0, 0xe1, 0xed, 0xee, 0xef, 0xf0,
      0xf1, 0xf4, 0xf5, 0xff,
    ];
    for (let k = 0; k < 20_000; k++) {
      const bytes = Array.from({ length: 1 + Math.floor(random() * 5) }, () => pick(random, edges));
      let isUtf8 = true;
      try {
        strict.decode(Uint8Array.from(bytes));
      } catch {
        isUtf8 = false;
      }
      const bad = found(inText(...bytes)).filter(([rule]) => rule === 'not-utf8');
      expect([bytes, bad.length === 0]).toEqual([bytes, isUtf8]);
    }
  });

  it('wait for the rest of a sequence that is cut off', () => {
    expect(scan([0x5b, 0x22, 0xe2, 0x82], false).outcome).toBe('incomplete');
    expect(scan([0x5b, 0x22, 0xe2, 0x82]).found[0]).toEqual(['not-utf8', 2]);
  });
});
