import { printable } from '../../model/printable.js';

/** A text of several lines as one, printable. */
export function oneLine(text: string): string {
  return printable(text.replace(/\s+/g, ' ').trim());
}
