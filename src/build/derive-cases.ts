import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEVIATIONS } from '../read/beyond-schema.js';
import { bundleSchema } from './bundle.js';
import type { GeneratedFiles } from './generator.js';
import { type Place, placesIn } from './schema-places.js';
import { type DocumentKind, readSchemas, type Schema } from './schema-source.js';
import { type Operation, type SchemaRule, variantsOf } from './variants.js';

/** A document that is a base with a few changes, and what the schema says of it. */
export interface DerivedCase {
  id: string;
  /** The base, relative to the corpus. */
  base: string;
  /** JSON Patch (RFC 6902) that makes the case from the base. */
  patch: Operation[];
  valid: boolean;
  /** What the rules of the schema stage find: nothing or one thing. Other rules may have more to say. */
  findings: { rule: SchemaRule; pointer: string }[];
}

/** The documents that cases are derived from, relative to the corpus. */
export const bases = {
  layout: 'base/full.ahx.json',
  'column-profile': 'base/full-profile.ahx.json',
  config: 'base/full-config.ahx.json',
  baseline: 'base/full-baseline.ahx.json',
} as const satisfies Partial<Record<DocumentKind, string>>;

export const CORPUS = 'tests/conformance';

/** Files that the derived cases are made from, besides the schemas. */
export const baseFiles = Object.values(bases).map((base) => `${CORPUS}/${base}`);

/** One file of cases for every base, a case a line. */
export function derivedCaseFiles(root: string): GeneratedFiles {
  const schemas = readSchemas(root);
  const files: GeneratedFiles = {};
  for (const kind of Object.keys(bases) as (keyof typeof bases)[]) {
    const document = JSON.parse(readFileSync(join(root, CORPUS, bases[kind]), 'utf8')) as unknown;
    const lines = deriveCases(kind, bundleSchema(schemas, kind), document).map((one) => JSON.stringify(one));
    files[`${CORPUS}/derived/${kind}.json`] = `[\n${lines.join(',\n')}\n]\n`;
  }
  return files;
}

/** Cases for the first value of every member of a base document. */
export function deriveCases(kind: keyof typeof bases, bundle: Schema, document: unknown): DerivedCase[] {
  const all = placesIn(bundle, document);
  const places = all.filter(({ member }, index) => all.findIndex((other) => other.member === member) === index);
  // A list may have to be empty in a document that is judged; its elements get their cases all the same.
  const toFill = places.filter(({ schema, value }) => Array.isArray(value) && value.length === 0 && schema.items);
  const cases: DerivedCase[] = [];
  const seen = new Set<string>();
  for (const place of [...places, ...toFill.map(sampleElement)]) {
    const isFirst = place.definition === '' || !seen.has(place.definition);
    seen.add(place.definition);
    for (const { what, patch, breaks } of variantsOf(place, isFirst, places)) {
      cases.push({
        id: `${kind}:${place.member || '/'}: ${what}`,
        base: bases[kind],
        patch: [...filled(place, toFill), ...freed(patch, all, document), ...patch, ...(breaks ? [] : lifted(patch))],
        valid: breaks === undefined,
        findings: breaks === undefined ? [] : [breaks],
      });
    }
  }
  return cases;
}

const SAMPLE_URI = 'urn:example:extension';

function sampleElement({ schema, pointer, member }: Place): Place {
  return {
    schema: schema.items as Schema,
    definition: '',
    isReference: false,
    pointer: `${pointer}/0`,
    member: `${member}/*`,
    value: SAMPLE_URI,
  };
}

function filled(place: Place, toFill: readonly Place[]): Operation[] {
  return toFill
    .filter(({ pointer }) => place.pointer === `${pointer}/0`)
    .map(({ pointer }) => ({ op: 'add', path: `${pointer}/-`, value: SAMPLE_URI }));
}

/** Raises the upper one of two limit deviations with the lower one, so that they stay in order. */
function lifted([operation]: readonly Operation[]): Operation[] {
  const [, pair, name] = /^(.*\/(\w+))\/0$/.exec(operation.path) ?? [];
  if (operation.op === 'remove' || !DEVIATIONS.has(name)) return [];
  return Number(operation.value) > 0 ? [{ op: 'replace', path: `${pair}/1`, value: operation.value }] : [];
}

/**
 * Points the references to a record elsewhere when its id is about to change, so that the case says
 * one thing only.
 */
function freed(patch: readonly Operation[], all: readonly Place[], document: unknown): Operation[] {
  const [, collection, index] = /^\/([A-Za-z]+)\/(\d+)(?:\/id)?$/.exec(patch[0].path) ?? [];
  if (collection === undefined) return [];
  const records = (document as Record<string, { id?: string }[]>)[collection];
  const { id } = records[Number(index)] ?? {};
  const other = records.find((record) => record.id !== id)?.id;
  return all
    .filter(({ isReference, value }) => isReference && value === id)
    .map(({ pointer }) => ({ op: 'replace', path: pointer, value: other }));
}
