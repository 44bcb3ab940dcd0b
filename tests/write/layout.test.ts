import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Hole, Layout } from '../../src/generated/layout.js';
import { writeLayout } from '../../src/write/layout.js';

/** Invented. */
const header: Omit<Layout, 'holes'> = {
  ahx: '0.1',
  kind: 'layout',
  id: 'L-1',
  revision: { label: 'A' },
  frame: { name: 'site', heightDatum: 'survey nail 4' },
  trades: [{ id: 'T1', name: 'Sprinkler' }],
  holeTypes: [{ id: 'H10', name: '10 mm', principle: 'screw', form: 'blind', diameter: 10, depth: 55 }],
};

function textOf(top: object, holes: readonly object[]): string {
  return [...writeLayout(top as Omit<Layout, 'holes'>, holes as readonly Hole[])].join('');
}

function hole(members: object): object {
  return { id: 'A', trade: 'T1', holeType: 'H10', point: [0, 0, 0], ...members };
}

/** Any length with at most 6 decimals, and those of a thirty-second and a sixty-fourth of an inch. */
const length = fc
  .oneof(
    fc.integer({ min: -1e9, max: 1e9 }),
    fc.integer({ min: -2_000_000_000, max: 2_000_000_000 }).map((millionths) => millionths / 1e6),
    fc.integer({ min: -1_000_000, max: 1_000_000 }).map((parts) => (parts * 25.4) / 64),
  )
  .filter((value) => !Object.is(value, -0) && Number(value.toFixed(6)) === value);

describe('writeLayout', () => {
  it('writes a header for people and one hole a line', () => {
    const holes = [hole({ id: 'A', point: [1000, -12.5, 3050] }), hole({ id: 'B', point: [0.396875, 2] })];
    expect(textOf(header, holes)).toBe(`{
  "ahx": "0.1",
  "kind": "layout",
  "id": "L-1",
  "revision": {
    "label": "A"
  },
  "frame": {
    "name": "site",
    "heightDatum": "survey nail 4"
  },
  "trades": [
    {
      "id": "T1",
      "name": "Sprinkler"
    }
  ],
  "holeTypes": [
    {
      "id": "H10",
      "name": "10 mm",
      "principle": "screw",
      "form": "blind",
      "diameter": 10,
      "depth": 55
    }
  ],
  "holes": [
    { "id": "A", "trade": "T1", "holeType": "H10", "point": [1000, -12.5, 3050] },
    { "id": "B", "trade": "T1", "holeType": "H10", "point": [0.396875, 2] }
  ]
}
`);
  });

  it('reads back as the same value where lengths have at most 6 decimals', () => {
    const position = fc.oneof(fc.tuple(length, length), fc.tuple(length, length, length));
    const anyHole = fc.record(
      {
        id: fc.string({ minLength: 1 }),
        trade: fc.constant('T1'),
        holeType: fc.constant('H10'),
        point: position,
        axis: fc.array(
          fc.double({ noNaN: true, noDefaultInfinity: true }).filter((v) => !Object.is(v, -0)),
          {
            minLength: 3,
            maxLength: 3,
          },
        ),
        depth: length,
        positionTolerance: fc.record({ along: fc.tuple(length, length), across: fc.tuple(length, length) }),
        note: fc.string({ unit: 'binary' }),
        ext: fc.dictionary(fc.webUrl(), fc.jsonValue()),
      },
      { requiredKeys: ['id', 'trade', 'holeType', 'point'] },
    );
    fc.assert(
      fc.property(fc.array(anyHole, { maxLength: 5 }), fc.dictionary(fc.webUrl(), fc.jsonValue()), (holes, ext) => {
        const layout = { ...header, ext, holes };
        // What JSON itself keeps: JSON.stringify writes -0 as 0.
        expect(JSON.parse(textOf({ ...header, ext }, holes))).toEqual(JSON.parse(JSON.stringify(layout)));
      }),
      { numRuns: 200 },
    );
  });

  it('rounds lengths to a millionth of a millimetre and never writes an exponent for them', () => {
    const text = textOf(header, [
      hole({ point: [0.1234567891, 1e-7, -4e-7], depth: 25.400000000000002, diameter: 5e-6 }),
    ]);
    expect(text).toContain('"point": [0.123457, 0, 0], "diameter": 0.000005, "depth": 25.4');
  });

  it('keeps every digit of what is no length', () => {
    const georeference = {
      crs: 'EPSG:32632',
      eastings: 458657.3000000001,
      northings: 5438232.25,
      height: 1,
      scale: 0.0032808333333,
    };
    const text = textOf({ ...header, frame: { ...header.frame, georeference, trueNorthDeg: 1.23456789012 } }, [
      hole({ axis: [0, 0.6000000000000001, 1e-9], ext: { 'https://example.org/x': { radius: 0.12345678901 } } }),
    ]);
    for (const kept of [
      '458657.3000000001',
      '0.0032808333333',
      '1.23456789012',
      '0.6000000000000001, 1e-9',
      '0.12345678901',
    ]) {
      expect(text).toContain(kept);
    }
  });

  it('puts known members in the order of the schema and keeps unknown ones after them', () => {
    const shuffled = { ...header, colour: { radius: 0.12345678901 }, ext: {}, packages: [{ id: 'P' }] };
    const text = textOf(Object.fromEntries(Object.entries(shuffled).reverse()), [
      { shift: 1, point: [1, 2], holeType: 'H10', 'x-y': [null], trade: 'T1', id: 'A' },
    ]);
    expect(text).toContain(
      '{ "id": "A", "trade": "T1", "holeType": "H10", "point": [1, 2], "shift": 1, "x-y": [null] }',
    );
    expect(Object.keys(JSON.parse(text))).toEqual([...Object.keys(header), 'holes', 'packages', 'ext', 'colour']);
    expect(text).toContain('"radius": 0.12345678901');
  });

  it('keeps a member named __proto__', () => {
    const text = textOf(JSON.parse(`{"__proto__": {"a": 1}, "ahx": "0.1"}`), [
      JSON.parse('{"__proto__": 1, "id": "A"}'),
    ]);
    expect(text).toContain('"__proto__": {\n    "a": 1');
    expect(text).toContain('{ "id": "A", "__proto__": 1 }');
  });

  it('leaves out what is undefined and writes empty collections', () => {
    const text = textOf({ ...header, title: undefined, trades: [], ext: {} }, []);
    expect(text).not.toContain('title');
    expect(text).toContain('"trades": [],');
    expect(text).toContain('"holes": [],\n  "ext": {}\n}\n');
  });

  it('breaks a long array of texts into lines', () => {
    const ids = Array.from({ length: 40 }, (_, i) => `A-${i}`);
    const text = textOf({ ...header, packages: [{ id: 'P', holes: ids }] }, []);
    expect(text).toContain('"holes": [\n        "A-0",\n        "A-1",\n');
  });

  it('hands out chunks of moderate size and reads holes as it goes', () => {
    let read = 0;
    function* many(): Generator<Hole> {
      for (; read < 20_000; read++) yield hole({ id: `H-${read}` }) as Hole;
    }
    const chunks = writeLayout(header, many());
    const first = chunks.next().value ?? '';
    expect(read).toBeLessThan(2000);
    const all = [first, ...chunks];
    expect(Math.max(...all.map((chunk) => chunk.length))).toBeLessThan(70_000);
    expect(JSON.parse(all.join('')).holes).toHaveLength(20_000);
  });

  it('refuses a number that is not finite', () => {
    expect(() => textOf(header, [hole({ depth: Number.NaN })])).toThrow(/NaN/);
    expect(() => textOf(header, [hole({ axis: [0, 0, Number.POSITIVE_INFINITY] })])).toThrow(/Infinity/);
  });
});
