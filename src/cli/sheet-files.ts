import { existsSync } from 'node:fs';
import type { SheetSet } from '../jobs/sheet.js';
import { checkOutputName, isSameFile, writeWhole } from '../node/output-file.js';
import { printable } from '../model/printable.js';
import { pause, say } from './console.js';
import { WrongUse } from './exit.js';

/** More SVG files than this are not written; HTML is one file. */
const MOST_FILES = 100;

/**
 * Writes sheets as one HTML file, or each as a file of SVG; gives what was written, for people.
 *
 * @param read files that are read and must not be overwritten
 * @throws WrongUse
 */
export async function writeSheetFiles(
  set: SheetSet,
  form: 'html' | 'svg',
  out: string,
  read: readonly string[],
  force: boolean,
): Promise<string> {
  if (form === 'html') {
    checkOutputName(out, force);
    await writeWhole(out, set.html(), force, pause);
    return out;
  }
  const count = set.sheets.length;
  if (count > MOST_FILES) {
    throw new WrongUse(
      `${count} sheets are ${count} files of SVG, more than ${MOST_FILES}; write OUT.html, or choose fewer holes.`,
    );
  }
  const names =
    count === 1 ? [out] : set.sheets.map(({ number }) => out.replace(/\.svg$/i, (ending) => `-${number}${ending}`));
  // All names first, so that nothing is written where one is refused.
  for (const name of names) {
    checkOutputName(name, force);
    if (read.some((file) => isSameFile(file, name)))
      throw new WrongUse(`${name} is read and cannot be written at once.`);
  }
  for (const [k, text] of set.svg().entries()) await writeWhole(names[k], [text], force, pause);
  const next = out.replace(/\.svg$/i, (ending) => `-${count + 1}${ending}`);
  if (count > 1 && existsSync(next)) say(`Warning: ${printable(next)} is there from before and is no sheet of these.`);
  return count === 1 ? out : `${names[0]} to ${names[count - 1]}`;
}
