import { EdgeGrid } from './edge-grid.js';
import type { Ring } from './ring.js';

/** The edges of a ring, edge `k` from corner `k` to the next one. */
export function edgesOfRing({ u, v }: Ring) {
  const turned = (column: Float64Array) => Float64Array.from(column, (_, k) => column[(k + 1) % column.length]);
  return { fromU: u, fromV: v, toU: turned(u), toV: turned(v) };
}

/**
 * The first corner of a ring that lies within a distance of an edge that neither begins nor ends in it, and
 * the first such edge of those nearest to it; undefined where there is none.
 *
 * So a ring that touches itself is found in whatever direction it was turned, where an exact test sees
 * only the rounding. The cost is about that of sorting the edges by place.
 */
export function cornerNearEdge(ring: Ring, within: number): { corner: number; edge: number } | undefined {
  const count = ring.u.length;
  const grid = new EdgeGrid(edgesOfRing(ring), within);
  let corner = 0;
  const isOther = (edge: number) => edge !== corner && edge !== (corner + count - 1) % count;
  for (; corner < count; corner++) {
    const edge = grid.nearest(ring.u[corner], ring.v[corner], within, isOther);
    if (edge >= 0) return { corner, edge };
  }
  return undefined;
}

/** Whether all corners of a ring lie within a distance of one line, that from the first corner to the one farthest from it. */
export function isOnLine({ u, v }: Ring, within: number): boolean {
  let far = 0;
  const fromFirst = (k: number) => Math.hypot(u[k] - u[0], v[k] - v[0]);
  for (let k = 1; k < u.length; k++) if (fromFirst(k) > fromFirst(far)) far = k;
  const length = fromFirst(far);
  if (!(length > within)) return true;
  const [du, dv] = [(u[far] - u[0]) / length, (v[far] - v[0]) / length];
  return u.every((_, k) => Math.abs(du * (v[k] - v[0]) - dv * (u[k] - u[0])) <= within);
}
