import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { importCycles, platformUses, readModules, wrongImports } from './module-graph.js';

const root = join(import.meta.dirname, '../..');
const modules = readModules(join(root, 'src'));
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const runtimePackages = Object.keys(manifest.dependencies);

describe('the modules of src', () => {
  it('import downward only', () => {
    expect(wrongImports(modules, runtimePackages)).toEqual([]);
  });

  it('have no circle of imports', () => {
    expect(importCycles(modules)).toEqual([]);
  });

  it('use no clock, chance or platform in the core', () => {
    expect(platformUses(modules)).toEqual([]);
  });
});

describe('the core', () => {
  it('is compiled without the types of any platform', () => {
    const base = JSON.parse(readFileSync(join(root, 'tsconfig.json'), 'utf8')).compilerOptions;
    const core = JSON.parse(readFileSync(join(root, 'tsconfig.core.json'), 'utf8'));
    const { lib, types } = { ...base, ...core.compilerOptions };
    expect({ lib, types }).toEqual({ lib: ['ES2023'], types: [] });
    expect(core.exclude.toSorted()).toEqual(['src/build', 'src/cli', 'src/node', 'src/page']);
  });
});

// The checks above pass on any tree that they do not understand, so they are tried on small wrong ones.
describe('the check of imports', () => {
  const found = (files: Record<string, string>) => wrongImports(new Map(Object.entries(files)), ['proj4']);
  const low = {
    'units/length.ts': '',
    'read/scan.ts': '',
    'check/rules/one.ts': '',
    'node/file.ts': '',
    'jobs/check.ts': '',
  };

  it.each([
    ['units/a.ts', '../read/scan.js', 'upward'],
    ['read/a.ts', '../check/rules/one.js', 'stages do not import each other'],
    ['jobs/a.ts', '../node/file.js', 'only cli imports node'],
    ['frame/a.ts', 'node:fs', 'the core knows no platform'],
    ['frame/a.ts', 'ajv', 'no runtime dependency'],
    ['frame/a.ts', './gone.js', 'no such module'],
    ['shed/a.ts', '../units/length.js', 'shed is no room of the house'],
  ])('sees that %s must not import %s', (from, to, reason) => {
    for (const line of [`import { x } from '${to}';`, `export type { X } from '${to}';`, `void import('${to}');`]) {
      expect(found({ ...low, [from]: line })).toEqual([expect.stringContaining(reason)]);
    }
  });

  it.each([
    ['jobs/a.ts', '../read/scan.js'],
    ['cli/a.ts', '../node/file.js'],
    ['cli/a.ts', 'commander'],
    ['frame/a.ts', 'proj4'],
  ])('lets %s import %s', (from, to) => {
    expect(found({ ...low, [from]: `import { x } from '${to}';` })).toEqual([]);
  });

  it('sees a circle through three modules', () => {
    const circle = new Map([
      ['units/a.ts', "import './b.js';"],
      ['units/b.ts', "import type { C } from './c.js';"],
      ['units/c.ts', "import './a.js';"],
    ]);
    expect(importCycles(circle)).toEqual(['units/a.ts → units/b.ts → units/c.ts → units/a.ts']);
  });

  it.each(['Date.now()', 'new Date()', 'Math.random()', "console.log('x')", 'process.cwd()', "fetch('x')"])(
    'sees %s in the core but not in cli',
    (use) => {
      const text = `export const x = ${use};`;
      expect(platformUses(new Map([['units/a.ts', text]]))).toHaveLength(1);
      expect(platformUses(new Map([['cli/a.ts', text]]))).toEqual([]);
    },
  );
});
