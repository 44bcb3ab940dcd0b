import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { InputFile, UnreadableInput } from '../../src/node/input-file.js';

const folder = mkdtempSync(join(tmpdir(), 'ahx-test-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function fileOf(length: number): { file: InputFile; bytes: Uint8Array } {
  const bytes = Uint8Array.from({ length }, (_, k) => (k * 31) % 251);
  const path = join(folder, `${length}.bin`);
  writeFileSync(path, bytes);
  return { file: new InputFile(path), bytes };
}

describe('an input file', () => {
  it('gives its bytes from beginning to end, in chunks', () => {
    for (const length of [0, 1, 262_143, 262_144, 262_145, 700_000]) {
      const { file, bytes } = fileOf(length);
      const parts = [...file.chunks()].map((chunk) => chunk.length);
      expect(parts.reduce((sum, part) => sum + part, 0)).toBe(length);
      const again = new InputFile(file.path);
      const read = new Uint8Array(length);
      let at = 0;
      for (const chunk of again.chunks()) {
        read.set(chunk, at);
        at += chunk.length;
      }
      expect(Buffer.compare(read, bytes)).toBe(0);
      expect([again.byteLength, again.isSeekable]).toEqual([length, true]);
      file.close();
      again.close();
    }
  });

  it('gives bytes from any place, while its chunks go on', () => {
    const { file, bytes } = fileOf(700_000);
    const chunks = file.chunks();
    const first = chunks.next().value?.length ?? 0;
    for (const [start, end] of [
      [0, 10],
      [699_990, 700_010],
      [100_000, 600_000],
      [800_000, 900_000],
      [10, 5],
    ]) {
      expect(Buffer.compare(file.slice(start, end), bytes.subarray(start, Math.max(start, end)))).toBe(0);
    }
    const second = chunks.next().value as Uint8Array;
    expect(Buffer.compare(second, bytes.subarray(first, first + second.length))).toBe(0);
    file.close();
  });

  it('that cannot be opened says which and why', () => {
    for (const [path, reason] of [
      [join(folder, 'missing'), 'there is no such file or folder'],
      [folder, 'it is a folder'],
      [join(folder, 'x'.repeat(400)), 'its name is too long'],
    ]) {
      expect(() => new InputFile(path)).toThrow(UnreadableInput);
      expect(() => new InputFile(path)).toThrow(`${path} cannot be read: ${reason}.`);
    }
  });
});
