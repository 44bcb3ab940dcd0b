import type { Vec3 } from '../geometry/vector.js';
import { type Surface, zoneAt } from './surface.js';

/** How far a point lies off the plane of a face, moved by the offset of the zone there; positive into the concrete, mm. */
export function offsetAt(surface: Surface, x: number, y: number, z: number): number {
  const { origin, inward, zones } = surface;
  const offset = (x - origin[0]) * inward[0] + (y - origin[1]) * inward[1] + (z - origin[2]) * inward[2];
  return zones.length === 0 ? offset : offset - (zoneAt(surface, [x, y, z])?.offset ?? 0);
}

/** How far from its plane inward everything counts as the face: on a composite deck to the top of the rib, else nothing, mm. */
export function ribAt(surface: Surface, p: Vec3): number {
  const { kind, deck } = surface.substrate;
  if (kind !== 'composite-deck' || deck === undefined) return 0;
  return surface.zones.length > 0 && zoneAt(surface, p) !== undefined ? 0 : deck.ribDepth;
}
