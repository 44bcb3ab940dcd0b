import {
  closeSync,
  existsSync,
  fchmodSync,
  linkSync,
  lstatSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { FileTrouble, reasonOf } from './file-trouble.js';

/** An output that cannot be written to where it should go. */
export class UnwritableOutput extends FileTrouble {}

/** A name that must not be written to. */
export class RefusedName extends Error {
  readonly exitCode = 2;
}

/** Names that stand for devices on Windows, with or without an ending. */
const RESERVED = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])(\..*)?$/i;

/**
 * Refuses a name that would do harm: an existing file unless `force`, what is no regular file in any case
 * (a folder, a device, a link to nothing), and names that some system cannot hold, so that files go from
 * office to field without being renamed.
 *
 * @throws RefusedName
 */
export function checkOutputName(path: string, force: boolean): void {
  const name = basename(path);
  if (RESERVED.test(name))
    throw new RefusedName(`${path} cannot be written: Windows keeps the name "${name}" for a device.`);
  if (/[<>:"|?*]/.test(name) || /[. ]$/.test(name)) {
    throw new RefusedName(`${path} cannot be written: the name "${name}" is not possible on Windows.`);
  }
  const found = lookAt<Stats>(path, lstatSync);
  if (found === undefined) return;
  const target = found.isSymbolicLink() ? lookAt<Stats>(path, statSync) : found;
  if (target === undefined) throw new RefusedName(`${path} cannot be written: it is a link to nothing.`);
  if (!target.isFile()) throw new RefusedName(`${path} cannot be written: it is there and is no regular file.`);
  if (!force) throw new RefusedName(`${path} exists already; --force overwrites it.`);
}

/** Whether two paths lead to the same file, through links of any kind too. */
export function isSameFile(one: string, other: string): boolean {
  // Some systems number their files beyond what a double holds.
  const look = (path: string) => statSync(path, { bigint: true });
  const [a, b] = [lookAt(one, look), lookAt(other, look)];
  return a !== undefined && b !== undefined && a.ino === b.ino && a.dev === b.dev;
}

function lookAt<T>(path: string, look: (path: string) => T): T | undefined {
  try {
    return look(path);
  } catch {
    return undefined;
  }
}

/**
 * Writes a text, or bytes, beside its place and moves it there when it is whole, so that nothing half-written is ever
 * seen and an old file stays until then. With `force`, a symbolic link stays and its target is overwritten; who may
 * read or write the old file may do so with the new one.
 *
 * @throws UnwritableOutput when the system refuses; errors of `text` pass through; nothing is left behind
 */
export async function writeWhole(
  path: string,
  text: Iterable<string | Uint8Array>,
  force: boolean,
  pause: () => Promise<void>,
): Promise<void> {
  const target = force && existsSync(path) ? system(path, () => realpathSync(path)) : path;
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
  const remove = () => rmSync(beside, { force: true });
  const fd = system(path, () => openSync(beside, 'wx'));
  // Who may read or write the old file may do so with the new one, and nobody else.
  if (force && existsSync(target)) system(path, () => fchmodSync(fd, statSync(target).mode & 0o777));
  // An interrupt ends the process without unwinding.
  process.once('exit', remove);
  try {
    try {
      for (const chunk of text) {
        system(path, () => writeAll(fd, typeof chunk === 'string' ? Buffer.from(chunk) : chunk));
        await pause();
      }
    } finally {
      closeSync(fd);
    }
    // A link refuses an existing file in the same step; a rename would overwrite one that came meanwhile.
    if (force) system(path, () => renameSync(beside, target));
    else system(path, () => place(beside, target));
  } finally {
    remove();
    process.off('exit', remove);
  }
}

function place(beside: string, path: string): void {
  try {
    linkSync(beside, path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST') throw error;
    // Some file systems know no links.
    if (existsSync(path)) throw Object.assign(new Error(), { code: 'EEXIST' });
    renameSync(beside, path);
  }
}

function writeAll(fd: number, bytes: Uint8Array): void {
  for (let n = 0; n < bytes.length; ) n += writeSync(fd, bytes, n);
}

function system<T>(path: string, act: () => T): T {
  try {
    return act();
  } catch (error) {
    throw new UnwritableOutput(`${path} cannot be written: ${reasonOf(error)}.`);
  }
}
