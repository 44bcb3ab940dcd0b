import { fstatSync } from 'node:fs';
import type { ColumnProfile } from '../generated/column-profile.js';
import type { ClosedInput } from '../jobs/checked-input.js';
import type { Checker } from '../jobs/checker.js';
import { InputFile, UnreadableInput } from '../node/input-file.js';
import { type Manners, ProgressBar, pause } from './console.js';

/** Name that stands for standard input. */
export const STANDARD_INPUT = '-';

/** An input that has gone through the checker. `file` is open until the caller closes it. */
export interface Fed {
  input: ClosedInput;
  close(): void;
}

/**
 * Pushes a file, or standard input, through the checker.
 *
 * @throws UnreadableInput; the input may be open then
 */
export async function feed(
  checker: Checker,
  path: string,
  profile: ColumnProfile | undefined,
  manners: Manners,
): Promise<Fed> {
  return path === STANDARD_INPUT ? feedStandardInput(checker, profile) : feedFile(checker, path, profile, manners);
}

async function feedStandardInput(checker: Checker, profile: ColumnProfile | undefined): Promise<Fed> {
  const name = 'standard input';
  // Node takes a folder for an empty stream.
  if (fstatSync(0).isDirectory()) throw new UnreadableInput(name, Object.assign(new Error(), { code: 'EISDIR' }));
  checker.open(name, { profile });
  try {
    for await (const chunk of process.stdin) checker.write(chunk as Buffer);
  } catch (error) {
    // Anything but a refusal of the system is a fault of ours.
    if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
    throw new UnreadableInput(name, error);
  }
  return { input: checker.close(), close: () => {} };
}

async function feedFile(
  checker: Checker,
  path: string,
  profile: ColumnProfile | undefined,
  manners: Manners,
): Promise<Fed> {
  const file = new InputFile(path);
  const chunks = file.chunks();
  // A file that cannot be read at all is no input of the report, so the first bytes come first.
  let next = chunks.next();
  checker.open(path, { profile, source: file.isSeekable ? file : undefined });
  const bar = new ProgressBar(path, file.byteLength, !manners.quiet);
  for (let done = 0; next.done !== true; next = chunks.next()) {
    checker.write(next.value);
    done += next.value.length;
    bar.update(done);
    await pause();
  }
  bar.end();
  return { input: checker.close(), close: () => file.close() };
}
