import { fstatSync, writeSync } from 'node:fs';
import { FileTrouble, reasonOf } from '../node/file-trouble.js';

/** How much and how colourful a command talks. */
export interface Manners {
  quiet: boolean;
  colour: boolean;
}

const OUT = 1;
const ERR = 2;

/** Whether a person looks at the stream. */
export function isTerminal(fd: number): boolean {
  try {
    // The part of Node that knows terminals is slow to load, and a file or a pipe never is one.
    return fstatSync(fd).isCharacterDevice() && process.getBuiltinModule('node:tty').isatty(fd);
  } catch {
    return false;
  }
}

/** Colour on a terminal only, and not where the person has asked for none (no-color.org). */
export function wantsColour(choice: string | undefined, fd = OUT): boolean {
  if (choice === 'always' || choice === 'never') return choice === 'always';
  return isTerminal(fd) && (process.env.NO_COLOR ?? '') === '' && process.env.TERM !== 'dumb';
}

let isReaderGone = false;

/** Whether nobody reads standard output any more, so that nothing is left to be said about it. */
export function hasLostReader(): boolean {
  return isReaderGone;
}

/**
 * Writes to standard output. A reader that goes away, such as head, ends the output and nothing else:
 * the work goes on to the exit code that it would have had.
 *
 * @throws FileTrouble where it cannot be written to, as on a full disk
 */
export function print(text: string): void {
  if (!isReaderGone) write(OUT, text);
}

/** Writes a line to standard error, where people read and pipes do not. */
export function say(line: string): void {
  write(ERR, `${line}\n`);
}

/**
 * Writes a text whole before it returns. A stream would do it later, which costs its start-up and lets an
 * exit cut the text.
 */
function write(fd: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let n = 0; n < bytes.length; ) {
    try {
      n += writeSync(fd, bytes, n);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== 'EAGAIN') {
        // What cannot be said must not stop the work.
        if (fd === ERR) return;
        if (code === 'EPIPE' || code === 'EOF') {
          isReaderGone = true;
          return;
        }
        throw new FileTrouble(`Standard output cannot be written: ${reasonOf(error)}.`);
      }
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
    }
  }
}

const BAR = 24;
const SILENT_MS = 1000;

/** A progress bar on standard error: on a terminal only, and only when the work takes more than a second. */
export class ProgressBar {
  private readonly began = Date.now();
  private last = 0;
  private isShown = false;
  private readonly enabled: boolean;

  constructor(
    private readonly label: string,
    private readonly total: number,
    enabled: boolean,
  ) {
    this.enabled = enabled && isTerminal(ERR);
  }

  update(done: number): void {
    if (!this.enabled) return;
    const now = Date.now();
    if (now - this.began < SILENT_MS || now - this.last < 100) return;
    this.last = now;
    this.isShown = true;
    const share = this.total > 0 ? Math.min(1, done / this.total) : 0;
    const filled = Math.round(share * BAR);
    const bar = `[${'#'.repeat(filled)}${'.'.repeat(BAR - filled)}] ${Math.round(share * 100)} %`;
    write(ERR, `\r${this.label} ${this.total > 0 ? bar : `${done} bytes`}\u001b[K`);
  }

  end(): void {
    if (this.isShown) write(ERR, '\r\u001b[K');
  }
}

let lastPause = Date.now();

/** Lets the system in now and then, so that an interrupt is heard while a loop runs. */
export async function pause(): Promise<void> {
  if (Date.now() - lastPause < 50) return;
  await new Promise<void>((resolve) => setImmediate(resolve));
  lastPause = Date.now();
}
