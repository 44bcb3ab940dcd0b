import { compile } from 'json-schema-to-typescript';
import { GENERATED_NOTE, type GeneratedFiles } from './generator.js';
import { definitionName, documentKinds, readSchemas, referenceOf, type Schema, walkSchema } from './schema-source.js';

/** A schema with the compiler's own words: the type to write in place of the node. */
type TypedSchema = Schema & { tsType?: string };

/**
 * TypeScript types of all documents, one file a schema.
 *
 * Every reference becomes the name of its definition, so that one definition is one type. Texts and
 * numbers are written as `string` and `number`: their definitions differ only in limits, which types
 * do not hold. Arrays without an upper bound are plain arrays for the same reason.
 */
export async function typeFiles(root: string): Promise<GeneratedFiles> {
  const schemas = readSchemas(root);
  const shared = schemas.shared.$defs ?? {};
  const files: GeneratedFiles = {
    'src/generated/index.ts': GENERATED_NOTE + INDEX,
    'src/generated/shared.ts': GENERATED_NOTE + (await definitionTypes(schemas.shared, shared)),
  };
  for (const kind of documentKinds) {
    const document = schemas.documents[kind];
    const body = await definitionTypes(document, shared, pascalCase(kind));
    const used = Object.keys(shared)
      .filter((name) => !isScalar(shared[name], shared) && refersTo(document, name))
      .map(pascalCase)
      .sort();
    const imports = used.length > 0 ? `import type { ${used.join(', ')} } from './shared.js';\n` : '';
    files[`src/generated/${kind}.ts`] = `${GENERATED_NOTE}${imports}export type * from './shared.js';\n${body}`;
  }
  return files;
}

/** The contract as code: what the sub-path `./schema` of the package offers. */
const INDEX = [
  ...documentKinds.map((kind) => `export type * from './${kind}.js';`),
  "export * from './package-version.js';",
  "export * from './schema-tables.js';",
  "export * from './validators.js';",
  '',
].join('\n');

/** `keepOut` → `KeepOut`, `column-profile` → `ColumnProfile`. */
export function pascalCase(name: string): string {
  return name.replace(/(^|-)([a-z])/g, (_, _dash, letter: string) => letter.toUpperCase());
}

async function definitionTypes(source: Schema, shared: Record<string, Schema>, rootName?: string): Promise<string> {
  const scope = { ...shared, ...source.$defs };
  const typed = structuredClone(source) as TypedSchema;
  walkSchema(typed, (node) => simplify(node, scope));
  const definitions: Record<string, Schema> = {};
  for (const [name, definition] of Object.entries(typed.$defs ?? {})) {
    if (!isScalar(scope[name], scope)) definitions[name] = { ...definition, title: pascalCase(name) };
  }
  // Without a document of its own the shared file still needs a root to hang the definitions on.
  const root: Schema =
    rootName === undefined ? { type: 'object', additionalProperties: false } : { ...typed, title: rootName };
  const text = await compile({ ...root, $id: undefined, $defs: definitions } as never, rootName ?? 'Root', {
    additionalProperties: true,
    bannerComment: '',
    declareExternallyReferenced: true,
    strictIndexSignatures: false,
    style: { singleQuote: true, printWidth: 120 },
    unknownAny: true,
    unreachableDefinitions: true,
  });
  return text
    .replace(/^export interface Root \{\}\n/m, '')
    .replace(/ \*\n \* This .* was referenced by [\s\S]*?(?= \*\/)/g, '')
    .replace(/ \*\n( \* @(min|max)Items \d+\n)+/g, '');
}

function simplify(node: TypedSchema, scope: Record<string, Schema>): void {
  if (node.maxItems === undefined) delete node.minItems;
  // The compiler takes a value of any type for an object.
  if (Object.keys(node).every((word) => word === 'description')) node.tsType = 'unknown';
  const reference = referenceOf(node);
  if (reference === undefined) return;
  const name = definitionName(reference);
  node.tsType = scalarType(scope[name], scope) ?? pascalCase(name);
  delete node.$ref;
  delete node.allOf;
}

/** The plain type of a definition that is a text or a number without named values. */
function scalarType(definition: Schema, scope: Record<string, Schema>): string | undefined {
  const reference = referenceOf(definition);
  if (reference !== undefined) return scalarType(scope[definitionName(reference)], scope);
  if (definition.enum !== undefined) return undefined;
  if (definition.type === 'integer') return 'number';
  return definition.type === 'string' || definition.type === 'number' ? definition.type : undefined;
}

function isScalar(definition: Schema, scope: Record<string, Schema>): boolean {
  return scalarType(definition, scope) !== undefined;
}

function refersTo(schema: Schema, sharedName: string): boolean {
  let found = false;
  walkSchema(schema, (node) => {
    if (node.$ref === `shared.schema.json#/$defs/${sharedName}`) found = true;
  });
  return found;
}
