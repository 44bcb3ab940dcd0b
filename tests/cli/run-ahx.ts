import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

export const command = join(import.meta.dirname, '../../dist/cli.cjs');
if (!existsSync(command))
  throw new Error(`${command} is missing; npm run build makes it, and npm test does so by itself`);

const examples = join(import.meta.dirname, '../../examples');

/** Path of an example. */
export function example(path: string): string {
  return join(examples, path);
}

export const sprinkler = example('ferry-terminal/sprinkler.ahx.json');
export const sprinklerPoints = example('ferry-terminal/sprinkler-points.csv');
export const sprinklerProfile = example('ferry-terminal/sprinkler.profile.json');
export const poor = example('poor/poor.ahx.json');
export const survey = example('poor/survey-list.csv');
export const surveyProfile = example('poor/survey-list.profile.json');

/** What a run of the command gave. */
export interface Run {
  code: number | null;
  out: string;
  err: string;
}

/** The environment of the tests without what bears on colour. */
export function plainEnvironment(): NodeJS.ProcessEnv {
  const { NO_COLOR, FORCE_COLOR, ...rest } = process.env;
  return rest;
}

/** Runs the built command with these arguments, standard input and folder. */
export function ahx(
  args: readonly string[],
  options: { input?: string | Uint8Array; cwd?: string; env?: NodeJS.ProcessEnv } = {},
): Run {
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [command, ...args], {
    input: options.input ?? '',
    cwd: options.cwd,
    env: { ...plainEnvironment(), ...options.env },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (error !== undefined) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** A folder for the files of one test file; it is gone when the tests are done. */
export function workFolder(): { path(name: string): string; file(name: string, content: string | Uint8Array): string } {
  const folder = mkdtempSync(join(tmpdir(), 'ahx-test-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const path = (name: string) => join(folder, name);
  return {
    path,
    file(name, content) {
      writeFileSync(path(name), content);
      return path(name);
    },
  };
}
