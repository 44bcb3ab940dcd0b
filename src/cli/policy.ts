import { existsSync } from 'node:fs';
import { dirname, isAbsolute, join, resolve } from 'node:path';
import { globSync } from 'tinyglobby';
import type { Baseline } from '../generated/baseline.js';
import type { Config } from '../generated/config.js';
import { WrongUse } from './exit.js';
import { readDocument } from './read-document.js';

/** A file to be checked, and what a table is read with. */
export interface NamedInput {
  path: string;
  /** Path of a column profile. */
  profile?: string;
}

/** What config and baseline say to a command. */
export interface Policy {
  config: Config | undefined;
  baseline: Baseline | undefined;
  inputs: NamedInput[];
  /** Paths that config and baseline were read from. */
  files: string[];
}

/** Reads the config and the baseline that were named, the one in the config where none was. */
export function readPolicy(configPath: string | undefined, baselinePath: string | undefined): Policy {
  const config = configPath === undefined ? undefined : readDocument('config', configPath);
  const folder = configPath === undefined ? '.' : dirname(configPath);
  const path = baselinePath ?? (config?.baseline === undefined ? undefined : within(folder, config.baseline));
  return {
    config,
    baseline: path === undefined ? undefined : readDocument('baseline', path),
    inputs: inputsOf(config?.inputs ?? [], folder),
    files: [configPath, path].filter((file) => file !== undefined),
  };
}

function inputsOf(lists: NonNullable<Config['inputs']>, folder: string): NamedInput[] {
  const found = new Map<string, NamedInput>();
  for (const { files, profile } of lists) {
    for (const pattern of files) {
      for (const path of matching(pattern, folder)) {
        // One file may be written in several ways.
        const key = resolve(path);
        if (found.has(key)) continue;
        found.set(key, { path, ...(profile !== undefined && { profile: within(folder, profile) }) });
      }
    }
  }
  return [...found.values()];
}

/** @throws WrongUse where a pattern matches nothing; a plain path may be missing, and is told as one that cannot be read */
function matching(pattern: string, folder: string): string[] {
  if (!pattern.includes('*') || existsSync(within(folder, pattern))) return [within(folder, pattern)];
  // Only * and ** mean anything; brackets and braces are characters of names.
  const literal = pattern.replace(/[\\()[\]{}!?+@]/g, '\\$&');
  const names = globSync([literal], { cwd: folder, onlyFiles: true, expandDirectories: false });
  if (names.length === 0) throw new WrongUse(`No file matches "${pattern}" of the config.`);
  return names.sort(byCodePoint).map((name) => within(folder, name));
}

/** A path of the config as one from the folder of the command. */
function within(folder: string, path: string): string {
  return isAbsolute(path) ? path : join(folder, path);
}

function byCodePoint(a: string, b: string): number {
  const [left, right] = [[...a], [...b]].map((characters) => characters.map((c) => c.codePointAt(0) ?? 0));
  const k = left.findIndex((code, index) => code !== right[index]);
  return k < 0 ? left.length - right.length : left[k] - (right[k] ?? -1);
}
