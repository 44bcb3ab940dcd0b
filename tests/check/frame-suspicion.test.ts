import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';

type Point = readonly [number, number, number];

/** A layout as points: holes and outlines of slabs, runs of groups. */
interface Plan {
  holes: Point[];
  outline: Point[];
  run: Point;
}

const WATCHED = ['units-suspect', 'axes-swapped', 'plan-mirrored'];

/** An L of 40 m by 25 m whose holes lie in both arms, in threes that form an angle; invented. */
const clean: Plan = {
  outline: [
    [0, 0, 3000],
    [40_000, 0, 3000],
    [40_000, 8000, 3000],
    [12_000, 8000, 3000],
    [12_000, 25_000, 3000],
    [0, 25_000, 3000],
  ],
  holes: Array.from(
    { length: 12 },
    (_, k): Point => (k < 8 ? [4000 + 4500 * k, 3000, 3000] : [4000, 5000 + 4500 * (k - 7), 3000]),
  ).flatMap(([x, y, z]): Point[] => [
    [x, y, z],
    [x + 600, y, z],
    [x, y + 250, z],
  ]),
  run: [1, 0, 0],
};

/** A slab that holds its mirror image, with the holes of one side of the L. */
const rectangle: Plan = {
  ...clean,
  outline: [
    [0, 0, 3000],
    [40_000, 0, 3000],
    [40_000, 8000, 3000],
    [0, 8000, 3000],
  ],
  holes: clean.holes.slice(0, 24),
};

function textOf({ holes, outline, run }: Plan, withHeights: boolean): string {
  // Six decimals, as a writer of AHX writes.
  const short = (point: readonly number[]) => point.map((value) => Number(value.toFixed(6)));
  return JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'plan',
    revision: { label: 'A' },
    frame: { name: 'Site grid', heightDatum: 'Sea level' },
    trades: [{ id: 'FP', name: 'Sprinkler' }],
    holeTypes: [{ id: 'T', name: 'T', principle: 'screw', form: 'blind', diameter: 10, depth: 60 }],
    substrates: [
      {
        id: 'S',
        kind: 'solid-slab',
        face: { point: short(outline[0]), inward: [0, 0, 1] },
        outline: { points: outline.map(short) },
      },
    ],
    groups: Array.from({ length: holes.length / 3 }, (_, g) => ({
      id: `G-${g}`,
      kind: 'plate',
      run: short(run),
      pattern: [
        [0, 0],
        [600, 0],
        [0, 250],
      ],
    })),
    holes: holes.map((point, k) => ({
      id: `H-${k}`,
      trade: 'FP',
      holeType: 'T',
      substrate: 'S',
      group: `G-${Math.floor(k / 3)}`,
      point: short(withHeights ? point : point.slice(0, 2)),
    })),
  });
}

function said(plan: Plan, withHeights: boolean): string[] {
  const { findings } = check([{ name: 'plan', data: textOf(plan, withHeights) }]);
  return findings.filter(({ rule }) => WATCHED.includes(rule)).map(({ rule }) => rule);
}

function placed({ holes, outline, run }: Plan, turnDeg: number, [dx, dy, dz]: Point): Plan {
  const cos = Math.cos((turnDeg * Math.PI) / 180);
  const sin = Math.sin((turnDeg * Math.PI) / 180);
  const turned = ([x, y, z]: Point): Point => [cos * x - sin * y, sin * x + cos * y, z];
  const moved = (point: Point): Point => {
    const [x, y, z] = turned(point);
    return [x + dx, y + dy, z + dz];
  };
  return { holes: holes.map(moved), outline: outline.map(moved), run: turned(run) };
}

const withHoles = (plan: Plan, change: (point: Point) => Point): Plan => ({ ...plan, holes: plan.holes.map(change) });

const turns = fc.double({ min: -180, max: 180, noNaN: true });
/** Far from the origin and from the diagonal, so that no transformation leads back into the slab. */
const places = fc.tuple(
  fc.double({ min: 300_000, max: 600_000, noNaN: true }),
  fc.double({ min: 60_000, max: 200_000, noNaN: true }),
  fc.double({ min: 0, max: 50_000, noNaN: true }),
);

describe('a clean layout', () => {
  it('is not suspected, wherever it lies and however it is turned', () => {
    const shifts = fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: -1e6, max: 1e6, noNaN: true })));
    fc.assert(
      fc.property(turns, shifts, fc.boolean(), (turnDeg, shift, withHeights) => {
        for (const plan of [clean, rectangle])
          expect(said(placed(plan, turnDeg, shift as unknown as Point), withHeights)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a layout that was changed on its way', () => {
  const factors = [25.4, 304.8, 1000, 10].flatMap((factor) => [factor, 1 / factor]);
  const changes: [string, string, (point: Point) => Point][] = [
    ...factors.map((factor): [string, string, (point: Point) => Point] => [
      `multiplied by ${factor}`,
      'units-suspect',
      ([x, y, z]) => [factor * x, factor * y, factor * z],
    ]),
    ['with x and y exchanged', 'axes-swapped', ([x, y, z]) => [y, x, z]],
    ['with x turned over', 'plan-mirrored', ([x, y, z]) => [-x, y, z]],
    ['with y turned over', 'plan-mirrored', ([x, y, z]) => [x, -y, z]],
  ];

  it.each(changes)('is suspected of that and of nothing else: %s', (_, rule, change) => {
    fc.assert(
      fc.property(turns, places, (turnDeg, place) => {
        expect(said(withHoles(placed(clean, turnDeg, place), change), true)).toEqual([rule]);
      }),
      { numRuns: 20 },
    );
  });

  it('is suspected of being mirrored by its groups where the slab holds the mirror image', () => {
    fc.assert(
      fc.property(turns, places, (turnDeg, place) => {
        const mirrored = withHoles(rectangle, ([x, y, z]) => [x, 8000 - y, z]);
        expect(said(placed(mirrored, turnDeg, place), true)).toEqual(['plan-mirrored']);
      }),
      { numRuns: 20 },
    );
  });
});
