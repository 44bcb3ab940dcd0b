import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/model/observation.js';
import { beyondSchema } from '../../src/read/beyond-schema.js';
import { LayoutReader } from '../../src/read/layout-reader.js';

function faults(value: unknown): [rule: string, pointer: string][] {
  return beyondSchema(value).map(({ rule, tokens }) => [rule, `/${tokens.join('/')}`]);
}

describe('beyondSchema', () => {
  it('wants ids in normalisation form C, at any depth', () => {
    expect(faults({ id: 'caf\u00e9' })).toEqual([]);
    expect(faults({ id: 'cafe\u0301' })).toEqual([['bad-text', '/id']]);
    expect(faults({ list: [{ id: 'A' }, { id: '\u2126' }] })).toEqual([['bad-text', '/list/1/id']]);
    expect(faults({ name: 'cafe\u0301' })).toEqual([]);
  });

  it('wants directions to have a length', () => {
    for (const name of ['axis', 'run', 'inward', 'extrude']) {
      expect(faults({ [name]: [0, 0, 0] })).toEqual([['out-of-range', `/${name}`]]);
      expect(faults({ [name]: [0, -0, 1e-9] })).toEqual([]);
    }
    expect(faults({ point: [0, 0, 0] })).toEqual([]);
  });

  it('wants the lower limit first', () => {
    for (const name of ['along', 'across', 'height', 'diameterTolerance', 'depthTolerance']) {
      expect(faults({ [name]: [1, -1] })).toEqual([['out-of-range', `/${name}`]]);
      expect(faults({ [name]: [-1, 1] })).toEqual([]);
      expect(faults({ [name]: [2, 2] })).toEqual([]);
    }
    expect(faults({ along: 5 })).toEqual([]);
    expect(faults({ along: ['b', 'a'] })).toEqual([]);
  });

  it('leaves additions alone', () => {
    expect(faults({ ext: { 'urn:x': { id: 'e\u0301', axis: [0, 0, 0] } } })).toEqual([]);
    expect(faults(null)).toEqual([]);
    expect(faults('e\u0301')).toEqual([]);
  });

  it('says nothing about a value that the schema has spoken of already', () => {
    const found: Observation[] = [];
    const reader = new LayoutReader((observation) => found.push(observation));
    reader.write(new TextEncoder().encode('{"trades":[{"id":" e\u0301","name":"N"},{"id":"e\u0301","name":"N"}]'));
    reader.end();
    const texts = found.filter(({ rule }) => rule === 'bad-text').map(({ at }) => at.pointer);
    expect(texts).toEqual(['/trades/0/id', '/trades/1/id']);
  });
});
