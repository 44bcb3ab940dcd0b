import type { Bore } from '../../generated/layout.js';
import type { SheetHole } from './sheet-hole.js';

/** An existing bore and how far its middle is from that of a hole, mm. */
export interface NearBore {
  readonly bore: Bore;
  readonly distanceMm: number;
  readonly number: number;
}

/**
 * Existing bores near holes, the nearest first, each with the hole that it is nearest to; distances are in space where
 * both heights are known, else in plan.
 */
export function nearBores(
  rows: readonly { readonly hole: SheetHole; readonly number: number }[],
  bores: readonly Bore[],
  reachMm: number,
): NearBore[] {
  const near = bores.flatMap((bore): NearBore[] => {
    let best: NearBore | undefined;
    for (const { hole, number } of rows) {
      const distanceMm = distance(hole.hole.point, bore.point);
      if (distanceMm <= reachMm && (best === undefined || distanceMm < best.distanceMm)) {
        best = { bore, distanceMm, number };
      }
    }
    return best === undefined ? [] : [best];
  });
  return near.sort((a, b) => a.distanceMm - b.distanceMm);
}

function distance([x, y, z]: readonly number[], [otherX, otherY, otherZ]: readonly number[]): number {
  return Math.hypot(x - otherX, y - otherY, z === undefined || otherZ === undefined ? 0 : z - otherZ);
}
