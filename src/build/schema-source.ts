import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A JSON Schema, or a part of one. Only the words that AHX schemas use. */
export interface Schema {
  $schema?: string;
  $id?: string;
  $ref?: string;
  $defs?: Record<string, Schema>;
  allOf?: Schema[];
  title?: string;
  description?: string;
  type?: 'object' | 'array' | 'string' | 'number' | 'integer' | 'boolean';
  enum?: (string | number)[];
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean | Schema;
  propertyNames?: Schema;
  minProperties?: number;
  maxProperties?: number;
  items?: Schema;
  minItems?: number;
  maxItems?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
  exclusiveMaximum?: number;
}

/** Where all schemas are published; an `$id` is this, the version, a slash and the file name. */
export const SCHEMA_BASE = 'https://anchor-hole-exchange.github.io/schema/';

/** Kinds of documents that have a schema of their own. */
export const documentKinds = ['layout', 'report', 'column-profile', 'config', 'baseline'] as const;
export type DocumentKind = (typeof documentKinds)[number];
/** Kinds of documents that are small enough to be judged as a whole. */
export const wholeKinds = ['report', 'column-profile', 'config', 'baseline'] as const satisfies DocumentKind[];

/** The schemas of one version, as they stand on disk. */
export interface SchemaSet {
  /** Version, `0.N`, read from the `$id`s. */
  version: string;
  /** Folder of the version, relative to the repository, with forward slashes. */
  folder: string;
  shared: Schema;
  documents: Record<DocumentKind, Schema>;
}

/** The files that `readSchemas` reads, relative to the repository. */
export function schemaFiles(root: string): string[] {
  const version = newestVersion(join(root, 'schema'));
  return ['shared', ...documentKinds].map((name) => `schema/${version}/${name}.schema.json`);
}

/**
 * Reads the newest version under `schema/`.
 *
 * @throws when an `$id` is not made of the base, the version of its folder and its file name.
 */
export function readSchemas(root: string): SchemaSet {
  const folder = `schema/${newestVersion(join(root, 'schema'))}`;
  const read = (name: string): Schema => {
    const schema = JSON.parse(readFileSync(join(root, folder, `${name}.schema.json`), 'utf8')) as Schema;
    const expected = `${SCHEMA_BASE}${folder.slice('schema/'.length)}/${name}.schema.json`;
    if (schema.$id !== expected) throw new Error(`${name}.schema.json has the $id ${schema.$id}, not ${expected}`);
    return schema;
  };
  const shared = read('shared');
  const version = (shared.$id as string).slice(SCHEMA_BASE.length).split('/')[0];
  const documents = Object.fromEntries(documentKinds.map((kind) => [kind, read(kind)]));
  return { version, folder, shared, documents: documents as Record<DocumentKind, Schema> };
}

function newestVersion(schemaFolder: string): string {
  const minors = readdirSync(schemaFolder)
    .map((name) => /^0\.(\d+)$/.exec(name)?.[1])
    .filter((minor) => minor !== undefined)
    .map(Number);
  if (minors.length === 0) throw new Error(`${schemaFolder} has no folder named 0.N`);
  return `0.${Math.max(...minors)}`;
}

/** The reference of a node that is one, bare or wrapped as `allOf: [{ $ref }]` beside a description. */
export function referenceOf(node: Schema): string | undefined {
  if (node.$ref !== undefined) return node.$ref;
  return node.allOf?.length === 1 ? node.allOf[0].$ref : undefined;
}

/** Name of the definition that a reference ends in. */
export function definitionName(reference: string): string {
  const name = /#\/\$defs\/([A-Za-z0-9]+)$/.exec(reference)?.[1];
  if (name === undefined) throw new Error(`${reference} does not refer to a definition`);
  return name;
}

/** Calls `visit` for a node and all schemas inside it, with their JSON Pointers as URI fragments. */
export function walkSchema(node: Schema, visit: (node: Schema, path: string) => void, path = '#'): void {
  visit(node, path);
  const inside: [string, Schema | undefined][] = [
    ...Object.entries(node.properties ?? {}).map(([name, part]): [string, Schema] => [`properties/${name}`, part]),
    ...Object.entries(node.$defs ?? {}).map(([name, part]): [string, Schema] => [`$defs/${name}`, part]),
    ...(node.allOf ?? []).map((part, index): [string, Schema] => [`allOf/${index}`, part]),
    ['items', node.items],
    ['propertyNames', node.propertyNames],
    ['additionalProperties', typeof node.additionalProperties === 'object' ? node.additionalProperties : undefined],
  ];
  for (const [step, part] of inside) if (part !== undefined) walkSchema(part, visit, `${path}/${step}`);
}
