import { type Collection, collections, references } from '../generated/schema-tables.js';
import type { ByteSource } from '../model/byte-source.js';
import { tidyId } from '../model/fix.js';
import type { holeReferences } from '../model/hole-row.js';
import type { LayoutModel } from '../model/layout-model.js';
import { recordBytes } from '../read/places.js';
import { toPointer } from '../read/locate.js';

const text = new TextDecoder('utf-8', { ignoreBOM: true });

/** The references of a layout to ids that are not tidy, in broken records too; looked for when first asked. */
export class UntidyReferences {
  private found: Map<string, string[]> | undefined;

  constructor(
    private readonly layout: LayoutModel,
    private readonly source: ByteSource,
  ) {}

  /** JSON Pointers of all references to an id of a collection. */
  to(collection: Collection, id: string): readonly string[] {
    this.found ??= this.search();
    return this.found.get(`${collection} ${id}`) ?? [];
  }

  private search(): Map<string, string[]> {
    const found = new Map<string, string[]>();
    const add = (target: Collection, id: string, tokens: readonly (string | number)[]) => {
      if (tidyId(id) === id) return;
      const key = `${target} ${id}`;
      const pointers = found.get(key) ?? [];
      if (pointers.length === 0) found.set(key, pointers);
      pointers.push(toPointer(tokens));
    };
    this.ofHeader(add);
    for (const name of collections) if (name !== 'holes') this.ofRecords(name, add);
    this.ofHoles(add);
    return found;
  }

  private ofHeader(add: Add): void {
    for (const { path, target } of references.header) {
      const [member, ...rest] = path.split('.');
      const byte = this.layout.memberBytes.get(member);
      if (byte === undefined) continue;
      const value = this.layout.header[member as keyof typeof this.layout.header] ?? this.parsed(byte);
      for (const [tokens, id] of idsAt(value, rest)) add(target, id, [member, ...tokens]);
    }
  }

  private ofRecords(name: Exclude<Collection, 'holes'>, add: Add): void {
    const { records, bytes } = this.layout.collection(name);
    if (references[name].length === 0) return;
    records.forEach((record, index) => {
      const value = record ?? this.parsed(bytes[index]);
      for (const { path, target } of references[name])
        for (const [tokens, id] of idsAt(value, path.split('.'))) add(target, id, [name, index, ...tokens]);
    });
  }

  private ofHoles(add: Add): void {
    const { holes } = this.layout;
    for (const { path, target } of references.holes) {
      const column = holes.reference(path as (typeof holeReferences)[number]);
      const { names } = this.layout.collection(target as Exclude<Collection, 'holes'>);
      const untidy = new Map<number, string>();
      for (let name = 0; name < names.count; name++) {
        const id = names.text(name);
        if (tidyId(id) !== id) untidy.set(name, id);
      }
      if (untidy.size === 0) continue;
      for (let i = 0; i < Math.min(holes.count, column.length); i++) {
        const id = untidy.get(column[i]);
        if (id !== undefined) add(target, id, ['holes', i, ...path.split('.')]);
      }
    }
  }

  private parsed(byte: number): unknown {
    const bytes = recordBytes(this.source, byte);
    return bytes === undefined ? undefined : JSON.parse(text.decode(bytes));
  }
}

type Add = (target: Collection, id: string, tokens: readonly (string | number)[]) => void;

/** The texts that a path leads to in a value, with the tokens to each; a step `levels[]` goes to each item of a list. */
function idsAt(value: unknown, [step, ...rest]: readonly string[], tokens: string[] = []): [string[], string][] {
  if (step === undefined) return typeof value === 'string' ? [[tokens, value]] : [];
  const name = step.replace(/\[\]$/, '');
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return [];
  const next = (value as Record<string, unknown>)[name];
  if (step === name) return idsAt(next, rest, [...tokens, name]);
  if (!Array.isArray(next)) return [];
  return next.flatMap((item, k) => idsAt(item, rest, [...tokens, name, String(k)]));
}
