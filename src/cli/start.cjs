'use strict';

/*
 * Starts the command line. Most of the time of a short run went into compiling the script, so the build
 * lays what the engine made of it beside it; another version of the engine compiles anew.
 */

const { existsSync, readFileSync } = require('node:fs');
const { dirname, join } = require('node:path');

const file = join(__dirname, 'cli', 'main.cjs');
const compiled = join(__dirname, 'cli', `main-${process.versions.v8}-${process.arch}.compiled`);

if (existsSync(compiled)) {
  const { createRequire } = require('node:module');
  const { Script } = require('node:vm');
  // The build writes nothing but ASCII, which is quicker to take byte by byte.
  const text = readFileSync(file, 'latin1');
  const script = new Script(`(function (exports, require, module, __filename, __dirname) {${text}\n})`, {
    filename: file,
    cachedData: readFileSync(compiled),
  });
  script.runInThisContext()(exports, createRequire(file), module, file, dirname(file));
} else {
  require(file);
}
