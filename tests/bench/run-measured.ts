import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

/** What one whole process took. */
export interface Measured {
  ms: number;
  /** Peak resident memory, MB (10^6 bytes). */
  peakMb: number;
}

const probe = join(import.meta.dirname, 'peak-memory.cjs');

/**
 * Runs a Node process to its end and measures it from outside, start-up included.
 *
 * @param expected exit codes that are no failure of the measurement
 */
export function runMeasured(args: readonly string[], expected: readonly number[] = [0]): Measured {
  const began = performance.now();
  const { status, stderr, output } = spawnSync(process.execPath, ['--require', probe, ...args], {
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
  });
  const ms = performance.now() - began;
  if (status === null || !expected.includes(status))
    throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
  return { ms, peakMb: (Number(output[3]) * 1024) / 1e6 };
}

/** Runs a Node process to its end without any probe: for start-up, where the probe would weigh. */
export function timeOf(args: readonly string[]): number {
  const began = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
  return performance.now() - began;
}

export interface Spread {
  min: number;
  median: number;
}

export function spread(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  return { min: sorted[0], median: sorted[Math.floor(sorted.length / 2)] };
}
