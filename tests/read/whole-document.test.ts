import { describe, expect, it } from 'vitest';
import type { Observation } from '../../src/model/observation.js';
import { readWholeDocument } from '../../src/read/whole-document.js';

const sound = {
  ahx: '0.1',
  kind: 'column-profile',
  columns: [
    { column: 'Nr', field: 'id' },
    { column: 'East', field: 'x', unit: 'm' },
    { column: 'North', field: 'y', unit: 'm' },
  ],
  constants: { trade: 'FP', holeType: 'HT-1' },
};

function read(text: string | Uint8Array) {
  const found: Observation[] = [];
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  const { value } = readWholeDocument(bytes, 'column-profile', (observation) => found.push(observation));
  return {
    value,
    found: found.map(({ rule, at }) => [rule, at.pointer, at.byte]),
    data: found.map(({ data }) => data),
  };
}

describe('readWholeDocument', () => {
  it('gives the document where nothing is wrong with it', () => {
    expect(read(`\n${JSON.stringify(sound)}\n`)).toEqual({ value: sound, found: [], data: [] });
  });

  it('gives it too where there is only a warning', () => {
    const text = JSON.stringify(sound).replace('"0.1"', '"0.1","title":"A"');
    expect(read(`\ufeff${text}`)).toMatchObject({
      value: { ...sound, title: 'A' },
      found: [['byte-order-mark', '', 0]],
    });
    const layout = {
      id: 'L',
      revision: { label: 'A' },
      frame: { name: 'F', heightDatum: 'D' },
      trades: [],
      holeTypes: [],
      ext: { 'urn:example:n': 0 },
    };
    const lossy = JSON.stringify({ ...sound, layout }).replace('"urn:example:n":0', '"urn:example:n":9007199254740993');
    expect(read(lossy).value).toMatchObject({ layout: { ext: { 'urn:example:n': 9007199254740992 } } });
    expect(read(lossy).found).toEqual([['number-loses-digits', '/layout/ext/urn:example:n', lossy.indexOf('9007')]]);
  });

  it('judges the layout that a profile gives, at its place in the profile', () => {
    const text = JSON.stringify({ ...sound, layout: { id: 'L', revison: { label: 'A' }, trades: [{ id: 'T' }] } });
    const found = read(text).found.map(([rule, pointer]) => `${rule} ${pointer}`);
    expect(found.sort()).toEqual([
      'missing-member /layout',
      'missing-member /layout',
      'missing-member /layout/trades/0',
      'unknown-member /layout/revison',
    ]);
    expect(read(text).value).toBeUndefined();
  });

  it('finds text that is no JSON at its byte', () => {
    const text = JSON.stringify(sound);
    expect(read(`${text.slice(0, 20)}!`)).toMatchObject({ value: undefined, found: [['json-syntax', '', 20]] });
    expect(read(`${text} x`).found).toEqual([['json-syntax', '', text.length + 1]]);
    expect(read('').found).toEqual([['json-syntax', '', 0]]);
  });

  it('finds names that come twice and bytes that are not UTF-8 at their place', () => {
    const twice = '{"ahx":"0.1","kind":"column-profile","columns":[{"column":"A","column":"B","field":"id"}]}';
    expect(read(twice)).toMatchObject({
      value: undefined,
      found: [['duplicate-name', '/columns/0/column', twice.indexOf('"column":"B"')]],
    });
    const bytes = new TextEncoder().encode(JSON.stringify({ ...sound, title: '?' }));
    const at = bytes.indexOf(0x3f);
    bytes[at] = 0xe9;
    expect(read(bytes).found).toEqual([['not-utf8', '/title', at]]);
  });

  it('finds faults against the schema at their place, a misspelt member with what was meant', () => {
    const misspelt = { ...sound, columns: [{ column: 'Nr', feild: 'id' }], heigth: 'datum' };
    const text = JSON.stringify(misspelt, null, 2);
    const { value, found, data } = read(text);
    expect(value).toBeUndefined();
    expect(found.sort()).toEqual([
      ['unknown-member', '/columns/0/feild', text.indexOf('"feild"')],
      ['unknown-member', '/heigth', text.indexOf('"heigth"')],
    ]);
    expect(data.map(({ nearest }) => nearest).sort()).toEqual(['field', 'height']);
    const wrong = JSON.stringify({ ...sound, columns: [{ column: 'Nr', field: 'ids' }] });
    expect(read(wrong).found).toEqual([['not-a-choice', '/columns/0/field', wrong.indexOf('"ids"')]]);
    const missing = JSON.stringify({ ahx: '0.1', kind: 'column-profile' });
    expect(read(missing).found).toEqual([['missing-member', '', 0]]);
  });

  it('judges no document of another version, and takes what a later minor may have brought as info', () => {
    const severities: [string, string | undefined][] = [];
    const readAs = (ahx: string) => {
      severities.length = 0;
      const text = JSON.stringify({ ...sound, ahx, future: 1 });
      return readWholeDocument(new TextEncoder().encode(text), 'column-profile', ({ rule, severity }) =>
        severities.push([rule, severity]),
      );
    };
    expect(readAs('0.2')).toEqual({ value: undefined, otherVersion: '0.2' });
    expect(severities).toEqual([
      ['unsupported-version', 'warning'],
      ['unknown-member', 'info'],
    ]);
    expect(readAs('1.0')).toEqual({ value: undefined, otherVersion: '1.0' });
    expect(severities).toEqual([
      ['unsupported-version', undefined],
      ['unknown-member', undefined],
    ]);
  });
});
