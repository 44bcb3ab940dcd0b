import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { importsOf, isCore, readModules } from './module-graph.js';

const root = join(import.meta.dirname, '../..');
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  name: string;
  version: string;
  license: string;
  type: string;
  sideEffects: boolean;
  engines: { node: string };
  bin: Record<string, string>;
  exports: Record<string, string | { types: string; default: string }>;
  files: string[];
  dependencies: Record<string, string>;
};

describe('the manifest', () => {
  it('names the package, its licence and the oldest Node that it runs on', () => {
    expect(manifest).toMatchObject({
      name: 'anchor-hole-exchange',
      license: 'Apache-2.0',
      type: 'module',
      sideEffects: false,
      engines: { node: '>=20.19' },
    });
  });

  it.each(Object.entries(manifest.exports).filter(([path]) => !path.includes('*')))(
    'has the files of the sub-path %s, types before code',
    (_, target) => {
      const files = typeof target === 'string' ? [target] : Object.values(target);
      if (typeof target !== 'string') expect(Object.keys(target)).toEqual(['types', 'default']);
      expect(files.filter((file) => !existsSync(join(root, file)))).toEqual([]);
    },
  );

  it('depends at run time only on what the SDK imports', () => {
    const modules = readModules(join(root, 'src'));
    const imports = [...importsOf(modules)].filter(([path]) => isCore(path)).flatMap(([, targets]) => targets);
    const packages = new Set(imports.filter((target) => !modules.has(target)));
    expect([...packages].toSorted()).toEqual(Object.keys(manifest.dependencies).toSorted());
  });

  it('ships what a reader of the contract needs', () => {
    expect(manifest.files).toEqual(expect.arrayContaining(['dist', 'schema', 'spec']));
  });
});

describe('the command', () => {
  const command = join(root, manifest.bin.ahx);

  it('starts and tells its version', () => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [command, '--version'], { encoding: 'utf8' });
    expect({ status, stdout: stdout.trim(), stderr }).toEqual({ status: 0, stdout: manifest.version, stderr: '' });
  });

  it('has the line by which a shell starts it', () => {
    expect(readFileSync(command, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
  });

  it.skipIf(process.platform === 'win32')('may be started by everyone', () => {
    expect(statSync(command).mode & 0o111).toBe(0o111);
  });
});
