import type { Outline } from '../generated/layout.js';
import { type Ring, signedAreaTwice } from '../geometry/ring.js';
import type { Segment2D } from '../geometry/touching-edges.js';
import { along, cross, dot, subtract, type Vec3 } from '../geometry/vector.js';
import { type Surface, uOn, vOn } from './surface.js';

/** Faces whose directions differ by no more than this are in one plane: our own definition. */
export const ONE_PLANE_SINE = Math.sin((0.1 * Math.PI) / 180);
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
  /** Number of the other substrate's name. */
  surface: number;
}

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

/** For each edge of an outline, unless the concrete is said to end there, the edges of other substrates that touch it. */
export class TouchingOutlines {
  /** Whether so many edges lie at one place that not all were compared. */
  isCut = false;
  private readonly found = new Map<number, Map<number, TouchingEdge[]>>();

  /** @param touchMm how far off edges and planes may lie */
  constructor(
    private readonly surfaces: readonly (Surface | undefined)[],
    private readonly touchMm: number,
  ) {
    const sides = surfaces.flatMap((surface, number) => (surface === undefined ? [] : sidesOf(surface, number)));
    if (sides.some(({ asks }) => asks >= 0)) this.sweep(sides);
  }

  /** The edges that touch edge `edge` of the outline of a surface. */
  of(surface: number, edge: number): readonly TouchingEdge[] {
    return this.found.get(surface)?.get(edge) ?? [];
  }

  /** Compares edges whose boxes meet, sorted along the axis that tells them apart best. */
  private sweep(sides: readonly Side[]): void {
    const { touchMm } = this;
    const low = [0, 1, 2].map((k) => Float64Array.from(sides, ({ from, to }) => Math.min(from[k], to[k])));
    const high = [0, 1, 2].map((k) => Float64Array.from(sides, ({ from, to }) => Math.max(from[k], to[k]) + touchMm));
    const axis = bestAxis(low, high);
    const [first, second] = [0, 1, 2].filter((k) => k !== axis);
    const order = Int32Array.from(sides, (_, k) => k).sort((a, b) => low[axis][a] - low[axis][b] || a - b);
    const meet = (k: number, a: number, b: number) => low[k][a] <= high[k][b] && low[k][b] <= high[k][a];
    for (let at = 0; at < order.length; at++) {
      const a = order[at];
      let beside = 0;
      for (let next = at + 1; next < order.length && low[axis][order[next]] <= high[axis][a]; next++) {
        if (next - at > MOST_PASSED || beside > MOST_BESIDE) {
          this.isCut = true;
          break;
        }
        const b = order[next];
        if (!meet(first, a, b) || !meet(second, a, b)) continue;
        beside++;
        this.compare(sides[a], sides[b]);
        this.compare(sides[b], sides[a]);
      }
    }
  }

  private compare(asker: Side, other: Side): void {
    if (asker.asks < 0 || asker.surface === other.surface || dot(asker.inside, other.inside) >= 0) return;
    const face = this.surfaces[asker.surface] as Surface;
    const { inward } = this.surfaces[other.surface] as Surface;
    if (dot(face.inward, inward) <= 0 || Math.hypot(...cross(face.inward, inward)) > ONE_PLANE_SINE) return;
    const isOff = (point: Vec3) => Math.abs(dot(subtract(point, face.origin), face.inward)) > this.touchMm;
    if (isOff(other.from) || isOff(other.to)) return;
    const { from, to, kind, isOfOpening, surface } = other;
    const ofSurface = this.found.get(asker.surface) ?? new Map<number, TouchingEdge[]>();
    this.found.set(asker.surface, ofSurface);
    const ofEdge = ofSurface.get(asker.asks) ?? [];
    ofSurface.set(asker.asks, ofEdge);
    const segment = [uOn(face, from), vOn(face, from), uOn(face, to), vOn(face, to)] as const;
    ofEdge.push({ segment, kind, isOfOpening, surface });
  }
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
