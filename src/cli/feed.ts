import type { ColumnProfile } from '../generated/column-profile.js';
import type { ClosedInput } from '../jobs/checked-input.js';
import type { Checker } from '../jobs/checker.js';
import { InputFile, UnreadableInput } from '../node/input-file.js';
import { type Manners, pause, ProgressBar } from './console.js';

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
 * @throws UnreadableInput
 */
export async function feed(
  checker: Checker,
  path: string,
  profile: ColumnProfile | undefined,
  manners: Manners,
): Promise<Fed> {
  if (path === STANDARD_INPUT) {
    checker.open('standard input', { profile });
    try {
      for await (const chunk of process.stdin) checker.write(chunk as Buffer);
    } catch (error) {
      throw new UnreadableInput('standard input', error);
    }
    return { input: checker.close(), close: () => {} };
  }
  const file = new InputFile(path);
  checker.open(path, { profile, source: file.isSeekable ? file : undefined });
  const bar = new ProgressBar(path, file.byteLength, !manners.quiet);
  let done = 0;
  for (const chunk of file.chunks()) {
    checker.write(chunk);
    done += chunk.length;
    bar.update(done);
    await pause();
  }
  bar.end();
  return { input: checker.close(), close: () => file.close() };
}
