import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';
import { build, type Metafile, type Plugin } from 'esbuild';
import { fingerprint } from './fingerprint.mjs';

/*
 * Builds dist/: the SDK as modules with declarations, and the command line in one piece with all that
 * it needs. It is made beside and moved, so that a command in use never meets half of it.
 */

const root = join(import.meta.dirname, '../..');
const inputs = ['src', 'package.json', 'package-lock.json', 'tsconfig.json', 'tsconfig.core.json'];
const made = join(root, 'out', `build-${process.pid}`);

/** Packages in the older module form `require` parts of Node, which an ES module has no word for. */
const requireBuiltins: Plugin = {
  name: 'require of built-in modules',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /.*/ }, ({ kind, path }) =>
      kind === 'require-call' && isBuiltin(path) ? { path, namespace: 'builtin' } : undefined,
    );
    onLoad({ filter: /.*/, namespace: 'builtin' }, ({ path }) => ({
      contents: `module.exports = process.getBuiltinModule(${JSON.stringify(path)});`,
    }));
  },
};

const before = fingerprint(root, inputs);
rmSync(made, { recursive: true, force: true });
mkdirSync(made, { recursive: true });
try {
  compileSdk(made);
  await bundleCommand(made);
  writeFileSync(join(made, 'inputs.json'), `${JSON.stringify({ inputs, fingerprint: before }, null, 2)}\n`);
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  renameSync(made, join(root, 'dist'));
} finally {
  rmSync(made, { recursive: true, force: true });
}

function compileSdk(target: string): void {
  const compiler = join(root, 'node_modules/typescript/bin/tsc');
  const options = ['-p', join(root, 'tsconfig.core.json'), '--outDir', target];
  const { status } = spawnSync(process.execPath, [compiler, ...options], { stdio: 'inherit' });
  if (status !== 0) throw new Error('the SDK does not compile');
  for (const name of ['validators.js', 'validators.d.ts']) {
    cpSync(join(root, 'src/generated', name), join(target, 'generated', name));
  }
}

async function bundleCommand(target: string): Promise<void> {
  const entry = join(root, 'src/cli/main.ts');
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: { cli: entry },
    outdir: target,
    chunkNames: 'cli-chunks/[name]-[hash]',
    // A script that starts with the line keeps it.
    banner: readFileSync(entry, 'utf8').startsWith('#!') ? {} : { js: '#!/usr/bin/env node' },
    bundle: true,
    format: 'esm',
    legalComments: 'none',
    metafile: true,
    minify: true,
    platform: 'node',
    plugins: [requireBuiltins],
    splitting: true,
    target: 'node20',
  });
  chmodSync(join(target, 'cli.js'), 0o755);
  writeFileSync(join(target, 'cli-licenses.txt'), licences(metafile as Metafile));
}

/** The licences of the packages that are part of the command. */
function licences({ inputs }: Metafile): string {
  const names = Object.keys(inputs).flatMap((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []);
  return [...new Set(names)]
    .sort()
    .map((name) => {
      const folder = join(root, 'node_modules', name);
      const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
      if (file === undefined || !existsSync(join(folder, file))) throw new Error(`${name} ships no licence text`);
      return `${name}\n\n${readFileSync(join(folder, file), 'utf8').trim()}\n`;
    })
    .join('\n---\n\n');
}
