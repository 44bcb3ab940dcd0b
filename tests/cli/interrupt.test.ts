import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hole, layoutText } from '../jobs/small-layout.js';
import { command, plainEnvironment, sprinklerProfile, workFolder } from './run-ahx.js';

const { file, path } = workFolder();

/** So many holes that writing them takes a while, all at one place so that a report is long too. */
const many = file(
  'many.ahx.json',
  layoutText({
    holes: Array.from({ length: 60_000 }, (_, k) =>
      hole(`H-${k}`, [(k >> 1) * 100, 2, 3], { tag: `tag ${k}`, note: 'x'.repeat(100) }),
    ),
  }),
);

function start(args: readonly string[], stdin: 'pipe' | 'ignore' = 'ignore'): ChildProcess {
  return spawn(process.execPath, [command, ...args], { stdio: [stdin, 'pipe', 'pipe'], env: plainEnvironment() });
}

async function endOf(child: ChildProcess): Promise<{ code: number | null; signal: string | null; err: string }> {
  let err = '';
  child.stderr?.on('data', (chunk) => {
    err += chunk;
  });
  const [code, signal] = (await once(child, 'exit')) as [number | null, string | null];
  return { code, signal, err };
}

function partFiles(): string[] {
  return readdirSync(dirname(many)).filter((name) => name.endsWith('.part'));
}

async function until(condition: () => boolean, child: ChildProcess): Promise<void> {
  while (!condition()) {
    if (child.exitCode !== null) throw new Error('the command ended before it could be interrupted');
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
}

describe.skipIf(process.platform === 'win32')('an interrupt', () => {
  it('while a file is written ends with 130 and leaves nothing behind', async () => {
    const out = path('interrupted.ahx.json');
    const child = start(['convert', many, out]);
    const end = endOf(child);
    await until(() => partFiles().length > 0, child);
    expect(existsSync(out)).toBe(false);
    child.kill('SIGINT');
    expect(await end).toMatchObject({ code: 130, signal: null });
    expect(partFiles()).toEqual([]);
    expect(existsSync(out)).toBe(false);
  });

  it('while standard input is waited for ends with 130', async () => {
    const child = start(['convert', '-', path('waiting.ahx.json'), '--profile', sprinklerProfile], 'pipe');
    const end = endOf(child);
    // The command reads only after it has begun to listen for interrupts.
    child.stdin?.write('Point,Label\n'.repeat(20_000));
    await until(() => (child.stdin?.writableLength ?? 0) === 0, child);
    child.kill('SIGINT');
    expect(await end).toMatchObject({ code: 130, signal: null, err: '' });
    expect(existsSync(path('waiting.ahx.json'))).toBe(false);
  });
});

describe('a broken pipe', () => {
  it('ends the output quietly', async () => {
    for (const args of [
      ['check', many, '--format', 'json'],
      ['convert', many, '-', '--to', 'layout'],
    ]) {
      const child = start(args);
      const end = endOf(child);
      await once(child.stdout as NonNullable<ChildProcess['stdout']>, 'data');
      child.stdout?.destroy();
      const { signal, err } = await end;
      expect([args[0], signal, err]).toEqual([args[0], null, '']);
    }
  });

  it('of standard error does not stop the work', async () => {
    const out = path('unheard.geojson');
    const child = start(['convert', many, out]);
    child.stderr?.destroy();
    const [code] = (await once(child, 'exit')) as [number | null];
    expect(code).toBe(0);
    expect((JSON.parse(readFileSync(out, 'utf8')) as { features: unknown[] }).features.length).toBeGreaterThanOrEqual(
      60_000,
    );
  });
});
