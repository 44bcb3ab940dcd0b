import type { Vec3 } from '../geometry/vector.js';
import { farSideAt, isDeck, type Surface, type Thickness, thicknessOutsideZones, zoneAt } from './surface.js';

/** The least thickness for a hole, and at which of its two ends. */
export interface LeastThickness {
  thickness: Thickness;
  at: 'point' | 'end';
  /** Of a through hole: how much it may be where it is not known where the flutes lie; absent where it is known. */
  most?: number;
}

/**
 * The thickness at the point `p` of a hole or, if less, that at the foot of its `end`; both counted from the surface
 * at `p`, which may be that of a zone. What lies between is not looked at. Undefined where the substrate does not say.
 *
 * @param end `p` itself for a hole that is square to the face
 * @param outsideZones the thickness at a point that lies in no zone
 */
export function leastThickness(
  surface: Surface,
  p: Vec3,
  end: Vec3,
  outsideZones = thicknessOutsideZones,
): LeastThickness | undefined {
  if (surface.even !== undefined) return { thickness: surface.even, at: 'point' };
  const zone = zoneAt(surface, p);
  const zoneOfEnd = end === p ? zone : zoneAt(surface, end);
  const thickness = zone === undefined ? outsideZones(surface, p) : { mm: zone.thickness };
  // The top of a deck is one plane, however the steel below it goes.
  const isOne = end === p || (zone === zoneOfEnd && (zone !== undefined || isDeck(surface)));
  if (isOne) return thickness && { thickness, at: 'point' };
  const there = zoneOfEnd === undefined ? outsideZones(surface, end) : { mm: zoneOfEnd.thickness };
  if (thickness === undefined || there === undefined) return undefined;
  const atEnd = there.mm + (zoneOfEnd?.offset ?? 0) - (zone?.offset ?? 0);
  return atEnd < thickness.mm ? { thickness: { ...there, mm: atEnd }, at: 'end' } : { thickness, at: 'point' };
}

/**
 * The thickness from the surface at the point `p` of a through hole to the far side, there or, if less, at the foot of
 * its `end`. A void is no far side. Undefined where the substrate does not say.
 *
 * @param end `p` itself for a hole that is square to the face
 */
export function throughThickness(surface: Surface, p: Vec3, end: Vec3): LeastThickness | undefined {
  if (!isDeck(surface)) return leastThickness(surface, p, end, toFarSide);
  const least = leastThickness(surface, p, end);
  if (least?.thickness.side !== 'unknown') return least;
  return { ...least, most: leastThickness(surface, p, end, toFarSide)?.thickness.mm };
}

function toFarSide(surface: Surface, p: Vec3): Thickness | undefined {
  const mm = farSideAt(surface, p);
  return mm === undefined ? undefined : { mm };
}
