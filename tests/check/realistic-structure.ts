/** A length in sixteenths of an inch, which all coordinates of the invented building are whole numbers of. */
export const INCH = 16;
export const FOOT = 192;

/** Sixteenths of an inch as millimetres, with the four decimals that they have. */
export function mm(sixteenths: number): number {
  return (sixteenths * 15_875) / 10_000;
}

export type Spot = readonly [x: number, y: number];

export const WIDE = 360 * FOOT;
export const DEEP = 240 * FOOT;
const JOINT_X = WIDE / 2;
const JOINT_Y = DEEP / 2;
const CUT = 30 * FOOT;
/** Heights of the undersides: the slab over level 1, the beams below it, the roof deck over level 2. */
export const SOFFIT = { L1: 15 * FOOT, beam: 14 * FOOT, L2: 346 * INCH };
export const LEVEL_2 = 190 * INCH;
export const SLAB = 10 * INCH;
/** Rib and concrete over it. */
export const ROOF = 100;
export const DROP = 6 * INCH;
export const FLUTE = 12 * INCH;

export const box = (x0: number, y0: number, x1: number, y1: number): Spot[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

/** The thin part of the first pour. */
export const THIN: readonly Spot[] = box(100 * FOOT, 64 * FOOT, 116 * FOOT, 84 * FOOT);

/** One piece of concrete that is drilled from below, in plan. */
export interface Piece {
  id: string;
  level: 'L1' | 'L2';
  outline: readonly Spot[];
  /** Kinds of the edges; undefined where the layout does not say. */
  edges: readonly string[] | undefined;
  opening: readonly Spot[];
  zones: readonly { outline: readonly Spot[]; thickness: number; offset: number; kind: string }[];
}

/** The slab over level 1 in four pours, and the roof deck in two. */
export const PIECES: readonly Piece[] = [
  piece('S1-SW', 'L1', box(0, 0, JOINT_X, JOINT_Y), ['free', 'construction-joint', 'construction-joint', 'free']),
  piece('S1-SE', 'L1', box(JOINT_X, 0, WIDE, JOINT_Y), undefined),
  piece('S1-NW', 'L1', box(0, JOINT_Y, JOINT_X, DEEP), ['construction-joint', 'construction-joint', 'free', 'free']),
  piece(
    'S1-NE',
    'L1',
    [
      [JOINT_X, JOINT_Y],
      [WIDE, JOINT_Y],
      [WIDE, DEEP - CUT],
      [WIDE - CUT, DEEP],
      [JOINT_X, DEEP],
    ],
    undefined,
  ),
  piece('D2-W', 'L2', box(0, 0, JOINT_X, DEEP), ['free', 'movement-joint', 'free', 'free']),
  piece('D2-E', 'L2', box(JOINT_X, 0, WIDE, DEEP), ['free', 'free', 'free', 'movement-joint']),
];

function piece(id: string, level: Piece['level'], outline: readonly Spot[], edges: Piece['edges']): Piece {
  const [x, y] = outline[0];
  const shaft = box(x + 70 * FOOT, y + 50 * FOOT, x + 82 * FOOT, y + 60 * FOOT);
  return { id, level, outline, edges, opening: shaft, zones: level === 'L1' ? zonesOf(id, x, y) : [] };
}

/** Drops about the columns, and in one pour a part that is thin under a wet room. */
function zonesOf(id: string, x: number, y: number): Piece['zones'] {
  const drops = [40, 80, 120].flatMap((east) =>
    [20, 100].map((north) => {
      const [cx, cy] = [x + east * FOOT, y + north * FOOT];
      const outline = box(cx - 4 * FOOT, cy - 4 * FOOT, cx + 4 * FOOT, cy + 4 * FOOT);
      return { kind: 'drop', outline, thickness: SLAB + DROP, offset: -DROP };
    }),
  );
  const thin = { kind: 'step', outline: THIN, thickness: 5 * INCH, offset: 0 };
  return id === 'S1-SW' ? [thin, ...drops] : drops;
}

/** Beams under the slab along y, by the x of their middle, and a wall along x: where no hole goes into the slab. */
export const BEAMS_X = [90 * FOOT, 270 * FOOT];
export const BEAM_WIDE = 16 * INCH;
export const WALL = { x0: 110 * FOOT, x1: 150 * FOOT, y: 96 * FOOT, thick: 8 * INCH };

/** A thing in the slab over level 1: a line in plan, its height over the underside along it, what must stay clear. */
export interface Line {
  id: string;
  kind: string;
  /** Runs along y at this x, or along x at this y. */
  x?: number;
  y?: number;
  from: number;
  to: number;
  /** Height over the underside at a place along the run. */
  rise(along: number): number;
  radius: number;
  standoff: number;
  tolerance: number;
  knownFrom: string;
  substrate: string;
  source: string;
}

/** Tendons sag between the columns and rise over them. */
const sag = (along: number): number => {
  const share = (along / (40 * FOOT) + 0.5) % 1;
  return Math.round(1.5 * INCH + 7 * INCH * (2 * share - 1) ** 2);
};
/** They are drawn in straight stretches of this length. */
export const STRETCH = 10 * FOOT;

export const LINES: readonly Line[] = PIECES.filter(({ level }) => level === 'L1').flatMap(({ id, outline }) => {
  const [x, y] = outline[0];
  const tendons = Array.from(
    { length: 24 },
    (_, k): Line => ({
      ...{ id: `T-${id}-${k + 1}`, kind: 'tendon', x: x + 6 * FOOT * (k + 1), from: y, to: y + JOINT_Y, rise: sag },
      ...{ radius: 4, standoff: 2 * INCH, tolerance: 8, knownFrom: 'shop-drawing', substrate: id, source: 'PT-1' },
    }),
  );
  const flat = (name: string, north: number, rise: number, known: Partial<Line>): Line => ({
    ...{ id: `${name}-${id}`, kind: 'conduit', y: y + north, from: x, to: x + JOINT_X - CUT, rise: () => rise },
    ...{ radius: 8, standoff: 2 * INCH, tolerance: 8, knownFrom: 'scan', substrate: id, source: 'SC-1', ...known },
  });
  const bars = Array.from({ length: 20 }, (_, k) =>
    flat(`B${k + 1}`, (k + 4) * FOOT, 20, {
      ...{ kind: 'bar', radius: 5, standoff: 0, tolerance: 16, knownFrom: 'design-drawing', source: 'S-1' },
    }),
  );
  return [
    ...tendons,
    flat('C1', 33 * FOOT, 2 * INCH, { knownFrom: 'design-drawing', tolerance: 2 * INCH, source: 'E-1' }),
    flat('C2', 87 * FOOT, 2 * INCH, { knownFrom: 'survey', source: 'E-1' }),
    flat('C3', 109 * FOOT, 3 * INCH, {}),
    ...(id === 'S1-SW' ? bars : []),
  ];
});

/** The live feeder: a box in the slab. */
export const FEEDER = { x0: 300 * FOOT, x1: 301 * FOOT, y0: 20 * FOOT, y1: 60 * FOOT };

/** x of the middle of the flute that is nearest to a place. */
export function middleOfFlute(x: number): number {
  return Math.round((x - FLUTE / 2) / FLUTE) * FLUTE + FLUTE / 2;
}

/** Ends of bores that were given up, in the slab over level 1. */
export const ABANDONED: readonly Spot[] = [20, 55, 130, 200, 255, 330].map((x, k) => [x * FOOT, (14 + 37 * k) * FOOT]);

/** The piece of concrete over a place of a level; the one to the south and west at a joint. */
export function pieceAt(level: Piece['level'], x: number, y: number): Piece {
  const found = PIECES.find(
    ({ level: own, outline }) =>
      own === level &&
      x >= outline[0][0] &&
      x <= outline[1][0] &&
      y <= outline[outline.length - 1][1] &&
      y >= outline[0][1],
  );
  if (found === undefined) throw new Error(`there is no concrete over ${x}, ${y} of ${level}`);
  return found;
}
