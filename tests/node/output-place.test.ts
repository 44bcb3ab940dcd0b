import {
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkOutputName, isSameFile, RefusedName, writeWhole } from '../../src/node/output-file.js';

const folder = mkdtempSync(join(tmpdir(), 'ahx-test-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string) => join(folder, name);
const cannotLink = process.platform === 'win32';

describe.skipIf(cannotLink)('an output that is a link', () => {
  it('stays, and its target is overwritten', async () => {
    mkdirSync(path('target'));
    writeFileSync(path('target/real.json'), 'old');
    symlinkSync('target/real.json', path('link.json'));
    checkOutputName(path('link.json'), true);
    await writeWhole(path('link.json'), ['new'], true, async () => {});
    expect(lstatSync(path('link.json')).isSymbolicLink()).toBe(true);
    expect(readFileSync(path('target/real.json'), 'utf8')).toBe('new');
    expect(readdirSync(path('target'))).toEqual(['real.json']);
  });

  it('is refused without force, and where it leads to nothing', () => {
    writeFileSync(path('real.json'), 'old');
    symlinkSync(path('real.json'), path('unforced.json'));
    expect(() => checkOutputName(path('unforced.json'), false)).toThrow('exists already; --force overwrites it');
    symlinkSync(path('nothing.json'), path('dangling.json'));
    for (const force of [false, true])
      expect(() => checkOutputName(path('dangling.json'), force)).toThrow('it is a link to nothing');
  });
});

describe('an output that is no regular file', () => {
  it('is refused with and without force', () => {
    const others = [folder, ...(existsSync('/dev/null') ? ['/dev/null'] : [])];
    for (const name of others) {
      for (const force of [false, true]) {
        expect(() => checkOutputName(name, force)).toThrow(RefusedName);
        expect(() => checkOutputName(name, force)).toThrow('no regular file');
      }
    }
  });
});

describe('isSameFile', () => {
  it('sees through links, soft and hard', () => {
    writeFileSync(path('one.json'), 'x');
    writeFileSync(path('two.json'), 'x');
    expect(isSameFile(path('one.json'), join(folder, '..', basename(folder), 'one.json'))).toBe(true);
    expect(isSameFile(path('one.json'), path('two.json'))).toBe(false);
    expect(isSameFile(path('one.json'), path('none.json'))).toBe(false);
    linkSync(path('one.json'), path('hard.json'));
    expect(isSameFile(path('one.json'), path('hard.json'))).toBe(true);
    if (cannotLink) return;
    symlinkSync(path('one.json'), path('soft.json'));
    expect(isSameFile(path('soft.json'), path('one.json'))).toBe(true);
  });
});
