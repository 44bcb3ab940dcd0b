import { readdirSync, readFileSync } from 'node:fs';

const root = new URL('../../examples/', import.meta.url);

/** Text of an example, by its path inside `examples/`. */
export function exampleText(path: string): string {
  return readFileSync(new URL(path, root), 'utf8');
}

/** An example read by the engine's own JSON reader. */
export function exampleJson(path: string): unknown {
  return JSON.parse(exampleText(path));
}

/** Paths inside `examples/` that end so, in order. */
export function examplePaths(ending: string): string[] {
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith(ending))
    .sort();
}
