import { bundleSchema } from './bundle.js';
import { GENERATED_NOTE, type GeneratedFiles } from './generator.js';
import { definitionName, documentKinds, readSchemas, referenceOf, type Schema, walkSchema } from './schema-source.js';

/** A member that holds the id of a record, and the collection in which that record is defined. */
interface Reference {
  path: string;
  target: string;
}

/** What stages must know of the schemas as data. */
export function schemaTableFiles(root: string): GeneratedFiles {
  const schemas = readSchemas(root);
  const layout = bundleSchema(schemas, 'layout');
  const collections = collectionsOf(layout);
  const identified = Object.keys(collections).filter((name) => collections[name].properties?.id !== undefined);
  const header = Object.fromEntries(
    Object.entries(layout.properties ?? {}).filter(([name]) => collections[name] === undefined),
  );
  const references: Record<string, Reference[]> = {
    header: referencesIn({ properties: header }, layout, identified, []),
  };
  for (const [name, record] of Object.entries(collections)) {
    references[name] = referencesIn(record, layout, identified, []);
  }
  const names = Object.fromEntries(documentKinds.map((kind) => [kind, memberNamesOf(bundleSchema(schemas, kind))]));
  return {
    'src/generated/schema-tables.ts': [
      GENERATED_NOTE,
      constant('Version of AHX that this build speaks.', 'SCHEMA_VERSION', schemas.version),
      constant(
        'Members of a layout that are arrays of records, in the order of the schema.',
        'collections',
        Object.keys(collections),
      ),
      'export type Collection = (typeof collections)[number];',
      constant('Collections whose records have an `id` and can be referred to.', 'identified', identified),
      constant(
        'Members that a layout must have, in the order of the schema.',
        'requiredMembers',
        layout.required ?? [],
      ),
      REFERENCE_TYPE,
      `/** Members that hold ids, by collection; \`header\` stands for all members that are no collection. */
export const references: Readonly<Record<Collection | 'header', readonly Reference[]>> = ${literal(references)};`,
      `/**
 * Names of the members of every object, by kind of document and by the path of the object's schema
 * in the single-file schema, such as \`#/$defs/hole\`.
 */
export const memberNames: Readonly<Record<DocumentKind, Readonly<Record<string, readonly string[]>>>> = ${literal(names)};`,
      `/** Kinds of documents that have a schema of their own. */
export type DocumentKind = ${documentKinds.map((kind) => `'${kind}'`).join(' | ')};`,
    ]
      .join('\n\n')
      .concat('\n'),
  };
}

const REFERENCE_TYPE = `/** A member that holds the id of a record. */
export interface Reference {
  /** Path of the member in its record, such as \`origin.source\`; \`levels[]\` for each element of an array. */
  path: string;
  /** Collection in which the record must be defined. */
  target: Collection;
}`;

/** Members that are arrays of references to an object definition, with that definition. */
export function collectionsOf(layout: Schema): Record<string, Schema> {
  const collections: Record<string, Schema> = {};
  for (const [name, { items }] of Object.entries(layout.properties ?? {})) {
    const record = items && resolve(items, layout);
    if (record?.type === 'object') collections[name] = record;
  }
  return collections;
}

/** The schema that a node refers to, or the node itself. */
export function resolve(node: Schema, bundle: Schema): Schema {
  const reference = referenceOf(node);
  return reference === undefined ? node : resolve(bundle.$defs?.[definitionName(reference)] as Schema, bundle);
}

function referencesIn(node: Schema, bundle: Schema, targets: readonly string[], path: readonly string[]): Reference[] {
  const reference = referenceOf(node);
  if (reference?.endsWith('Ref')) {
    return [
      { path: path.join('.').replaceAll('.[]', '[]'), target: targetOf(definitionName(reference), bundle, targets) },
    ];
  }
  const { properties = {}, items } = resolve(node, bundle);
  const inside = Object.entries(properties).flatMap(([name, part]) =>
    referencesIn(part, bundle, targets, [...path, name]),
  );
  return items === undefined ? inside : [...inside, ...referencesIn(items, bundle, targets, [...path, '[]'])];
}

/** The collection that a reference points into is the last quoted word of its definition's description. */
function targetOf(name: string, bundle: Schema, targets: readonly string[]): string {
  const description = bundle.$defs?.[name].description ?? '';
  const target = [...description.matchAll(/`([^`]+)`/g)].at(-1)?.[1];
  if (target === undefined || !targets.includes(target)) {
    throw new Error(`the description of ${name} names no collection of records with ids: ${description}`);
  }
  return target;
}

function memberNamesOf(bundle: Schema): Record<string, string[]> {
  const names: Record<string, string[]> = {};
  walkSchema(bundle, (node, path) => {
    if (node.properties !== undefined) names[path] = Object.keys(node.properties);
  });
  return names;
}

function constant(description: string, name: string, value: unknown): string {
  return `/** ${description} */\nexport const ${name} = ${literal(value)} as const;`;
}

function literal(value: unknown): string {
  return JSON.stringify(value, null, 2);
}
