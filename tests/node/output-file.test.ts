import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { checkOutputName, RefusedName, UnwritableOutput, writeWhole } from '../../src/node/output-file.js';

const folder = mkdtempSync(join(tmpdir(), 'ahx-test-'));
const out = join(folder, 'out.json');
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => rmSync(out, { force: true }));

const noPause = async () => {};

describe('writeWhole', () => {
  it('writes all chunks and leaves nothing beside them', async () => {
    await writeWhole(out, ['{"a":', '"é😀"', '}\n'], false, noPause);
    expect(readFileSync(out, 'utf8')).toBe('{"a":"é😀"}\n');
    expect(readdirSync(folder)).toEqual(['out.json']);
  });

  it('shows nothing at its place before the text is whole', async () => {
    const seen: boolean[] = [];
    await writeWhole(out, ['a', 'b', 'c'], false, async () => {
      seen.push(existsSync(out));
    });
    expect(seen).toEqual([false, false, false]);
  });

  it('leaves nothing behind, and an old file as it was, when the text breaks off', async () => {
    function* broken(): Generator<string> {
      yield 'half';
      throw new Error('no more');
    }
    await expect(writeWhole(out, broken(), false, noPause)).rejects.toThrow('no more');
    expect(readdirSync(folder)).toEqual([]);
    writeFileSync(out, 'old');
    await expect(writeWhole(out, broken(), true, noPause)).rejects.toThrow('no more');
    expect(readdirSync(folder)).toEqual(['out.json']);
    expect(readFileSync(out, 'utf8')).toBe('old');
  });

  it('overwrites only when told to, even a file that came while it wrote', async () => {
    const comesMeanwhile = async () => writeFileSync(out, 'theirs');
    await expect(writeWhole(out, ['ours'], false, comesMeanwhile)).rejects.toThrow(UnwritableOutput);
    await expect(writeWhole(out, ['ours'], false, noPause)).rejects.toThrow(
      `${out} cannot be written: it exists already.`,
    );
    expect(readFileSync(out, 'utf8')).toBe('theirs');
    await writeWhole(out, ['ours'], true, noPause);
    expect(readFileSync(out, 'utf8')).toBe('ours');
    expect(readdirSync(folder)).toEqual(['out.json']);
  });

  it('says why the system refuses', async () => {
    const nowhere = join(folder, 'no-folder', 'out.json');
    await expect(writeWhole(nowhere, ['x'], false, noPause)).rejects.toThrow(
      `${nowhere} cannot be written: there is no such file or folder.`,
    );
    const inTheWay = join(folder, 'in-the-way');
    mkdirSync(inTheWay);
    await expect(writeWhole(inTheWay, ['x'], true, noPause)).rejects.toThrow(UnwritableOutput);
    expect(readdirSync(folder)).toEqual(['in-the-way']);
    rmdirSync(inTheWay);
  });

  it('does not keep listening for the end of the process', async () => {
    const before = process.listenerCount('exit');
    for (let k = 0; k < 3; k++) await writeWhole(out, ['x'], true, noPause);
    await expect(writeWhole(out, ['x'], false, noPause)).rejects.toThrow();
    expect(process.listenerCount('exit')).toBe(before);
  });
});

describe('checkOutputName', () => {
  const isRefused = (name: string) => {
    try {
      checkOutputName(join(folder, name), false);
      return false;
    } catch (error) {
      expect(error).toBeInstanceOf(RefusedName);
      return true;
    }
  };

  it('refuses names that Windows keeps for devices, with any ending and in any case', () => {
    for (const name of ['con', 'CON.json', 'prn.ahx.json', 'aux', 'nul.csv', 'COM1', 'com0.x', 'lpt9.geojson'])
      expect([name, isRefused(name)]).toEqual([name, true]);
    for (const name of ['cons', 'concrete.json', 'my.con', 'com', 'com10', 'lpt', 'null'])
      expect([name, isRefused(name)]).toEqual([name, false]);
  });

  it('refuses letters and ends that Windows cannot hold', () => {
    for (const name of ['a<b', 'a>b', 'a:b', 'a"b', 'a|b', 'a?b', 'a*b', 'a.', 'a '])
      expect([name, isRefused(name)]).toEqual([name, true]);
    for (const name of ['a b', 'a.b.c', 'ä-(1).json', '.hidden', "a'b"])
      expect([name, isRefused(name)]).toEqual([name, false]);
  });

  it('refuses a file that is there, unless it is to be overwritten', () => {
    writeFileSync(out, 'old');
    expect(isRefused('out.json')).toBe(true);
    expect(() => checkOutputName(out, true)).not.toThrow();
  });
});
