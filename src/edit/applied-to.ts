import type { FixOperation } from '../model/fix.js';

/** A patch that does not fit the document; the message says where. */
export class BadPatch extends Error {}

/**
 * A value with a JSON Patch (RFC 6902) of the operations `add`, `remove`, `replace` and `move` applied, one after
 * the other; the given one stays as it is.
 *
 * @param base JSON Pointer of the value in the document that the patch is for
 * @throws BadPatch where a pointer leads to nothing, or out of the value
 */
export function appliedTo(value: unknown, patch: readonly FixOperation[], base = ''): unknown {
  const root = { value: structuredClone(value) };
  for (const operation of patch) {
    if (operation.op !== 'move')
      put(root, operation.op, way(operation.path, base), 'value' in operation ? operation : {});
    else {
      const [from, to] = [way(operation.from, base), way(operation.path, base)];
      if (to.length > from.length && from.every((token, k) => token === to[k]))
        throw new BadPatch(`"${operation.from}" cannot be moved into itself.`);
      const moved = put(root, 'remove', from, {});
      put(root, 'add', to, { value: moved });
    }
  }
  return root.value;
}

/** Steps from the holder of the root to a value. */
function way(pointer: string, base: string): string[] {
  if (pointer !== base && !pointer.startsWith(`${base}/`))
    throw new BadPatch(`"${pointer}" does not lead into "${base}".`);
  const tokens = pointer.slice(base.length).split('/').slice(1);
  return ['value', ...tokens.map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~'))];
}

/** Does one thing at one place; returns the value that was there. */
function put(
  root: { value: unknown },
  op: 'add' | 'remove' | 'replace',
  tokens: string[],
  given: { value?: unknown },
): unknown {
  const last = tokens[tokens.length - 1];
  const holder = tokens.slice(0, -1).reduce<unknown>((at, token) => childOf(at, token), root);
  const value = structuredClone(given.value);
  if (Array.isArray(holder)) {
    const index = op === 'add' && last === '-' ? holder.length : indexIn(holder, last, op === 'add' ? 1 : 0);
    return holder.splice(index, op === 'add' ? 0 : 1, ...(op === 'remove' ? [] : [value]))[0];
  }
  if (typeof holder !== 'object' || holder === null) throw nothingAt(last);
  const before = Object.hasOwn(holder, last) ? (holder as Record<string, unknown>)[last] : undefined;
  if (op !== 'add' && !Object.hasOwn(holder, last)) throw nothingAt(last);
  if (op === 'remove') delete (holder as Record<string, unknown>)[last];
  // An assignment to "__proto__" would make no member.
  else Object.defineProperty(holder, last, { value, enumerable: true, configurable: true, writable: true });
  return before;
}

function childOf(at: unknown, token: string): unknown {
  if (Array.isArray(at)) return at[indexIn(at, token, 0)];
  if (typeof at !== 'object' || at === null || !Object.hasOwn(at, token)) throw nothingAt(token);
  return (at as Record<string, unknown>)[token];
}

function indexIn(list: readonly unknown[], token: string, beyond: number): number {
  const index = /^(0|[1-9]\d*)$/.test(token) ? Number(token) : Number.POSITIVE_INFINITY;
  if (index >= list.length + beyond) throw nothingAt(token);
  return index;
}

function nothingAt(token: string): BadPatch {
  return new BadPatch(`There is nothing at "${token}".`);
}
