import { Ajv2020 } from 'ajv/dist/2020.js';
import standalone from 'ajv/dist/standalone/index.js';
import type { AnyValidateFunction, SourceCode } from 'ajv/dist/types/index.js';
import { build, type Plugin } from 'esbuild';
import { GENERATED_NOTE, type GeneratedFiles } from './generator.js';
import {
  definitionName,
  documentKinds,
  readSchemas,
  referenceOf,
  type Schema,
  walkSchema,
  wholeKinds,
} from './schema-source.js';

/** A function to export: where it goes in the module and the schema that it judges by. */
interface Target {
  /** Name of the export. */
  record: string;
  /** Member of the export; absent where the export is the function itself. */
  key?: string;
  /** Address of the schema, as given by `addressOf`. */
  address: string;
}

/**
 * Validators compiled at build time into one module that needs no package, no `require` and no
 * `eval`, so that it starts fast and runs under a strict content policy.
 */
export async function validatorFiles(root: string): Promise<GeneratedFiles> {
  const schemas = readSchemas(root);
  const { layout } = schemas.documents;
  const ajv = new Ajv2020({
    allErrors: true,
    messages: false,
    strict: true,
    unicodeRegExp: true,
    inlineRefs: false,
    loopRequired: 2,
    code: { source: true, esm: true },
  });
  addDefinitions(ajv, 'shared', schemas.shared);
  for (const kind of documentKinds) addDefinitions(ajv, kind, schemas.documents[kind]);
  for (const kind of wholeKinds) addSchema(ajv, kind, '#', schemas.documents[kind]);
  const members = Object.entries(layout.properties ?? {});
  for (const [name, member] of members) addSchema(ajv, 'layout', `#/properties/${name}`, member);
  const targets = [
    ...members.map(([key]) => ({
      record: 'validateLayoutMember',
      key,
      address: addressOf('layout', `#/properties/${key}`),
    })),
    ...members.flatMap(([key, { items }]) => recordTarget(key, items)),
    ...wholeKinds.map((kind) => ({ record: 'validateWhole', key: kind, address: addressOf(kind, '#') })),
  ];
  const done = new Set<AnyValidateFunction>();
  for (const { address } of targets) trim(ajv.getSchema(address) as AnyValidateFunction, done);
  const code = standalone.default(ajv, Object.fromEntries(targets.map(({ address }, index) => [`v${index}`, address])));
  if (/dynamicAnchors|evaluated/.test(code)) throw new Error('compiled validators keep code that no AHX schema needs');
  return {
    'src/generated/validators.js': await bundled(code, exportsOf(targets)),
    'src/generated/validators.d.ts': GENERATED_NOTE + DECLARATIONS,
  };
}

function recordTarget(key: string, items: Schema | undefined): Target[] {
  const reference = items && referenceOf(items);
  return reference === undefined
    ? []
    : [{ record: 'validateRecord', key, address: referredAddress('layout', reference) }];
}

/** Every definition becomes a schema of its own, so that it is compiled once however often it is referred to. */
function addDefinitions(ajv: Ajv2020, file: string, source: Schema): void {
  for (const [name, definition] of Object.entries(source.$defs ?? {})) {
    addSchema(ajv, file, `#/$defs/${name}`, definition);
  }
}

function addSchema(ajv: Ajv2020, file: string, path: string, source: Schema): void {
  const schema = structuredClone(source);
  delete schema.$defs;
  walkSchema(schema, (node) => simplify(node, file));
  ajv.addSchema({ ...schema, $schema: undefined, $id: addressOf(file, path) });
}

function addressOf(file: string, path: string): string {
  return `ahx:/${file}/${path.slice(2)}`;
}

function referredAddress(file: string, reference: string): string {
  return addressOf(reference.startsWith('shared.') ? 'shared' : file, `#/$defs/${definitionName(reference)}`);
}

/** Leaves out what judges nothing: descriptions, and the `allOf` around a lone reference. */
function simplify(node: Schema, file: string): void {
  delete node.title;
  delete node.description;
  const reference = referenceOf(node);
  if (reference === undefined) return;
  node.$ref = referredAddress(file, reference);
  delete node.allOf;
}

/** How the compiler notes an error: a few hundred times, and most of the code. */
const NOTED =
  /const (err\d+) = \{instancePath(?::(.+?))?,schemaPath:("[^"]*"),keyword:("[^"]*"),params:(\{(?:[^{}"]|"(?:[^"\\]|\\.)*")*\})(?:,propertyName:(\w+))?\};if\(vErrors === null\)\{vErrors = \[\1\];\}\s*else \{vErrors\.push\(\1\);\}/g;

/** Stands in for it; the word that failed is the last part of its path in the schema. */
const NOTING = `function noted(list, instancePath, schemaPath, params, propertyName) {
  const error = { instancePath, schemaPath, keyword: schemaPath.slice(schemaPath.lastIndexOf('/') + 1), params };
  if (propertyName !== undefined) error.propertyName = propertyName;
  if (list === null) return [error];
  list.push(error);
  return list;
}
`;

/**
 * Rewrites the code of a compiled function and of those that it calls: paths of schema words start at
 * the root of the document's schema instead of at the definition, and the code that serves only
 * dynamic references and unevaluated members, which AHX schemas never use, goes.
 */
function trim(validate: AnyValidateFunction, done: Set<AnyValidateFunction>): void {
  if (done.has(validate)) return;
  done.add(validate);
  const source = validate.source as SourceCode;
  const path = (validate.schema as Schema).$id?.replace(/^ahx:\/[^/]+\//, '') ?? '';
  source.validateCode = source.validateCode
    .replace(
      /\{instancePath="", parentData, parentDataProperty, rootData=data, dynamicAnchors=\{\}\}=\{\}/g,
      'instancePath=""',
    )
    .replace(/\{instancePath(?::([^{}]*?))?,parentData[^{}]*?,dynamicAnchors\}/g, (_, path = 'instancePath') => path)
    .replace(/const (evaluated\d+) = [^;]+;(if\(\1\.\w+\)\{\1\.\w+ = undefined;\})*/g, '')
    .replaceAll('schemaPath:"#/', () => `schemaPath:"#/${path === '' ? '' : `${path}/`}`)
    .replace(
      NOTED,
      (_, _name, place = 'instancePath', word, _keyword, params, name) =>
        `vErrors = noted(vErrors,${place},${word},${params}${name === undefined ? '' : `,${name}`});`,
    );
  if (/vErrors\.push/.test(source.validateCode))
    throw new Error('the compiler notes errors in a form that is not known');
  source.evaluated = undefined;
  for (const name of source.scopeValues.validate ?? []) trim(name.value?.ref as AnyValidateFunction, done);
}

function exportsOf(targets: readonly Target[]): string {
  const lines = [...new Set(targets.map(({ record }) => record))].map((record) => {
    const parts = targets.map((target, index) => ({ ...target, name: `v${index}` })).filter((t) => t.record === record);
    if (parts[0].key === undefined) return `export { ${parts[0].name} as ${record} } from 'functions';`;
    // JSON strings as keys, since a member may be named `$schema`.
    const entries = parts.map(({ key, name }) => `${JSON.stringify(key)}: functions.${name}`);
    return `export const ${record} = { __proto__: null, ${entries.join(', ')} };`;
  });
  return `import * as functions from 'functions';\n${lines.join('\n')}`;
}

/** Joins the functions, the export lines and the helpers of the compiler into one minified module. */
async function bundled(functions: string, exportLines: string): Promise<string> {
  const virtual: Plugin = {
    name: 'compiled functions',
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^functions$/ }, ({ path }) => ({ path, namespace: 'virtual' }));
      onLoad({ filter: /^functions$/, namespace: 'virtual' }, () => ({
        contents: NOTING + functions,
        resolveDir: import.meta.dirname,
      }));
    },
  };
  const result = await build({
    stdin: { contents: exportLines, resolveDir: import.meta.dirname },
    banner: { js: GENERATED_NOTE.trim() },
    bundle: true,
    format: 'esm',
    minify: true,
    platform: 'neutral',
    plugins: [virtual],
    target: 'es2022',
    write: false,
  });
  return result.outputFiles[0].text;
}

const DECLARATIONS = `
/** One failed word of the schema. */
export interface ErrorObject {
  /** The schema word that failed, such as \`required\`. */
  keyword: string;
  /** JSON Pointer from the judged value to the value at fault. */
  instancePath: string;
  /** Where the word stands in the single-file schema of the document kind, such as \`#/$defs/hole/required\`. */
  schemaPath: string;
  /** What the word asked for; the keys belong to the word. */
  params: Record<string, unknown>;
  /** Name of the member at fault, where the name itself was judged. */
  propertyName?: string;
}

/**
 * Judges a value. On false, \`errors\` of the function holds everything that failed until its next call.
 */
export type Validate = ((value: unknown) => boolean) & { errors?: null | ErrorObject[] };

/** A validator for every member of a layout, by its name. */
export const validateLayoutMember: Readonly<Record<string, Validate>>;
/** A validator for one element of every array of records of a layout, by the name of the array. */
export const validateRecord: Readonly<Record<string, Validate>>;
/** Judges a whole document that is no layout, by its kind. */
export const validateWhole: Readonly<Record<'report' | 'column-profile' | 'config' | 'baseline', Validate>>;
`;
