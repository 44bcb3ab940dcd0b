import type { Ring } from '../geometry/ring.js';

/** The ring of an outline in plan, x as u and y as v; undefined where there is none. */
export function planRing(outline: readonly (readonly number[])[] | undefined): Ring | undefined {
  return outline && { u: Float64Array.from(outline, ([x]) => x), v: Float64Array.from(outline, ([, y]) => y) };
}
