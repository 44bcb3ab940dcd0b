import { closeSync, openSync, writeSync } from 'node:fs';
import { type RecordFault, withFault } from './record-faults.js';

/** Small, fast and the same everywhere: mulberry32. */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface BenchLayout {
  holes: number;
  /** Blanks of the indented form; 0 for the minified one. */
  indent: number;
  /**
   * `every-record`: each hole has a misspelt member; see {@link RecordFault} for others. `crowded`: each second hole lies too close to the one
   * before. `one-place`: all holes of a level lie at one place.
   */
  fault: 'none' | 'crowded' | 'one-place' | RecordFault;
  seed: number;
}

const TRADES = ['FP', 'HV', 'EL', 'PL'];
const LEVEL_SIDE_MM = 200_000;
const PITCH_MM = 600;

const LEVEL_HEIGHT_MM = 4000;
/** Height of a soffit above its level. */
const SOFFIT_MM = 3000;
/** Where the four slabs of a level meet. */
const JOINT_MM = LEVEL_SIDE_MM / 2;
const MARGIN_MM = 1000;
const source = 'invented';

/** Header of an invented campus: what the rules of all stages look at. */
function header(levels: number, holes: number) {
  const numbers = Array.from({ length: levels }, (_, k) => k);
  return {
    ahx: '0.1',
    kind: 'layout',
    id: `bench-${holes}`,
    revision: { label: 'A', issued: '2026-03-02T07:30:00-05:00' },
    frame: { name: 'bench site', heightDatum: 'top of slab on grade' },
    levels: numbers.map((k) => ({
      id: `L${k + 1}`,
      name: `Level ${k + 1}`,
      elevation: k * LEVEL_HEIGHT_MM,
      soffits: [k * LEVEL_HEIGHT_MM + SOFFIT_MM],
    })),
    control: [
      [0, 0],
      [LEVEL_SIDE_MM, 0],
      [LEVEL_SIDE_MM, 160_000],
      [30_000, LEVEL_SIDE_MM],
    ].map(([x, y], k) => ({ id: `CP-${k + 1}`, point: [x, y, 1500], sigmaPlan: 1.5, sigmaHeight: 1 })),
    trades: TRADES.map((id) => ({ id, name: `Trade ${id}`, symbol: { text: id } })),
    holeTypes: TRADES.map((id, k) => ({
      id: `HT-${id}`,
      name: `Type ${id}`,
      principle: 'screw',
      form: 'blind',
      diameter: 10 + k,
      depth: 60 + k,
      embedment: 50,
      squarenessDeg: 3,
      positionTolerance: { radius: 6 },
      bit: { nominal: `${10 + k} mm` },
      minSpacing: { value: 80 + k, source },
      minEdge: { value: 60 + k, source },
      minThickness: { value: 120, source },
      backing: { value: 20, source },
      abandonedSpacing: { unfilled: { depthFactor: 2 }, filled: { value: 30 }, source },
      directions: ['up'],
      approval: { number: `A-${k + 1}`, expires: '2030-12-31' },
    })),
    substrates: numbers.flatMap((k) => [0, 1, 2, 3].map((quarter) => slab(k, quarter))),
    keepOuts: numbers.flatMap((k) => Array.from({ length: KEEP_OUTS_OF_LEVEL }, (_, n) => keepOut(k, n))),
  };
}

/** A quarter of a level, poured by itself: construction joints where it meets the others. */
function slab(level: number, quarter: number) {
  const z = level * LEVEL_HEIGHT_MM + SOFFIT_MM;
  const isEast = quarter % 2 === 1;
  const isNorth = quarter > 1;
  const [x0, x1] = isEast ? [JOINT_MM, LEVEL_SIDE_MM + MARGIN_MM] : [-MARGIN_MM, JOINT_MM];
  const [y0, y1] = isNorth ? [JOINT_MM, LEVEL_SIDE_MM + MARGIN_MM] : [-MARGIN_MM, JOINT_MM];
  const kind = (isJoint: boolean) => (isJoint ? 'construction-joint' : 'free');
  return {
    id: `S${level + 1}-${quarter + 1}`,
    kind: 'solid-slab',
    level: `L${level + 1}`,
    face: { point: [0, 0, z], inward: [0, 0, 1] },
    outline: {
      points: [
        [x0, y0, z],
        [x1, y0, z],
        [x1, y1, z],
        [x0, y1, z],
      ],
      edges: [kind(isNorth), kind(!isEast), kind(!isNorth), kind(isEast)],
    },
    thickness: 250,
  };
}

const KEEP_OUTS_OF_LEVEL = 200;

/** Tendons along x and conduits along y between the rows of holes. */
function keepOut(level: number, n: number) {
  const isTendon = n % 2 === 0;
  const across = Math.floor(n / 2) * 3 * PITCH_MM + PITCH_MM / 2 + 30;
  const z = level * LEVEL_HEIGHT_MM + SOFFIT_MM + (isTendon ? 100 : 60);
  const ends = [0, LEVEL_SIDE_MM];
  return {
    id: `KO-${level + 1}-${n + 1}`,
    kind: isTendon ? 'tendon' : 'conduit',
    shape: { path: { points: ends.map((along) => (isTendon ? [along, across, z] : [across, along, z])), radius: 15 } },
    standoff: 50,
    knownFrom: 'shop-drawing',
  };
}

/** Writes an invented layout to `file`, clean unless a fault is asked for: about 111,000 holes a level, in rows 600 mm apart, off the row by up to 25 mm. */
export function writeBenchLayout(file: string, { holes, indent, fault, seed }: BenchLayout): void {
  const side = Math.floor(LEVEL_SIDE_MM / PITCH_MM);
  const levels = Math.ceil(holes / (side * side));
  const random = seeded(seed);
  const fd = openSync(file, 'w');
  const opening = JSON.stringify(header(levels, holes), null, indent).replace(/\s*\}$/, '');
  const pad = indent > 0 ? `\n${' '.repeat(indent)}` : '';
  writeSync(fd, `${opening},${pad}"holes":${indent > 0 ? ' ' : ''}[`);
  let text = '';
  for (let n = 0; n < holes; n++) {
    const level = Math.floor(n / (side * side));
    const cell = n % (side * side);
    const offset = () => Math.round(random() * 50_000 - 25_000) / 1000;
    const trade = TRADES[Math.floor(random() * TRADES.length)];
    // Every second hole of a crowded layout stands 60 mm beside the one before it.
    const shift = fault === 'crowded' && cell % 2 === 1 ? 60 - PITCH_MM : 0;
    const isOff = fault !== 'crowded' && fault !== 'one-place';
    const column = fault === 'one-place' ? 1 : cell % side;
    const row = fault === 'one-place' ? 1 : Math.floor(cell / side);
    const x = column * PITCH_MM + shift + (isOff ? offset() : 0);
    const y = row * PITCH_MM + (isOff ? offset() : 0);
    const quarter = (x > JOINT_MM ? 1 : 0) + (y > JOINT_MM ? 2 : 0);
    const hole = {
      id: `H-${String(n + 1).padStart(7, '0')}`,
      tag: `L${level + 1}-${trade}-${cell + 1} 3/8"`,
      trade,
      holeType: `HT-${trade}`,
      substrate: `S${level + 1}-${quarter + 1}`,
      level: `L${level + 1}`,
      point: [x, y, level * LEVEL_HEIGHT_MM + SOFFIT_MM],
      axis: [0, 0, 1],
    };
    const body = withFault(JSON.stringify(hole, null, indent), fault, n, random);
    text += (n > 0 ? ',' : '') + (indent > 0 ? `${pad}  ${body.replaceAll('\n', `${pad}  `)}` : body);
    if (text.length > 1 << 20) {
      writeSync(fd, text);
      text = '';
    }
  }
  writeSync(fd, `${text}${pad}]${indent > 0 ? '\n' : ''}}`);
  closeSync(fd);
}
