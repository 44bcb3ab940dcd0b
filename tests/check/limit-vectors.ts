import type { Vec3 } from '../../src/geometry/vector.js';

type Json = Record<string, unknown>;

/** What a rule has to say of a vector: its id, its severity, and the hole or group at which it says so. */
export type Expected = readonly [rule: string, severity: string, id: string];

/** Records about one place, and what has to be found there. */
export interface Vector {
  holes: Json[];
  holeTypes: Json[];
  substrates?: Json[];
  openings?: Json[];
  zones?: Json[];
  keepOuts?: Json[];
  bores?: Json[];
  groups?: Json[];
  areas?: Json[];
  expected: Expected[];
}

/** A place for a vector, free for a metre about it, on a soffit at z = 0 that is 200 mm thick. */
export interface Place {
  /** Number of the vector, part of its ids. */
  k: number;
  x: number;
  y: number;
  /** Direction in the soffit in which things lie from each other. */
  turn: number;
}

/** Makes a vector that misses its limit by `by` mm (less than zero: it fails), `by` being a step of 0.001 mm or 0. */
type Make = (place: Place, by: number) => Vector;

const source = 'invented';
const D = 10;
const fails = (by: number, ...found: Expected[]): Expected[] => (by < 0 ? found : []);

/** A point `u` along the direction of the place, `v` to its left and `z` up. */
function at({ x, y, turn }: Place, u: number, v = 0, z = 0): Vec3 {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [x + u * c - v * s, y + u * s + v * c, z];
}

const direction = ({ turn }: Place, u: number, v: number, z: number): Vec3 => at({ k: 0, x: 0, y: 0, turn }, u, v, z);

function type({ k }: Place, members: Json = {}): Json {
  const form = { name: 'Invented', principle: 'other', form: 'blind', diameter: D, depth: 60 };
  return { id: `T-${k}`, ...form, ...members };
}

function hole({ k }: Place, letter: string, point: readonly number[], members: Json = {}): Json {
  return { id: `H-${k}${letter}`, trade: 'FP', holeType: `T-${k}`, substrate: 'S', point, ...members };
}

const box = (place: Place, halfU: number, halfV: number): Vec3[] => [
  at(place, -halfU, -halfV),
  at(place, halfU, -halfV),
  at(place, halfU, halfV),
  at(place, -halfU, halfV),
];

function one(place: Place, point: readonly number[], rest: Partial<Vector> & { type?: Json; hole?: Json }): Vector {
  const { type: ofType, hole: ofHole, expected = [], ...records } = rest;
  return { holes: [hole(place, 'a', point, ofHole)], holeTypes: [type(place, ofType)], expected, ...records };
}

function pair(place: Place, distance: number, expected: Expected[], ofType: Json = {}, isHigh = true): Vector {
  const ends = [at(place, 0), at(place, distance)].map((p) => (isHigh ? p : p.slice(0, 2)));
  const holes = ends.map((point, n) => hole(place, 'ab'[n], point));
  return { holes, holeTypes: [type(place, ofType)], expected };
}

const both = (rule: string, { k }: Place): Expected[] => [
  [rule, 'error', `H-${k}a`],
  [rule, 'error', `H-${k}b`],
];
const first = (rule: string, { k }: Place, severity = 'error'): Expected => [rule, severity, `H-${k}a`];

function keepOut(place: Place, shape: Json, expected: Expected[]): Vector {
  const record = { id: `K-${place.k}`, kind: 'conduit', shape, standoff: 50, knownFrom: 'scan' };
  return one(place, at(place, 0), { keepOuts: [record], expected });
}

/** Vectors for rules that know no up and down: they hold for any motion in space. */
export const IN_SPACE: Readonly<Record<string, Make>> = {
  spacing: (place, by) =>
    pair(place, 100 + by, fails(by, ...both('holes-too-close', place)), { minSpacing: { value: 100, source } }),
  coincidence: (place, by) =>
    pair(place, 1 + by, by > 0 ? both('bores-overlap', place) : [['holes-coincide', 'error', `H-${place.k}b`]]),
  overlap: (place, by) => pair(place, D + by, fails(by, ...both('bores-overlap', place))),
  edge: (place, by) =>
    one(place, at(place, 200 + 75 + by, 40), {
      type: { minEdge: { value: 75, source } },
      openings: [{ points: box(place, 200, 150) }],
      expected: fails(by, first('edge-too-close', place)),
    }),
  opening: (place, by) =>
    one(place, at(place, 200 + by, 40), {
      openings: [{ points: box(place, 200, 150) }],
      // Where the middle is still on the concrete the bit is not.
      expected: [first(by < 0 ? 'outside-substrate' : 'breaks-out-at-edge', place)],
    }),
  reach: (place, by) =>
    one(place, at(place, 0), {
      type: { backing: { value: 20, source } },
      hole: { depth: 180 - by },
      expected: fails(by, first('breaks-through', place)),
    }),
  through: (place, by) =>
    one(place, at(place, 0), {
      type: { form: 'through' },
      hole: { depth: 200 + by },
      expected: by < 0 ? [['stops-short', 'warning', `H-${place.k}a`]] : [],
    }),
  thickness: (place, by) =>
    one(place, at(place, 0), {
      type: { minThickness: { value: 120, source } },
      zones: [{ kind: 'step', outline: { points: box(place, 200, 150) }, thickness: 120 + by }],
      expected: fails(by, first('member-too-thin', place)),
    }),
  sphere: (place, by) =>
    keepOut(
      place,
      { sphere: { centre: at(place, D / 2 + 30 + 50 + by, 0, 40), radius: 30 } },
      fails(by, first('crosses-keep-out', place)),
    ),
  path: (place, by) => {
    const u = D / 2 + 15 + 50 + by;
    const points = [at(place, u, -500, -120), at(place, u, 500, 180)];
    return keepOut(place, { path: { points, radius: 15 } }, fails(by, first('crosses-keep-out', place)));
  },
  prism: (place, by) => {
    const u = D / 2 + 50 + by;
    const base = [at(place, u, -100, 10), at(place, u, 100, 10), at(place, u, 100, 50), at(place, u, -100, 50)];
    const shape = { prism: { base, extrude: direction(place, 80, 0, 0) } };
    return keepOut(place, shape, fails(by, first('crosses-keep-out', place)));
  },
  height: (place, by) => {
    const off = place.turn > Math.PI ? 15 - by : by - 15;
    return one(place, at(place, 0, 0, off), { expected: fails(by, first('off-surface', place)) });
  },
  bore: (place, by) => {
    const bore = { id: `X-${place.k}`, diameter: D, depth: 50, end: 'abandoned', knownFrom: 'survey', substrate: 'S' };
    return one(place, at(place, 0), {
      type: { abandonedSpacing: { unfilled: { value: 80 }, source } },
      bores: [{ ...bore, point: at(place, 80 + by) }],
      expected: fails(by, first('near-existing-bore', place)),
    });
  },
  pattern: (place, by) => {
    const group = `G-${place.k}`;
    const pattern = [0, 200].map((along) => [along, 0]);
    const made = pair(place, 202 - by, by < 0 ? [['group-pattern', 'error', group]] : []);
    const holes = made.holes.map((member) => ({ ...member, group }));
    return { ...made, holes, groups: [{ id: group, kind: 'trapeze', pattern, patternTolerance: 2 }] };
  },
  // A step of an angle is 0.0001 degree.
  slant: (place, by) => {
    const angle = ((0.5 - by / 10) * Math.PI) / 180;
    return one(place, at(place, 0), {
      hole: { axis: direction(place, Math.sin(angle), 0, Math.cos(angle)) },
      expected: fails(by, first('not-square', place, 'warning')),
    });
  },
  flute: (place, by) => {
    const sizes = {
      pitch: 300,
      phase: 0,
      phaseFrom: 'survey',
      lowWidth: 120,
      highWidth: 180,
      ribDepth: 60,
      overRib: 90,
    };
    const substrate = {
      ...{ id: `D-${place.k}`, kind: 'composite-deck', deck: { run: direction(place, 1, 0, 0), ...sizes } },
      face: { point: at(place, 70, 0, 4000), inward: [0, 0, 1] },
    };
    return one(place, at(place, 10, 20 - by, 4000), {
      type: { flutes: { in: 'low', maxOffset: 20, source } },
      hole: { substrate: substrate.id },
      substrates: [substrate],
      expected: fails(by, first('flute-offset', place)),
    });
  },
  joint: (place, by) => {
    const points = box(place, 200, 150).map(([x, y]): Vec3 => [x, y, 8000]);
    const substrate = {
      ...{ id: `J-${place.k}`, kind: 'solid-slab', face: { point: points[0], inward: [0, 0, 1] }, thickness: 200 },
      outline: { points, edges: ['continuous', 'movement-joint', 'continuous', 'continuous'] },
    };
    return one(place, at(place, 200 - 75 - by, 40, 8000), {
      type: { minEdge: { value: 75, source } },
      hole: { substrate: substrate.id },
      substrates: [substrate],
      expected: fails(by, first('near-movement-joint', place, 'warning')),
    });
  },
};

/** Vectors for rules that look at plans: they hold for turns about the vertical. */
export const IN_PLAN: Readonly<Record<string, Make>> = {
  ...IN_SPACE,
  planSpacing: (place, by) =>
    pair(place, 100 + by, fails(by, ...both('holes-too-close', place)), { minSpacing: { value: 100, source } }, false),
  area: (place, by) =>
    one(place, at(place, 200 - by, 40).slice(0, 2), {
      areas: [{ id: `A-${place.k}`, name: 'Pour', outline: box(place, 200, 150).map(([x, y]) => [x, y]) }],
      hole: { area: `A-${place.k}` },
      expected: fails(by, first('outside-area', place, 'warning')),
    }),
  closedArea: (place, by) =>
    one(place, at(place, 200 + by, 40), {
      areas: [
        { id: `A-${place.k}`, name: 'Bay', kinds: ['closed'], outline: box(place, 200, 150).map(([x, y]) => [x, y]) },
      ],
      expected: fails(by, first('in-closed-area', place, 'info')),
    }),
};

/** A layout of vectors on one soffit. */
export function layoutOf(vectors: readonly Vector[]): Json {
  const all = (name: keyof Vector) => vectors.flatMap((vector) => (vector[name] ?? []) as Json[]);
  const outline = [-5000, 45_000].flatMap((y) => [-5000, 45_000].map((x) => [y < 0 ? x : 40_000 - x, y, 0]));
  const soffit = {
    ...{ id: 'S', kind: 'solid-slab', face: { point: [300, 200, 0], inward: [0, 0, 1] }, outline: { points: outline } },
    ...{ openings: all('openings'), thickness: 200, zones: all('zones') },
  };
  return {
    ...{ ahx: '0.1', kind: 'layout', id: 'limits', revision: { label: 'A' } },
    ...{
      frame: { name: 'Corner', heightDatum: 'floor' },
      areas: all('areas'),
      trades: [{ id: 'FP', name: 'Sprinkler' }],
    },
    ...{ holeTypes: all('holeTypes'), substrates: [soffit, ...all('substrates')], keepOuts: all('keepOuts') },
    ...{ bores: all('bores'), groups: all('groups'), holes: all('holes') },
  };
}
