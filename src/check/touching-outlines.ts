import type { Outline } from '../generated/layout.js';
import { type Ring, signedAreaTwice } from '../geometry/ring.js';
import type { Segment2D } from '../geometry/touching-edges.js';
import { along, cross, dot, subtract, type Vec3 } from '../geometry/vector.js';
import { type Surface, uOn, vOn } from './surface.js';

/** Faces whose directions differ by no more than this are in one plane: our own definition. */
export const ONE_PLANE_SINE = Math.sin((0.1 * Math.PI) / 180);
/** Edges of one box that a further one is looked for among. */
const MOST_ALIKE = 16;
/** Edges that one edge is compared with, and edges that it is not compared with because they lie elsewhere. */
const MOST_BESIDE = 500;
const MOST_PASSED = 20_000;

export type EdgeKind = NonNullable<Outline['edges']>[number];

/** Whether an edge of this kind is none of the concrete. */
export function goesOn(kind: EdgeKind): kind is 'continuous' | 'construction-joint' {
  return kind === 'continuous' || kind === 'construction-joint';
}

/** An edge of another substrate that may run along an edge of an outline. */
export interface TouchingEdge {
  /** In the plane of the face of the asking substrate. */
  segment: Segment2D;
  kind: EdgeKind | undefined;
  isOfOpening: boolean;
  /** Numbers of the names of the other substrates that have it. */
  surfaces: readonly number[];
}

/** Why the edges of a substrate cannot be told. */
export const TOO_MANY_EDGES = 'more edges at one place than are compared';

/** One edge, as a part of all. */
interface Side {
  surface: number;
  /** Number of the edge of an outline that asks; -1 for one at which the concrete is said to end, and for openings. */
  asks: number;
  from: Vec3;
  to: Vec3;
  /** Direction in the face from the edge into its ring. */
  inside: Vec3;
  kind: EdgeKind | undefined;
  isOfOpening: boolean;
}

/** Edges of several substrates that agree in all that counts, face and place too; they are compared as one. */
interface Alike {
  side: Side;
  surfaces: number[];
}

/**
 * For each edge of an outline, unless the concrete is said to end there, the edges of other substrates that touch it.
 * Edges that are equal are compared as one, so that layouts may all bring the same slab.
 */
export class TouchingOutlines {
  /** Surfaces with an edge that not all edges beside it were compared with, because so many lie at one place. */
  private readonly cut = new Set<number>();
  private readonly alike: Alike[] = [];
  /** By surface, for each edge of the outline that asks, its place in `alike`. */
  private readonly places = new Map<number, number[]>();
  /** By place in `alike`. */
  private readonly found = new Map<number, TouchingEdge[]>();

  /** @param touchMm how far off edges and planes may lie */
  constructor(
    private readonly surfaces: readonly (Surface | undefined)[],
    private readonly touchMm: number,
  ) {
    const sides = surfaces.flatMap((surface, number) => (surface === undefined ? [] : sidesOf(surface, number)));
    if (sides.some(({ asks }) => asks >= 0)) this.sweep(sides);
  }

  /** Whether so many edges lie beside an edge of a surface that not all were compared. */
  isCut(surface: number): boolean {
    return this.cut.has(surface);
  }

  /** The edges that touch edge `edge` of the outline of a surface. */
  of(surface: number, edge: number): readonly TouchingEdge[] {
    const place = this.places.get(surface)?.[edge];
    const found = place === undefined ? undefined : this.found.get(place);
    if (found === undefined) return [];
    return found.flatMap((touching) => {
      if (!touching.surfaces.includes(surface)) return [touching];
      const others = touching.surfaces.filter((other) => other !== surface);
      return others.length === 0 ? [] : [{ ...touching, surfaces: others }];
    });
  }

  /** Compares edges whose boxes meet, sorted along the axis that tells them apart best. */
  private sweep(all: readonly Side[]): void {
    this.gather(all);
    const sides = this.alike.map(({ side }) => side);
    const { low, high } = boxesOf(sides, this.touchMm);
    const axis = bestAxis(low, high);
    const [first, second] = [0, 1, 2].filter((k) => k !== axis);
    const order = Int32Array.from(sides, (_, k) => k).sort((a, b) => low[axis][a] - low[axis][b] || a - b);
    const meet = (k: number, a: number, b: number) => low[k][a] <= high[k][b] && low[k][b] <= high[k][a];
    // Up to this place of the order edges were not compared with one before them.
    let cutTo = 0;
    for (let at = 0; at < order.length; at++) {
      const a = order[at];
      if (at < cutTo) this.markCut(a);
      let beside = 0;
      for (let next = at + 1; next < order.length && low[axis][order[next]] <= high[axis][a]; next++) {
        if (next - at > MOST_PASSED || beside > MOST_BESIDE) {
          this.markCut(a);
          while (next < order.length && low[axis][order[next]] <= high[axis][a]) next = next < cutTo ? cutTo : next + 1;
          cutTo = Math.max(cutTo, next);
          break;
        }
        const b = order[next];
        if (!meet(first, a, b) || !meet(second, a, b)) continue;
        beside++;
        this.compare(a, b);
        this.compare(b, a);
      }
    }
  }

  /** Puts equal edges together. */
  private gather(sides: readonly Side[]): void {
    const { low, high } = boxesOf(sides, 0);
    const columns = [...low, ...high];
    const compare = (a: number, b: number) => {
      for (const column of columns) if (column[a] !== column[b]) return column[a] - column[b];
      return 0;
    };
    const order = Int32Array.from(sides, (_, k) => k).sort((a, b) => compare(a, b) || a - b);
    let from = 0;
    order.forEach((k, at) => {
      const side = sides[k];
      if (at === 0 || compare(order[at - 1], k) !== 0) from = this.alike.length;
      let place = from;
      while (place < this.alike.length && !this.isAlike(this.alike[place].side, side)) place++;
      if (place === this.alike.length) {
        this.alike.push({ side, surfaces: [] });
        if (place - from > MOST_ALIKE) from = place;
      }
      this.alike[place].surfaces.push(side.surface);
      if (side.asks < 0) return;
      const ofSurface = this.places.get(side.surface) ?? [];
      this.places.set(side.surface, ofSurface);
      ofSurface[side.asks] = place;
    });
  }

  /** Whether two edges of one box agree in all else that counts. */
  private isAlike(a: Side, b: Side): boolean {
    if (a.kind !== b.kind || a.isOfOpening !== b.isOfOpening || a.asks >= 0 !== b.asks >= 0) return false;
    const [own, other] = [this.surfaces[a.surface], this.surfaces[b.surface]] as [Surface, Surface];
    const isSame = (p: Vec3, q: Vec3) => p[0] === q[0] && p[1] === q[1] && p[2] === q[2];
    return (
      isSame(a.from, b.from) &&
      isSame(a.to, b.to) &&
      isSame(a.inside, b.inside) &&
      isSame(own.inward, other.inward) &&
      isSame(own.origin, other.origin)
    );
  }

  private markCut(place: number): void {
    const { side, surfaces } = this.alike[place];
    if (side.asks >= 0) for (const surface of surfaces) this.cut.add(surface);
  }

  private compare(place: number, otherPlace: number): void {
    const asker = this.alike[place].side;
    const { side: other, surfaces } = this.alike[otherPlace];
    if (asker.asks < 0 || dot(asker.inside, other.inside) >= 0) return;
    const face = this.surfaces[asker.surface] as Surface;
    const { inward } = this.surfaces[other.surface] as Surface;
    if (dot(face.inward, inward) <= 0 || Math.hypot(...cross(face.inward, inward)) > ONE_PLANE_SINE) return;
    const isOff = (point: Vec3) => Math.abs(dot(subtract(point, face.origin), face.inward)) > this.touchMm;
    if (isOff(other.from) || isOff(other.to)) return;
    const { from, to, kind, isOfOpening } = other;
    const ofPlace = this.found.get(place) ?? [];
    this.found.set(place, ofPlace);
    const segment = [uOn(face, from), vOn(face, from), uOn(face, to), vOn(face, to)] as const;
    ofPlace.push({ segment, kind, isOfOpening, surfaces });
  }
}

/** Least and greatest coordinates of edges along each axis, the greatest with a margin. */
function boxesOf(sides: readonly Side[], margin: number) {
  return {
    low: [0, 1, 2].map((k) => Float64Array.from(sides, ({ from, to }) => Math.min(from[k], to[k]))),
    high: [0, 1, 2].map((k) => Float64Array.from(sides, ({ from, to }) => Math.max(from[k], to[k]) + margin)),
  };
}

/** The axis along which the edges are short for the length that they are spread over. */
function bestAxis(low: readonly Float64Array[], high: readonly Float64Array[]): number {
  const crowd = low.map((column, k) => {
    const [least, most] = [column.reduce((a, b) => Math.min(a, b)), high[k].reduce((a, b) => Math.max(a, b))];
    const total = column.reduce((sum, from, at) => sum + high[k][at] - from, 0);
    return most > least ? total / (most - least) : Number.POSITIVE_INFINITY;
  });
  return crowd.indexOf(Math.min(...crowd));
}

function sidesOf(surface: Surface, number: number): Side[] {
  const { outline, openings, substrate } = surface;
  if (outline === undefined) return [];
  const kinds = substrate.outline?.edges;
  return [
    ...sidesOfRing(surface, outline, kinds).map((side, k) => ({
      ...side,
      surface: number,
      asks: goesOn(kinds?.[k] ?? 'continuous') ? k : -1,
      isOfOpening: false,
    })),
    ...openings.flatMap((ring, k) =>
      sidesOfRing(surface, ring, substrate.openings?.[k].edges).map((side) => ({
        ...side,
        surface: number,
        asks: -1,
        isOfOpening: true,
      })),
    ),
  ];
}

function sidesOfRing({ origin, u, v }: Surface, ring: Ring, kinds: Outline['edges']) {
  const turn = Math.sign(signedAreaTwice(ring));
  const corner = (k: number) => along(along(origin, u, ring.u[k]), v, ring.v[k]);
  return Array.from(ring.u, (_, k) => {
    const next = (k + 1) % ring.u.length;
    // Left of an edge is the inside of a ring that runs anticlockwise.
    const inside = along(along([0, 0, 0], u, turn * (ring.v[k] - ring.v[next])), v, turn * (ring.u[next] - ring.u[k]));
    return { from: corner(k), to: corner(next), inside, kind: kinds?.[k] };
  });
}
