import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/*
 * Packs the package as it would be published, lays it out as an install would, and uses it from
 * there: the command by its manifest, reading standard input, and every sub-path of the SDK. Packages
 * that the SDK needs are copied from here, so that no network is needed.
 */

interface Manifest {
  name: string;
  version: string;
  bin: Record<string, string>;
  exports: Record<string, unknown>;
  dependencies?: Record<string, string>;
}

const root = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'ahx-packed-'));
try {
  const installed = install(folder);
  const manifest = readManifest(installed);
  useCommand(join(installed, manifest.bin.ahx), manifest.version);
  importSubPaths(folder, manifest);
  console.log(`${manifest.name} ${manifest.version} works as packed`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function install(target: string): string {
  run('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', target], { cwd: root, shell: true });
  const archive = readdirSync(target).find((name) => name.endsWith('.tgz')) ?? fail('npm pack made no archive');
  run('tar', ['-xzf', archive], { cwd: target });
  const installed = join(target, 'node_modules', readManifest(join(target, 'package')).name);
  mkdirSync(join(target, 'node_modules'));
  renameSync(join(target, 'package'), installed);
  const copyDependencies = (manifest: Manifest): void => {
    for (const name of Object.keys(manifest.dependencies ?? {})) {
      cpSync(join(root, 'node_modules', name), join(target, 'node_modules', name), { recursive: true });
      copyDependencies(readManifest(join(root, 'node_modules', name)));
    }
  };
  copyDependencies(readManifest(installed));
  return installed;
}

function useCommand(command: string, version: string): void {
  const shown = run(process.execPath, [command, '--version']).stdout.trim();
  if (shown !== version) fail(`--version prints ${JSON.stringify(shown)}, not ${version}`);
  const input = readFileSync(join(root, 'tests/conformance/base/full.ahx.json'));
  const text = run(process.execPath, [command, 'check', '-'], { input }, [0, 1]).stdout;
  if (text.trim() === '') fail('check - prints nothing');
  const json = run(process.execPath, [command, 'check', '--format', 'json', '-'], { input }, [0, 1]).stdout;
  const report = JSON.parse(json) as { kind?: unknown };
  if (report.kind !== 'report') fail(`check --format json - gives a document of kind ${report.kind}`);
}

function importSubPaths(target: string, manifest: Manifest): void {
  const paths = Object.keys(manifest.exports).filter((path) => path !== './package.json' && !path.includes('*'));
  const lines = paths.map((path) => `await import('${manifest.name}${path.slice(1)}');`);
  const script = join(target, 'import.mjs');
  writeFileSync(script, lines.join('\n'));
  run(process.execPath, [script], { cwd: target });
  // Users of the older module form get the same modules.
  run(process.execPath, ['-e', `require('${manifest.name}')`], { cwd: target });
}

function run(
  command: string,
  args: readonly string[],
  options: { cwd?: string; input?: Uint8Array; shell?: boolean } = {},
  allowed: readonly number[] = [0],
): { stdout: string } {
  const { status, stdout, stderr } = spawnSync(command, args, { encoding: 'utf8', ...options });
  if (status === null || !allowed.includes(status)) fail(`${command} ${args.join(' ')} ends with ${status}\n${stderr}`);
  return { stdout };
}

function readManifest(path: string): Manifest {
  return JSON.parse(readFileSync(join(path, 'package.json'), 'utf8')) as Manifest;
}

function fail(reason: string): never {
  throw new Error(reason);
}
