import type { Finding, Fix } from '../generated/report.js';
import type { Phrases } from '../model/language.js';
import { english } from './languages/en.js';
import { printable } from '../model/printable.js';

const LONGEST_VALUE = 60;

/** What a fix does to the first value, in words; how many more it changes, where there are more. */
export function fixInWords({ byteOrderMark, patch = [] }: Fix): string {
  const [first] = patch;
  if (first === undefined) return byteOrderMark === undefined ? 'nothing changes' : 'the mark goes';
  const more = patch.length === 1 ? '' : `, and ${patch.length - 1} more with it`;
  return `${wordsOf(first)}${more}`;
}

function wordsOf({ op, path, value }: NonNullable<Fix['patch']>[number]): string {
  if (op === 'remove') return 'left out';
  const shown = short(op === 'move' ? lastName(path) : value);
  if (op === 'move') return `renamed to ${shown}`;
  return op === 'add' ? `added: ${shown}` : `becomes ${shown}`;
}

function lastName(pointer: string): string {
  return pointer
    .slice(pointer.lastIndexOf('/') + 1)
    .replaceAll('~1', '/')
    .replaceAll('~0', '~');
}

function short(value: unknown): string {
  const text = String(JSON.stringify(value));
  return printable(text.length > LONGEST_VALUE ? `${text.slice(0, LONGEST_VALUE - 3)}...` : text);
}

/** A fix that was made, on one line. */
export function fixLine({ rule, place, message, fix = {} }: Finding, phrases: Phrases = english): string {
  return `${phrases.place(place)}: ${message} Fix: ${fixInWords(fix)}. [${rule}]`;
}
