'use strict';

/*
 * Runs the command once and keeps what the engine has compiled of it until the end.
 *
 *     node keep-compiled.cjs SCRIPT COMPILED ARGUMENTS…
 */

const { readFileSync, writeFileSync } = require('node:fs');
const { createRequire } = require('node:module');
const { dirname } = require('node:path');
const { Script } = require('node:vm');

const [, , file, compiled, ...args] = process.argv;
// As `src/cli/start.cjs` wraps it: the engine takes what was kept for the same text only.
const text = readFileSync(file, 'latin1');
const script = new Script(`(function (exports, require, module, __filename, __dirname) {${text}\n})`, {
  filename: file,
});
process.on('exit', () => writeFileSync(compiled, script.createCachedData()));
process.argv = [process.execPath, file, ...args];
script.runInThisContext()(exports, createRequire(file), module, file, dirname(file));
