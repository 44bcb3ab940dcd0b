import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { bases, CORPUS, type DerivedCase } from '../../src/build/derive-cases.js';
import { documentKinds, readSchemas, SCHEMA_BASE, type Schema, walkSchema } from '../../src/build/schema-source.js';
import { SCHEMA_VERSION } from '../../src/generated/schema-tables.js';
import { applyPatch } from '../conformance/apply-patch.js';

const root = join(import.meta.dirname, '../..');
const { shared, documents, folder } = readSchemas(root);
const sources: [name: string, schema: Schema][] = [['shared', shared], ...Object.entries(documents)];
const read = (path: string): unknown => JSON.parse(readFileSync(join(root, path), 'utf8'));

/** Paths of the schemas inside `schema` that `isWrong` holds for. */
function wrongPlaces(schema: Schema, isWrong: (node: Schema, path: string) => boolean): string[] {
  const wrong: string[] = [];
  walkSchema(schema, (node, path) => {
    if (isWrong(node, path)) wrong.push(path);
  });
  return wrong;
}

const portableWords = new Set(
  [
    '$schema $id $ref $defs allOf title description type enum properties required additionalProperties propertyNames',
    'minProperties maxProperties items minItems maxItems minLength maxLength pattern minimum maximum exclusiveMinimum',
  ].flatMap((line) => line.split(' ')),
);

describe.each(sources)('the schema %s', (name, schema) => {
  it('is addressed by the base, its version and its file name', () => {
    expect(schema.$id).toBe(`${SCHEMA_BASE}${SCHEMA_VERSION}/${name}.schema.json`);
  });

  it('describes every definition and every member', () => {
    const isUndescribed = ({ description = '' }: Schema, path: string) =>
      /\/(properties|\$defs)\/[^/]+$/.test(path) && !/^[A-Z`][^]+\.$/.test(description);
    expect(wrongPlaces(schema, isUndescribed)).toEqual([]);
  });

  it('closes every object that has named members and says of the others what they hold', () => {
    const isLeftOpen = (node: Schema) =>
      node.type === 'object' &&
      (node.properties === undefined ? node.additionalProperties === undefined : node.additionalProperties !== false);
    expect(wrongPlaces(schema, isLeftOpen)).toEqual([]);
  });

  it('uses only words that all implementations judge alike', () => {
    const hasOtherWord = (node: Schema) => Object.keys(node).some((word) => !portableWords.has(word));
    expect(wrongPlaces(schema, hasOtherWord)).toEqual([]);
  });

  it('wraps every reference that is described', () => {
    const isBareAndDescribed = ({ $ref, ...others }: Schema) => $ref !== undefined && Object.keys(others).length > 0;
    expect(wrongPlaces(schema, isBareAndDescribed)).toEqual([]);
  });

  it('says what every array holds', () => {
    expect(wrongPlaces(schema, ({ type, items }) => type === 'array' && items === undefined)).toEqual([]);
  });

  it('has patterns from start to end without classes that differ between engines', () => {
    const isLoose = ({ pattern }: Schema) =>
      pattern !== undefined && (!/^\^[^]*\$\(\?!\\n\)$/.test(pattern) || /\\[dDwWsSbBpP]/.test(pattern));
    expect(wrongPlaces(schema, isLoose)).toEqual([]);
  });

  it('requires only members that it describes', () => {
    const requiresUnknown = ({ required = [], properties = {} }: Schema) =>
      required.some((member) => !(member in properties));
    expect(wrongPlaces(schema, requiresUnknown)).toEqual([]);
  });
});

describe.each(documentKinds)('the single-file schema of a %s', (kind) => {
  const bundle = read(`${folder}/bundle/${kind}.schema.json`) as Schema;
  const open = read(`${folder}/open/${kind}.schema.json`) as Schema;

  it('has the address of its source and refers to nothing outside', () => {
    expect(bundle.$id).toBe(documents[kind].$id);
    expect(wrongPlaces(bundle, ({ $ref }) => $ref !== undefined && !$ref.startsWith('#/'))).toEqual([]);
  });

  it('has an open variant with an address of its own and no closed object', () => {
    expect(open.$id).toBe(`${SCHEMA_BASE}${SCHEMA_VERSION}/open/${kind}.schema.json`);
    expect(wrongPlaces(open, ({ additionalProperties }) => additionalProperties === false)).toEqual([]);
  });
});

describe.each(Object.entries(bases))('documents of the kind %s', (kind, base) => {
  const document = read(`${CORPUS}/${base}`);
  const cases = read(`${CORPUS}/derived/${kind}.json`) as DerivedCase[];
  const source = new Ajv2020().addSchema(shared).compile(documents[kind as keyof typeof bases]);
  const open = new Ajv2020().compile(read(`${folder}/open/${kind}.schema.json`) as Schema);

  it('get the same verdict from the sources as from the single file', () => {
    expect(source(document)).toBe(true);
    // The verdicts of the single file on the cases are fixed in the tests of the corpus.
    const other = cases.filter(({ patch, valid }) => source(applyPatch(document, patch)) !== valid);
    expect(other.map(({ id }) => id)).toEqual([]);
  });

  it('pass the open variant when all that is wrong is an unknown member', () => {
    const found = cases.filter(({ patch }) => open(applyPatch(document, patch)));
    const expected = cases.filter(({ valid, findings }) => valid || findings[0].rule === 'unknown-member');
    expect(found.map(({ id }) => id)).toEqual(expected.map(({ id }) => id));
    expect(found.length).toBeGreaterThan(0);
  });
});
