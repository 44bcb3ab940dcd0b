import { isatty } from 'node:tty';

/** How much and how colourful a command talks. */
export interface Manners {
  quiet: boolean;
  colour: boolean;
}

/** Colour on a terminal only, and not where the person has asked for none (no-color.org). */
export function wantsColour(choice: string | undefined): boolean {
  if (choice === 'always' || choice === 'never') return choice === 'always';
  return isatty(1) && (process.env.NO_COLOR ?? '') === '' && process.env.TERM !== 'dumb';
}

/** Writes to standard output; waits where the reader is slow. */
export async function print(text: string): Promise<void> {
  if (process.stdout.write(text)) return;
  await new Promise<void>((resolve) => process.stdout.once('drain', resolve));
}

/** Writes a line to standard error, where people read and pipes do not. */
export function say(line: string): void {
  process.stderr.write(`${line}\n`);
}

const BAR = 24;
const SILENT_MS = 1000;

/** A progress bar on standard error: on a terminal only, and only when the work takes more than a second. */
export class ProgressBar {
  private readonly began = Date.now();
  private last = 0;
  private isShown = false;

  constructor(
    private readonly label: string,
    private readonly total: number,
    private readonly enabled: boolean,
  ) {}

  update(done: number): void {
    if (!this.enabled || !isatty(2)) return;
    const now = Date.now();
    if (now - this.began < SILENT_MS || now - this.last < 100) return;
    this.last = now;
    this.isShown = true;
    const share = this.total > 0 ? Math.min(1, done / this.total) : 0;
    const filled = Math.round(share * BAR);
    const state = this.total > 0 ? `[${'#'.repeat(filled)}${'.'.repeat(BAR - filled)}] ${Math.round(share * 100)} %` : `${done} bytes`;
    process.stderr.write(`\r${this.label} ${state}\u001b[K`);
  }

  end(): void {
    if (this.isShown) process.stderr.write('\r\u001b[K');
  }
}

let lastPause = Date.now();

/** Lets the system in now and then, so that an interrupt is heard while a loop runs. */
export async function pause(): Promise<void> {
  if (Date.now() - lastPause < 50) return;
  await new Promise<void>((resolve) => setImmediate(resolve));
  lastPause = Date.now();
}
