import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, delimiter, dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { FileTrouble } from './file-trouble.js';

/** Names under which systems have the browser; `AHX_CHROMIUM` goes before them. */
const NAMES = ['chromium', 'chromium-browser'];
const TIME_MS = 300_000;

/** A page that cannot be printed. */
export class NoPrinter extends FileTrouble {}

/** Path of the browser that prints; undefined where there is none. */
export function findChromium(): string | undefined {
  const { AHX_CHROMIUM: own, PATH = '' } = process.env;
  if (own !== undefined && own !== '') return existsSync(own) ? own : undefined;
  const folders = PATH.split(delimiter).filter((folder) => folder !== '');
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path));
}

/**
 * Prints an HTML file as PDF through the Chromium of the system, which looks up no address for it.
 *
 * @throws NoPrinter where there is none, or where it does not print
 */
export function printPdf(page: string, pdf: string): void {
  const chromium = findChromium();
  if (chromium === undefined)
    throw new NoPrinter(`${pdf} cannot be printed: no Chromium was found; AHX_CHROMIUM may say where one is.`);
  const home = mkdtempSync(join(tmpdir(), 'ahx-print-'));
  const beside = join(dirname(pdf), `.${basename(pdf)}.${process.pid}.part`);
  try {
    const { status, stderr, error } = spawnSync(
      chromium,
      [
        ...['--headless', '--disable-gpu', '--no-first-run', '--no-default-browser-check', '--disable-extensions'],
        // The page has no addresses, and forbids scripts to itself; nothing is looked up all the same.
        '--host-resolver-rules=MAP * ~NOTFOUND',
        // The root user, as in a container, has no sandbox.
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
        ...[`--user-data-dir=${home}`, '--no-pdf-header-footer', `--print-to-pdf=${resolve(beside)}`],
        pathToFileURL(resolve(page)).href,
      ],
      { encoding: 'utf8', timeout: TIME_MS },
    );
    if (status !== 0 || !existsSync(beside)) {
      const why = error?.message ?? stderr.trim().split('\n').at(-1) ?? '';
      throw new NoPrinter(`${pdf} cannot be printed: Chromium ended with ${status ?? 'a signal'}. ${why}`);
    }
    renameSync(beside, pdf);
  } finally {
    rmSync(home, { recursive: true, force: true });
    rmSync(beside, { force: true });
  }
}
