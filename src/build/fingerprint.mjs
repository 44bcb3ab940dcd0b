import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/**
 * SHA-256 over the names and bytes of all files named by `paths`, folders taken whole.
 *
 * Contents rather than times: a checkout, a copy or a touched file gives the same answer. A path
 * that does not exist counts as empty, so that its appearance is a change.
 *
 * @param {string} root folder that the paths are relative to
 * @param {readonly string[]} paths files and folders
 * @param {(path: string) => boolean} [skip] true for a path, with forward slashes, to leave out
 * @returns {string} lower-case hexadecimal
 */
export function fingerprint(root, paths, skip = () => false) {
  const hash = createHash('sha256');
  for (const file of [...new Set(paths.flatMap((path) => filesUnder(join(root, path))))].sort()) {
    const name = relative(root, file).split(sep).join('/');
    if (skip(name)) continue;
    const bytes = readFileSync(file);
    hash.update(`${name}\n${bytes.length}\n`).update(bytes);
  }
  return hash.digest('hex');
}

/**
 * @param {string} path
 * @returns {string[]}
 */
function filesUnder(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return [];
  if (!stat.isDirectory()) return [path];
  return readdirSync(path, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(path, entry.name)) : [join(path, entry.name)],
  );
}
