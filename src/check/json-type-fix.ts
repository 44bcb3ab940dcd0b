import { SCHEMA_VERSION } from '../generated/schema-tables.js';
import type { Fix, FixOperation, Sight } from '../model/fix.js';
import { meaningLeftOut } from './left-out.js';
import { isDefined, targetOf } from './tidy-fix.js';

const NUMBER = /^-?(0|[1-9]\d*)(\.\d+)?$/;
/** A double keeps so many digits whatever they are. */
const KEPT_DIGITS = 15;

/**
 * The fix of a value whose JSON type is wrong and whose meaning is not in doubt: a number or true or false in
 * quotes, a number where its digits are wanted as a text, a single value where a list of one is meant, null
 * where AHX leaves the member out and that says no more. That the new value is of use is seen when the record is judged with it.
 */
export function jsonTypeFix(expected: unknown, sight: Sight): Fix | undefined {
  const { pointer: path, value } = sight;
  const replace = (meant: unknown): Fix => ({ patch: [{ op: 'replace', path, value: meant } as FixOperation] });
  if (value === null) return leftOut(sight);
  switch (expected) {
    case 'a number':
    case 'a whole number':
      return typeof value === 'string' && isKept(value) ? replace(Number(value)) : undefined;
    case 'true or false':
      return value === 'true' || value === 'false' ? replace(value === 'true') : undefined;
    case 'a text': {
      const written = typeof value === 'number' ? sight.written() : '';
      // A version that this software does not know is for people to look at.
      if (!isKept(written) || (path === '/ahx' && written !== SCHEMA_VERSION)) return undefined;
      return isOfOthers(sight, written) ? undefined : replace(written);
    }
    case 'an array':
      return Array.isArray(value) ? undefined : replace([value]);
    default:
      return undefined;
  }
}

/**
 * Whether a text is an id, or refers to one that is not there or cannot be looked for: ids that are numbers have to
 * change with all references.
 */
function isOfOthers({ tokens, layout }: Sight, text: string): boolean {
  const target = targetOf(tokens);
  return tokens.at(-1) === 'id' || (target !== undefined && (layout === undefined || !isDefined(layout, target, text)));
}

/** Leaves out a member of an object; to leave out an item of a list would move the others. */
function leftOut({ tokens, pointer: path, holder }: Sight): Fix | undefined {
  const meaning = meaningLeftOut(tokens);
  if (meaning === undefined || typeof holder !== 'object' || holder === null || Array.isArray(holder)) return undefined;
  return { patch: [{ op: 'remove', path }], ...(meaning === 'no size' && { geometry: true }) };
}

/** Whether a text is a number as JSON writes it, without digits that a double loses. */
function isKept(text: string): boolean {
  return NUMBER.test(text) && text.replace(/\D/g, '').length <= KEPT_DIGITS;
}
