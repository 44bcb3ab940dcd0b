import fc from 'fast-check';
import jsonpatch from 'fast-json-patch';
import { describe, expect, it } from 'vitest';
import { planEdits } from '../../src/edit/plan-edits.js';
import { edited } from '../../src/edit/text-edit.js';
import type { Fix, FixOperation } from '../../src/model/fix.js';
import { manners, parsed, written } from './random-edits.js';

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

/** The text with the patches of fixes made, and why those that are not are not. */
function planned(text: string, ...fixes: (FixOperation[] | Fix)[]) {
  const bytes = encoder.encode(text);
  const { edits, refused, patch } = planEdits(
    bytes,
    fixes.map((fix) => (Array.isArray(fix) ? { patch: fix } : fix)),
  );
  return { text: decoder.decode(edited(bytes, edits)), refused, patch };
}

const rename = (from: string, path: string): FixOperation => ({ op: 'move', from, path });
const replace = (path: string, value: unknown): FixOperation => ({ op: 'replace', path, value });
const remove = (path: string): FixOperation => ({ op: 'remove', path });
const add = (path: string, value: unknown): FixOperation => ({ op: 'add', path, value });

describe('edits that are planned', () => {
  it.each([
    ['a value', '{ "a" : 1.50,\t"b":2e3 }', [replace('/a', 'x')], '{ "a" : "x",\t"b":2e3 }'],
    ['a name', '{ "aa" : 1.50,\t"b":2e3 }', [rename('/aa', '/a')], '{ "a" : 1.50,\t"b":2e3 }'],
    ['a name with escapes', '{ "\\u0069d": 1 }', [rename('/id', '/ident')], '{ "ident": 1 }'],
    ['names with ~ and /', '{ "a~b": { "c/d": 1 } }', [replace('/a~0b/c~1d', 2)], '{ "a~b": { "c/d": 2 } }'],
    ['a new name with ~ and /', '{ "a": 1 }', [rename('/a', '/b~0c~1d')], '{ "b~c/d": 1 }'],
    ['the whole document', ' [1]\r\n', [replace('', { a: 1 })], ' {"a":1}\r\n'],
    ['the first member', '{\r\n  "a": 1,\r\n  "b": 2\r\n}', [remove('/a')], '{\r\n  "b": 2\r\n}'],
    ['the last member', '{\n  "a": 1 ,\n  "b": 2\n}', [remove('/b')], '{\n  "a": 1\n}'],
    ['a member between', '{ "a": 1, "b": 2, "c": 3 }', [remove('/b')], '{ "a": 1, "c": 3 }'],
    ['the only member', '{ "x": { "a": 1 } }', [remove('/x/a')], '{ "x": {} }'],
    ['all members', '{ "a": 1, "b": 2 }', [remove('/a'), remove('/b')], '{}'],
    ['neighbours', '[0, 1, 2, 3, 4]', [remove('/1'), remove('/2')], '[0, 3, 4]'],
    ['the first two and the last', '[0, 1, 2, 3]', [remove('/0'), remove('/3'), remove('/1')], '[2]'],
    [
      'the height of a point',
      '"point": 0'.replace(/.*/, '{"point": [1.0, 2.0, 3.0]}'),
      [remove('/point/2')],
      '{"point": [1.0, 2.0]}',
    ],
    ['a new member', '{\n\t"a" : 1\n}', [add('/b', [2])], '{\n\t"a" : 1,\n\t"b" : [2]\n}'],
    ['a new member after two', '{ "a": 1,  "c":  1 }', [add('/b', 2)], '{ "a": 1,  "c":  1,  "b":  2 }'],
    ['new members of an empty object', '{ "x": {} }', [add('/x/b', 2), add('/x/c', 3)], '{ "x": {"b": 2,"c": 3} }'],
    ['a new element', '[1, 2]', [add('/-', 3), add('/2', 4)], '[1, 2, 3, 4]'],
  ])('change %s and nothing else', (_, before, patch, after) => {
    expect(planned(before, patch)).toMatchObject({ text: after, refused: [undefined] });
  });

  it('take the byte order mark out together with others', () => {
    const result = planned('\uFEFF{ "aa": 1 }', { byteOrderMark: 'remove' }, [rename('/aa', '/a')]);
    expect(result).toEqual({ text: '{ "a": 1 }', refused: [undefined, undefined], patch: [rename('/aa', '/a')] });
  });

  it('are made once where two fixes want the same', () => {
    const both = planned(
      '{ "id": "A ", "to": "A " }',
      [replace('/id', 'A'), replace('/to', 'A')],
      [replace('/to', 'A')],
    );
    expect(both.text).toBe('{ "id": "A", "to": "A" }');
    expect(both.patch).toHaveLength(2);
  });

  it('leave both fixes out where they want different things, and make the others', () => {
    const { text, refused } = planned('{ "a": 1, "b": 2 }', [replace('/a', 2)], [replace('/a', 3)], [replace('/b', 4)]);
    expect(text).toBe('{ "a": 1, "b": 4 }');
    expect(refused).toEqual(['2 changes at "/a" overlap', '2 changes at "/a" overlap', undefined]);
  });

  it.each([
    [
      'a value inside another',
      '{ "a": [1, 2] }',
      [replace('/a', 1)],
      [remove('/a/1')],
      '2 changes at "/a", "/a/1" overlap',
    ],
    [
      'one new name',
      '{ "aa": 1, "ab": 2 }',
      [rename('/aa', '/a')],
      [rename('/ab', '/a')],
      '2 changes at "/aa", "/ab" overlap',
    ],
    ['a member of a value that goes', '{ "a": {} }', [add('/a/b', 1)], [replace('/a', 1)], '2 changes at "/a" overlap'],
    [
      'a member that comes and one that goes',
      '{ "a": 1 }',
      [add('/b', 1)],
      [remove('/a')],
      '2 changes at "", "/a" overlap',
    ],
  ])('leave both fixes out that touch %s', (_, before, one, other, why) => {
    expect(planned(before, one, other)).toEqual({ text: before, refused: [why, why], patch: [] });
  });

  it.each([
    [
      'a name comes twice',
      '{ "a": { "b": 1 }, "a": { "b": 2 } }',
      replace('/a/b', 3),
      'a name on the way to "/a/b" comes twice',
    ],
    [
      'a name comes twice, once with an escape',
      '{ "a": 1, "\\u0061": 2 }',
      replace('/a', 3),
      'a name on the way to "/a" comes twice',
    ],
    ['nothing is there', '{ "a": [1] }', replace('/a/1', 3), 'there is nothing at "/a/1"'],
    ['the new name is there', '{ "aa": 1, "a": 2 }', rename('/aa', '/a'), 'there is a "/a" already'],
    ['the member would move', '{ "a": {}, "b": 2 }', rename('/b', '/a/b'), '"/b" would leave its object'],
    ['an element has no name', '[1]', rename('/0', '/a'), '"/0" would leave its object'],
    ['an element would move others', '[1, 2]', add('/0', 3), 'there is a "/0" already'],
    ['there is no end of the list', '[1, 2]', add('/3', 3), '"/3" is not the end of a list'],
    ['a number is no list', '{ "a": 1 }', add('/a/b', 3), '"/a/b" is not the end of a list'],
    ['all would go', '{ "a": 1 }', remove(''), 'it is the document itself'],
  ])('leave a fix out where %s', (_, before, operation, why) => {
    expect(planned(before, [operation])).toEqual({ text: before, refused: [why], patch: [] });
  });

  it('deal with the byte order mark alone in a text that is no JSON', () => {
    const bytes = encoder.encode('\uFEFF{ "a": ');
    const plan = planEdits(bytes, [{ byteOrderMark: 'remove' }, { patch: [replace('/a', 1)] }], false);
    expect(decoder.decode(edited(bytes, plan.edits))).toBe('{ "a": ');
    expect(plan.refused).toEqual([undefined, 'the text is no JSON to its end']);
  });
});

/** Pointers of all values of a document, with what holds each. */
function pointersIn(value: unknown, pointer = ''): string[] {
  if (typeof value !== 'object' || value === null) return [pointer];
  const escaped = (name: string) => name.replaceAll('~', '~0').replaceAll('/', '~1');
  return [pointer, ...Object.entries(value).flatMap(([name, item]) => pointersIn(item, `${pointer}/${escaped(name)}`))];
}

describe('any edits of any document', () => {
  const names = fc.constantFrom('a', 'b', 'id', 'a~b', 'c/d', 'é', '"', '');
  const { document } = fc.letrec((tie) => ({
    document: fc.oneof(
      { maxDepth: 4, depthSize: 'medium' },
      fc.constantFrom(1, -0.5, 'text', 'né\n', true, null),
      fc.array(tie('document'), { maxLength: 4 }),
      fc.dictionary(names, tie('document'), { maxKeys: 4, noNullPrototype: true }),
    ),
  }));
  const wishes = fc.array(fc.tuple(fc.nat(), fc.constantFrom('replace', 'remove', 'rename', 'add'), fc.nat(99)), {
    minLength: 1,
    maxLength: 6,
  });

  function operationOf(pointers: readonly string[], [at, what, n]: [number, string, number]): FixOperation {
    const pointer = pointers[at % pointers.length];
    if (what === 'replace') return replace(pointer, n);
    if (what === 'remove') return remove(pointer);
    if (what === 'add') return add(`${pointer}/new${n}`, n);
    return rename(pointer, `${pointer.slice(0, pointer.lastIndexOf('/'))}/other${n}`);
  }

  // Against the package fast-json-patch 3.1.1, which applies the patch to the parsed document.
  it('give the text of what the JSON Patch gives', () => {
    let made = 0;
    fc.assert(
      fc.property(document, manners, wishes, (value, manner, wished) => {
        const bytes = written(value, manner);
        const pointers = pointersIn(value);
        const fixes = wished.map((wish): Fix => ({ patch: [operationOf(pointers, wish as [number, string, number])] }));
        const { edits, patch, refused } = planEdits(bytes, fixes);
        const result = edited(bytes, edits);
        const expected = jsonpatch.applyPatch(structuredClone(parsed(bytes)), patch as never, true).newDocument;
        expect(parsed(result)).toEqual(expected);
        made += refused.filter((why) => why === undefined).length;
        // Nothing but what was asked for is new.
        const kept = bytes.length - edits.reduce((sum, { start, end }) => sum + end - start, 0);
        expect(result.length - edits.reduce((sum, { text }) => sum + text.length, 0)).toBe(kept);
      }),
      { numRuns: 1000, seed: 3 },
    );
    expect(made).toBeGreaterThan(500);
  });
});
