import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/check/edge-pieces.js';
import { SiteEdges } from '../../src/check/edges-of.js';
import { newSurface, type Surface } from '../../src/check/surface.js';
import { TouchingOutlines } from '../../src/check/touching-outlines.js';
import type { Substrate } from '../../src/generated/layout.js';
import { distanceToRing, insideRing } from '../../src/geometry/ring.js';
import type { Vec3 } from '../../src/geometry/vector.js';
import { newRandom } from '../read/random.js';

const TOUCH = 1;
const REACH = 150;

/** A rigid motion: a turn about z, then one about x, then a shift. */
function motion(turn: number, tilt: number, shift: Vec3): (p: Vec3, isDirection?: boolean) => Vec3 {
  return ([x, y, z], isDirection = false) => {
    const [a, b] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
    const [c, d] = [b * Math.cos(tilt) - z * Math.sin(tilt), b * Math.sin(tilt) + z * Math.cos(tilt)];
    return isDirection ? [a, c, d] : [a + shift[0], c + shift[1], d + shift[2]];
  };
}

const STILL = motion(0, 0, [0, 0, 0]);

function slab(id: string, corners: readonly [number, number][], move = STILL, openings: [number, number][][] = []) {
  const points = (ring: readonly [number, number][]) => ring.map(([x, y]) => [...move([x, y, 3000])]);
  const substrate = {
    id,
    kind: 'solid-slab',
    face: { point: move([0, 0, 3000]), inward: move([0, 0, 1], true) },
    outline: { points: points(corners) },
    openings: openings.map((ring) => ({ points: points(ring) })),
  } as unknown as Substrate;
  return newSurface(substrate) as Surface;
}

function rectangle(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

function edgesOf(surface: Surface) {
  const edges = new SiteEdges([surface], TOUCH, REACH).of(0);
  if (edges === undefined) throw new Error('the slab has an outline');
  return edges;
}

/** Length of all pieces of a kind. */
function lengthOf(pieces: readonly Piece[] | undefined, kind: string): number {
  return (pieces ?? [])
    .filter((piece) => piece.kind === kind)
    .reduce((sum, { segment: [a, b, c, d] }) => sum + Math.hypot(c - a, d - b), 0);
}

/** A slab of a square number of openings, 500 wide and 2 m apart. */
function perforated(perSide: number): Surface {
  const openings = Array.from({ length: perSide ** 2 }, (_, k) =>
    rectangle((k % perSide) * 2000 + 500, Math.floor(k / perSide) * 2000 + 500, 500, 500),
  );
  return slab('S', rectangle(0, 0, perSide * 2000, perSide * 2000), STILL, openings);
}

describe('ConcreteEdges', () => {
  it.each([3, 30])('looks at few edges a hole on a slab with %i openings squared', (perSide) => {
    const edges = edgesOf(perforated(perSide));
    const random = newRandom(3);
    let near = 0;
    for (let k = 0; k < 20_000; k++) {
      const [u, v] = [random() * perSide * 2000, random() * perSide * 2000];
      if (edges.isOn(u, v) && edges.nearest('edge', u, v, 150) !== undefined) near++;
    }
    expect(near).toBeGreaterThan(1000);
    expect(edges.grid.tests / 20_000).toBeLessThan(4);
  });

  it('knows what is on the concrete as the rings tell it, on and near edges too', () => {
    const surface = perforated(4);
    const edges = edgesOf(surface);
    const random = newRandom(9);
    const exact = (u: number, v: number) => {
      const { outline } = surface;
      if (outline === undefined || (!insideRing(outline, u, v) && distanceToRing(outline, u, v) > 0.0005)) return false;
      return !surface.openings.some((ring) => insideRing(ring, u, v) && distanceToRing(ring, u, v) > 0.0005);
    };
    let off = 0;
    for (let k = 0; k < 5000; k++) {
      const [u, v] = [random() * 8200 - 100, random() * 8200 - 100];
      expect(edges.isOn(u, v)).toBe(exact(u, v));
      if (!edges.isOn(u, v)) off++;
      // Within a hair of edges, which all lie at multiples of 500.
      const uNear = Math.round(u / 500) * 500 + (random() - 0.5) * 0.002;
      expect(edges.isOn(uNear, v)).toBe(exact(uNear, v));
    }
    expect(off).toBeGreaterThan(200);
  });

  it('cuts an edge where another slab begins and ends, however both lie in the frame', () => {
    const random = newRandom(21);
    for (let round = 0; round < 60; round++) {
      const move = motion(random() * 6, random() * 6, [random() * 1e6, random() * 1e6, random() * 1e4]);
      const [from, to] = [500 + random() * 1000, 2500 + random() * 1000];
      const gap = (random() - 0.5) * 1.9;
      const other = slab('B', rectangle(6000 + gap, from, 3000, to - from), move);
      const corners = rectangle(0, 0, 6000, 4000);
      const own = slab('A', round % 2 === 0 ? corners : corners.toReversed(), move);
      const edges = new SiteEdges([own, other], TOUCH, REACH).piecesOf(0);
      expect(lengthOf(edges?.pieces, 'goes-on')).toBeCloseTo(to - from, 3);
      expect(lengthOf(edges?.pieces, 'free')).toBeCloseTo(20_000 - (to - from), 3);
      expect(edges?.assumed?.edges).toBe(1);
      expect(edges?.beyond).toEqual(new Set([1]));
    }
  });
});

describe('TouchingOutlines', () => {
  it('leaves of a floor of bays only its rim free', () => {
    const bays = Array.from({ length: 400 }, (_, k) =>
      slab(`B-${k}`, rectangle((k % 20) * 8000, Math.floor(k / 20) * 6000, 8000, 6000)),
    );
    const edges = new SiteEdges(bays, TOUCH, REACH);
    expect(bays.some((_, k) => edges.isCut(k))).toBe(false);
    const free = bays.reduce((sum, _, k) => sum + lengthOf(edges.piecesOf(k)?.pieces, 'free'), 0);
    expect(free).toBeCloseTo(2 * 20 * (8000 + 6000), 3);
  });

  it('compares equal outlines as one, however many, and knows all of them', () => {
    // One by one these are 10^10 pairs of edges.
    const corners = Array.from({ length: 100 }, (_, k): [number, number] => {
      const angle = (2 * Math.PI * k) / 100;
      return [Math.cos(angle) * 9000, Math.sin(angle) * 9000];
    });
    corners.splice(0, 1, [9000, -300], [9000, 300]);
    const beside = Array.from({ length: 20 }, (_, k) => slab(`R-${k}`, rectangle(9000, -300, 500, 600)));
    const surfaces = [...Array.from({ length: 1000 }, (_, k) => slab(`B-${k}`, corners)), ...beside];
    const touching = new TouchingOutlines(surfaces, TOUCH);
    expect(surfaces.some((_, k) => touching.isCut(k))).toBe(false);
    for (const k of [0, 500, 999]) expect(touching.of(k, 0).flatMap((edge) => edge.surfaces)).toHaveLength(20);
    for (const k of [1000, 1019]) expect(new Set(touching.of(k, 3).flatMap((edge) => edge.surfaces)).size).toBe(1000);
    const edges = new SiteEdges(surfaces, TOUCH, REACH);
    expect(edges.piecesOf(500)?.assumed).toEqual({ edges: 1, length: 600, other: 1000 });
    expect(edges.piecesOf(1019)?.beyond.size).toBe(1000);
  });

  it('says so where more edges lie at one place than it compares, of the substrates there and of no others', () => {
    const heap = (count: number) =>
      Array.from({ length: count }, (_, k) => slab(`B-${k}`, rectangle(0, k / 1000, 8000, 6000)));
    const away = slab('A', rectangle(0, 20_000, 8000, 6000));
    const few = new TouchingOutlines(heap(50), TOUCH);
    expect(few.isCut(0)).toBe(false);
    const many = new SiteEdges([...heap(2000), away], TOUCH, REACH);
    for (const k of [0, 1000, 1999]) {
      expect(many.isCut(k)).toBe(true);
      expect(many.of(k)?.isCut).toBe(true);
    }
    expect(many.of(2000)?.isCut).toBe(false);
  });
});
