import { offsetAt, ribAt } from './face-offset.js';
import { type Kind, type Kinds, kindsOf } from './kinds.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';
import { isIn, type Surface, uOn, vOn } from './surface.js';

/** A hole on its substrate is no farther off its face than this, mm: more than a building is off, less than a wrong unit is. */
const OFF_FACE_MM = 50;
/** Fewer holes show nothing. */
export const LEAST_PLACES = 5;
/** Why a layout is left out that has fewer. */
export const TOO_FEW_PLACES = 'fewer than 5 holes whose place on a substrate can be compared';

/** A change of the coordinates of holes: x' = xx x + xy y + x0, y' = yx x + yy y + y0, z' = zz z. */
export interface Reading {
  xx: number;
  xy: number;
  yx: number;
  yy: number;
  zz: number;
  /** By number of the kind of the hole, mm; absent: 0. */
  x0?: Float64Array;
  y0?: Float64Array;
}

/** Coordinates as they are written. */
export const AS_WRITTEN: Reading = { xx: 1, xy: 0, yx: 0, yy: 1, zz: 1 };

const made = new WeakMap<SitePart, PlacesOnFaces>();

/** The places of the holes of one layout of a site; looked at once. */
export function placesOf(site: Site, part: SitePart): PlacesOnFaces {
  const known = made.get(part) ?? new PlacesOnFaces(site, part);
  made.set(part, known);
  return known;
}

/** How many holes of a layout lie on their substrates, as written or when their coordinates are read otherwise. */
export class PlacesOnFaces {
  /** Holes that can be placed: their substrate has a face and an outline, and they a height or a face that gives one. */
  readonly of: number;
  /** Holes that name a substrate. */
  readonly named: number;
  /** Those that lie on their substrates as written; undefined where they are at least a fifth, which is not counted to its end. */
  readonly asWritten: number | undefined;
  private readonly kinds: Kinds;
  /** For each kind its face, where its holes can be placed. */
  private readonly faces: (Surface | undefined)[];

  constructor(
    site: Site,
    private readonly part: SitePart,
  ) {
    this.kinds = kindsOf(site);
    let of = 0;
    this.faces = this.kinds.list.map((kind) => {
      if (kind.part !== part || !canBePlaced(kind)) return undefined;
      of += kind.count;
      return kind.surface;
    });
    this.of = of;
    this.named = this.kinds.list.reduce(
      (sum, { part: own, substrate, count }) => sum + (own === part && substrate >= 0 ? count : 0),
      0,
    );
    const hits = of === 0 ? 0 : this.count(AS_WRITTEN, of, Math.ceil(of / 5));
    this.asWritten = hits * 5 < of ? hits : undefined;
  }

  /** Whether the layout asks for another reading: enough holes can be placed, and less than a fifth lies where it should. */
  get isOff(): boolean {
    return this.of >= LEAST_PLACES && this.asWritten !== undefined;
  }

  /** Number of holes that lie on their substrates under a reading; undefined where they are less than four in five. */
  explainedBy(reading: Reading): number | undefined {
    const mostMisses = Math.floor(this.of / 5);
    const hits = this.count(reading, mostMisses, this.of);
    return hits * 5 >= this.of * 4 ? hits : undefined;
  }

  /** The kinds whose holes can be placed, with their faces and their numbers. */
  placed(): { kind: Kind; face: Surface; index: number }[] {
    return this.kinds.list.flatMap((kind, index) => {
      const face = this.faces[index];
      return face === undefined ? [] : [{ kind, face, index }];
    });
  }

  /** Calls `visit` for each hole that can be placed, in order; z is NaN where the layout gives none. */
  forEach(visit: (x: number, y: number, z: number, face: Surface) => void): void {
    const { faces, kinds, part } = this;
    const { x, y, z, count } = part.layout.holes;
    for (let own = 0; own < count; own++) {
      const face = faces[kinds.of[part.firstHole + own]];
      if (face !== undefined) visit(x[own], y[own], z[own], face);
    }
  }

  /** Counts until all are counted, more than `mostMisses` do not lie on their substrates, or `enough` do. */
  private count({ xx, xy, yx, yy, zz, x0, y0 }: Reading, mostMisses: number, enough: number): number {
    const { faces, kinds, part } = this;
    const { x, y, z, count } = part.layout.holes;
    const { firstHole } = part;
    let hits = 0;
    let misses = 0;
    for (let own = 0; own < count && misses <= mostMisses && hits < enough; own++) {
      const index = kinds.of[firstHole + own];
      const face = faces[index];
      if (face === undefined) continue;
      const xRead = xx * x[own] + xy * y[own] + (x0 === undefined ? 0 : x0[index]);
      const yRead = yx * x[own] + yy * y[own] + (y0 === undefined ? 0 : y0[index]);
      if (liesOn(face, xRead, yRead, zz * z[own])) hits++;
      else misses++;
    }
    return hits;
  }
}

/** Whether the holes of a kind can be compared with the outline of their substrate. */
export function canBePlaced({ out, surface, hasHeight }: Kind): boolean {
  return out === undefined && surface?.outline !== undefined && (hasHeight || !surface.isVertical);
}

/** Whether a point lies in the outline of a face, and near its plane where it has a height. */
function liesOn(face: Surface, x: number, y: number, z: number): boolean {
  const { origin, inward, outline } = face;
  const hasHeight = !Number.isNaN(z);
  // Openings play no part: an outline tells units and frames, an opening tells single holes.
  if (hasHeight && isOff(face, x, y, z)) return false;
  const zOn = hasHeight ? z : origin[2] - ((x - origin[0]) * inward[0] + (y - origin[1]) * inward[1]) / inward[2];
  const p = [x, y, zOn] as const;
  return outline !== undefined && isIn(outline, uOn(face, p), vOn(face, p));
}

/** Whether a point is too far off a face to be meant for it. */
export function isOff(face: Surface, x: number, y: number, z: number): boolean {
  const offset = offsetAt(face, x, y, z);
  return offset < -OFF_FACE_MM || offset > OFF_FACE_MM + ribAt(face, [x, y, z]);
}
