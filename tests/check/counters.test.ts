import { describe, expect, it } from 'vitest';
import { KeepOutIndex } from '../../src/check/keep-out-index.js';
import { nearHoles } from '../../src/check/near-holes.js';
import type { NearestOther } from '../../src/check/nearest-other.js';
import { Site } from '../../src/check/site.js';
import { LayoutReader } from '../../src/read/layout-reader.js';
import { benchBytes } from './bench-text.js';

function read(bytes: Uint8Array): LayoutReader {
  const reader = new LayoutReader(() => {});
  // Chunks as a file gives them.
  for (let at = 0; at < bytes.length; at += 1 << 16) reader.write(bytes.subarray(at, at + (1 << 16)));
  reader.end();
  return reader;
}

describe('bytes that the reader looks at', () => {
  it.each([
    ['minified', 0, 'none'],
    ['indented', 2, 'none'],
    ['minified, with a fault in every hole', 0, 'every-record'],
    ['indented, with a fault in every hole', 4, 'every-record'],
  ] as const)('are at most twice those of a layout %s', (_, indent, fault) => {
    const bytes = benchBytes({ holes: 5000, indent, fault, seed: 7 });
    const reader = read(bytes);
    expect(reader.complete).toBe(true);
    expect(reader.model.holes.count).toBe(5000);
    expect(reader.scanned).toBeGreaterThan(bytes.length / 2);
    expect(reader.scanned).toBeLessThanOrEqual(bytes.length * 2);
  });

  it('are at most three times those of a record that is larger than any window', () => {
    for (const length of [300_000, 524_288, 524_289, 2_200_000]) {
      const text = `{ "ahx": "0.1", "kind": "layout", "ext": { "urn:example:a": "${'x'.repeat(length)}" } }`;
      expect(read(new TextEncoder().encode(text)).scanned).toBeLessThanOrEqual(text.length * 3);
    }
  });
});

type Edit = (text: string) => string;

/** The site of an invented layout, changed before it is read. */
function siteOf(holes: number, fault: 'none' | 'crowded' | 'one-place', edit: Edit = (text) => text): Site {
  const text = edit(new TextDecoder().decode(benchBytes({ holes, indent: 0, fault, seed: 7 })));
  const { model } = read(new TextEncoder().encode(text));
  return new Site([{ layout: model, input: 0, name: 'bench', observe: () => {} }]);
}

function countOf({ found }: { found: NearestOther }): number {
  let count = 0;
  found.forEach(() => count++);
  return count;
}

const allSpacings =
  (value: number): Edit =>
  (text) =>
    text.replace(/("minSpacing":\{"value":)\d+/g, `$1${value}`);

/** A type whose least distance is far too large, which the first hole alone has. */
const oneHugeSpacing: Edit = (text) => {
  const type = /"holeTypes":\[(\{"id":"HT-FP".*?\}),\{"id":"HT-HV"/.exec(text)?.[1] ?? '';
  const huge = allSpacings(1e7)(type.replace('HT-FP', 'HUGE'));
  return text.replace('"holeTypes":[', `"holeTypes":[${huge},`).replace(/"holeType":"HT-\w+"/, '"holeType":"HUGE"');
};

const allDepths =
  (depth: number): Edit =>
  (text) =>
    text.replace(/"depth":\d+/g, `"depth":${depth}`);

describe.each([10_000, 100_000])('of %i holes', (holes) => {
  const site = siteOf(holes, 'none');

  it('each is compared with no more than two others', () => {
    const { tests, count } = nearHoles(site);
    expect(count).toBe(holes);
    expect(tests / holes).toBeLessThan(2);
  });

  it('each is compared with no more than two keep-outs', () => {
    const index = new KeepOutIndex(site.parts[0].layout.collection('keepOuts').records);
    // Holes as wide as this reach the keep-outs between their rows.
    for (let i = 0; i < holes; i++) index.near(site.point(i), [0, 0, 1], site.depth(i), 300, () => {});
    expect(index.tests).toBeGreaterThan(0);
    expect(index.tests / holes).toBeLessThan(2);
  });

  it('each is compared with few others where every second one lies too close', () => {
    const { tests, tooClose } = nearHoles(siteOf(holes, 'crowded'));
    expect(countOf(tooClose)).toBeGreaterThan(holes / 2);
    expect(tests / holes).toBeLessThan(3);
  });

  it('none is compared with all others where all lie at one place', () => {
    const { tests, coincident } = nearHoles(siteOf(holes, 'one-place'));
    expect(countOf(coincident)).toBe(holes - 1);
    expect(tests / holes).toBeLessThan(2);
  });

  it.each([
    ['for all', 5000, allSpacings(5000)],
    ['for all, and beyond any building', 1e7, allSpacings(1e7)],
    ['for one hole', 1e7, oneHugeSpacing],
  ] as const)('each is compared with few others where a least distance is far too large %s', (_, least, edit) => {
    const { tests, tooClose, limits } = nearHoles(siteOf(holes, 'none', edit));
    expect(limits.largest).toBe(least);
    expect(countOf(tooClose)).toBe(holes);
    expect(tooClose.givenUp.size).toBe(0);
    expect(tests / holes).toBeLessThan(25);
  });

  it.each([1500, 1e6])('each is compared with few others where all are %i mm deep', (depth) => {
    const { tests, overlapping } = nearHoles(siteOf(holes, 'none', allDepths(depth)));
    expect(overlapping.reach).toBeGreaterThan(depth);
    expect(tests / holes).toBeLessThan(25);
  });
});

describe('a hole as wide and long as the schema lets it be', () => {
  it('is compared once with every keep-out that it may reach, instead of with every cell that it fills', () => {
    const keepOut = (x: number) => ({
      id: `K-${x}`,
      kind: 'bar' as const,
      shape: { sphere: { centre: [x, 0, 0] as [number, number, number], radius: 5 } },
      standoff: 0,
      knownFrom: 'scan' as const,
    });
    const index = new KeepOutIndex([keepOut(0), keepOut(20_000), keepOut(9e9)]);
    const clear: number[] = [];
    index.near([0, 0, 0], [0.6, 0, 0.8], 1e7, 5e6, (_, distance) => clear.push(distance));
    expect(index.tests).toBe(2);
    expect(clear[0]).toBe(-5_000_005);
  });
});

describe('a prism of very many corners', () => {
  it('is taken like any other', () => {
    const base = Array.from({ length: 200_000 }, (_, k): [number, number, number] => {
      const turn = (2 * Math.PI * k) / 200_000;
      return [1000 * Math.cos(turn), 1000 * Math.sin(turn), 0];
    });
    const shape = { prism: { base, extrude: [0, 0, 100] as [number, number, number] } };
    const index = new KeepOutIndex([{ id: 'K', kind: 'embed', shape, standoff: 50, knownFrom: 'scan' }]);
    const clear: number[] = [];
    index.near([0, 0, 150], [0, 0, 1], 50, 5, (_, distance) => clear.push(distance));
    expect(clear).toEqual([45]);
  });
});
