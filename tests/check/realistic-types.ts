import type { Size } from './realistic-room.js';
import { INCH, mm } from './realistic-structure.js';

type Json = Record<string, unknown>;

export const TRADES = ['FP', 'DU', 'EL'] as const;
export type Trade = (typeof TRADES)[number];

const LIMITS = 'Example approval, not a real document';

interface Type extends Size {
  trade: Trade;
  principle: string;
  embedment?: number;
  rod?: string;
}

/** Diameter, depth, embedment, least spacing, least distance from an edge. */
type Sizes = readonly [number, number | undefined, number | undefined, number, number];

function type(trade: Trade, principle: string, sizes: Sizes, rod?: string): Type {
  const [diameter, depth, embedment, spacing, edge] = sizes;
  return { trade, principle, diameter, depth, embedment, spacing, edge, rod };
}

/** The invented hole types by id; sizes in sixteenths of an inch, none of any product. */
export const TYPES: Readonly<Record<string, Type>> = {
  'fp-38': type('FP', 'displacement-controlled', [8, 26, 25, 96, 64], '3/8 in'),
  'fp-12': type('FP', 'displacement-controlled', [10, 33, 32, 96, 80], '1/2 in'),
  'fp-brace': type('FP', 'screw', [8, 72, 64, 112, 96]),
  'du-38': type('DU', 'screw', [6, 36, 32, 48, 32], '3/8 in'),
  'du-plate': type('DU', 'undercut', [14, 88, 80, 192, 128]),
  'du-through': type('DU', 'through-bolt', [9, undefined, undefined, 96, 96]),
  'el-14': type('EL', 'screw', [4, 24, 20, 32, 24]),
  'el-38': type('EL', 'torque-controlled', [6, 36, 32, 64, 48], '3/8 in'),
  'el-core': type('EL', 'none', [64, undefined, undefined, 128, 96]),
};

/** The records of the types of a trade. */
export function holeTypes(trade: Trade): Json[] {
  return Object.entries(TYPES).flatMap(([id, own]) => (own.trade === trade ? [holeType(id, own)] : []));
}

function holeType(id: string, { principle, diameter, depth, embedment, spacing, edge, rod }: Type): Json {
  const limit = (sixteenths: number) => ({ value: mm(sixteenths), source: LIMITS });
  const isCore = principle === 'none';
  return {
    ...{
      id,
      name: `Invented ${id}`,
      principle,
      form: depth === undefined ? 'through' : 'blind',
      diameter: mm(diameter),
    },
    ...(depth !== undefined && { depth: mm(depth), depthTolerance: [0, mm(2)], backing: limit(24) }),
    ...(embedment !== undefined && { embedment: mm(embedment) }),
    ...{ squarenessDeg: 5, positionTolerance: { radius: mm(6) }, directions: ['up', 'horizontal'] },
    ...{ minSpacing: limit(spacing), minEdge: limit(edge), minThickness: limit(64) },
    abandonedSpacing: { unfilled: { depthFactor: 2 }, source: LIMITS },
    flutes: { in: 'low', maxOffset: mm(INCH), source: LIMITS },
    ...(isCore
      ? { made: 'cored' }
      : {
          bit: { nominal: `${diameter}/16 in` },
          approval: { number: `EA-${id}`, edition: 'example', expires: '2030-12-31' },
        }),
    ...(rod !== undefined && { rod }),
  };
}
