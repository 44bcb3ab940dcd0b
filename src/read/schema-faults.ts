import { memberNames } from '../generated/schema-tables.js';
import type { Validate } from '../generated/validators.js';
import { beyondSchema } from './beyond-schema.js';
import { explainSchema, type SchemaFault } from './explain-schema.js';
import { fromPointer } from './locate.js';

/** All faults of a record of a layout, or of a member of its root, against the schema and beyond it. */
export function schemaFaults(validate: Validate, parsed: unknown): SchemaFault[] {
  const faults = validate(parsed) ? [] : explainSchema(validate.errors ?? [], parsed, 'layout');
  // One value has one finding: what the schema says of it or of its parts comes first.
  const more = beyondSchema(parsed).filter(({ tokens }) => !faults.some((fault) => isWithin(fault.tokens, tokens)));
  faults.push(...more);
  return faults;
}

/** Whether a way leads through the place that `tokens` lead to, or ends there. */
function isWithin(way: readonly string[], tokens: readonly string[]): boolean {
  return way.length >= tokens.length && tokens.every((token, k) => way[k] === token);
}

/** Names that the schema knows in the object that holds an unknown one; `tokens` lead to that one. */
export function knownNamesAt(
  validate: Validate,
  parsed: unknown,
  kind: keyof typeof memberNames,
  tokens: readonly string[],
): readonly string[] {
  if (validate(parsed)) return [];
  const name = tokens.at(-1);
  const error = (validate.errors ?? []).find(({ keyword, instancePath, params }) => {
    if (keyword !== 'additionalProperties' || params.additionalProperty !== name) return false;
    const way = fromPointer(instancePath);
    return way.length === tokens.length - 1 && way.every((token, k) => token === tokens[k]);
  });
  return memberNames[kind][error?.schemaPath.replace(/\/additionalProperties$/, '') ?? ''] ?? [];
}
