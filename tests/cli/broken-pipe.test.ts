import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { layoutText } from '../jobs/small-layout.js';
import { command, plainEnvironment, workFolder } from './run-ahx.js';

const { file, path } = workFolder();

/** So many holes that writing them takes a while, two at each place so that a report is long too. */
const many = file(
  'many.ahx.json',
  layoutText({
    holes: Array.from({ length: 60_000 }, (_, k) => ({
      id: `H-${k}`,
      trade: 'FP',
      holeType: 'T',
      point: [(k >> 1) * 100, 2, 3],
      note: 'x'.repeat(100),
    })),
  }),
);

function start(args: readonly string[]): ChildProcess {
  return spawn(process.execPath, [command, ...args], { stdio: ['ignore', 'pipe', 'pipe'], env: plainEnvironment() });
}

function partFiles(): string[] {
  return readdirSync(dirname(many)).filter((name) => name.endsWith('.part'));
}

describe.skipIf(process.platform === 'win32')('a signal that ends the command', () => {
  it.each([
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)('%s ends it with %i and leaves nothing behind', async (signal, expected) => {
    const out = path(`${signal}.ahx.json`);
    const child = start(['convert', many, out]);
    const end = once(child, 'exit');
    while (partFiles().length === 0) {
      if (child.exitCode !== null) throw new Error('the command ended before it could be signalled');
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    child.kill(signal);
    expect(await end).toEqual([expected, null]);
    expect(partFiles()).toEqual([]);
    expect(existsSync(out)).toBe(false);
  });
});

describe('a broken pipe', () => {
  it.each([
    ['findings', ['check', many, '--format', 'json'], 1],
    [
      'no findings at the threshold',
      ['check', many, '--format', 'json', '-s', 'holes-coincide=info', '-s', 'holes-too-close=info'],
      0,
    ],
    ['a conversion', ['convert', many, '-', '--to', 'layout'], 0],
  ] as const)('leaves the exit code of %s', async (_, args, expected) => {
    const child = start(args);
    const end = once(child, 'exit');
    await once(child.stdout as NonNullable<ChildProcess['stdout']>, 'data');
    child.stdout?.destroy();
    expect(await end).toEqual([expected, null]);
  });
});
