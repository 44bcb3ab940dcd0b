import { closeSync, openSync, writeSync } from 'node:fs';

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
  /** `every-record`: each hole has a misspelt member. `crowded`: each second hole lies too close to the one before. */
  fault: 'none' | 'every-record' | 'crowded';
  seed: number;
}

const TRADES = ['FP', 'HV', 'EL', 'PL'];
const LEVEL_SIDE_MM = 200_000;
const PITCH_MM = 600;

/** Header of an invented campus: trades, types, levels, one slab a level, keep-outs between the rows of holes. */
function header(levels: number, holes: number) {
  return {
    ahx: '0.1',
    kind: 'layout',
    id: `bench-${holes}`,
    revision: { label: 'A' },
    frame: { name: 'bench site', heightDatum: 'top of slab on grade' },
    levels: Array.from({ length: levels }, (_, k) => ({
      id: `L${k + 1}`,
      name: `Level ${k + 1}`,
      elevation: k * 4000,
    })),
    trades: TRADES.map((id) => ({ id, name: `Trade ${id}` })),
    holeTypes: TRADES.map((id, k) => ({
      id: `HT-${id}`,
      name: `Type ${id}`,
      principle: 'screw',
      form: 'blind',
      diameter: 10 + k,
      depth: 60 + k,
      minSpacing: { value: 80 + k, source: 'invented' },
      backing: { value: 20, source: 'invented' },
    })),
    substrates: Array.from({ length: levels }, (_, k) => ({
      id: `S${k + 1}`,
      kind: 'solid-slab',
      face: { point: [0, 0, k * 4000 + 3000], inward: [0, 0, 1] },
      outline: {
        points: [
          [-1000, -1000],
          [LEVEL_SIDE_MM + 1000, -1000],
          [LEVEL_SIDE_MM + 1000, LEVEL_SIDE_MM + 1000],
          [-1000, LEVEL_SIDE_MM + 1000],
        ].map(([x, y]) => [x, y, k * 4000 + 3000]),
      },
      thickness: 250,
    })),
    keepOuts: Array.from({ length: 50 * levels }, (_, n) => {
      const k = n % levels;
      const y = Math.floor(n / levels) * 6 * PITCH_MM + PITCH_MM / 2 + 30;
      const z = k * 4000 + 3100;
      return {
        id: `KO-${n + 1}`,
        kind: 'tendon',
        shape: {
          path: {
            points: [
              [0, y, z],
              [LEVEL_SIDE_MM, y, z],
            ],
            radius: 15,
          },
        },
        standoff: 50,
        knownFrom: 'shop-drawing',
      };
    }),
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
    const hole = {
      id: `H-${String(n + 1).padStart(7, '0')}`,
      tag: `L${level + 1}-${trade}-${cell + 1} 3/8"`,
      trade,
      holeType: `HT-${trade}`,
      substrate: `S${level + 1}`,
      level: `L${level + 1}`,
      point: [
        (cell % side) * PITCH_MM + shift + (fault === 'crowded' ? 0 : offset()),
        Math.floor(cell / side) * PITCH_MM + (fault === 'crowded' ? 0 : offset()),
        level * 4000 + 3000,
      ],
      axis: [0, 0, 1],
      ...(fault === 'every-record' && { diametre: 12 }),
    };
    const body = JSON.stringify(hole, null, indent);
    text += (n > 0 ? ',' : '') + (indent > 0 ? `${pad}  ${body.replaceAll('\n', `${pad}  `)}` : body);
    if (text.length > 1 << 20) {
      writeSync(fd, text);
      text = '';
    }
  }
  writeSync(fd, `${text}${pad}]${indent > 0 ? '\n' : ''}}`);
  closeSync(fd);
}
