import type { Substrate } from '../generated/layout.js';

/** All that a substrate is judged by: two that agree in it are one. */
export function allThatCounts({ name, source, scans, note, ext, ...rest }: Substrate): string {
  return JSON.stringify(rest);
}

/** For each record the first one of the same slab: two layouts may describe one slab differently. */
export function slabsOf(records: readonly (Substrate | undefined)[]): Int32Array {
  const first = new Map<string, number>();
  return Int32Array.from(records, (record, number) => {
    const key = record === undefined ? `broken ${number}` : slabKey(record);
    const known = first.get(key) ?? number;
    first.set(key, known);
    return known;
  });
}

/** What two layouts agree in that mean the same slab. */
export function slabKey({ id, kind, face }: Substrate): string {
  return JSON.stringify([id, kind, face?.point, face?.inward]);
}
