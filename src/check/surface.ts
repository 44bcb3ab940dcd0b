import type { Outline, Substrate } from '../generated/layout.js';
import { distanceToRing, insideRing, type Ring } from '../geometry/ring.js';
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
  zones: readonly SurfaceZone[];
  /** The thickness where it is the same all over; no zone and no deck is then looked at for each hole. */
  even: Thickness | undefined;
}

export interface SurfaceZone {
  ring: Ring;
  thickness: number;
  offset: number;
}

/** sin of 0.00005 degree: the slack of angles. */
const LEVEL_SINE = Math.sin((0.00005 * Math.PI) / 180);

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
  return {
    substrate,
    origin,
    inward,
    u,
    v,
    isVertical: Math.abs(inward[2]) <= LEVEL_SINE,
    outline: substrate.outline && ring(substrate.outline),
    openings: (substrate.openings ?? []).map(ring),
    zones: (substrate.zones ?? []).map((zone) => ({
      ring: ring(zone.outline),
      thickness: zone.thickness,
      offset: zone.offset ?? 0,
    })),
    even: evenThickness(substrate),
  };
}

function evenThickness({ kind, zones, thickness }: Substrate): Thickness | undefined {
  const isEven = kind !== 'composite-deck' && (zones ?? []).length === 0;
  return isEven && thickness !== undefined ? { mm: thickness } : undefined;
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
  return insideRing(ring, u, v) || distanceToRing(ring, u, v) <= LENGTH_SLACK_MM;
}

/** The last zone in which a point of the face lies. */
export function zoneAt(surface: Surface, p: Vec3): SurfaceZone | undefined {
  const u = uOn(surface, p);
  const v = vOn(surface, p);
  for (let k = surface.zones.length - 1; k >= 0; k--) if (isIn(surface.zones[k].ring, u, v)) return surface.zones[k];
  return undefined;
}

/** z where the vertical through a plan point meets the face, moved by the offset of the zone there. */
export function heightAt(surface: Surface, x: number, y: number): number {
  const { origin, inward } = surface;
  const onPlane = origin[2] - ((x - origin[0]) * inward[0] + (y - origin[1]) * inward[1]) / inward[2];
  const zone = surface.zones.length === 0 ? undefined : zoneAt(surface, [x, y, onPlane]);
  return zone === undefined ? onPlane : onPlane + zone.offset / inward[2];
}

/** Which side of a deck rib a thickness was taken from. */
export type RibSide = 'low-flute' | 'high-flute' | 'unknown';

export interface Thickness {
  mm: number;
  /** Only on a composite deck. */
  side?: RibSide;
}

/** Thickness of the concrete at a point of the face, square to it; undefined where the substrate does not say. */
export function thicknessAt(surface: Surface, p: Vec3): Thickness | undefined {
  if (surface.even !== undefined) return surface.even;
  const zone = zoneAt(surface, p);
  if (zone !== undefined) return { mm: zone.thickness };
  const { kind, deck, thickness } = surface.substrate;
  if (kind !== 'composite-deck') return thickness === undefined ? undefined : { mm: thickness };
  if (deck === undefined) return undefined;
  if (deck.phase === undefined || deck.lowWidth === undefined) return { mm: deck.overRib, side: 'unknown' };
  const left = leftOfRun(surface, deck.run);
  if (left === undefined) return { mm: deck.overRib, side: 'unknown' };
  const across = uOn(surface, p) * dot(surface.u, left) + vOn(surface, p) * dot(surface.v, left) - deck.phase;
  const fromMiddle = Math.abs(across - deck.pitch * Math.round(across / deck.pitch));
  return fromMiddle <= deck.lowWidth / 2 + LENGTH_SLACK_MM
    ? { mm: deck.ribDepth + deck.overRib, side: 'low-flute' }
    : { mm: deck.overRib, side: 'high-flute' };
}

/** Thickness from the face to the far side where the concrete is thickest: what a through hole may have to go through. */
export function farSideAt(surface: Surface, p: Vec3): number | undefined {
  const { kind, deck } = surface.substrate;
  if (kind === 'composite-deck' && deck !== undefined && zoneAt(surface, p) === undefined) {
    return deck.ribDepth + deck.overRib;
  }
  return thicknessAt(surface, p)?.mm;
}

/** Unit vector in the face to the left of a run, seen in plan. */
export function leftOfRun(surface: Surface, run: Vec3): Vec3 | undefined {
  const left = unit(cross(surface.inward, run));
  if (left === undefined) return undefined;
  // In plan, left of (x, y) is (-y, x); a face that is drilled downward turns the cross product round.
  return left[0] * -run[1] + left[1] * run[0] < 0 ? [-left[0], -left[1], -left[2]] : left;
}
