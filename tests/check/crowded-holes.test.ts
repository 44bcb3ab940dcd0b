import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';
import { seeded } from '../bench/make-layout.js';

interface Hole {
  id: string;
  trade: string;
  holeType: string;
  substrate: string;
  group?: string;
  point: number[];
  axis: number[];
  depth: number;
}

/** Least distances of the types; the last one is far too large. */
const LIMITS = [0, 50, 100, 130];
/** Holes in a heap lie off their face on purpose. */
const HEIGHTS_ARE_MEANT = { 'off-surface': 'off' } as const;
const SPACING = 30;
const DIAMETER = 10;

/** A layout of invented holes: two trades, a type for each limit, and groups with and without a spacing of their own. */
function layoutOf(holes: readonly Hole[], limits: readonly number[] = LIMITS): string {
  return JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'crowded',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'floor' },
    trades: ['A', 'B'].map((id) => ({ id, name: id })),
    holeTypes: limits.map((value, k) => ({
      id: `T${k}`,
      name: 'type',
      principle: 'screw',
      form: 'blind',
      diameter: DIAMETER,
      ...(value > 0 && { minSpacing: { value, source: 'invented' } }),
    })),
    substrates: ['S0', 'S1'].map((id, k) => ({
      id,
      kind: 'solid-slab',
      face: { point: [0, 0, 3000 * k], inward: [0, 0, 1] },
    })),
    groups: Array.from({ length: 40 }, (_, k) => ({
      id: `G${k}`,
      kind: 'plate',
      ...(k % 2 === 0 && { designSpacing: { value: SPACING, source: 'invented' } }),
    })),
    holes,
  });
}

/** Invented holes at places that `place` gives. */
function holesAt(count: number, seed: number, place: (random: () => number) => number[]): Hole[] {
  const random = seeded(seed);
  const pick = (n: number) => Math.floor(random() * n);
  return Array.from({ length: count }, (_, k) => ({
    id: `H-${k}`,
    trade: 'AB'[pick(2)],
    holeType: `T${pick(LIMITS.length)}`,
    substrate: `S${pick(2)}`,
    ...(pick(3) === 0 && { group: `G${pick(40)}` }),
    point: place(random),
    axis: pick(4) === 0 ? [pick(3) - 1, pick(3) - 1, 1] : [0, 0, 1],
    depth: [40, 60, 300][pick(3)],
  }));
}

/** Distance of two holes after the specification. */
function distanceOf(a: Hole, b: Hole): number | undefined {
  const areKnown = a.point.length === 3 && b.point.length === 3;
  if (!areKnown && a.substrate === b.substrate) return Math.hypot(a.point[0] - b.point[0], a.point[1] - b.point[1]);
  // A height that is not known is that of the face.
  const [p, q] = [a, b].map(({ point: [x, y, z], substrate }) => [x, y, z ?? 3000 * Number(substrate.slice(1))]);
  return Math.hypot(...p.map((value, k) => value - q[k]));
}

function limitOf(a: Hole, b: Hole, limits: readonly number[]): number {
  if (a.group !== undefined && a.group === b.group && Number(a.group.slice(1)) % 2 === 0) return SPACING;
  return Math.max(...[a, b].map(({ holeType }) => limits[Number(holeType.slice(1))]));
}

/** Least distance of two axes: the distance of a point of the one from the other has one valley along the one. */
function axesApart(a: Hole, b: Hole): number {
  const along = ({ point, axis, depth }: Hole, t: number) =>
    point.map((value, k) => value + (t * depth * axis[k]) / Math.hypot(...axis));
  const apart = (s: number): number => {
    const [p, from, to] = [along(a, s), along(b, 0), along(b, 1)];
    const dot = from.reduce((sum, value, k) => sum + (p[k] - value) * (to[k] - value), 0);
    const t = Math.max(0, Math.min(1, dot / b.depth ** 2));
    return Math.hypot(...along(b, t).map((value, k) => value - p[k]));
  };
  let [low, high] = [0, 1];
  for (let k = 0; k < 80; k++) {
    const [s, t] = [low + (high - low) / 3, high - (high - low) / 3];
    if (apart(s) < apart(t)) high = t;
    else low = s;
  }
  return apart(low);
}

/** What the rules about two holes say, by their definition: every pair looked at. */
function expected(holes: readonly Hole[], limits: readonly number[] = LIMITS): string[] {
  const lines: string[] = [];
  holes.forEach((hole, i) => {
    let [same, any, close] = [undefined, undefined, undefined] as ([number, number] | undefined)[];
    const nearer = (d: number, best: [number, number] | undefined) => best === undefined || d < best[0];
    holes.forEach((other, j) => {
      const d = i === j ? undefined : distanceOf(hole, other);
      if (d === undefined) return;
      if (d <= 1.0005) {
        if (j < i && nearer(d, any)) any = [d, j];
        if (j < i && hole.trade === other.trade && nearer(d, same)) same = [d, j];
      } else if (d < limitOf(hole, other, limits) - 0.0005 && nearer(d, close)) close = [d, j];
    });
    const coincident = same ?? any;
    if (coincident) lines.push(`holes-coincide ${same ? 'error' : 'warning'} ${hole.id} H-${coincident[1]}`);
    if (close) lines.push(`holes-too-close error ${hole.id} H-${close[1]}`);
  });
  return lines.sort();
}

const TWO_HOLES = ['holes-coincide', 'holes-too-close'];

function found(text: string, wanted: readonly string[]): string[] {
  const report = check([{ name: 'crowded', data: text }], { sampleLimit: 100_000, severities: HEIGHTS_ARE_MEANT });
  return report.findings
    .filter(({ rule }) => wanted.includes(rule))
    .map(({ rule, severity, id, data }) => `${rule} ${severity} ${id} ${data.other}`)
    .sort();
}

const places: [string, (random: () => number) => number[]][] = [
  ['at a few places', (r) => [40 * Math.floor(r() * 3), 0, 3000]],
  ['at a few places, without heights', (r) => [40 * Math.floor(r() * 3), 70 * Math.floor(r() * 2)]],
  ['within a hand, at places of their own', (r) => [r() * 90, r() * 90, 3000 + r() * 90]],
  ['within two millimetres', (r) => [r() * 2, r() * 2, 3000]],
  ['on a dense grid', (r) => [25 * Math.floor(r() * 30), 25 * Math.floor(r() * 30), 3000]],
  ['on a dense grid, some without heights', (r) => [...gridPoint(r, 30), ...(r() < 0.5 ? [] : [0])]],
];

function gridPoint(random: () => number, side: number): number[] {
  return [25 * Math.floor(random() * side), 25 * Math.floor(random() * side)];
}

describe('holes that crowd', () => {
  it.each(places)('%s are told as if every pair were looked at', (_, place) => {
    const holes = holesAt(1100, 3, place);
    expect(found(layoutOf(holes), TWO_HOLES)).toEqual(expected(holes));
  });

  it('within a limit that is far too large are told as if every pair were looked at', () => {
    const holes = holesAt(1100, 5, (r) => [r() * 20_000, r() * 20_000, 3000]);
    const limits = [0, 40, 900, 1e7];
    const rare = holes.map((hole, k) => (k % 400 === 7 ? hole : { ...hole, holeType: `T${k % 3}` }));
    for (const list of [holes, rare]) expect(found(layoutOf(list, limits), TWO_HOLES)).toEqual(expected(list, limits));
  });

  it('run into each other as if every pair were looked at, however deep they are', () => {
    for (const deep of [1, 40, 4000]) {
      const holes = holesAt(500, 9, (r) => [r() * 1800, r() * 1800, 3000 * Math.floor(r() * 2)]).map((hole, k) => ({
        ...hole,
        holeType: 'T0',
        depth: k % 50 === 0 ? hole.depth * deep : hole.depth,
      }));
      const pairs = new Set<string>();
      holes.forEach((a, i) => {
        for (const [j, b] of holes.entries()) {
          if (j >= i || Math.hypot(...a.point.map((value, k) => value - b.point[k])) > a.depth + b.depth + 20) continue;
          const clear = axesApart(a, b) - DIAMETER;
          // Nothing hangs on the last digits.
          if (Math.abs(clear) < 0.01) throw new Error('choose another seed');
          if (clear < 0) pairs.add(a.id).add(b.id);
        }
      });
      const told = found(layoutOf(holes), ['bores-overlap']).map((line) => line.split(' ')[2]);
      expect(pairs.size).toBeGreaterThan(20);
      expect(told.sort()).toEqual([...pairs].sort());
    }
  });

  it('are left out and counted where too many others would have to be looked at', () => {
    const holes = holesAt(2025, 1, () => []).map((hole, k) => ({
      ...hole,
      holeType: 'T1',
      group: 'G0',
      point: [2 * (k % 45), 2 * Math.floor(k / 45), 3000],
    }));
    // Less than a spacing of 30 mm inside their group, so that they are let be.
    const text = layoutOf(holes).replaceAll(`"value":${SPACING}`, '"value":1.5');
    const { coverage } = check([{ name: 'crowded', data: text }], { severities: HEIGHTS_ARE_MEANT });
    const of = (id: string) => coverage.find(({ rule }) => rule === id);
    expect(of('holes-coincide')).toMatchObject({ judged: 2025, of: 2025, outcome: 'passed' });
    expect(of('holes-too-close')).toMatchObject({ outcome: 'not-run' });
    expect(JSON.stringify(of('holes-too-close'))).toContain('too many holes near it');
  });

  it('cost no more than their number', () => {
    const holes = holesAt(60_000, 1, () => [0, 0, 0]);
    const report = check([{ name: 'crowded', data: layoutOf(holes) }], { severities: HEIGHTS_ARE_MEANT });
    expect(report.counts.error + report.counts.warning).toBeGreaterThanOrEqual(59_999);
  });
});
