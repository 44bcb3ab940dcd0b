import { seeded } from '../bench/make-layout.js';
import { structure } from './realistic-records.js';
import { type Made, Room } from './realistic-room.js';
import {
  BEAMS_X,
  FOOT,
  INCH,
  middleOfFlute,
  mm,
  type Piece,
  pieceAt,
  SLAB,
  SOFFIT,
  type Spot,
  WALL,
} from './realistic-structure.js';
import { holeTypes, TRADES, type Trade, TYPES } from './realistic-types.js';

export type Json = Record<string, unknown>;
export type RealisticHole = Json & { id: string; trade: string; holeType: string; point: number[] };
export interface RealisticLayout extends Json {
  trades: Json[];
  groups: Json[];
  holes: RealisticHole[];
}

const HOLES = 10_000;

/** One way of hanging things, in rows along x that lie one beyond the other along y. */
interface Run {
  holeType: string;
  level: Piece['level'];
  kind?: string;
  run: Spot;
  /** Members but the first, from it, in plan. */
  others: readonly Spot[];
  designSpacing?: number;
  first: Spot;
  /** How many along x and y, and how far apart. */
  counts: Spot;
  steps: Spot;
}

const EAST: Spot = [1, 0];
const NORTH: Spot = [0, 1];
const feet = (x: number, y: number): Spot => [x * FOOT, y * FOOT];

function single(holeType: string, run: Spot, first: Spot, counts: Spot, steps: Spot): Omit<Run, 'level'> {
  return { holeType, run, others: [], first, counts, steps };
}

function group(
  one: Omit<Run, 'level'>,
  kind: string,
  others: readonly Spot[],
  designSpacing?: number,
): Omit<Run, 'level'> {
  return { ...one, kind, others, designSpacing };
}

/** What hangs from the slab alone, and what hangs from slab and deck. */
const PLATE: readonly Spot[] = [
  [160, 0],
  [160, 160],
  [0, 160],
];
const HEAVY = [
  group(single('du-plate', EAST, feet(25, 45), [5, 3], feet(70, 62)), 'plate', PLATE, 160),
  group(single('fp-brace', NORTH, feet(63, 8), [2, 6], feet(234, 40)), 'brace', [[0, 96]], 96),
  single('du-through', EAST, feet(33, 52), [6, 2], feet(60, 110)),
  single('el-core', EAST, feet(48, 68), [4, 2], feet(80, 90)),
];
const LIGHT = (wide: number) => [
  single('fp-12', NORTH, feet(63, 4), [2, 30], feet(234, 8)),
  single('fp-38', EAST, feet(3, 5), [60, 24], feet(6, 10)),
  group(single('du-38', EAST, feet(4, 9), [45, 12], feet(8, 20)), 'trapeze', [[0, 30 * INCH]]),
  group(single('el-38', NORTH, feet(7, 4), [30, 30], feet(12, 8)), 'trapeze', [[-wide, 0]]),
  single('el-14', EAST, feet(6, 2), [30, 30], feet(12, 8)),
];
/** The widths under the deck fit its flutes. */
const RUNS: readonly Run[] = [
  ...[...HEAVY, ...LIGHT(18 * INCH)].map((run): Run => ({ ...run, level: 'L1' })),
  ...LIGHT(24 * INCH).map((run): Run => ({ ...run, level: 'L2' })),
];

/** The holes and groups of one trade, as they grow. */
class Work {
  readonly holes: RealisticHole[] = [];
  readonly groups: Json[] = [];

  constructor(
    readonly trade: Trade,
    private readonly random: () => number,
  ) {}

  /** Sets the holes of a run where there is room: each group moves along its run until there is, or is left out. */
  hang(run: Run, room: Room): void {
    const [across, rows] = run.counts;
    for (let k = 0; k < across * rows; k++) {
      const x = run.first[0] + (k % across) * run.steps[0];
      const made = placed(run, [x, run.first[1] + Math.floor(k / across) * run.steps[1]], room);
      if (made === undefined) continue;
      for (const one of made) room.take(one);
      const id = run.kind && `G-${this.trade}-${this.groups.length + 1}`;
      if (id !== undefined) this.groups.push(groupRecord(run, id));
      for (const { spot } of made) this.hangOne(run, spot, id === undefined ? {} : { group: id });
    }
  }

  /** Straps of conduits on the beams and on the wall, where nothing else is. */
  strap(): void {
    for (const [k, x] of BEAMS_X.entries()) {
      for (let y = 5; y < 240; y += 5) {
        const area = `A-${pieceAt('L1', x, y * FOOT).id}`;
        this.add('L1', 'el-14', `B1-${k + 1}`, [mm(x), mm(y * FOOT), mm(SOFFIT.beam)], { area });
      }
    }
    for (let x = WALL.x0 + 2 * FOOT; x < WALL.x1; x += 4 * FOOT)
      for (const z of [9, 10]) this.add('L1', 'el-14', 'W1-1', [mm(x), mm(WALL.y), mm(z * FOOT)]);
  }

  /** Sprinkler gives the height of the underside, ducts none, electric what was measured, to a quarter of an inch. */
  private hangOne({ level, holeType }: Run, [x, y]: Spot, more: Json): void {
    const piece = pieceAt(level, x, y);
    const offset = Room.zoneAt(piece, [x, y])?.offset ?? 0;
    const measured = this.trade === 'EL' ? Math.floor(this.random() * 9) - 4 : 0;
    const height = this.trade === 'DU' ? [] : [mm(SOFFIT[level] + offset + measured)];
    const slab = Room.zoneAt(piece, [x, y])?.thickness ?? SLAB;
    const above = { level: 'L2', protectedBy: 'GC' };
    // Cores are written with the slab they go through; bolts go as deep as they need.
    const through = TYPES[holeType].depth === undefined && { above, ...(this.trade === 'EL' && { depth: mm(slab) }) };
    this.add(level, holeType, piece.id, [mm(x), mm(y), ...height], { area: `A-${piece.id}`, ...through, ...more });
  }

  private add(level: string, holeType: string, substrate: string, point: number[], more: Json = {}): void {
    const number = String(this.holes.length + 1).padStart(5, '0');
    const { trade } = this;
    const id = `${trade}-${number}`;
    // The software of the electric firm writes all axes out.
    const axis = trade === 'EL' && { axis: substrate === 'W1-1' ? [0, 1, 0] : [0, 0, 1] };
    this.holes.push({ id, tag: `${trade} ${number}`, trade, holeType, substrate, level, point, ...axis, ...more });
  }
}

function placed({ level, holeType, run, others, designSpacing }: Run, [x, y]: Spot, room: Room): Made[] | undefined {
  const size = TYPES[holeType];
  for (let n = 0; n < 24; n++) {
    const shift = (n % 2 === 0 ? n : -n - 1) * INCH;
    // Under the deck things move along the flutes, whatever their run.
    const isEast = run === EAST && level === 'L1';
    const east = level === 'L1' ? x : middleOfFlute(x);
    const [ax, ay] = isEast ? [east + shift, y] : [east, y + shift];
    const made = [[0, 0] as const, ...others].map(([dx, dy]): Made => ({ level, size, spot: [ax + dx, ay + dy] }));
    if (made.every((one) => room.has(one)) && room.isTogether(made, designSpacing)) return made;
  }
  return undefined;
}

/** Along the run, and across it to the left. */
function groupRecord({ kind, run, others, designSpacing }: Run, id: string): Json {
  const pattern = [[0, 0] as const, ...others].map(([x, y]) => (run === EAST ? [mm(x), mm(y)] : [mm(y), mm(-x)]));
  const source = 'Example hanger drawing, not a real document';
  const spacing = designSpacing !== undefined && { designSpacing: { value: mm(designSpacing), source } };
  return { id, kind, run: [...run, 0], pattern, patternTolerance: mm(2), ...spacing };
}

/**
 * An invented building with 10,000 holes of three trades on two levels, each trade a layout of its own: what a
 * coordinator gets when all have done their work. The same for the same seed.
 */
export function realisticLayouts(seed: number): RealisticLayout[] {
  const random = seeded(seed);
  const room = new Room();
  const works = TRADES.map((trade) => new Work(trade, random));
  for (const run of RUNS) works[TRADES.indexOf(TYPES[run.holeType].trade)].hang(run, room);
  works[TRADES.indexOf('EL')].strap();
  const tooMany = works.reduce((sum, { holes }) => sum + holes.length, -HOLES);
  const spare = new Set(
    works[2].holes.filter(({ holeType, level }) => holeType === 'el-14' && level === 'L2').slice(0, tooMany),
  );
  return works.map(({ trade, holes, groups }, k) => ({
    ...{ ahx: '0.1', kind: 'layout', id: `HALL-${trade}` },
    revision: { label: 'B', issued: '2026-02-25T16:00:00-05:00', by: 'GC' },
    ...structure(),
    trades: [{ id: trade, name: `Trade ${trade}`, symbol: { text: trade, colour: ['red', 'blue', 'green'][k] } }],
    holeTypes: holeTypes(trade),
    groups,
    holes: holes.filter((hole) => !spare.has(hole)),
  }));
}

/** The layouts of all trades as one. */
export function asOne(layouts: readonly RealisticLayout[]): RealisticLayout {
  const all = (name: string) => layouts.flatMap((layout) => layout[name] as Json[]);
  const [first] = layouts;
  return {
    ...first,
    ...{ id: 'HALL', holeTypes: all('holeTypes'), groups: all('groups'), trades: all('trades') },
    holes: all('holes') as RealisticHole[],
  };
}
