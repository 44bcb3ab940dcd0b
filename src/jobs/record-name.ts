import { collections } from '../generated/schema-tables.js';
import type { LayoutModel } from '../model/layout-model.js';

const named: ReadonlySet<string> = new Set(collections.filter((name) => name !== 'holes'));

/**
 * Collection and id of the record in which a place lies, such as `trades/FP`: unlike its pointer it stays when
 * another record comes before it. Undefined for holes, for what lies in no record, and for records without an id.
 */
export function recordName(model: LayoutModel | undefined, pointer: string | undefined): string | undefined {
  const [, name, index] = /^\/([^/]+)\/([0-9]+)(?:\/|$)/.exec(pointer ?? '') ?? [];
  if (model === undefined || name === undefined || !named.has(name)) return undefined;
  const id = model.collection(name as Parameters<LayoutModel['collection']>[0]).ids[Number(index)];
  return id === undefined ? undefined : `${name}/${id}`;
}
