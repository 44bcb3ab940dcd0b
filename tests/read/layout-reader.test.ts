import { describe, expect, it } from 'vitest';
import { holeReferences } from '../../src/model/hole-row.js';
import type { Observation } from '../../src/model/observation.js';
import { LayoutReader } from '../../src/read/layout-reader.js';
import { newRandom, pick } from './random.js';

const encoder = new TextEncoder();

/** Reads every hole with the scanner and the validator, none with the decoder of plain holes. */
class CarefulReader extends LayoutReader {
  override takeFast(): number {
    return -1;
  }
}

function read(text: string, Reader: typeof LayoutReader = LayoutReader, chunk = Number.POSITIVE_INFINITY) {
  const found: Observation[] = [];
  const reader = new Reader((observation) => found.push(observation));
  const bytes = encoder.encode(text);
  for (let at = 0; at < bytes.length; at += chunk) reader.write(bytes.subarray(at, Math.min(bytes.length, at + chunk)));
  reader.end();
  const { holes } = reader.model;
  const rows = Array.from({ length: holes.count }, (_, i) => ({
    id: holes.id(i),
    point: [holes.x[i], holes.y[i], holes.z[i]],
    axis: holes.axis[i] < 0 ? undefined : holes.axes.slice(holes.axis[i] * 3, holes.axis[i] * 3 + 3),
    sizes: [holes.diameterOf(i), holes.depthOf(i)],
    references: holeReferences.map((path) => holes.referenceOf(path, i)),
    tagHash: holes.tagHashOf(i),
    tolerance: holes.positionToleranceOf(i),
    byte: holes.byte[i],
    broken: holes.broken[i],
  }));
  const { complete, records, otherVersion, scanned, model } = reader;
  const byteLength = bytes.length;
  return { found, rows, complete, records, hasBroken: model.hasBroken, otherVersion, scanned, byteLength, model };
}

/** What two ways of reading must agree on. */
function essence({ found, rows, complete, records, hasBroken }: ReturnType<typeof read>) {
  return { found, rows, complete, records, hasBroken };
}

const header =
  '"ahx":"0.1","kind":"layout","id":"L","revision":{"label":"A"},"frame":{"name":"F","heightDatum":"floor"}';
const holes = [
  '{"id":"H-1","trade":"FP","holeType":"T","point":[1,2,3]}',
  '{ "id" : "H-2" , "tag" : "é 10\'-6\\"" ,\n\t"trade" : "FP", "holeType":"T", "substrate":"S","level":"L","area":"A","group":"G","role":"left", "point" : [ -0.5 , 12.0625, 0 ] , "axis":[0,0,1],"diameter":12.7,"depth":60 }',
  '{"point":[1,2],"holeType":"T","trade":"FP","id":"h-1","origin":{"row":7,"code":"HGR","source":"D"},"above":{"level":"L","protectedBy":"P"}}',
  '{"id":"\\u0041","trade":"FP","holeType":"T","point":[1e3,2.5E-1,1234567890.123456789]}',
  '{"id":"ø","trade":"FP","holeType":"T","point":[1,2,3],"positionTolerance":{"radius":3},"depthTolerance":[-1,1],"moveAllowance":{"along":5,"across":0,"ask":"ask-first"},"ext":{"urn:x":{"a":[{}]}}}',
];

describe('the reader of layouts', () => {
  it('reads plain holes with the decoder as it does with the scanner, whatever is changed in them', () => {
    const random = newRandom(51);
    const letters = [...'{}[]":,\\ \n0123456789.-eEtfnu/\u0001é𝄞aidponthxz'];
    let broken = 0;
    for (let k = 0; k < 6000; k++) {
      const text = [...pick(random, holes)];
      for (let changes = Math.floor(random() * 3); changes > 0; changes--) {
        const at = Math.floor(random() * text.length);
        text.splice(at, random() < 0.7 ? 1 : 0, ...(random() < 0.8 ? [pick(random, letters)] : []));
      }
      const layout = `{${header},"holes":[${text.join('')},${holes[0]}],"trades":[],"holeTypes":[]}`;
      const fast = essence(read(layout));
      if (fast.found.length > 0) broken++;
      expect([layout, fast]).toEqual([layout, essence(read(layout, CarefulReader))]);
    }
    expect(broken).toBeGreaterThan(1000);
    expect(broken).toBeLessThan(5900);
  });

  it('gives the same model and observations however the bytes are cut', () => {
    const layout = `{${header},"holes":[${holes.join(',\r\n')},{"id":7}],"trades":[{"id":"FP","name":"N","x":1}],"holeTypes":[],"z":[1e999]}`;
    const whole = essence(read(layout));
    for (const chunk of [1, 2, 3, 7, 64]) expect(essence(read(layout, LayoutReader, chunk))).toEqual(whole);
    expect(whole.rows.map(({ id, broken }) => [id, broken])).toEqual([
      ['H-1', 0],
      ['H-2', 0],
      ['h-1', 0],
      ['A', 0],
      ['ø', 0],
      ['', 1],
    ]);
  });

  it('keeps numbers, axes and references in columns', () => {
    const { rows, model } = read(`{${header},"trades":[],"holeTypes":[],"holes":[${holes.slice(0, 3).join(',')}]}`);
    expect(rows[1]).toMatchObject({ point: [-0.5, 12.0625, 0], axis: [0, 0, 1], sizes: [12.7, 60] });
    expect(rows[2].point).toEqual([1, 2, Number.NaN]);
    expect(rows[2].axis).toBeUndefined();
    expect(rows[0].sizes).toEqual([Number.NaN, Number.NaN]);
    expect(model.collection('sources').names.text(model.holes.referenceOf('origin.source', 2))).toBe('D');
    expect(model.collection('parties').names.find('P')).toBe(model.holes.referenceOf('above.protectedBy', 2));
    expect(model.holes.referenceOf('group', 0)).toBe(-1);
    expect(model.holes.lookalikes).toEqual([[2, 0]]);
  });

  it('gives equal tags equal hashes, however they are written', () => {
    const tags = ['"3/8\\" é"', '"3\\/8\\u0022 é"', '"3/8\\u0022\\u0020\\u00E9"', '"3/8\\" e"'];
    const written = tags.map((tag, k) => `{"id":"H-${k}","tag":${tag},"trade":"FP","holeType":"T","point":[1,2,3]}`);
    const text = `{${header},"holes":[${written.join(',')},${holes[0]}],"trades":[],"holeTypes":[]}`;
    for (const { rows, found } of [read(text), read(text, CarefulReader)]) {
      const hashes = rows.map(({ tagHash }) => tagHash);
      expect(found).toEqual([]);
      expect(hashes.slice(1, 3)).toEqual([hashes[0], hashes[0]]);
      expect(new Set(hashes).size).toBe(3);
      expect(hashes[4]).toBe(0);
    }
  });

  it('keeps the id of a broken record as declared, and its record out of the model', () => {
    const { model, hasBroken } = read(
      `{${header},"trades":[{"id":"FP"},{"id":"EL","name":"E"}],"holeTypes":[],"holes":[]}`,
    );
    const trades = model.collection('trades');
    expect(hasBroken).toBe(true);
    expect(trades.records[0]).toBeUndefined();
    expect([trades.isDefined('FP'), trades.isDefined('EL'), trades.isDefined('XX')]).toEqual([true, true, false]);
    expect(trades.definedIds()).toEqual(['FP', 'EL']);
  });

  it('finds members of the header that are missing, unknown or broken', () => {
    const text = '{"ahx":"0.1","kind":"layout","id":7,"revison":{"label":"A"},"frame":{"name":"F","heightDatum":"x"}}';
    const { found, hasBroken } = read(text);
    expect(found.map(({ rule, at, data }) => [rule, at.pointer, at.byte, data.member ?? data.expected])).toEqual([
      ['wrong-type', '/id', text.indexOf('7'), 'a text'],
      ['unknown-member', '/revison', text.indexOf('"revison"'), 'revison'],
      ['missing-member', '', 0, 'trades'],
      ['missing-member', '', 0, 'holeTypes'],
      ['missing-member', '', 0, 'holes'],
    ]);
    expect(hasBroken).toBe(true);
  });

  it('says that the root is no object, and does not ask for its members', () => {
    for (const [text, kind] of [
      ['[1]', 'an array'],
      ['"x"', 'a single value'],
    ]) {
      const { found, complete } = read(text);
      expect(found.map(({ rule, data }) => [rule, data.found])).toEqual([['wrong-type', kind]]);
      expect(complete).toBe(false);
    }
  });

  it('looks at no byte more than twice in a layout of many holes', () => {
    const many = Array.from({ length: 20_000 }, (_, k) => holes[k % 3].replace(/"[Hh]-\d"/, `"H-${k}"`));
    const { scanned, byteLength, rows } = read(
      `{${header},"trades":[],"holeTypes":[],"holes":[${many.join(',\n')}]}`,
      LayoutReader,
      65_536,
    );
    expect(rows).toHaveLength(20_000);
    expect(scanned).toBeLessThan(2 * byteLength);
  });
});

describe('a layout of another version', () => {
  const withVersion = (version: string) =>
    read(`{${header.replace('"0.1"', version)},"trades":[],"holeTypes":[],"holes":[],"future":1}`);

  it('of a later minor is read, unknown members being an info', () => {
    const { found, otherVersion } = withVersion('"0.2"');
    expect(otherVersion).toBe('0.2');
    expect(found.map(({ rule, severity }) => [rule, severity])).toEqual([
      ['unsupported-version', 'warning'],
      ['unknown-member', 'info'],
    ]);
  });

  it('of another major or an earlier minor is an error', () => {
    for (const version of ['"1.0"', '"0.0"', '"2.13"']) {
      expect(withVersion(version).found.map(({ rule, severity }) => [rule, severity])).toEqual([
        ['unsupported-version', undefined],
        ['unknown-member', undefined],
      ]);
    }
  });

  it('that is no version at all is a fault of form', () => {
    for (const version of ['"1"', '"v0.1"', '""', '"0.01"'])
      expect(withVersion(version).found[0].rule).toBe('bad-text');
    expect(withVersion('0.1').found[0].rule).toBe('wrong-type');
  });
});
