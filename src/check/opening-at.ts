import type { Ring } from '../geometry/ring.js';
import { isInsideRing, ringDistance } from '../geometry/ring-tree.js';
import { LENGTH_SLACK_MM } from './slack.js';
import type { Surface } from './surface.js';

/** Index of the first opening in which a point of the face lies, more than the slack from its edge; -1 where there is none. */
export function openingAt({ openingSet }: Surface, u: number, v: number): number {
  return openingSet.first(u, v, isWellIn);
}

function isWellIn(ring: Ring, u: number, v: number): boolean {
  return isInsideRing(ring, u, v) && ringDistance(ring, u, v) > LENGTH_SLACK_MM;
}
