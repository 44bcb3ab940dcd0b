import type { HoleType, Substrate } from '../generated/layout.js';
import { parseLength } from '../units/parse-length.js';

/** What the sizes of a layout look like. */
export interface SuspectSizes {
  reading: 'inches' | 'metres';
  /** Millimetres in one unit of the reading. */
  factor: number;
  /** Kinds of sizes that are evidence. */
  kinds: string[];
  /** Number of sizes of these kinds. */
  of: number;
}

interface KindOfSize {
  name: string;
  /** Sizes as written; with each what it should be where something else says it. */
  sizes: number[];
  speaksFor(size: number, factor: number, index: number): boolean;
}

const READINGS = [
  { reading: 'inches', factor: 25.4 },
  { reading: 'metres', factor: 1000 },
] as const;

/**
 * What the sizes of hole types and substrates look like when none of them can be millimetres.
 *
 * At least two kinds of sizes must speak for one reading, each with all its sizes; or the bits of all types.
 * The limits are common practice: no hole for an anchor in concrete is thinner than 3 mm, no slab than 25 mm.
 */
export function suspectSizes(types: readonly HoleType[], substrates: readonly Substrate[]): SuspectSizes | undefined {
  const found = READINGS.flatMap(({ reading, factor }) => {
    const kinds = kindsOfSizes(types, substrates).filter(
      ({ sizes, speaksFor }) => sizes.length > 0 && sizes.every((size, k) => speaksFor(size, factor, k)),
    );
    const isByBit = kinds.some(({ name, sizes }) => name === 'bit' && sizes.length === types.length);
    if (kinds.length < 2 && !isByBit) return [];
    const of = kinds.reduce((sum, { sizes }) => sum + sizes.length, 0);
    return [{ reading, factor, kinds: kinds.map(({ name }) => name), of }];
  });
  return found.sort((a, b) => b.kinds.length - a.kinds.length)[0];
}

function kindsOfSizes(types: readonly HoleType[], substrates: readonly Substrate[]): KindOfSize[] {
  const within = (below: number, least: number, most: number) => (size: number, factor: number) =>
    size < below && size * factor >= least && size * factor <= most;
  const withBit = types.flatMap(({ diameter, bit }) => {
    const size = bit && sizeOfBit(bit.nominal);
    return size === undefined ? [] : [{ diameter, size }];
  });
  return [
    { name: 'diameter', sizes: types.map(({ diameter }) => diameter), speaksFor: within(3, 4, 200) },
    { name: 'depth', sizes: types.flatMap(({ depth }) => depth ?? []), speaksFor: within(10, 10, 1500) },
    {
      name: 'thickness',
      sizes: substrates.flatMap(({ thickness }) => thickness ?? []),
      speaksFor: within(25, 50, 3000),
    },
    {
      name: 'bit',
      sizes: withBit.map(({ size }) => size),
      speaksFor: (size, factor, k) => Math.abs(withBit[k].diameter * factor - size) <= size / 10,
    },
  ];
}

/** Size that is stamped on a bit, mm; undefined where it is no length with a unit. */
export function sizeOfBit(nominal: string): number | undefined {
  const metric = /^(.*[0-9])\s*(mm|cm)$/.exec(nominal.trim());
  for (const decimal of ['point', 'comma'] as const) {
    const size =
      metric === null
        ? parseLength(nominal.trim(), 'ft-in', decimal)
        : parseLength(metric[1], metric[2] as 'mm' | 'cm', decimal);
    if (typeof size === 'number' && size > 0) return size;
  }
  return undefined;
}
