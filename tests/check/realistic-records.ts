import {
  ABANDONED,
  BEAM_WIDE,
  BEAMS_X,
  box,
  DEEP,
  DROP,
  FEEDER,
  FLUTE,
  FOOT,
  INCH,
  LEVEL_2,
  type Line,
  LINES,
  mm,
  PIECES,
  pieceAt,
  ROOF,
  SLAB,
  SOFFIT,
  type Spot,
  STRETCH,
  WALL,
} from './realistic-structure.js';

type Json = Record<string, unknown>;

const at = (z: number) => (points: readonly Spot[]) => points.map(([x, y]) => [mm(x), mm(y), mm(z)]);

function lineShape({ x, y = 0, from, to, rise, radius }: Line): Json {
  const step = x === undefined ? to - from : STRETCH;
  const count = Math.round((to - from) / step);
  const points = Array.from({ length: count + 1 }, (_, k) => {
    const along = from + k * step;
    const z = mm(SOFFIT.L1 + rise(along));
    return x === undefined ? [mm(along), mm(y), z] : [mm(x), mm(along), z];
  });
  return { path: { points, radius: mm(radius) } };
}

function keepOuts(): Json[] {
  const { x0, x1, y0, y1 } = FEEDER;
  return [
    ...LINES.map((line) => ({
      ...{ id: line.id, kind: line.kind, shape: lineShape(line), standoff: mm(line.standoff) },
      ...{ positionTolerance: mm(line.tolerance), knownFrom: line.knownFrom, substrate: line.substrate },
      source: line.source,
    })),
    {
      ...{ id: 'F-1', kind: 'live-service', standoff: mm(4 * INCH), positionTolerance: mm(INCH), knownFrom: 'survey' },
      ...{ shape: { prism: { base: at(SOFFIT.L1 + 3 * INCH)(box(x0, y0, x1, y1)), extrude: [0, 0, mm(4 * INCH)] } } },
      ...{ substrate: 'S1-SE', source: 'E-1' },
    },
  ];
}

function substrates(): Json[] {
  const up = [0, 0, 1];
  const slabs = PIECES.map(({ id, level, outline, edges, opening, zones }) => {
    const on = at(SOFFIT[level]);
    const isDeck = level === 'L2';
    return {
      ...{
        id,
        kind: isDeck ? 'composite-deck' : 'solid-slab',
        level,
        face: { point: [0, 0, mm(SOFFIT[level])], inward: up },
      },
      outline: { points: on(outline), ...(edges && { edges }) },
      openings: [{ points: on(opening) }],
      thickness: isDeck ? mm(ROOF) : mm(SLAB),
      ...(isDeck && { deck: deck(id) }),
      ...(zones.length > 0 && {
        zones: zones.map(({ kind, outline: ring, thickness, offset }) => ({
          ...{ kind, outline: { points: at(SOFFIT.L1 + offset)(ring) }, thickness: mm(thickness), offset: mm(offset) },
        })),
      }),
      source: 'S-1',
      ...(isDeck && { scans: ['SC-2'] }),
    };
  });
  const beams = BEAMS_X.map((x, k) => ({
    ...{ id: `B1-${k + 1}`, kind: 'beam', level: 'L1', face: { point: [mm(x), 0, mm(SOFFIT.beam)], inward: up } },
    outline: {
      points: at(SOFFIT.beam)(box(x - BEAM_WIDE / 2, 0, x + BEAM_WIDE / 2, DEEP)),
      edges: ['continuous', 'free', 'continuous', 'free'],
    },
    ...{ thickness: mm(SLAB + 12 * INCH), source: 'S-1', scans: ['SC-1'] },
  }));
  const [x0, x1, y] = [WALL.x0, WALL.x1, WALL.y].map(mm);
  const top = mm(SOFFIT.L1);
  const wall = {
    ...{ id: 'W1-1', kind: 'wall', level: 'L1', face: { point: [x0, y, 0], inward: [0, 1, 0] } },
    outline: {
      points: [
        [x0, y, 0],
        [x1, y, 0],
        [x1, y, top],
        [x0, y, top],
      ],
      edges: ['continuous', 'free', 'continuous', 'free'],
    },
    ...{ thickness: mm(WALL.thick), source: 'S-1', scans: ['SC-1'] },
  };
  return [...slabs, ...beams, wall];
}

/** Flutes along y, the middle of the first one half a pitch beside the origin. */
function deck(id: string): Json {
  return {
    ...{ run: [0, 1, 0], pitch: mm(FLUTE), phase: mm(FLUTE / 2), phaseFrom: id === 'D2-E' ? 'survey' : 'drawing' },
    ...{ lowWidth: mm(76), highWidth: mm(116), ribDepth: mm(3 * INCH), overRib: mm(52), steel: mm(1) },
  };
}

function control(): Json[] {
  const plan: Spot[] = [
    [2 * FOOT, 3 * FOOT],
    [355 * FOOT, 6 * FOOT],
    [310 * FOOT, 190 * FOOT],
    [14 * FOOT, 231 * FOOT],
  ];
  return ['L1', 'L2'].flatMap((level, k) =>
    plan.map(([x, y], n) => ({
      ...{ id: `CP-${k + 1}${n + 1}`, point: [mm(x + 5 * n), mm(y + 7 * n), mm(k * LEVEL_2 + 5 * FOOT + n)] },
      ...{ class: n === 3 ? 'check' : 'primary', sigmaPlan: 1.5, sigmaHeight: 1.5, level, source: 'CS-1' },
    })),
  );
}

/** An area for each piece of concrete, a rated one, and one whose closure is over by 2 March 2026. */
function areas(): Json[] {
  const plan = (points: readonly Spot[]) => points.map(([x, y]) => [mm(x), mm(y)]);
  const over = { validFrom: '2026-02-02T06:00:00-05:00', validTo: '2026-02-20T18:00:00-05:00' };
  const rated = box(20 * FOOT, 20 * FOOT, 60 * FOOT, 50 * FOOT);
  return [
    ...PIECES.map(({ id, level, outline }) => ({
      ...{ id: `A-${id}`, name: `Part ${id}`, level, outline: plan(outline), kinds: ['pour'] },
    })),
    {
      id: 'A-R',
      name: 'Store',
      level: 'L2',
      outline: plan(rated),
      kinds: ['rated'],
      references: ['Example rating R-2'],
    },
    {
      id: 'A-C',
      name: 'Crane bay',
      level: 'L1',
      outline: plan(rated),
      kinds: ['closed'],
      references: ['Permit 7'],
      ...over,
    },
  ];
}

/** The map position is invented and lies in the open sea. */
const AT_SEA = { crs: 'EPSG:32631', eastings: 500_000, northings: 100_000, height: 0, scale: 0.001 };

/** All of the invented building that every trade's layout repeats. */
export function structure(): Json {
  const firm = (id: string, name: string, role: string) => ({ id, firm: `Example ${name}`, role });
  const source = (id: string, title: string, kind: string) => ({ id, title, kind });
  return {
    parties: [firm('GC', 'Builders', 'general-contractor'), firm('FP', 'Fire Protection', 'trade-contractor')],
    sources: [
      source('S-1', 'Level 2 framing', 'structural-drawing'),
      source('PT-1', 'Tendon profiles', 'tendon-drawing'),
      source('E-1', 'Cast-in conduit', 'other'),
      source('SC-1', 'Scan from level 1', 'scan'),
      source('SC-2', 'Scan from level 2', 'scan'),
      source('CS-1', 'Control sheet', 'control-sheet'),
    ],
    display: { length: 'ft-in', fraction: 16 },
    frame: { name: 'Building grid', heightDatum: 'Top of the slab on grade', georeference: AT_SEA },
    levels: [
      {
        id: 'L1',
        name: 'Level 1',
        elevation: 0,
        finishedFloor: mm(12),
        structuralTop: 0,
        soffits: [SOFFIT.L1, SOFFIT.L1 - DROP, SOFFIT.beam].map(mm),
      },
      {
        id: 'L2',
        name: 'Level 2',
        elevation: mm(LEVEL_2),
        finishedFloor: mm(LEVEL_2 + 12),
        structuralTop: mm(LEVEL_2),
        soffits: [mm(SOFFIT.L2)],
      },
      { id: 'R', name: 'Roof', elevation: mm(SOFFIT.L2 + ROOF) },
    ],
    control: control(),
    areas: areas(),
    substrates: substrates(),
    keepOuts: keepOuts(),
    bores: ABANDONED.map(([x, y], k) => ({
      ...{ id: `X-${k + 1}`, point: [mm(x), mm(y)], diameter: mm(8), depth: mm(2 * INCH), end: 'abandoned' },
      ...{ knownFrom: 'survey', substrate: pieceAt('L1', x, y).id },
    })),
  };
}
