import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromPointer, positionOf, tokensTo, toPointer } from '../../src/read/locate.js';
import { Scanner } from '../../src/read/scan.js';
import { padded } from './padded.js';

function position(text: string, tokens: string[], aim: 'value' | 'name' = 'value'): number {
  return positionOf(padded(text).bytes, 0, tokens, aim);
}

function tokensAt(text: string, at: number): string[] {
  return tokensTo(padded(text).bytes, 0, at);
}

/** Tokens of every value inside a value, the value itself included. */
function* ways(value: unknown, tokens: string[] = []): Generator<[tokens: string[], value: unknown]> {
  yield [tokens, value];
  if (typeof value !== 'object' || value === null) return;
  for (const [name, member] of Object.entries(value)) yield* ways(member, [...tokens, name]);
}

/** Values whose names need escapes in JSON or in a JSON Pointer. */
const values = fc.letrec((tie) => ({
  value: fc.oneof({ depthSize: 'small', withCrossShrink: true }, tie('leaf'), tie('array'), tie('object')),
  leaf: fc.oneof(fc.string(), fc.double({ noNaN: true, noDefaultInfinity: true }), fc.boolean(), fc.constant(null)),
  array: fc.array(tie('value'), { maxLength: 4 }),
  object: fc.dictionary(
    fc.oneof(fc.string({ maxLength: 4, unit: 'grapheme' }), fc.constantFrom('', '/', '~', '~1', '"', '\\', '0', 'é\n')),
    tie('value'),
    { maxKeys: 4 },
  ),
})).value;

describe('positionOf and tokensTo', () => {
  it('lead there and back for every value of random JSON', () => {
    fc.assert(
      fc.property(values, fc.constantFrom(undefined, 1, '\t', '\r\n '), (value, indent) => {
        const text = JSON.stringify(value, null, indent)?.replaceAll('\n', typeof indent === 'string' ? indent : '\n');
        const { bytes, limit } = padded(text);
        const scanner = new Scanner();
        for (const [tokens, member] of ways(value)) {
          const at = positionOf(bytes, 0, tokens, 'value');
          expect(scanner.scan(bytes, at, limit, true)).toBe('whole');
          const found: unknown = JSON.parse(new TextDecoder().decode(bytes.subarray(at, scanner.end)));
          expect(JSON.stringify(found)).toBe(JSON.stringify(member));
          expect(tokensTo(bytes, 0, at)).toEqual(tokens);
          expect(tokensTo(bytes, 0, scanner.end - 1)).toEqual(tokens);
        }
      }),
      { numRuns: 300, seed: 21 },
    );
  });

  it('lead to the names of members and back', () => {
    fc.assert(
      fc.property(values, (value) => {
        const { bytes, limit } = padded(JSON.stringify(value, null, 1));
        const scanner = new Scanner();
        for (const [tokens] of ways(value)) {
          const at = positionOf(bytes, 0, tokens, 'name');
          expect(tokensTo(bytes, 0, at)).toEqual(tokens);
          if (bytes[at] !== 34 || bytes[positionOf(bytes, 0, tokens.slice(0, -1), 'value')] !== 123) continue;
          scanner.scan(bytes, at, limit, true);
          expect(JSON.parse(new TextDecoder().decode(bytes.subarray(at, scanner.end)))).toBe(tokens.at(-1));
        }
      }),
      { numRuns: 200, seed: 22 },
    );
  });

  it('find nested members, elements and names with escapes', () => {
    const text = '{ "a" : [ 10 , { "b\\/c" : { "~" : [ ] , "" : -1 } } ] , "\\u00e9" : "x}]" , "z":true }';
    expect(position(text, ['a'])).toBe(text.indexOf('['));
    expect(position(text, ['a', '0'])).toBe(text.indexOf('10'));
    expect(position(text, ['a', '1', 'b/c'])).toBe(text.indexOf('{ "~"'));
    expect(position(text, ['a', '1', 'b/c'], 'name')).toBe(text.indexOf('"b'));
    expect(position(text, ['a', '1', 'b/c', ''])).toBe(text.indexOf('-1'));
    expect(position(text, ['é'])).toBe(text.indexOf('"x}]"'));
    expect(position(text, ['é'], 'name')).toBe(text.indexOf('"\\u00e9"'));
    expect(position(text, ['z'])).toBe(text.indexOf('true'));
    expect(tokensAt(text, text.indexOf('x}]'))).toEqual(['é']);
    expect(tokensAt(text, text.indexOf('-1') + 1)).toEqual(['a', '1', 'b/c', '']);
    expect(tokensAt(text, text.indexOf('"z"'))).toEqual(['z']);
  });

  it('start at any position of the bytes', () => {
    const { bytes } = padded('[[1],{"a":2}]');
    expect(positionOf(bytes, 5, ['a'], 'value')).toBe(10);
    expect(tokensTo(bytes, 5, 10)).toEqual(['a']);
  });

  it('take the last of equal names, as parsers do, and tell the first one by its bytes', () => {
    const text = '{"a":1,"\\u0061":2}';
    expect(position(text, ['a'])).toBe(16);
    expect(position(text, ['a'], 'name')).toBe(7);
    expect(tokensAt(text, 5)).toEqual(['a']);
  });

  it('stop at the last value on a way that leads nowhere', () => {
    const text = '{"a":[1,{"b":2}]}';
    expect(position(text, ['x'])).toBe(0);
    expect(position(text, ['a', '7'])).toBe(5);
    expect(position(text, ['a', '1', 'c', 'd'])).toBe(8);
    expect(position(text, ['a', '0', 'c'])).toBe(6);
    expect(position('7', ['a'])).toBe(0);
  });

  it('give the value around a byte that lies between members or elements', () => {
    const text = '{ "a" : [ 1 , 2 ] , "b" : 3 }';
    expect(tokensAt(text, 0)).toEqual([]);
    expect(tokensAt(text, 1)).toEqual([]);
    expect(tokensAt(text, text.indexOf(',', 14))).toEqual([]);
    expect(tokensAt(text, text.indexOf(', 2'))).toEqual(['a']);
    expect(tokensAt(text, text.indexOf('}'))).toEqual([]);
  });
});

describe('JSON Pointers', () => {
  it('are those of RFC 6901, section 5', () => {
    const pairs: [pointer: string, tokens: string[]][] = [
      ['', []],
      ['/foo/0', ['foo', '0']],
      ['/', ['']],
      ['/a~1b', ['a/b']],
      ['/c%d', ['c%d']],
      ['/i\\j', ['i\\j']],
      ['/k"l', ['k"l']],
      ['/ ', [' ']],
      ['/m~0n', ['m~n']],
      ['/~01', ['~1']],
    ];
    for (const [pointer, tokens] of pairs) {
      expect(toPointer(tokens)).toBe(pointer);
      expect(fromPointer(pointer)).toEqual(tokens);
    }
  });

  it('come back as the tokens that they were made from', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.string(), fc.constantFrom('~', '/', '~0', '~1'))), (tokens) => {
        expect(fromPointer(toPointer(tokens))).toEqual(tokens);
      }),
      { seed: 23 },
    );
  });
});
