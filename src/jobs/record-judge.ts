import { appliedTo } from '../edit/applied-to.js';
import { collections } from '../generated/schema-tables.js';
import { type Validate, validateLayoutMember, validateRecord, validateWhole } from '../generated/validators.js';
import type { FixOperation } from '../model/fix.js';
import { explainSchema, type SchemaFault } from '../read/explain-schema.js';
import { toPointer } from '../read/locate.js';
import { knownNamesAt, schemaFaults } from '../read/schema-faults.js';
import type { WholeKind } from '../read/whole-document.js';

const isCollection = new Set<string>(collections);

/** What judges a record, and how many tokens of a pointer lead to it. */
export interface Judge {
  depth: number;
  /** How many of them lead to a layout within another document. */
  outer: number;
  faults(value: unknown): SchemaFault[];
  names(value: unknown, tokens: readonly string[]): readonly string[];
}

/** What judges a whole document that is no layout. */
export function ofWhole(kind: WholeKind): Judge {
  const validate = validateWhole[kind];
  return {
    depth: 0,
    outer: 0,
    faults: (value) => (validate(value) ? [] : explainSchema(validate.errors ?? [], value, kind)),
    names: (value, tokens) => knownNamesAt(validate, value, kind, tokens),
  };
}

/**
 * What judges the record of a layout that a pointer leads into.
 *
 * @param tokens from the root of the layout
 * @param outer how many tokens lead to the layout
 */
export function ofRecord(tokens: readonly string[], outer = 0): Judge {
  const [name] = tokens;
  const isElement = isCollection.has(name) && tokens.length > 1;
  const judges: Readonly<Record<string, Validate>> = isElement ? validateRecord : validateLayoutMember;
  const validate = Object.hasOwn(judges, name) ? judges[name] : () => true;
  return {
    depth: outer + (isElement ? 2 : 1),
    outer,
    faults: (value) => schemaFaults(validate, value),
    names: (value, within) => knownNamesAt(validate, value, 'layout', within),
  };
}

/** Whether a record with a patch has no fault that it had not before, and not the one that is to be mended. */
export function mends(
  patch: readonly FixOperation[],
  { rule, tokens }: { rule: string; tokens: readonly string[] },
  record: unknown,
  judge: Judge,
): boolean {
  const base = toPointer(tokens.slice(0, judge.depth));
  const own = patch.filter(({ path }) => path === base || path.startsWith(`${base}/`));
  const before = new Set(judge.faults(record).map(keyOf));
  const after = judge.faults(appliedTo(record, own, base)).map(keyOf);
  return after.every((key) => before.has(key)) && !after.includes(keyOf({ rule, tokens: tokens.slice(judge.depth) }));
}

function keyOf({ rule, tokens }: { rule: string; tokens: readonly string[] }): string {
  return `${rule} ${toPointer(tokens)}`;
}
