import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fingerprint } from './fingerprint.mjs';

/*
 * Makes the working tree ready, doing only what is missing: `node src/build/ready.mjs build` installs
 * packages, then generates code, then builds; `install` and `generate` stop earlier. It uses nothing
 * but Node, since on a fresh clone there is nothing else.
 */

const root = join(import.meta.dirname, '../..');
const stages = [
  { name: 'install', isReady: packagesInstalled, command: ['npm', 'ci'] },
  { name: 'generate', isReady: () => upToDate('src/generated/inputs.json'), command: ['npm', 'run', 'generate'] },
  { name: 'build', isReady: () => upToDate('dist/inputs.json'), command: ['npm', 'run', 'build'] },
];

const last = stages.findIndex(({ name }) => name === process.argv[2]);
if (last < 0) {
  console.error('usage: node src/build/ready.mjs install|generate|build');
  process.exit(2);
}
for (const { name, isReady, command } of stages.slice(0, last + 1)) {
  if (isReady()) continue;
  console.error(`${name}: ${command.join(' ')}`);
  // npm is a script with an extension of its own on Windows, which only a shell finds.
  const { status } = spawnSync(command.join(' '), { cwd: root, stdio: ['ignore', 2, 2], shell: true });
  if (status !== 0) process.exit(status ?? 1);
}

/**
 * npm keeps a record of what it installed; an interrupted install leaves none. Packages that only
 * other systems need are in the lock file but not in the record.
 */
function packagesInstalled() {
  const record = join(root, 'node_modules/.package-lock.json');
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  const locked = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  return Object.entries(locked).every(
    ([path, { version, optional }]) => path === '' || installed[path]?.version === version || optional === true,
  );
}

/**
 * Whether the files that a record beside them says they were made from are still the same.
 *
 * @param {string} record file that holds the names of the inputs and their fingerprint
 */
function upToDate(record) {
  if (!existsSync(join(root, record))) return false;
  const { inputs, fingerprint: before } = JSON.parse(readFileSync(join(root, record), 'utf8'));
  return fingerprint(root, inputs) === before;
}
