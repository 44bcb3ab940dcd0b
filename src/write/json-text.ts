import { formatMm } from '../units/format-mm.js';
import type { Fields, Form } from './layout-forms.js';
import type { LossTally } from './loss.js';

const INDENT = '  ';
const FINEST = 'rounded to a millionth of a millimetre';
/** An array of plain values up to this length stays on one line. */
const LINE_LENGTH = 100;

/**
 * A JSON value on one line, with blanks after commas and colons.
 *
 * Lengths have at most 6 decimals of a millimetre and no exponent, save for a single one above 0 that
 * would become 0 so; it and all other numbers keep every digit that JSON.stringify gives them. Members stand in the order of the form, unknown ones after them in
 * their own order; a member that is undefined is left out.
 * Throws a RangeError for a number that is not finite.
 */
export function lineText(value: unknown, form: Form): string {
  if (Array.isArray(value)) {
    return `[${value.map((element) => (typeof element === 'number' ? elementText(element, form) : lineText(element, form))).join(', ')}]`;
  }
  if (!isObject(value)) return scalarText(value, form);
  const members = orderedMembers(value, form).map(
    ([name, member, memberForm]) => `${JSON.stringify(name)}: ${lineText(member, memberForm)}`,
  );
  return members.length === 0 ? '{}' : `{ ${members.join(', ')} }`;
}

/**
 * The same value on many lines: two blanks of indent a step, one member or element a line. A short
 * array of plain values stays on one line, so that a point is read at a glance.
 */
export function indentedText(value: unknown, form: Form, indent: string): string {
  const inner = indent + INDENT;
  if (Array.isArray(value)) {
    const line = value.some(isObject) ? undefined : lineText(value, form);
    if (line !== undefined && line.length <= LINE_LENGTH) return line;
    return enclose(
      '[',
      value.map((element) => inner + indentedText(element, form, inner)),
      `${indent}]`,
    );
  }
  if (!isObject(value)) return scalarText(value, form);
  const members = orderedMembers(value, form).map(
    ([name, member, memberForm]) => `${inner}${JSON.stringify(name)}: ${indentedText(member, memberForm, inner)}`,
  );
  return members.length === 0 ? '{}' : enclose('{', members, `${indent}}`);
}

function enclose(open: string, lines: readonly string[], close: string): string {
  return `${open}\n${lines.join(',\n')}\n${close}`;
}

/** Members that are there, known ones in the order of the form, each with its form. */
export function orderedMembers(value: object, form: Form): [name: string, member: unknown, form: Form][] {
  const members = value as Readonly<Record<string, unknown>>;
  const fields: Fields = typeof form === 'string' ? {} : form;
  const ordered: [string, unknown, Form][] = [];
  for (const name of Object.keys(fields)) {
    if (Object.hasOwn(members, name)) ordered.push([name, members[name], fields[name]]);
  }
  for (const name of Object.keys(members)) {
    if (!Object.hasOwn(fields, name)) ordered.push([name, members[name], 'plain']);
  }
  return ordered.filter(([, member]) => member !== undefined);
}

/** A number in an array: a coordinate or a deviation, for which 0 is a value like any other. */
function elementText(value: number, form: Form): string {
  return form === 'mm' ? formatMm(value) : scalarText(value, form);
}

/** A length that stands by itself: a size, which must not become zero. */
function sizeText(mm: number): string {
  const text = formatMm(mm);
  return text === '0' && mm > 0 ? JSON.stringify(mm) : text;
}

/** Counts the lengths in a value that are written with fewer digits than they have, by their members. */
export function countRounded(value: unknown, form: Form, field: string, tally: LossTally): void {
  if (typeof value === 'number') {
    if (form === 'mm' && Number(sizeText(value)) !== value) tally.add(field, FINEST, false);
  } else if (Array.isArray(value)) {
    for (const element of value) {
      if (typeof element !== 'number') countRounded(element, form, field, tally);
      else if (form === 'mm' && Number(formatMm(element)) !== element) tally.add(field, FINEST, false);
    }
  } else if (isObject(value) && typeof form !== 'string') {
    for (const [name, member] of Object.entries(value)) {
      if (Object.hasOwn(form, name)) countRounded(member, form[name], `${field}/${name}`, tally);
    }
  }
}

function scalarText(value: unknown, form: Form): string {
  if (typeof value !== 'number') return JSON.stringify(value ?? null);
  if (form === 'mm') return sizeText(value);
  if (!Number.isFinite(value)) throw new RangeError(`No finite number to write: ${value}.`);
  return JSON.stringify(value);
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
