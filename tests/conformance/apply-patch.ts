import type { Operation } from '../../src/build/variants.js';

/** The document with a JSON Patch (RFC 6902) of `add`, `replace` and `remove` applied; the given one stays as it is. */
export function applyPatch(document: unknown, patch: readonly Operation[]): unknown {
  const result = structuredClone(document);
  for (const operation of patch) apply(result, operation);
  return result;
}

function apply(document: unknown, operation: Operation): void {
  const steps = operation.path
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'));
  const last = steps.pop();
  const parent = steps.reduce<unknown>((value, step) => (value as Record<string, unknown>)?.[step], document);
  if (last === undefined || typeof parent !== 'object' || parent === null) {
    throw new Error(`${operation.op} has no place at ${operation.path}`);
  }
  const isPresent = Object.hasOwn(parent, last);
  if (operation.op !== 'add' && !isPresent) throw new Error(`${operation.op} finds nothing at ${operation.path}`);
  if (Array.isArray(parent)) {
    const index = last === '-' ? parent.length : Number(last);
    const removed = operation.op === 'add' ? 0 : 1;
    parent.splice(index, removed, ...(operation.op === 'remove' ? [] : [operation.value]));
  } else if (operation.op === 'remove') {
    delete (parent as Record<string, unknown>)[last];
  } else {
    (parent as Record<string, unknown>)[last] = operation.value;
  }
}
