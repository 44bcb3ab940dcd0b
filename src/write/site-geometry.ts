import type { KeepOut, Prism } from '../generated/layout.js';
import { signedAreaTwice } from '../geometry/ring.js';
import { roundMm } from '../units/format-mm.js';

/** Coordinates in the site frame, millimetres: x, y and, where it is known, z. */
export type Position = readonly number[];

/** A geometry in the site frame, millimetres, with the types of JSON-FG. */
export type SiteGeometry =
  | { readonly type: 'Point'; readonly coordinates: Position }
  | { readonly type: 'LineString'; readonly coordinates: readonly Position[] }
  | { readonly type: 'MultiLineString'; readonly coordinates: readonly (readonly Position[])[] }
  | { readonly type: 'Polygon'; readonly coordinates: readonly (readonly Position[])[] }
  | {
      readonly type: 'Polyhedron';
      readonly coordinates: readonly (readonly (readonly (readonly Position[])[])[])[];
    }
  | {
      readonly type: 'Prism';
      readonly base: { readonly type: 'Polygon'; readonly coordinates: readonly (readonly Position[])[] };
      readonly lower: number;
      readonly upper: number;
    };

/** A ring narrower than this in plan is a line there: the outline of an upright face. */
const FLAT_WIDTH_MM = 0.001;

/** A ring without its first corner repeated, and the kind of the edge from each corner to the next. */
export interface Ring {
  readonly points: readonly Position[];
  readonly edges?: readonly string[];
}

/** Outlines as a geometry, and the kinds of their edges in the order of its corners. */
export interface OutlineGeometry {
  geometry: SiteGeometry;
  /** For each ring the kind of the edge from each corner to the next; undefined where none is given. */
  edges: readonly (readonly string[] | undefined)[];
}

/**
 * An outer outline with openings as a Polygon that follows the right-hand rule seen in plan (RFC
 * 7946, 3.1.6): outer ring anticlockwise, openings clockwise, first corner repeated at the end.
 *
 * An upright face has no area in plan and would be no valid Polygon; it becomes a MultiLineString of
 * closed rings in their own order.
 */
export function outlineGeometry(outer: Ring, openings: readonly Ring[]): OutlineGeometry {
  const outlines = [outer, ...openings];
  if (isFlat(outer.points)) {
    return {
      geometry: { type: 'MultiLineString', coordinates: outlines.map(({ points }) => closed(points)) },
      edges: outlines.map(({ edges }) => edges),
    };
  }
  const turns = outlines.map(({ points }, i) => areaTwice(points) > 0 !== (i === 0));
  return {
    geometry: {
      type: 'Polygon',
      coordinates: outlines.map(({ points }, i) => closed(turns[i] ? reversed(points) : points)),
    },
    // Turned round, the edge that ran into the first corner runs out of it.
    edges: outlines.map(({ edges }, i) => (turns[i] ? edges?.toReversed() : edges)),
  };
}

/** The geometry of a keep-out without its radius, or undefined where it has no shape. */
export function keepOutGeometry(keepOut: KeepOut): SiteGeometry | undefined {
  const { path, prism, sphere } = keepOut.shape;
  if (path !== undefined) return pathGeometry(path.points);
  if (prism !== undefined) return prismGeometry(prism);
  return sphere === undefined ? undefined : { type: 'Point', coordinates: sphere.centre };
}

/** A line, or a point where all corners coincide: a line of no length is not valid. */
function pathGeometry(points: readonly Position[]): SiteGeometry {
  const [first] = points;
  const isPoint = points.every((point) => point.every((value, i) => roundMm(value) === roundMm(first[i])));
  return isPoint ? { type: 'Point', coordinates: first } : { type: 'LineString', coordinates: points };
}

/** JSON-FG's Prism where the base is level and the push upright, else a Polyhedron. */
function prismGeometry({ base, extrude }: Prism): SiteGeometry {
  const [ex, ey, ez] = extrude;
  const z = base[0][2];
  const isLevel = base.every((point) => roundMm(point[2]) === roundMm(z));
  if (!isLevel || roundMm(ex) !== 0 || roundMm(ey) !== 0 || isFlat(base)) return polyhedron(base, extrude);
  const plan = base.map(([x, y]) => [x, y]);
  return {
    type: 'Prism',
    base: { type: 'Polygon', coordinates: [closed(areaTwice(plan) < 0 ? reversed(plan) : plan)] },
    lower: Math.min(z, z + ez),
    upper: Math.max(z, z + ez),
  };
}

/** The faces of a pushed outline, each anticlockwise seen from outside. */
function polyhedron(base: readonly Position[], extrude: Position): SiteGeometry {
  const near = facing(base, extrude) < 0 ? reversed(base) : base;
  const far = near.map((point) => point.map((value, i) => value + extrude[i]));
  const sides = near.map((corner, i) => {
    const next = (i + 1) % near.length;
    return [closed([corner, near[next], far[next], far[i]])];
  });
  return { type: 'Polyhedron', coordinates: [[[closed(reversed(near))], [closed(far)], ...sides]] };
}

/** More than zero where a ring is anticlockwise seen against the direction (Newell's normal). */
function facing(ring: readonly Position[], direction: Position): number {
  const [ox, oy, oz] = ring[0];
  let sum = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [ax, ay, az] = [ring[i][0] - ox, ring[i][1] - oy, ring[i][2] - oz];
    const [bx, by, bz] = [ring[i + 1][0] - ox, ring[i + 1][1] - oy, ring[i + 1][2] - oz];
    sum += (ay * bz - az * by) * direction[0];
    sum += (az * bx - ax * bz) * direction[1];
    sum += (ax * by - ay * bx) * direction[2];
  }
  return sum;
}

function closed(points: readonly Position[]): readonly Position[] {
  return [...points, points[0]];
}

/** The other way round, from the same first corner. */
function reversed(points: readonly Position[]): readonly Position[] {
  return [points[0], ...points.slice(1).reverse()];
}

function isFlat(points: readonly Position[]): boolean {
  const [x, y] = points[0];
  let extent = 0;
  for (const point of points) extent = Math.max(extent, Math.hypot(point[0] - x, point[1] - y));
  return Math.abs(areaTwice(points)) <= 2 * FLAT_WIDTH_MM * extent;
}

/** Twice the area in plan, anticlockwise positive; taken about the first corner to keep digits. */
function areaTwice(points: readonly Position[]): number {
  const [x, y] = points[0];
  return signedAreaTwice({
    u: Float64Array.from(points, (point) => point[0] - x),
    v: Float64Array.from(points, (point) => point[1] - y),
  });
}
