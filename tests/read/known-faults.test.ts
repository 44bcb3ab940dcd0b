import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { references } from '../../src/generated/schema-tables.js';
import { Collector } from '../../src/model/collector.js';
import { holeReferences } from '../../src/model/hole-row.js';
import type { LayoutModel } from '../../src/model/layout-model.js';
import { LayoutReader } from '../../src/read/layout-reader.js';
import { bytesOf, holeText, oddValues } from './hole-text.js';
import { newRandom, pick } from './random.js';

const HEADER =
  '{"kind":"layout","id":"L","revision":{"label":"A"},"frame":{"name":"F","heightDatum":"floor"},"trades":[],"holeTypes":[]';

/** Has every hole parsed and judged. */
class ThoroughReader extends LayoutReader {
  override takeFast(): number {
    return -1;
  }
}

/** Counts the faulty holes that were not parsed. */
class CountingReader extends LayoutReader {
  passed = 0;
  override takeFast(name: string, bytes: Uint8Array, start: number, base: number): number {
    const end = super.takeFast(name, bytes, start, base);
    if (end >= 0 && this.model.holes.broken[this.model.holes.count - 1] !== 0) this.passed++;
    return end;
  }
}

function read(holes: readonly string[], Reader: typeof LayoutReader, limit: number, ahx = '0.1') {
  const collector = new Collector((rule) => (rule === 'noncharacter' ? 'off' : 'error'), limit);
  const reader = new Reader((observation) => collector.observe(0, observation));
  reader.write(bytesOf(`${HEADER},"ahx":"${ahx}","holes":[${holes.join(',')}]}`));
  reader.end();
  const { model, records, complete } = reader;
  const { counts, causes, kept } = collector;
  const rows = Array.from({ length: model.holes.count }, (_, i) => ({
    id: model.holes.id(i),
    point: [model.holes.x[i], model.holes.y[i], model.holes.z[i]].map(String),
    sizes: [model.holes.diameterOf(i), model.holes.depthOf(i)].map(String),
    references: holeReferences.map((path) => nameOf(model, path, i)),
    tolerance: model.holes.positionToleranceOf(i),
    byte: model.holes.byte[i],
    broken: model.holes.broken[i],
  }));
  const told = { counts, ofRule: [...collector.countOfRule].sort(), causes, kept, rows, records, complete };
  return { reader, told };
}

function nameOf(model: LayoutModel, path: (typeof holeReferences)[number], i: number): string | undefined {
  const name = model.holes.referenceOf(path, i);
  const target = references.holes.find((reference) => reference.path === path)?.target as 'trades';
  return name < 0 ? undefined : model.collection(target).names.text(name);
}

describe('holes with the same faults', () => {
  it('are counted, sorted into causes and listed as if each was judged', () => {
    let passed = 0;
    const pool = fc.array(holeText(fc.constantFrom(0, 1, 1, 2, 3)), { minLength: 1, maxLength: 12 });
    const order = fc.array(fc.nat(11), { minLength: 60, maxLength: 200 });
    fc.assert(
      fc.property(
        pool,
        order,
        fc.constantFrom(0, 1, 3),
        fc.constantFrom('0.1', '0.1', '0.2'),
        (pool, order, limit, ahx) => {
          const holes = order.map((k) => pool[k % pool.length]);
          const { reader, told } = read(holes, CountingReader, limit, ahx);
          expect(told).toEqual(read(holes, ThoroughReader, limit, ahx).told);
          passed += (reader as CountingReader).passed;
        },
      ),
      { numRuns: 150, seed: 5 },
    );
    expect(passed).toBeGreaterThan(1000);
  });

  const base: Readonly<Record<string, string>> = { id: '"H-1"', trade: '"FP"', holeType: '"T"', point: '[1,2,3]' };
  const written = (members: readonly (readonly [string, string])[]) =>
    `{${members.map(([name, value]) => `"${name}":${value}`).join(',')}}`;

  it.each(Object.keys(oddValues))('are told from others of %s', (name) => {
    const without = Object.entries(base).filter(([member]) => member !== name);
    const pool = oddValues[name].flatMap((value) => [
      written([...without, [name, value]]),
      written([[name, value], ...without, ['diametre', '1']]),
      written([[name, value], ...without, ['tagg', 'null']]),
      written([[name, value], ...without, [name, '"last"']]),
      written([...without, [name, value], [name, value]]),
      written([...without.slice(1), [name, value]]),
      written([...without.slice(0, -1), [name, value]]),
    ]);
    const random = newRandom(name.length);
    const holes = Array.from({ length: 40 * pool.length }, () => pick(random, pool));
    const { reader, told } = read(holes, CountingReader, 2);
    expect(told).toEqual(read(holes, ThoroughReader, 2).told);
    expect((reader as CountingReader).passed).toBeGreaterThan(holes.length / 8);
  });

  it('are counted exactly where more names are misspelt than are told apart at a time', () => {
    const named = (k: number) => written([...Object.entries(base), [`name ${k % 9000}`, '1']]);
    const common = written([...Object.entries(base), ['diametre', '1']]);
    const holes = Array.from({ length: 12_000 }, (_, k) => (k % 3 === 0 ? common : named(k)));
    const { reader, told } = read(holes, CountingReader, 3);
    const { counts, causes, ofRule } = read(holes, ThoroughReader, 3).told;
    expect({ counts: told.counts, causes: told.causes, ofRule: told.ofRule }).toEqual({ counts, causes, ofRule });
    expect((reader as CountingReader).passed).toBeGreaterThan(3900);
  });
});
