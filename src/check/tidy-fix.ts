import { type Collection, identified, references } from '../generated/schema-tables.js';
import { type Fix, type FixOperation, type Sight, tidyId } from '../model/fix.js';
import type { LayoutModel } from '../model/layout-model.js';

/**
 * The fix of a text that has blanks at an end, or of an id that is not in Unicode normalisation form C.
 *
 * An id changes together with all references to it. None where the tidy id is another record's already, or
 * would be that of two: then somebody has to say which is which.
 */
export function tidyFix({ tokens, pointer, value, layout, untidyReferences }: Sight): Fix | undefined {
  if (typeof value !== 'string' || layout === undefined) return undefined;
  const own = idOf(tokens);
  const target = own === undefined ? targetOf(tokens) : undefined;
  const isId = own !== undefined || target !== undefined || tokens.at(-1) === 'id';
  const tidy = isId ? tidyId(value) : value.trim();
  if (tidy === value || tidy === '') return undefined;
  // A reference to an untidy id changes with that id.
  if (target !== undefined && isDefined(layout, target, value)) return undefined;
  if (own !== undefined && !isFree(layout, own, value, tidy)) return undefined;
  const referring = own === undefined ? [] : untidyReferences(own, value);
  return { patch: [pointer, ...referring].map((path): FixOperation => ({ op: 'replace', path, value: tidy })) };
}

/** The collection in which a place is the id of a record. */
function idOf([name, , member, ...rest]: readonly string[]): Collection | undefined {
  return member === 'id' && rest.length === 0 ? identified.find((one) => one === name) : undefined;
}

/** The collection that a place refers into; undefined where it holds no reference. */
export function targetOf(tokens: readonly string[]): Collection | undefined {
  const [name] = tokens;
  const isRecord = Object.hasOwn(references, name) && name !== 'header';
  const list = isRecord ? references[name as Collection] : references.header;
  const way = tokens.slice(isRecord ? 2 : 0).join('.');
  return list.find(({ path }) => path.replaceAll('[]', '') === way.replaceAll(/\.\d+(?=\.|$)/g, ''))?.target;
}

/** Whether a record of a collection has an id, as it stands in the text. */
export function isDefined(layout: LayoutModel, target: Collection, id: string): boolean {
  return target === 'holes' ? layout.holes.find(id) >= 0 : layout.collection(target).isDefined(id);
}

function isFree(layout: LayoutModel, name: Collection, id: string, tidy: string): boolean {
  return !isDefined(layout, name, tidy) && untidyIds(layout, name).get(tidy) === id;
}

/** More than one id. */
const SEVERAL = '';

const untidy = new WeakMap<LayoutModel, Map<Collection, ReadonlyMap<string, string>>>();

/** For each tidy id the one of a collection that is not tidy and would be it, or that there are several; worked out once. */
function untidyIds(layout: LayoutModel, name: Collection): ReadonlyMap<string, string> {
  const known = untidy.get(layout) ?? new Map<Collection, ReadonlyMap<string, string>>();
  untidy.set(layout, known);
  const before = known.get(name);
  if (before !== undefined) return before;
  const found = new Map<string, string>();
  const add = (id: string) => {
    const tidy = tidyId(id);
    if (tidy === id) return;
    const other = found.get(tidy);
    found.set(tidy, other === undefined || other === id ? id : SEVERAL);
  };
  if (name === 'holes') for (let i = 0; i < layout.holes.count; i++) add(layout.holes.id(i));
  else layout.collection(name).definedIds().forEach(add);
  known.set(name, found);
  return found;
}
