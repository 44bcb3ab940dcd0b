import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'ahx-readme-'));
cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true });
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Blocks with a command line after `$` and what it prints; `…` stands for lines left out. */
const blocks = [...readme.matchAll(/```console\n\$ npx ahx (.*)\n([\s\S]*?)```/g)].map(([, command, output]) => ({
  command,
  output,
}));

describe('The tour in the README', () => {
  it('has commands', () => expect(blocks.length).toBeGreaterThanOrEqual(4));

  it.each(blocks)('prints what it says for: ahx $command', ({ command, output }) => {
    const { stdout, stderr } = spawnSync(process.execPath, [join(root, 'dist/cli.cjs'), ...command.split(' ')], {
      cwd: folder,
      encoding: 'utf8',
    });
    let rest = stdout + stderr;
    for (const part of output.split(/^…\n/m)) {
      expect(rest).toContain(part);
      rest = rest.slice(rest.indexOf(part) + part.length);
    }
  });

  it('imports from the package what the package exports', async () => {
    const names = /import \{ (.*) \} from 'anchor-hole-exchange'/.exec(readme)?.[1].split(', ') ?? [];
    const sdk = (await import('../../src/index.js')) as Record<string, unknown>;
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) expect(sdk[name]).toBeTypeOf('function');
  });
});
