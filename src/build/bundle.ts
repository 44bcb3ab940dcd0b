import type { GeneratedFiles } from './generator.js';
import {
  type DocumentKind,
  definitionName,
  documentKinds,
  readSchemas,
  type Schema,
  type SchemaSet,
  walkSchema,
} from './schema-source.js';

/** A document's schema in one piece: the shared definitions that it needs merged in, all references internal. */
export function bundleSchema(schemas: SchemaSet, kind: DocumentKind): Schema {
  const bundle = structuredClone(schemas.documents[kind]);
  const definitions: Record<string, Schema> = { ...bundle.$defs };
  const needed = new Set<string>();
  const take = (part: Schema): void =>
    walkSchema(part, (node) => {
      if (node.$ref === undefined) return;
      const name = definitionName(node.$ref);
      const fromShared = node.$ref.startsWith('shared.schema.json#') || part !== bundle;
      node.$ref = `#/$defs/${name}`;
      if (!fromShared || needed.has(name)) return;
      if (definitions[name] !== undefined) throw new Error(`${kind} and shared both define ${name}`);
      needed.add(name);
    });
  take(bundle);
  const shared = schemas.shared.$defs ?? {};
  const merged: Record<string, Schema> = {};
  for (const name of needed) {
    if (shared[name] === undefined) throw new Error(`${kind} refers to ${name}, which shared does not define`);
    merged[name] = structuredClone(shared[name]);
    take(merged[name]);
  }
  for (const name of Object.keys(shared)) if (merged[name] !== undefined) definitions[name] = merged[name];
  return { ...bundle, $defs: definitions };
}

/** The bundle for readers that meet documents of later minors: unknown members are let through. */
export function openSchema(bundle: Schema): Schema {
  const open = structuredClone(bundle);
  open.$id = (open.$id as string).replace(/([^/]+)$/, 'open/$1');
  walkSchema(open, (node) => {
    if (node.additionalProperties === false) delete node.additionalProperties;
  });
  return open;
}

/** The published single-file schemas, strict and open, one each for every kind of document. */
export function bundleFiles(root: string): GeneratedFiles {
  const schemas = readSchemas(root);
  const files: GeneratedFiles = {};
  for (const kind of documentKinds) {
    const bundle = bundleSchema(schemas, kind);
    files[`${schemas.folder}/bundle/${kind}.schema.json`] = `${JSON.stringify(bundle, null, 2)}\n`;
    files[`${schemas.folder}/open/${kind}.schema.json`] = `${JSON.stringify(openSchema(bundle), null, 2)}\n`;
  }
  return files;
}
