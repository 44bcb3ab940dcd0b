import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import ts from 'typescript';

/** A module of src/: its path from there, with forward slashes, and its text. */
export type Modules = Map<string, string>;

/** Rooms by height: a module imports from its own room and from lower ones. */
const heights: readonly (readonly string[])[] = [
  ['generated'],
  ['geometry', 'units', 'model'],
  ['draw', 'seal', 'fit', 'frame'],
  ['read', 'check', 'report', 'write', 'events', 'policy', 'edit', 'plan', 'quality', 'rates', 'share', 'synth'],
  ['jobs'],
  ['index'],
  ['cli', 'page'],
];

/** Stages that meet only in jobs. */
const stages = new Set(['read', 'check', 'report', 'write']);

/** Generated modules that are a piece of a stage and stand apart only because they are not written by hand. */
const madeFor = new Map([['generated/decode-hole.ts', 'read']]);

/** Rooms outside the core: they may use the platform. */
const outer = new Set(['cli', 'page', 'node', 'build']);

/** Whether a module is part of the core, which must not know the platform. */
export function isCore(path: string): boolean {
  return !outer.has(roomOf(path));
}

/** All TypeScript modules under a folder. */
export function readModules(folder: string): Modules {
  const modules: Modules = new Map();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !/\.ts$/.test(entry.name)) continue;
    const path = join(entry.parentPath, entry.name);
    modules.set(relative(folder, path).split(sep).join('/'), readFileSync(path, 'utf8'));
  }
  return modules;
}

/** What each module imports, type imports too: modules as paths, packages as they are written. */
export function importsOf(modules: Modules): Map<string, string[]> {
  const imports = new Map<string, string[]>();
  for (const [path, text] of modules) {
    const { importedFiles } = ts.preProcessFile(text, true, true);
    const targets = importedFiles.map(({ fileName }) => {
      if (!fileName.startsWith('.')) return fileName;
      const target = posix.join(dirname(path), fileName);
      return [target.replace(/\.js$/, '.ts'), target.replace(/\.js$/, '.d.ts')].find((t) => modules.has(t)) ?? fileName;
    });
    imports.set(path, targets);
  }
  return imports;
}

/** Imports against the direction, as `from → to` with the reason. */
export function wrongImports(modules: Modules, runtimePackages: readonly string[]): string[] {
  const wrong: string[] = [];
  for (const [from, targets] of importsOf(modules)) {
    for (const to of targets) {
      const reason = modules.has(to)
        ? wrongRoom(roomOf(from), roomOf(to))
        : wrongPackage(roomOf(from), to, runtimePackages);
      if (reason !== undefined) wrong.push(`${from} → ${to}: ${reason}`);
    }
  }
  return wrong;
}

function roomOf(path: string): string {
  const stage = madeFor.get(path);
  if (stage !== undefined) return stage;
  return path.includes('/') ? path.slice(0, path.indexOf('/')) : path.replace(/\.ts$/, '');
}

function wrongRoom(from: string, to: string): string | undefined {
  if (from === to || from === 'build') return undefined;
  if (to === 'build') return 'the generators are no part of the package';
  if (to === 'node') return from === 'cli' ? undefined : 'only cli imports node';
  if (outer.has(to)) return `nothing imports ${to}`;
  // Ports are written against the shapes of the core, whichever room they stand in.
  if (from === 'node') return undefined;
  if (stages.has(from) && stages.has(to)) return 'stages do not import each other';
  const [fromHeight, toHeight] = [from, to].map((room) => heights.findIndex((rooms) => rooms.includes(room)));
  if (fromHeight < 0) return `${from} is no room of the house`;
  return toHeight > fromHeight ? 'upward' : undefined;
}

function wrongPackage(from: string, to: string, runtimePackages: readonly string[]): string | undefined {
  if (outer.has(from)) return undefined;
  if (to.startsWith('.')) return 'no such module';
  if (to.startsWith('node:')) return 'the core knows no platform';
  return runtimePackages.some((name) => to === name || to.startsWith(`${name}/`)) ? undefined : 'no runtime dependency';
}

/** Every circle of imports, as the modules on it. */
export function importCycles(modules: Modules): string[] {
  const imports = importsOf(modules);
  const finished = new Set<string>();
  const cycles: string[] = [];
  const visit = (path: string, above: readonly string[]): void => {
    const start = above.indexOf(path);
    if (start >= 0) cycles.push([...above.slice(start), path].join(' → '));
    if (start >= 0 || finished.has(path)) return;
    for (const target of imports.get(path) ?? []) if (modules.has(target)) visit(target, [...above, path]);
    finished.add(path);
  };
  for (const path of modules.keys()) visit(path, []);
  return cycles;
}

const forbiddenMembers = new Set(['Date.now', 'Math.random', 'performance.now', 'crypto.getRandomValues']);
const forbiddenNames = new Set([
  'console',
  'process',
  'globalThis',

  'fetch',
  'setTimeout',
  'setInterval',
]);

/** Uses of the clock, of chance and of the platform in the core, as `module: use`. */
export function platformUses(modules: Modules): string[] {
  const uses: string[] = [];
  for (const [path, text] of modules) {
    if (!isCore(path) || path.endsWith('.d.ts')) continue;
    const visit = (node: ts.Node): void => {
      const use = platformUse(node);
      if (use !== undefined) uses.push(`${path}: ${use}`);
      ts.forEachChild(node, visit);
    };
    visit(ts.createSourceFile(path, text, ts.ScriptTarget.ES2022));
  }
  return uses;
}

function platformUse(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)) {
    const use = `${node.expression.text}.${node.name.text}`;
    if (forbiddenMembers.has(use) || forbiddenNames.has(node.expression.text)) return use;
  }
  if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && forbiddenNames.has(node.expression.text)) {
    return `${node.expression.text}()`;
  }
  const isNow = ts.isNewExpression(node) && (node.arguments ?? []).length === 0;
  return isNow && ts.isIdentifier(node.expression) && node.expression.text === 'Date' ? 'new Date()' : undefined;
}
