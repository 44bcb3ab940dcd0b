import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BenchLayout, writeBenchLayout } from '../bench/make-layout.js';

/** The bytes of an invented layout. */
export function benchBytes(layout: BenchLayout): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'ahx-layout-'));
  try {
    const file = join(folder, 'layout.ahx.json');
    writeBenchLayout(file, layout);
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
