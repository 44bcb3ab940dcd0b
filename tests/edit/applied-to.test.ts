import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { appliedTo, BadPatch } from '../../src/edit/applied-to.js';
import type { FixOperation } from '../../src/model/fix.js';

/** A record of json-patch-test-suite 1.1.0; see its README. */
interface Case {
  doc: unknown;
  patch?: { op?: string; path?: unknown; from?: unknown }[];
  expected?: unknown;
  error?: string;
  comment?: string;
  disabled?: boolean;
}

const require = createRequire(import.meta.url);
const cases = ['tests.json', 'spec_tests.json'].flatMap((name) => {
  const all = JSON.parse(readFileSync(require.resolve(`json-patch-test-suite/${name}`), 'utf8')) as Case[];
  return all.map((one, k) => [`${name} ${k}: ${one.comment ?? JSON.stringify(one.patch)}`, one] as const);
});

/** Whether a patch has only operations that fixes have, and is no test of the form of a patch, which types do. */
function isOurs({ patch, disabled }: Case): boolean {
  const isKnown = ({ op, path, ...rest }: { op?: string; path?: unknown; from?: unknown }) =>
    ['add', 'remove', 'replace', 'move'].includes(op ?? '') &&
    [path, op === 'move' ? rest.from : ''].every((at) => at === '' || (typeof at === 'string' && at[0] === '/')) &&
    (op === 'move' || op === 'remove' || 'value' in rest);
  return disabled !== true && patch !== undefined && patch.length > 0 && patch.every(isKnown);
}

describe('a patch applied to a value', () => {
  const ours = cases.filter(([, one]) => isOurs(one));

  it('is tried on most cases of the suite', () => {
    expect(ours.length).toBeGreaterThan(60);
  });

  it.each(ours)('does what the suite says: %s', (_, { doc, patch, expected, error }) => {
    const before = JSON.stringify(doc);
    const apply = () => appliedTo(doc, patch as FixOperation[]);
    if (error !== undefined) expect(apply).toThrow(BadPatch);
    else expect(apply()).toEqual(expected);
    expect(JSON.stringify(doc)).toBe(before);
  });

  it('finds its place in a record of a document', () => {
    const patch = [{ op: 'replace', path: '/holes/3/point/2', value: 1 }] as const;
    expect(appliedTo({ point: [1, 2, 3] }, patch, '/holes/3')).toEqual({ point: [1, 2, 1] });
    expect(() => appliedTo({ point: [1, 2, 3] }, patch, '/holes/31')).toThrow(BadPatch);
  });
});
