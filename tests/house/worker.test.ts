import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';

const folder = import.meta.dirname;
const read = (name: string): unknown => JSON.parse(readFileSync(join(folder, '../conformance/base', name), 'utf8'));

// The switch against code from strings belongs to the process, so a process starts the worker.
const host = `
  import { readFileSync } from 'node:fs';
  import { Worker } from 'node:worker_threads';
  const workerData = JSON.parse(readFileSync(0, 'utf8'));
  const worker = new Worker(new URL(${JSON.stringify(pathToFileURL(join(folder, 'validators-in-worker.mjs')).href)}), { workerData, execArgv: [] });
  worker.on('message', (message) => console.log(JSON.stringify(message)));
`;

describe('the generated validators', () => {
  it('judge in a bare module worker that may not make code from strings', () => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--disallow-code-generation-from-strings', '--input-type=module', '--eval', host],
      {
        encoding: 'utf8',
        input: JSON.stringify({ layout: read('full.ahx.json'), profile: read('full-profile.ahx.json') }),
      },
    );
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(JSON.parse(stdout)).toEqual({
      evaluates: false,
      hasRequire: false,
      holes: [true, true, true, true],
      membersAtFault: [],
      profile: true,
      wrongHole: [['minItems', '/point', '#/$defs/position/minItems']],
    });
  });

  it('hold no word that makes code or loads a package', () => {
    const code = readFileSync(join(folder, '../../src/generated/validators.js'), 'utf8');
    expect(code).not.toMatch(/\beval\s*\(|\bFunction\s*\(|\bimport\b/);
    // The helper that counts code points carries its own name as a text; nothing calls it.
    expect(code.replaceAll('require("ajv/dist/runtime/ucs2length").default', '')).not.toMatch(/\brequire\s*\(/);
  });
});
