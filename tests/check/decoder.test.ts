import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holeReferences } from '../../src/model/hole-row.js';
import type { Observation } from '../../src/model/observation.js';
import { references } from '../../src/generated/schema-tables.js';
import { LayoutReader } from '../../src/read/layout-reader.js';

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
    tagHash: holes.tagHashOf(i),
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

const blank = fc.constantFrom('', '', '', ' ', '\n', '\t', '\r\n  ');
const plainText = fc.constantFrom(
  '"H-1"',
  '"h-1"',
  '"FP"',
  '"HT 1"',
  '"A/b\'c"',
  '"3/8\\" rod"',
  '"é"',
  '"10′-6″"',
  '"ß—漢"',
  `"${'x'.repeat(128)}"`,
);
const plainId = fc.oneof(
  { weight: 19, arbitrary: fc.constantFrom('"H-1"', '"h-1"', '"FP"', '"HT 1"', '"A/b\'c"', `"${'x'.repeat(128)}"`) },
  { weight: 1, arbitrary: plainText },
);
const oddText = fc.oneof(
  fc.constantFrom(
    '""',
    '" x"',
    '"x "',
    '"\\u0041"',
    '"3/8\\u0022"',
    '"\\u00e9\\u4E2D\\u2033"',
    '"\\u0020x"',
    '"x\\u00a0"',
    '"\\u007f"',
    '"\\u00zz"',
    '"\\u00"',
    '"a\\nb"',
    '"a\\/b"',
    '"e\\u0301"',
    '"e\u0301"',
    '"\u00a0x"',
    '"x\u2028"',
    '"x\u2028y"',
  ),
  fc.constantFrom(
    '"\\ud83d\\ude00"',
    '"\\ud83d"',
    '"\uffff"',
    '"\u007f"',
    '"\u0085"',
    `"${'x'.repeat(129)}"`,
    `"${'x'.repeat(257)}"`,
    `"${'👷'.repeat(128)}"`,
  ),
  fc.string({ unit: 'binary', maxLength: 6 }).map((text) => JSON.stringify(text)),
);
const coordinate = fc.oneof(
  fc.integer({ min: -100_000, max: 100_000 }).map((n) => String(n / 1000)),
  fc.constantFrom('0', '-0', '-0.5', '1.50', '0.000001', '123456789.012345', '9999999999', '10000000000'),
);
const plainLength = fc.oneof(
  fc.integer({ min: 1, max: 100_000 }).map((n) => String(n / 1000)),
  fc.constantFrom('0.5', '12.7', '10000000', '0.000001'),
);
const oddNumber = fc.oneof(
  fc.constantFrom(
    '1e3',
    '2.5E-1',
    '1e400',
    '1e-400',
    '01',
    '+1',
    '.5',
    '1.',
    '-',
    '10000000000.5',
    '0.1000000000000000055',
  ),
  fc.double().map(String),
  fc.integer().map((n) => `${n}00000000000000000001`),
);
const odd = fc.oneof(
  oddText,
  oddNumber,
  fc.constantFrom(
    'null',
    'true',
    'nul',
    '[]',
    '{}',
    '[1, 2]',
    '[0, 0, 0]',
    '[1,2,3,4]',
    '{ "a": 1 }',
    '[5, -5]',
    '[1 2]',
    '{"ask":"never"}',
  ),
);

const list = (...parts: fc.Arbitrary<string>[]) =>
  fc.tuple(blank, ...parts).map(([space, ...values]) => `[${space}${values.join(`${space},${space}`)}${space}]`);
/** An object of some of the members. */
const members = (given: Record<string, fc.Arbitrary<string>>) =>
  fc
    .tuple(
      blank,
      fc
        .subarray(Object.entries(given), { minLength: 1 })
        .chain((chosen) => fc.tuple(...chosen.map(([name, value]) => value.map((v) => `"${name}":${v}`)))),
    )
    .map(([space, parts]) => `{${space}${parts.join(`,${space}`)}${space}}`);
const limits = list(fc.constantFrom('-5', '-0.5', '0'), fc.constantFrom('0', '0.5', '5'));
const tolerance = members({ radius: plainLength, along: limits, across: limits, height: limits });

const needed = {
  id: plainId,
  trade: plainId,
  holeType: plainId,
  point: fc.oneof(list(coordinate, coordinate), list(coordinate, coordinate, coordinate)),
};
const optional = {
  tag: plainText,
  substrate: plainId,
  level: plainId,
  area: plainId,
  group: plainId,
  role: plainText,
  axis: list(coordinate, coordinate, coordinate),
  diameter: plainLength,
  depth: plainLength,
  positionTolerance: tolerance,
  depthTolerance: limits,
  moveAllowance: fc
    .tuple(
      plainLength,
      fc.constantFrom('"ask-first"', '"tell-after"', '"ask"'),
      list(coordinate, coordinate, coordinate),
    )
    .map(
      ([length, ask, run]) => `{"along":${length},"across": ${length},"ask":${ask} ,"run":${run},"movesTogether":true}`,
    ),
  above: members({ level: plainId, protectedBy: plainId, protection: plainText, firestop: plainText }),
  replaces: plainId,
  origin: members({
    source: plainId,
    row: fc.constantFrom('1', '17', '17', '0'),
    element: plainText,
    code: plainText,
  }),
  note: plainText,
  ext: fc.constantFrom('{}', '{ "urn:example:a": [1, {}] }', '{ "a": 1 }'),
};

/** The text of a hole: all that it needs, some of the rest, in any order; at times something odd in place of it. */
const hole = fc
  .record({
    chosen: fc.subarray(Object.entries(optional)),
    order: fc.integer({ min: 0, max: 20 }),
    space: blank,
    oddity: fc.oneof(
      { weight: 4, arbitrary: fc.constant(null) },
      {
        weight: 1,
        arbitrary: fc.record({
          at: fc.nat(25),
          kind: fc.constantFrom('value', 'twice', 'unknown', 'escaped', 'missing'),
          value: odd,
        }),
      },
    ),
  })
  .chain(({ chosen, order, space, oddity }) => {
    const all = [...Object.entries(needed), ...chosen];
    return fc.tuple(...all.map(([, value]) => value)).map((values) => {
      const parts = all.map(([name], k): [string, string] => [`"${name}"`, values[k]]);
      const turned = [...parts.slice(order % parts.length), ...parts.slice(0, order % parts.length)];
      if (oddity !== null) change(turned, oddity);
      return `{${space}${turned.map(([name, value]) => `${name}${space}:${space}${value}`).join(`${space},${space}`)}${space}}`;
    });
  });

function change(parts: [string, string][], { at, kind, value }: { at: number; kind: string; value: string }): void {
  const k = at % parts.length;
  const [name, before] = parts[k];
  if (kind === 'value') parts[k] = [name, value];
  if (kind === 'twice') parts.splice(0, 0, [name, before]);
  if (kind === 'unknown') parts.splice(k, 0, ['"diametre"', value]);
  if (kind === 'escaped') parts[k] = [`"\\u00${name.charCodeAt(1).toString(16)}${name.slice(2)}`, before];
  if (kind === 'missing') parts.splice(k, 1);
}

const HEADER =
  '{"ahx":"0.1","kind":"layout","id":"L","revision":{"label":"A"},"frame":{"name":"F","heightDatum":"floor"},"trades":[],"holeTypes":[],"holes":[';
const encoder = new TextEncoder();

describe('the decoder of holes', () => {
  it('gives what the scanner and the parser give, or leaves the hole to them', () => {
    let taken = 0;
    let left = 0;
    const layouts = fc.array(hole, { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(layouts, (holes) => {
        const bytes = encoder.encode(`${HEADER}${holes.join(',')}]}`);
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
