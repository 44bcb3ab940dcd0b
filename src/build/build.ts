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
import { basename, dirname, join } from 'node:path';
import { type BuildOptions, build, type Metafile, type Plugin } from 'esbuild';
import { fingerprint } from './fingerprint.mjs';

/*
 * Builds dist/: the SDK as modules with declarations, and the command line in one piece with all that
 * it needs. It is made beside and moved, so that a command in use never meets half of it.
 */

const root = join(import.meta.dirname, '../..');
const inputs = ['src', 'package.json', 'package-lock.json', 'tsconfig.json', 'tsconfig.core.json'];
const made = join(root, 'out', `build-${process.pid}`);

/**
 * Parts of Node are taken from the process. Packages in the older module form `require` them, which an ES
 * module has no word for; and an import makes Node look at every member of the part, which loads more of
 * it than a command needs: both together cost a tenth of the start-up of `ahx check`.
 */
const builtins: Plugin = {
  name: 'built-in modules',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /.*/ }, ({ kind, path }) => {
      if (!isBuiltin(path)) return undefined;
      return { path, namespace: kind === 'require-call' ? 'required' : 'imported' };
    });
    onLoad({ filter: /.*/, namespace: 'imported' }, ({ path }) => ({
      contents: `module.exports = process.getBuiltinModule(${JSON.stringify(path)});`,
    }));
    // What a package requires in advance is loaded when it is used.
    onLoad({ filter: /.*/, namespace: 'required' }, ({ path }) => ({
      contents: `module.exports = new Proxy({}, { get: (_, name) => process.getBuiltinModule(${JSON.stringify(path)})[name] });`,
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

/**
 * The command line in three parts. What every start needs, and `check`, is one script in the older module
 * form, which Node starts faster than modules, with what the engine makes of it beside it; the other
 * commands are scripts that it loads when they are called; `cli.cjs` starts the first one.
 */
async function bundleCommand(target: string): Promise<void> {
  const common: BuildOptions = {
    absWorkingDir: root,
    bundle: true,
    legalComments: 'none',
    metafile: true,
    minify: true,
    platform: 'node',
    format: 'cjs',
    outdir: join(target, 'cli'),
    outExtension: { '.js': '.cjs' },
    plugins: [builtins],
    target: 'node20',
    // A script that is taken as compiled before has no way to import, but it can require.
    supported: { 'dynamic-import': false },
  };
  const parts = lateParts();
  const start = await build({
    ...common,
    entryPoints: { main: join(root, 'src/cli/main.ts') },
    plugins: [builtins, parts.plugin],
  });
  const late = await build({
    ...common,
    entryPoints: parts.entryPoints,
    // Packages that are modules ask where they are; a script of the older form is asked in another way.
    define: { 'import.meta.url': 'fileAddress' },
    banner: { js: "const fileAddress = require('node:url').pathToFileURL(__filename).href;" },
  });
  const starter = readFileSync(join(root, 'src/cli/start.cjs'), 'utf8');
  writeFileSync(join(target, 'cli.cjs'), `#!/usr/bin/env node\n${starter}`);
  chmodSync(join(target, 'cli.cjs'), 0o755);
  keepCompiled(join(target, 'cli'));
  writeFileSync(join(target, 'cli-licenses.txt'), licences([start.metafile as Metafile, late.metafile as Metafile]));
}

/** Lays what the engine compiles of a check beside the script. */
function keepCompiled(folder: string): void {
  const script = join(folder, 'main.cjs');
  const compiled = join(folder, `main-${process.versions.v8}-${process.arch}.compiled`);
  const layout = join(root, 'examples/workshop-deck/workshop.ahx.json');
  const keep = join(root, 'src/build/keep-compiled.cjs');
  const { status, stderr } = spawnSync(process.execPath, [keep, script, compiled, 'check', '--quiet', layout], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`the command does not run: ${stderr}`);
}

/** Modules that the start imports when they are needed: left out of it and built beside. */
function lateParts(): { plugin: Plugin; entryPoints: Record<string, string> } {
  const entryPoints: Record<string, string> = {};
  const plugin: Plugin = {
    name: 'late parts',
    setup({ onResolve }) {
      onResolve({ filter: /^\./ }, ({ kind, path, resolveDir }) => {
        if (kind !== 'dynamic-import') return undefined;
        const name = basename(path, '.js');
        entryPoints[name] = join(resolveDir, dirname(path), `${name}.ts`);
        return { path: `./${name}.cjs`, external: true };
      });
    },
  };
  return { plugin, entryPoints };
}

/** The licences of the packages that are part of the command. */
function licences(metafiles: readonly Metafile[]): string {
  // A package may have its own copy of another one in a folder of the same name.
  const packages = metafiles
    .flatMap(({ inputs }) => Object.keys(inputs))
    .flatMap((path) => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []);
  return [...new Set(packages)]
    .sort()
    .map((path) => {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
      const folder = join(root, path);
      const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
      if (file === undefined || !existsSync(join(folder, file))) throw new Error(`${name} ships no licence text`);
      return `${name}\n\n${readFileSync(join(folder, file), 'utf8').trim()}\n`;
    })
    .join('\n---\n\n');
}
