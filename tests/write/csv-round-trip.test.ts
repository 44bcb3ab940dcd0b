import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Column, ColumnProfile } from '../../src/generated/column-profile.js';
import type { Hole } from '../../src/generated/layout.js';
import type { LayoutSource, Loss } from '../../src/model/layout-source.js';
import { PointListReader } from '../../src/read/table/point-list.js';
import { roundMm } from '../../src/units/format-mm.js';
import { writeCsv } from '../../src/write/csv.js';

type Unit = NonNullable<Column['unit']>;
type Table = NonNullable<ColumnProfile['table']>;

const layout = {
  id: 'invented',
  revision: { label: 'A' },
  frame: { name: 'site', heightDatum: '0' },
  trades: [{ id: 'FP', name: 'Fire protection' }],
  holeTypes: [],
  levels: [
    { id: 'L1', name: 'Level 1', finishedFloor: 0.1, structuralTop: -75, soffits: [3000.3] },
    { id: 'L2', name: 'Level 2', finishedFloor: 4000, structuralTop: 3925, soffits: [7000] },
  ],
};

const characters = fc.constantFrom(...'aZ07éß中😀', ' ', ',', ';', '"', "'", '=', '+', '-', '@', '/', '.');
const line = fc
  .string({ unit: characters, minLength: 1, maxLength: 8 })
  .filter((text) => text.trim() === text && text !== '' && text !== 'END');
const paragraph = fc
  .string({ unit: fc.oneof(characters, fc.constantFrom('\n', '\t', '\r\n')), minLength: 1, maxLength: 12 })
  .filter((text) => text.trim() === text && text !== '');
const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined });

/** Lengths that a layout holds and the unit writes exactly. */
function lengths(unit: Unit, least: number): fc.Arbitrary<number> {
  if (unit === 'ft-in') return fc.integer({ min: least, max: 100_000 }).map((part) => (part * 127) / 320);
  return fc.integer({ min: least, max: 1_000_000_000 }).map((steps) => steps / 1e6);
}

function holesIn(unit: Unit): fc.Arbitrary<Hole[]> {
  const coordinate = lengths(unit, -100_000);
  const point = fc.oneof(fc.tuple(coordinate, coordinate), fc.tuple(coordinate, coordinate, coordinate));
  const direction = fc.double({ min: -1, max: 1, noNaN: true }).map((value) => value + 0);
  const hole = fc.record({
    id: line,
    tag: maybe(line),
    trade: line,
    holeType: line,
    substrate: maybe(line),
    level: fc.constantFrom('L1', 'L2'),
    area: maybe(line),
    group: maybe(line),
    role: maybe(line),
    point,
    axis: maybe(fc.tuple(direction, direction, direction)),
    diameter: lengths(unit, 1),
    depth: maybe(lengths(unit, 1)),
    origin: fc.record({ element: maybe(line), code: maybe(line) }),
    note: maybe(paragraph),
  });
  return fc.array(hole as fc.Arbitrary<Hole>, { maxLength: 4 });
}

function columnsIn(unit: Unit): Column[] {
  const fields: Column['field'][] = [
    'note',
    'id',
    'tag',
    'x',
    'y',
    'z',
    'axis.x',
    'axis.y',
    'axis.z',
    'diameter',
    'depth',
    'trade',
    'holeType',
    'substrate',
    'level',
    'area',
    'group',
    'role',
    'origin.element',
    'origin.code',
  ];
  const lengthFields: Column['field'][] = ['x', 'y', 'z', 'diameter', 'depth'];
  return fields.map((field, index) => ({
    column: `#${index + 1}`,
    field,
    ...(lengthFields.includes(field) ? { unit } : {}),
    ...(field === 'depth' ? { optional: true } : {}),
  }));
}

function throughCsv(holes: Hole[], profile: ColumnProfile): { read: Hole[]; losses: Loss[]; observed: unknown[] } {
  const losses: Loss[] = [];
  const read: Hole[] = [];
  const observed: unknown[] = [];
  const source: LayoutSource = {
    header: { ahx: '0.1', kind: 'layout', ...layout } as LayoutSource['header'],
    holeCount: holes.length,
    holes: () => holes,
  };
  const reader = new PointListReader(
    profile,
    (hole) => read.push(hole),
    (observation) => observed.push(observation),
  );
  for (const chunk of writeCsv(source, profile, (loss) => losses.push(loss))) reader.write(chunk);
  reader.end();
  return { read, losses, observed };
}

/** The hole as JSON has it, with the row that the table gives it. */
function onRow(hole: Hole, row: number): unknown {
  return JSON.parse(JSON.stringify({ ...hole, origin: { ...hole.origin, row } }));
}

describe('holes through CSV and back', () => {
  const unit = fc.constantFrom<Unit[]>('mm', 'cm', 'm', 'in', 'ft', 'us-ft', 'ft-in');
  const height = fc.constantFrom('datum', 'finished-floor', 'structural-top', 'soffit-down');
  const table: fc.Arbitrary<Table> = fc.record({
    separator: fc.constantFrom('semicolon', 'tab', 'blanks'),
    decimal: fc.constantFrom('point', 'comma'),
    skipRows: fc.nat(3),
    header: fc.boolean(),
    end: fc.constantFrom(undefined, 'END'),
  });

  it('are the same where every member has a column', () => {
    const cases = unit.chain((name) => fc.record({ name: fc.constant(name), holes: holesIn(name), table, height }));
    fc.assert(
      fc.property(cases, ({ name, holes, table: form, height: reference }) => {
        // Heights from a level are no multiples of 1/64 in, and would be rounded with feet and inches.
        const from = name === 'ft-in' ? 'datum' : reference;
        const profile: ColumnProfile = {
          ahx: '0.1',
          kind: 'column-profile',
          table: form,
          columns: columnsIn(name),
          height: from,
          layout,
        };
        const first = (form.skipRows ?? 0) + (form.header ? 2 : 1);
        const { read, losses, observed } = throughCsv(holes, profile);
        expect(observed).toEqual([]);
        expect(losses).toEqual([]);
        expect(read.map(rounded)).toEqual(holes.map((hole, index) => onRow(hole, first + index)));
      }),
      { numRuns: 400 },
    );
  });

  it('are the same where codes and constants give what has no column', () => {
    const members = fc.record({
      trade: fc.constantFrom('FP', 'EL'),
      holeType: fc.constantFrom('W10', 'C50'),
      axis: fc.constantFrom<(Hole['axis'] | undefined)[]>([0, 0, 1], undefined),
    });
    const profile: ColumnProfile = {
      ahx: '0.1',
      kind: 'column-profile',
      columns: [
        { column: 'X', field: 'x', unit: 'mm' },
        { column: 'Y', field: 'y', unit: 'mm' },
        { column: 'ID', field: 'id' },
      ],
      codes: {
        column: '=Code',
        map: Object.fromEntries(
          ['FP', 'EL'].flatMap((trade) =>
            ['W10', 'C50'].flatMap((holeType) => [
              [`-${trade} ${holeType}`, { trade, holeType }],
              [`${trade}/${holeType}`, { trade, holeType, axis: [0, 0, 1] }],
            ]),
          ),
        ),
      },
      rows: { column: 'Kind', keep: ['-H'] },
      constants: { level: 'L1' },
      layout,
    };
    fc.assert(
      fc.property(fc.array(fc.tuple(members, line), { maxLength: 6 }), (drawn) => {
        const holes = drawn.map(([given, id]): Hole => ({ id, ...given, level: 'L1', point: [1, 2] }));
        const { read, losses, observed } = throughCsv(holes, profile);
        expect(observed).toEqual([]);
        expect(losses).toEqual([]);
        const bare = read.map(({ origin: _, ...hole }) => hole);
        expect(bare).toEqual(JSON.parse(JSON.stringify(holes)));
      }),
      { numRuns: 200 },
    );
  });
});

/** A hole that was read, with its lengths as a layout writes them. */
function rounded(hole: Hole): Hole {
  const { point, diameter, depth } = hole;
  return {
    ...hole,
    point: point.map(roundMm) as Hole['point'],
    ...(diameter === undefined ? {} : { diameter: roundMm(diameter) }),
    ...(depth === undefined ? {} : { depth: roundMm(depth) }),
  };
}
