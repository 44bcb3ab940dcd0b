import { formatMm } from '../../units/format-mm.js';
import { clip } from '../clip.js';

/**
 * Which values of the format are lengths: `mm` where all numbers in a value are, `plain` where none are, or the
 * members of an object. An array has the form of its elements.
 */
export type LengthForm = 'mm' | 'plain' | { readonly [member: string]: LengthForm };

/** Writes lengths, millimetres. */
export type SayLength = (mm: number) => string;

const LONGEST_VALUE = 120;
/** How much stands before the first difference where long values are cut. */
const KEPT_BEFORE = 24;

/**
 * Two values of a member as texts that differ where the values do. Lengths that look alike in the unit of the project
 * stand in millimetres behind it, and of long values the piece is shown in which they differ.
 *
 * @param noValue what stands for a value that is not there
 */
export function saidPair(
  [from, to]: readonly [from: unknown, to: unknown],
  form: LengthForm,
  say: SayLength,
  noValue: string,
): [from: string, to: string] {
  const ways: ((value: unknown) => string)[] = [
    (value) => saidValue(value, form, say),
    (value) => saidValue(value, form, exactly(say)),
    (value) => JSON.stringify(value) ?? '',
  ];
  for (const way of ways) {
    const [a, b] = [from, to].map((value) => (value === undefined ? noValue : way(value)));
    if (a !== b) return cutAlike(a, b);
  }
  return [from, to].map((value) => clip(String(ways[0](value)), LONGEST_VALUE)) as [string, string];
}

/** The same lengths with their millimetres, so that no two of them look alike. */
export function exactly(say: SayLength): SayLength {
  return (mm) => {
    const [text, exact] = [say(mm), formatMm(mm)];
    return text === exact ? text : `${text} (${exact} mm)`;
  };
}

function saidValue(value: unknown, form: LengthForm, say: SayLength): string {
  return typeof value === 'string' ? value : inner(value, form, say);
}

function inner(value: unknown, form: LengthForm, say: SayLength): string {
  if (typeof value === 'number' && form === 'mm') return say(value);
  if (Array.isArray(value)) return `[${value.map((one) => inner(one, form, say)).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? '';
  const members = Object.entries(value).map(([name, one]) => `${name} ${inner(one, formOf(form, name), say)}`);
  return `{${members.join('; ')}}`;
}

/** Form of a member; members that the format does not know are no lengths. */
export function formOf(form: LengthForm, member: string): LengthForm {
  if (typeof form === 'string') return form;
  return Object.hasOwn(form, member) ? form[member] : 'plain';
}

function cutAlike(a: string, b: string): [string, string] {
  if (Math.max(a.length, b.length) <= LONGEST_VALUE) return [a, b];
  let alike = 0;
  while (alike < a.length && a[alike] === b[alike]) alike++;
  const start = alike > LONGEST_VALUE - KEPT_BEFORE ? startBefore(a, alike - KEPT_BEFORE) : 0;
  const piece = (text: string) => clip(start === 0 ? text : `…${text.slice(start)}`, LONGEST_VALUE);
  return [piece(a), piece(b)];
}

/** The last blank before a place in a text if there is one near, else the place, not inside of a character. */
function startBefore(text: string, place: number): number {
  const blank = text.lastIndexOf(' ', place);
  if (blank > place - KEPT_BEFORE) return blank;
  return /[\udc00-\udfff]/.test(text[place]) ? place - 1 : place;
}
