import { memberNames } from '../generated/schema-tables.js';
import type { ErrorObject } from '../generated/validators.js';
import { nearest } from '../model/nearest.js';
import { type Aim, fromPointer } from './locate.js';

/** One fault against the schema, in AHX's own words. */
export interface SchemaFault {
  rule: string;
  /** Tokens from the judged value to the value at fault; for a missing member to the object that lacks it. */
  tokens: string[];
  aim: Aim;
  data: Record<string, unknown>;
}

/** Words of JSON Schema that AHX uses, the rule that speaks for each, and who speaks when several fail at one value. */
const RULES: Readonly<Record<string, string>> = {
  type: 'wrong-type',
  minItems: 'wrong-count',
  maxItems: 'wrong-count',
  minProperties: 'wrong-count',
  maxProperties: 'wrong-count',
  enum: 'not-a-choice',
  minimum: 'out-of-range',
  maximum: 'out-of-range',
  exclusiveMinimum: 'out-of-range',
  exclusiveMaximum: 'out-of-range',
  pattern: 'bad-text',
  minLength: 'bad-text',
  maxLength: 'bad-text',
};
const ORDER = Object.keys(RULES);
const NO_NAMES: readonly string[] = [];

/**
 * Turns what the validator found in `value` into faults, at most one at each value.
 *
 * A misspelt member is one fault: where an unknown name is near to a missing one, the missing one is not
 * reported beside it.
 */
export function explainSchema(
  errors: readonly ErrorObject[],
  value: unknown,
  kind: keyof typeof memberNames,
): SchemaFault[] {
  const unknown = errors.filter(({ keyword }) => keyword === 'additionalProperties').map((e) => unknownMember(e, kind));
  const meant = new Set(unknown.map(({ tokens, data }) => `${tokens.slice(0, -1).join('/')}/${data.nearest}`));
  const missing = errors
    .filter(({ keyword }) => keyword === 'required')
    .map(missingMember)
    .filter(({ tokens, data }) => !meant.has(`${tokens.join('/')}/${data.member}`));
  return [...unknown, ...missing, ...valueFaults(errors, value)];
}

const nearestKnown = new Map<readonly string[], Map<string, string | undefined>>();

/** The nearest known name; one misspelling mostly stands in thousands of records, so the last ones are kept. */
function nearestMember(member: string, known: readonly string[]): string | undefined {
  const names = nearestKnown.get(known) ?? new Map<string, string | undefined>();
  nearestKnown.set(known, names);
  if (names.has(member)) return names.get(member);
  if (names.size > 100) names.clear();
  const near = nearest(member, known);
  names.set(member, near);
  return near;
}

function unknownMember(error: ErrorObject, kind: keyof typeof memberNames): SchemaFault {
  const member = String(error.params.additionalProperty);
  const known = memberNames[kind][error.schemaPath.replace(/\/additionalProperties$/, '')] ?? NO_NAMES;
  const near = nearestMember(member, known);
  const data = { member: clip(member), ...(near === undefined ? {} : { nearest: near }) };
  return { rule: 'unknown-member', tokens: [...fromPointer(error.instancePath), member], aim: 'name', data };
}

function missingMember(error: ErrorObject): SchemaFault {
  const data = { member: String(error.params.missingProperty) };
  return { rule: 'missing-member', tokens: fromPointer(error.instancePath), aim: 'value', data };
}

function valueFaults(errors: readonly ErrorObject[], value: unknown): SchemaFault[] {
  const gravest = new Map<string, ErrorObject>();
  for (const error of errors) {
    if (RULES[error.keyword] === undefined) continue;
    const key = `${error.instancePath} ${error.propertyName ?? ''}`;
    const other = gravest.get(key);
    if (other === undefined || ORDER.indexOf(error.keyword) < ORDER.indexOf(other.keyword)) gravest.set(key, error);
  }
  return [...gravest.values()].map((error) => {
    const tokens = fromPointer(error.instancePath);
    if (error.propertyName !== undefined) {
      const data = {
        member: clip(error.propertyName),
        ...expectation(error),
        found: describeValue(error.propertyName),
      };
      return { rule: 'bad-text', tokens: [...tokens, error.propertyName], aim: 'name' as const, data };
    }
    const found = valueAt(value, tokens);
    const data = { ...expectation(error), found: describeFound(error, found) };
    return { rule: RULES[error.keyword], tokens, aim: 'value' as const, data: withNearest(error, found, data) };
  });
}

function withNearest(error: ErrorObject, found: unknown, data: Record<string, unknown>): Record<string, unknown> {
  if (error.keyword !== 'enum' || typeof found !== 'string') return data;
  const near = nearest(found, (error.params.allowedValues as unknown[]).map(String));
  return near === undefined ? data : { ...data, nearest: near };
}

/** What the schema asked for, in words or as numbers. */
function expectation({ keyword, params }: ErrorObject): Record<string, unknown> {
  switch (keyword) {
    case 'type':
      return { expected: typeName(String(params.type)) };
    case 'enum':
      return { choices: params.allowedValues };
    case 'minimum':
      return { expected: `at least ${params.limit}` };
    case 'maximum':
      return { expected: `at most ${params.limit}` };
    case 'exclusiveMinimum':
      return { expected: `more than ${params.limit}` };
    case 'exclusiveMaximum':
      return { expected: `less than ${params.limit}` };
    case 'minItems':
    case 'minProperties':
      return { expected: `at least ${params.limit}` };
    case 'maxItems':
    case 'maxProperties':
      return { expected: `at most ${params.limit}` };
    case 'minLength':
      return { expected: 'at least one character' };
    case 'maxLength':
      return { expected: `at most ${params.limit} characters` };
    default:
      return { expected: patternInWords(String(params.pattern)) };
  }
}

/** The patterns of the schema in words, recognised by a part that only they have. */
function patternInWords(pattern: string): string {
  if (pattern.startsWith('^sha256')) return 'sha256: and 64 lower-case hexadecimal digits';
  if (pattern.startsWith('^EPSG')) return 'EPSG: and a code';
  if (pattern.startsWith('^0\\.')) return 'a version of the form 0.N';
  if (pattern.startsWith('^#')) return '# and six hexadecimal digits';
  if (pattern.includes('[Tt]')) return 'a date and time with offset, such as 2026-03-02T07:30:00-05:00';
  if (pattern.startsWith('^[0-9]{4}')) return 'a date, such as 2026-03-02';
  if (pattern.startsWith('^[A-Za-z][A-Za-z0-9+.-]*:')) return 'an absolute URI';
  if (pattern.includes('\\u000B')) return 'text without control characters';
  return 'one line without control characters and without a blank at either end';
}

function describeFound({ keyword }: ErrorObject, found: unknown): string | number {
  if (keyword === 'type') return typeName(jsonType(found));
  if (keyword.endsWith('Items')) return (found as unknown[]).length;
  if (keyword.endsWith('Properties')) return Object.keys(found as object).length;
  if (keyword === 'minLength' || keyword === 'maxLength') return `${[...(found as string)].length} characters`;
  return describeValue(found);
}

function describeValue(found: unknown): string {
  return clip(typeof found === 'string' ? JSON.stringify(found) : String(JSON.stringify(found)));
}

function jsonType(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'array' : typeof value;
}

function typeName(type: string): string {
  const names: Readonly<Record<string, string>> = {
    object: 'an object',
    array: 'an array',
    string: 'a text',
    number: 'a number',
    integer: 'a whole number',
    boolean: 'true or false',
    null: 'null',
  };
  return names[type] ?? type;
}

function valueAt(value: unknown, tokens: readonly string[]): unknown {
  let at = value;
  for (const token of tokens) at = (at as Record<string, unknown>)[token];
  return at;
}

function clip(text: string): string {
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}
