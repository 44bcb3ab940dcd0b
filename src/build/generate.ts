import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { bundleFiles } from './bundle.js';
import { decoderFiles } from './decoder.js';
import { baseFiles, derivedCaseFiles } from './derive-cases.js';
import { fingerprint } from './fingerprint.mjs';
import type { Generator } from './generator.js';
import { packageVersionFiles } from './package-version.js';
import { referencePages } from './reference-pages.js';
import { chapterFiles } from './requirements.js';
import { rulePageFiles } from './rule-pages.js';
import { schemaFiles } from './schema-source.js';
import { schemaTableFiles } from './schema-tables.js';
import { traceFiles, traceInputs } from './trace.js';
import { typeFiles } from './types.js';
import { validatorFiles } from './validators.js';

const root = join(import.meta.dirname, '../..');
const schemas = schemaFiles(root);
const chapters = chapterFiles(root);

/** Everything that is generated, in the order in which it is made. */
export const generators: readonly Generator[] = [
  { name: 'types', inputs: schemas, run: typeFiles },
  { name: 'validators', inputs: schemas, run: validatorFiles },
  { name: 'decoder of holes', inputs: [...schemas, 'src/model/hole-row.ts'], run: decoderFiles },
  { name: 'tables of the schema', inputs: schemas, run: schemaTableFiles },
  { name: 'version of the package', inputs: ['package.json'], run: packageVersionFiles },
  { name: 'single-file schemas', inputs: schemas, run: bundleFiles },
  { name: 'reference pages', inputs: schemas, run: referencePages },
  { name: 'cases derived from the schema', inputs: [...schemas, ...baseFiles], run: derivedCaseFiles },
  { name: 'pages of the rules', inputs: ['src/check', 'src/report/rule-page.ts', ...chapters], run: rulePageFiles },
  { name: 'trace of the requirements', inputs: ['src/check', ...chapters, ...traceInputs(root)], run: traceFiles },
];

const BUILT = 'src/generated/';

/**
 * Runs all generators. Files under src/generated are always brought up to date. The others are
 * committed: with `checkOnly` they are compared and left alone.
 *
 * @returns committed files that differ from what the sources give
 */
async function generate(checkOnly: boolean): Promise<string[]> {
  const inputs = [...new Set(generators.flatMap((generator) => generator.inputs)), 'src/build'];
  // Taken before the run: a source that changes meanwhile must be seen as newer the next time.
  const before = fingerprint(root, inputs);
  const stale: string[] = [];
  for (const generator of generators) {
    for (const [path, text] of Object.entries(await generator.run(root))) {
      if (existsSync(join(root, path)) && readFileSync(join(root, path), 'utf8') === text) continue;
      if (!path.startsWith(BUILT)) stale.push(path);
      if (path.startsWith(BUILT) || !checkOnly) write(path, text);
    }
  }
  write(`${BUILT}inputs.json`, `${JSON.stringify({ inputs, fingerprint: before }, null, 2)}\n`);
  return stale;
}

/** Writes beside and renames, so that a reader at the same time sees the old file or the new one. */
function write(path: string, text: string): void {
  const target = join(root, path);
  mkdirSync(dirname(target), { recursive: true });
  const beside = `${target}.${process.pid}`;
  writeFileSync(beside, text);
  renameSync(beside, target);
}

const checkOnly = process.argv.includes('--check');
const stale = await generate(checkOnly);
for (const path of stale) console.log(checkOnly ? `out of date: ${path}` : `written: ${path}`);
if (checkOnly && stale.length > 0) process.exitCode = 1;
