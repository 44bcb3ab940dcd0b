import { along, dot, subtract, type Vec3 } from '../../src/geometry/vector.js';

/**
 * Least distance of the segment `a`-`b` from the parallelepiped that `edges` span at `corner` (with one edge
 * a segment): least squares with every parameter between 0 and 1. Every choice of parameters that are held
 * at 0 or 1 is tried, the others are solved for; quite another way than looking at faces and edges.
 */
export function leastDistance(a: Vec3, b: Vec3, corner: Vec3, edges: readonly Vec3[]): number {
  const directions = [subtract(b, a), ...edges.map((edge) => along([0, 0, 0], edge, -1))];
  let least = Number.POSITIVE_INFINITY;
  const choose = (k: number, rest: Vec3, free: Vec3[]) => {
    if (k < directions.length) {
      choose(k + 1, rest, free);
      choose(k + 1, along(rest, directions[k], 1), free);
      // In space three free parameters reach everything; where four fit, three and a held one do too.
      if (free.length < 3) choose(k + 1, rest, [...free, directions[k]]);
      return;
    }
    const parts = solve(free, rest);
    if (parts?.every((part) => part >= 0 && part <= 1)) {
      const gap = free.reduce((sum, direction, n) => along(sum, direction, parts[n]), rest);
      least = Math.min(least, Math.sqrt(dot(gap, gap)));
    }
  };
  choose(0, subtract(a, corner), []);
  return least;
}

/** The multiples of the directions that bring `rest` nearest to nothing, by elimination; undefined where they are not independent. */
function solve(directions: readonly Vec3[], rest: Vec3): number[] | undefined {
  const rows = directions.map((direction) => [
    ...directions.map((other) => dot(direction, other)),
    -dot(direction, rest),
  ]);
  for (let k = 0; k < rows.length; k++) {
    const scale = dot(directions[k], directions[k]);
    if (!(rows[k][k] > 1e-12 * scale)) return undefined;
    for (let n = 0; n < rows.length; n++) {
      if (n === k) continue;
      const factor = rows[n][k] / rows[k][k];
      for (let m = k; m <= rows.length; m++) rows[n][m] -= factor * rows[k][m];
    }
  }
  return rows.map((row, k) => row[rows.length] / row[k]);
}
