import type { Hole, Layout } from '../generated/layout.js';
import { collections } from '../generated/schema-tables.js';
import type { ByteSource } from '../model/byte-source.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { LayoutSource } from '../model/layout-source.js';
import { recordBytes } from '../read/places.js';

const text = new TextDecoder('utf-8', { ignoreBOM: true });

/** A sound layout for writers: the header as it was read, the holes from their bytes. */
export function layoutSource(model: LayoutModel, source: ByteSource): LayoutSource {
  const header: Record<string, unknown> = { ...model.header };
  for (const name of collections) {
    if (name !== 'holes' && model.present.has(name)) header[name] = model.collection(name).records;
  }
  return {
    header: header as unknown as Omit<Layout, 'holes'>,
    holeCount: model.holes.count,
    *holes(): Generator<Hole> {
      for (let i = 0; i < model.holes.count; i++) {
        const record = recordBytes(source, model.holes.byte[i]);
        if (record === undefined) throw new Error(`the input changed while hole ${i} was read again`);
        yield JSON.parse(text.decode(record)) as Hole;
      }
    },
  };
}
