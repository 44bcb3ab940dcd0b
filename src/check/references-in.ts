import { type Collection, references } from '../generated/schema-tables.js';
import type { LayoutModel } from '../model/layout-model.js';

/** One id in a record that refers to another record. */
export interface FoundReference {
  /** JSON Pointer of the record, or of the root for members of the header. */
  record: string;
  /** Index of the record in its collection; -1 for members of the header. */
  index: number;
  byte: number;
  /** The rest of the pointer. */
  member: string;
  id: string;
  target: Collection;
}

/** All references in the sound records of a collection other than the holes, or in the members of the header. */
export function* referencesIn(
  layout: LayoutModel,
  name: Exclude<Collection, 'holes'> | 'header',
): Generator<FoundReference> {
  if (name === 'header') {
    for (const { path, target } of references.header) {
      const [member] = path.split(/[.[]/, 1);
      const byte = layout.memberBytes.get(member) ?? 0;
      for (const [rest, id] of idsAt(layout.header, path)) {
        yield { record: `/${member}`, index: -1, byte, member: rest.slice(member.length + 1), id, target };
      }
    }
    return;
  }
  const { records, bytes } = layout.collection(name);
  for (let index = 0; index < records.length; index++) {
    if (records[index] === undefined) continue;
    for (const { path, target } of references[name]) {
      for (const [member, id] of idsAt(records[index], path)) {
        yield { record: `/${name}/${index}`, index, byte: bytes[index], member, id, target };
      }
    }
  }
}

/** The texts that a path such as `approval.source` or `levels[]` leads to, with the pointer of each. */
function idsAt(value: unknown, path: string): [string, string][] {
  let found: [string, unknown][] = [['', value]];
  for (const step of path.split('.')) {
    const name = step.replace(/\[\]$/, '');
    found = found.flatMap(([at, inside]): [string, unknown][] => {
      if (typeof inside !== 'object' || inside === null || !Object.hasOwn(inside, name)) return [];
      const next = (inside as Record<string, unknown>)[name];
      if (step === name) return [[`${at}/${name}`, next]];
      return Array.isArray(next) ? next.map((item, k): [string, unknown] => [`${at}/${name}/${k}`, item]) : [];
    });
  }
  return found.flatMap(([at, id]): [string, string][] => (typeof id === 'string' ? [[at.slice(1), id]] : []));
}
