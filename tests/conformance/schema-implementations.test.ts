import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Schema as CfworkerSchema, Validator } from '@cfworker/json-schema';
import { registerSchema, type SchemaObject, validate } from '@hyperjump/json-schema/draft-2020-12';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { bases, CORPUS, type DerivedCase } from '../../src/build/derive-cases.js';
import { membersOf, placesIn } from '../../src/build/schema-places.js';
import type { Schema } from '../../src/build/schema-source.js';
import { SCHEMA_VERSION } from '../../src/generated/schema-tables.js';
import { validateWhole, validateLayoutMember } from '../../src/generated/validators.js';
import { applyPatch } from './apply-patch.js';

const root = join(import.meta.dirname, '../..');
const read = (path: string): unknown => JSON.parse(readFileSync(join(root, path), 'utf8'));

type Verdict = (document: unknown) => boolean;

/** Independent implementations of JSON Schema, each on the published single-file schema. */
async function implementations(schema: Schema): Promise<Record<string, Verdict>> {
  const ajv = new Ajv2020({ strict: true }).compile(schema);
  const cfworker = new Validator(schema as CfworkerSchema, '2020-12');
  registerSchema(schema as SchemaObject, schema.$id);
  const hyperjump = await validate(schema.$id as string);
  return {
    ajv,
    cfworker: (document) => cfworker.validate(document).valid,
    hyperjump: (document) => hyperjump(document as Parameters<typeof hyperjump>[0]).valid,
  };
}

describe.each(Object.entries(bases))('the single-file schema of a %s', async (kind, base) => {
  const schema = read(`schema/${SCHEMA_VERSION}/bundle/${kind}.schema.json`) as Schema;
  const document = read(`${CORPUS}/${base}`);
  const cases = read(`${CORPUS}/derived/${kind}.json`) as DerivedCase[];
  const verdicts = await implementations(schema);

  it('has a base document in which every member stands at least once', () => {
    const present = new Set(placesIn(schema, document).map(({ member }) => member));
    // The list of required extensions is empty in a document that everyone can judge.
    const missing = membersOf(schema).filter((m) => !present.has(m) && m !== '/extensionsRequired/*');
    expect(missing).toEqual([]);
  });

  it('has cases with ids of their own', () => {
    expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
  });

  it.each(Object.keys(verdicts))('gets from %s the verdict of every case', (name) => {
    expect(verdicts[name](document)).toBe(true);
    const other = cases.filter(({ patch, valid }) => verdicts[name](applyPatch(document, patch)) !== valid);
    expect(other.map(({ id }) => id)).toEqual([]);
  });
});

describe('the generated validators', () => {
  it.each(Object.entries(bases))('give the verdict of every case of a %s, at its place', (kind, base) => {
    const document = read(`${CORPUS}/${base}`);
    const cases = read(`${CORPUS}/derived/${kind}.json`) as DerivedCase[];
    const places = kind === 'layout' ? layoutErrorPlaces : wholeErrorPlaces(kind as keyof typeof validateWhole);
    for (const { id, patch, findings } of cases) {
      // Which members a layout must have and may have is known from the tables, not from a validator.
      if (kind === 'layout' && id.startsWith('layout:/: ')) continue;
      const expected = findings.map(({ rule, pointer }) =>
        rule === 'unknown-member' || pointer.endsWith('/no address') ? pointer.replace(/\/[^/]*$/, '') : pointer,
      );
      expect({ id, places: places(applyPatch(document, patch)) }).toEqual({ id, places: expected });
    }
  });
});

function wholeErrorPlaces(kind: keyof typeof validateWhole): (document: unknown) => string[] {
  return (document) => {
    const validate = validateWhole[kind];
    validate(document);
    return [...new Set((validate.errors ?? []).map(({ instancePath }) => instancePath))];
  };
}

function layoutErrorPlaces(document: unknown): string[] {
  const places = Object.entries(document as object).flatMap(([name, value]) => {
    const judge = validateLayoutMember[name];
    return judge(value) ? [] : (judge.errors ?? []).map(({ instancePath }) => `/${name}${instancePath}`);
  });
  return [...new Set(places)];
}
