import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';
import { seeded } from '../bench/make-layout.js';

interface Bore {
  id: string;
  point: number[];
  axis: number[];
  diameter: number;
  depth: number;
  end: string;
  filled?: string;
}

const HOLE = { diameter: 10, depth: 60 };
const UNFILLED = { value: 40, depthFactor: 2 };
const FILLED = { value: 25 };

function layoutOf(points: readonly number[][], bores: readonly Bore[], minSpacing: number): string {
  const source = 'invented';
  return JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'bores',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'floor' },
    trades: [{ id: 'A', name: 'A' }],
    holeTypes: [
      {
        id: 'T',
        name: 'type',
        principle: 'screw',
        form: 'blind',
        ...HOLE,
        minSpacing: { value: minSpacing, source },
        abandonedSpacing: { unfilled: UNFILLED, filled: FILLED, source },
      },
    ],
    bores: bores.map((bore) => ({ ...bore, knownFrom: 'survey' })),
    holes: points.map((point, k) => ({ id: `H-${k}`, trade: 'A', holeType: 'T', point, axis: [0, 0, 1] })),
  });
}

/** Invented upright bores over two floors, so that clear distances follow from plan and heights. */
function boresOver(count: number, side: number, seed: number): Bore[] {
  const random = seeded(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  return Array.from({ length: count }, (_, k) => ({
    id: `B-${k}`,
    point: [random() * side, random() * side, pick([3000, 3100, 6000])],
    axis: [0, 0, pick([1, -1])],
    diameter: pick([8, 20, 120]),
    depth: pick([20, 50, 300]),
    end: pick(['complete', 'partial', 'abandoned']),
    ...(random() < 0.3 && { filled: 'mortar' }),
  }));
}

function limitOf({ end, filled, depth }: Bore, minSpacing: number): number {
  if (end === 'complete') return minSpacing;
  return filled === undefined ? Math.max(UNFILLED.value, UNFILLED.depthFactor * depth) : FILLED.value;
}

function clearOf([x, y, z]: readonly number[], { point, axis, depth, diameter }: Bore): number {
  const ends = [point[2], point[2] + axis[2] * depth].sort((a, b) => a - b);
  const gap = Math.max(0, ends[0] - (z + HOLE.depth), z - ends[1]);
  return Math.hypot(x - point[0], y - point[1], gap) - HOLE.diameter / 2 - diameter / 2;
}

/** What the rule says by its definition: every bore looked at for every hole. */
function expected(points: readonly number[][], bores: readonly Bore[], minSpacing: number): string[] {
  return points.flatMap((p, k) => {
    const faults = bores.flatMap((bore) => {
      const d = Math.hypot(...p.map((value, axis) => value - bore.point[axis]));
      const isIn = clearOf(p, bore) < -0.0005;
      if (d <= 1.0005) return [{ d, said: `same-place H-${k} ${bore.id}` }];
      if (isIn) return [{ d, said: `runs-into H-${k} ${bore.id}` }];
      return d < limitOf(bore, minSpacing) - 0.0005 ? [{ d, said: `too-close H-${k} ${bore.id}` }] : [];
    });
    return faults.length === 0 ? [] : [faults.reduce((a, b) => (b.d < a.d ? b : a)).said];
  });
}

describe('holes among existing bores', () => {
  it.each([
    ['few', 40, 80],
    ['many', 900, 80],
    ['few, within a least distance that is far too large', 40, 1e6],
    ['many, within a least distance that is far too large', 900, 1e6],
  ])('are told as if every bore were looked at: %s', (_, count, minSpacing) => {
    const random = seeded(count);
    const points = Array.from({ length: 400 }, () => [random() * 6000, random() * 6000, random() < 0.5 ? 3000 : 6000]);
    const bores = boresOver(count, 6000, 5);
    const text = layoutOf(points, bores, minSpacing);
    const { findings } = check([{ name: 'bores', data: text }], { sampleLimit: 100_000 });
    const told = findings.filter(({ rule }) => rule === 'near-existing-bore');
    const wanted = expected(points, bores, minSpacing);
    expect(wanted.length).toBeGreaterThan(5);
    expect(told.map(({ id, data }) => `${data.fault} ${id} ${data.bore}`)).toEqual(wanted);
  });
});
