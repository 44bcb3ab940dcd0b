import type { Deck, Outline, Substrate } from '../generated/layout.js';
import type { Ring } from '../geometry/ring.js';
import { RingSet } from '../geometry/ring-set.js';
import { isInsideRing, ringDistance } from '../geometry/ring-tree.js';
import { cross, dot, squareTo, subtract, unit, type Vec3 } from '../geometry/vector.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** The drilled face of a substrate, made ready: a plane with axes, and what lies in it. Millimetres. */
export interface Surface {
  substrate: Substrate;
  origin: Vec3;
  /** Unit vector into the concrete. */
  inward: Vec3;
  /** Axes of the face; u, v and `inward` are right-handed. */
  u: Vec3;
  v: Vec3;
  /** Whether heights cannot be taken from the face because it stands upright. */
  isVertical: boolean;
  outline: Ring | undefined;
  openings: readonly Ring[];
  /** The openings by place. */
  openingSet: RingSet;
  zones: readonly SurfaceZone[];
  /** The rings of the zones by place. */
  zoneSet: RingSet;
  /** Low flutes of a composite deck or voids of a hollow plank; undefined where none are described. */
  rows: Rows | undefined;
  /** The thickness where it is the same all over; no zone and no row is then looked at for each hole. */
  even: Thickness | undefined;
}

/** Low flutes or voids: straight, all alike, at one distance from each other. */
export interface Rows {
  pitch: number;
  /** Unit vector in the face to the left of the run, seen in plan; undefined where the run is square to the face. */
  left: Vec3 | undefined;
  /** Along `left` from the point of the face to the middle of a row; undefined where it is not known. */
  phase: number | undefined;
}

export interface SurfaceZone {
  ring: Ring;
  thickness: number;
  offset: number;
}

/** sin of 0.00005 degree, the slack of angles. */
export const LEVEL_SINE = Math.sin((0.00005 * Math.PI) / 180);

/** A point farther beside the box of a ring is not in it, mm: more than the slack. */
const BESIDE_MM = 0.001;

/** So many rows away the place within a row is lost in rounding. */
const MOST_PITCHES = 1e12;

/** Makes the face of a substrate ready; undefined where it has none. */
export function newSurface(substrate: Substrate): Surface | undefined {
  const inward = substrate.face && unit(substrate.face.inward);
  if (substrate.face === undefined || inward === undefined) return undefined;
  const origin = substrate.face.point;
  const u = squareTo(inward);
  const v = cross(inward, u);
  const ring = (outline: Outline): Ring => {
    const points = outline.points.map((point) => subtract(point, origin));
    return { u: Float64Array.from(points, (p) => dot(p, u)), v: Float64Array.from(points, (p) => dot(p, v)) };
  };
  const openings = (substrate.openings ?? []).map(ring);
  const given = substrate.zones ?? [];
  const zoneRings = given.map(({ outline }) => ring(outline));
  const zones = given.map(({ thickness, offset = 0 }, k) => ({ ring: zoneRings[k], thickness, offset }));
  return {
    substrate,
    origin,
    inward,
    u,
    v,
    isVertical: Math.abs(inward[2]) <= LEVEL_SINE,
    outline: substrate.outline && ring(substrate.outline),
    openings,
    openingSet: new RingSet(openings, BESIDE_MM),
    zones,
    zoneSet: new RingSet(zoneRings, BESIDE_MM),
    rows: rowsOf(substrate, inward),
    even: evenThickness(substrate),
  };
}

function rowsOf({ kind, deck, voids }: Substrate, inward: Vec3): Rows | undefined {
  const profile = kind === 'composite-deck' ? deck : kind === 'hollow-plank' ? voids : undefined;
  return profile && { pitch: profile.pitch, left: leftOfRun(inward, profile.run), phase: profile.phase };
}

function evenThickness({ kind, zones, thickness, voids }: Substrate): Thickness | undefined {
  const isUneven = kind === 'composite-deck' || (kind === 'hollow-plank' && voids !== undefined);
  return isUneven || (zones ?? []).length > 0 || thickness === undefined ? undefined : { mm: thickness };
}

/** Whether an axis, a unit vector, points into the concrete; level with the face within the slack counts as out. */
export function isInto({ inward }: Surface, axis: Vec3): boolean {
  return dot(axis, inward) > LEVEL_SINE;
}

/** Coordinate of a point along the first axis of the face, seen along its normal. */
export function uOn({ origin, u }: Surface, p: Vec3): number {
  return (p[0] - origin[0]) * u[0] + (p[1] - origin[1]) * u[1] + (p[2] - origin[2]) * u[2];
}

/** Coordinate of a point along the second axis of the face. */
export function vOn({ origin, v }: Surface, p: Vec3): number {
  return (p[0] - origin[0]) * v[0] + (p[1] - origin[1]) * v[1] + (p[2] - origin[2]) * v[2];
}

/** Whether a point of the face lies in a ring or within the slack of its edge. */
export function isIn(ring: Ring, u: number, v: number): boolean {
  return isInsideRing(ring, u, v) || ringDistance(ring, u, v) <= LENGTH_SLACK_MM;
}

/** The last zone in which a point of the face lies. */
export function zoneAt(surface: Surface, p: Vec3): SurfaceZone | undefined {
  const { zones, zoneSet } = surface;
  return zones.length === 0 ? undefined : zones[zoneSet.last(uOn(surface, p), vOn(surface, p), isIn)];
}

/** z where the vertical through a plan point meets the face, moved by the offset of the zone there. */
export function heightAt(surface: Surface, x: number, y: number): number {
  const { origin, inward } = surface;
  const onPlane = origin[2] - ((x - origin[0]) * inward[0] + (y - origin[1]) * inward[1]) / inward[2];
  const zone = surface.zones.length === 0 ? undefined : zoneAt(surface, [x, y, onPlane]);
  return zone === undefined ? onPlane : onPlane + zone.offset / inward[2];
}

/**
 * What a thickness was taken over: a flute of a deck, a void of a plank or what is between them. `unknown` and
 * `void-assumed`: the thin side, because it is not known where the flutes or the voids lie.
 */
export type Side = 'low-flute' | 'high-flute' | 'unknown' | 'void' | 'between-voids' | 'void-assumed';

export interface Thickness {
  mm: number;
  /** Only on a composite deck and a hollow plank with voids. */
  side?: Side;
}

/**
 * How far a point of the face lies to the left of the middle of the nearest row, mm; undefined where it is not
 * known where the rows lie, or where they are too many to be told apart in numbers.
 */
export function fromMiddle(surface: Surface, p: Vec3): number | undefined {
  const { rows, origin } = surface;
  if (rows?.left === undefined || rows.phase === undefined) return undefined;
  const across = dot(subtract(p, origin), rows.left) - rows.phase;
  const pitches = across / rows.pitch;
  return Math.abs(pitches) < MOST_PITCHES ? across - rows.pitch * Math.round(pitches) : undefined;
}

/** Thickness of the concrete at a point of the face, square to it; undefined where the substrate does not say. */
export function thicknessAt(surface: Surface, p: Vec3): Thickness | undefined {
  if (surface.even !== undefined) return surface.even;
  const zone = zoneAt(surface, p);
  return zone === undefined ? thicknessOutsideZones(surface, p) : { mm: zone.thickness };
}

/** The same for a point that lies in no zone. */
export function thicknessOutsideZones(surface: Surface, p: Vec3): Thickness | undefined {
  const { kind, deck, voids, thickness } = surface.substrate;
  if (kind === 'composite-deck') return deck && overDeck(surface, deck, p);
  if (kind === 'hollow-plank' && voids !== undefined) {
    const w = fromMiddle(surface, p);
    if (w === undefined) return { mm: voids.cover, side: 'void-assumed' };
    if (Math.abs(w) <= voids.width / 2 + LENGTH_SLACK_MM) return { mm: voids.cover, side: 'void' };
    return thickness === undefined ? undefined : { mm: thickness, side: 'between-voids' };
  }
  return thickness === undefined ? undefined : { mm: thickness };
}

function overDeck(surface: Surface, { lowWidth, ribDepth, overRib }: Deck, p: Vec3): Thickness {
  const w = lowWidth === undefined ? undefined : fromMiddle(surface, p);
  if (w === undefined || lowWidth === undefined) return { mm: overRib, side: 'unknown' };
  return Math.abs(w) <= lowWidth / 2 + LENGTH_SLACK_MM
    ? { mm: ribDepth + overRib, side: 'low-flute' }
    : { mm: overRib, side: 'high-flute' };
}

export function isDeck({ substrate }: Surface): boolean {
  return substrate.kind === 'composite-deck' && substrate.deck !== undefined;
}

/** How far a point of a deck lies above the lowest steel, as far as that is within the ribs and outside of the zones. */
export function riseAt(surface: Surface, p: Vec3): number {
  const { deck } = surface.substrate;
  if (deck === undefined || zoneAt(surface, p) !== undefined) return 0;
  return Math.min(Math.max(dot(subtract(p, surface.origin), surface.inward), 0), deck.ribDepth);
}

/**
 * What lies between a point of a deck and the concrete, square to the face: the empty rib over a high flute, and
 * over one that may be high because it is not known where the flutes lie.
 */
export function gapAt(surface: Surface, p: Vec3): number {
  const { deck } = surface.substrate;
  if (deck === undefined || zoneAt(surface, p) !== undefined) return 0;
  return overDeck(surface, deck, p).side === 'low-flute' ? 0 : deck.ribDepth - riseAt(surface, p);
}

/** Thickness from the face to the far side where the concrete is thickest: what a through hole may have to go through. */
export function farSideAt(surface: Surface, p: Vec3): number | undefined {
  if (surface.even !== undefined) return surface.even.mm;
  const zone = zoneAt(surface, p);
  if (zone !== undefined) return zone.thickness;
  const { kind, deck, thickness } = surface.substrate;
  return kind === 'composite-deck' ? deck && deck.ribDepth + deck.overRib : thickness;
}

/** Unit vector in the face to the left of a run, seen in plan. */
function leftOfRun(inward: Vec3, run: Vec3): Vec3 | undefined {
  const along = unit(run);
  if (along === undefined) return undefined;
  const across = cross(inward, along);
  const left = unit(across);
  if (left === undefined || Math.hypot(across[0], across[1], across[2]) <= LEVEL_SINE) return undefined;
  // In plan, left of (x, y) is (-y, x); a face that is drilled downward turns the cross product round.
  return left[0] * -along[1] + left[1] * along[0] < 0 ? [-left[0], -left[1], -left[2]] : left;
}
