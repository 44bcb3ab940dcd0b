import { formatMm } from '../units/format-mm.js';
import type { Fields, Form } from './layout-forms.js';

const INDENT = '  ';
/** An array of plain values up to this length stays on one line. */
const LINE_LENGTH = 100;

/**
 * A JSON value on one line, with blanks after commas and colons.
 *
 * Lengths have at most 6 decimals of a millimetre and no exponent; all other numbers keep every digit
 * that JSON.stringify gives them. Members stand in the order of the form, unknown ones after them in
 * their own order; a member that is undefined is left out.
 * Throws a RangeError for a number that is not finite.
 */
export function lineText(value: unknown, form: Form): string {
  if (Array.isArray(value)) return `[${value.map((element) => lineText(element, form)).join(', ')}]`;
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

function scalarText(value: unknown, form: Form): string {
  if (typeof value !== 'number') return JSON.stringify(value ?? null);
  if (form === 'mm') return formatMm(value);
  if (!Number.isFinite(value)) throw new RangeError(`No finite number to write: ${value}.`);
  return JSON.stringify(value);
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
