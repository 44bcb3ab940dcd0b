import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holeReferences } from '../../src/model/hole-row.js';
import type { Observation } from '../../src/model/observation.js';
import { references } from '../../src/generated/schema-tables.js';
import { LayoutReader } from '../../src/read/layout-reader.js';
import { bytesOf, holeText } from '../read/hole-text.js';

/** Reads every hole by the scanner and the parser, none by the decoder. */
class SlowReader extends LayoutReader {
  override takeFast(): number {
    return -1;
  }
}

/** Counts the holes that the decoder took. */
class CountingReader extends LayoutReader {
  taken = 0;
  override takeFast(name: string, bytes: Uint8Array, start: number, base: number): number {
    const end = super.takeFast(name, bytes, start, base);
    if (end >= 0) this.taken++;
    return end;
  }
}

function read(bytes: Uint8Array, Reader: typeof LayoutReader) {
  const found: Observation[] = [];
  const reader = new Reader((observation) => found.push(observation));
  reader.write(bytes);
  reader.end();
  const { model, complete, records } = reader;
  const { holes } = model;
  const rows = Array.from({ length: holes.count }, (_, i) => ({
    id: holes.id(i),
    numbers: [holes.x[i], holes.y[i], holes.z[i], holes.diameterOf(i), holes.depthOf(i)].map(exact),
    axis: holes.axis[i] < 0 ? [] : holes.axes.slice(holes.axis[i] * 3, holes.axis[i] * 3 + 3).map(exact),
    references: holeReferences.map((path) => nameOf(reader, path, i)),
    // The hash of a tag with bytes that are no UTF-8 is nobody's.
    tagHash: holes.broken[i] === 0 ? holes.tagHashOf(i) : undefined,
    tolerance: holes.positionToleranceOf(i),
    byte: holes.byte[i],
    broken: holes.broken[i],
  }));
  return {
    found,
    rows,
    complete,
    records,
    hasBroken: model.hasBroken,
    duplicates: holes.duplicates,
    looks: holes.lookalikes,
  };
}

/** A number so that -0 and NaN are seen. */
function exact(value: number): string {
  return Object.is(value, -0) ? '-0' : String(value);
}

function nameOf({ model }: LayoutReader, path: (typeof holeReferences)[number], i: number): string | undefined {
  const name = model.holes.referenceOf(path, i);
  const target = references.holes.find((reference) => reference.path === path)?.target as 'trades';
  return name < 0 ? undefined : model.collection(target).names.text(name);
}

const HEADER =
  '{"ahx":"0.1","kind":"layout","id":"L","revision":{"label":"A"},"frame":{"name":"F","heightDatum":"floor"},"trades":[],"holeTypes":[],"holes":[';

describe('the decoder of holes', () => {
  it('gives what the scanner and the parser give, or leaves the hole to them', () => {
    let taken = 0;
    let left = 0;
    const layouts = fc.array(holeText(fc.constantFrom(0, 0, 0, 0, 1)), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(layouts, (holes) => {
        const bytes = bytesOf(`${HEADER}${holes.join(',')}]}`);
        expect(read(bytes, LayoutReader)).toEqual(read(bytes, SlowReader));
        const counting = new CountingReader(() => {});
        counting.write(bytes);
        counting.end();
        taken += counting.taken;
        left += holes.length - counting.taken;
      }),
      { numRuns: 1000, seed: 3 },
    );
    // A property that never meets one of the two ways says nothing.
    expect(Math.min(taken, left)).toBeGreaterThan(500);
  });
});
