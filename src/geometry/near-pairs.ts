/** What {@link nearPairs} needs of a set of points: coordinates in one unit, `count` of them. */
export interface Points {
  count: number;
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

/** So many pairs are looked at sooner than it is worth while to find a better way. */
const FEW = 50_000;

/**
 * Calls `visit(i, j, distance)` once for each pair of points, `j < i`, that lie at most `radius` apart.
 *
 * Points go into the cells of a grid, cells into buckets. A point looks only into the cells that its box
 * of `radius` touches, three or so of them, so the cost is linear as long as a cell holds few points.
 * Cells of one row lie in neighbouring buckets, because lists of holes mostly run along rows and memory
 * is read in lines. Points for which `skip` is not 0 and points with a coordinate that is no number are
 * left out.
 *
 * @param mostTogether most points that a point shares its bucket with, on the average; where there are more,
 *   and not few points altogether, nothing is visited
 * @returns the number of distances that were computed, or -1 where too many points lie together
 */
export function nearPairs(
  points: Points,
  skip: Uint8Array,
  radius: number,
  visit: (i: number, j: number, distance: number) => void,
  mostTogether = Number.POSITIVE_INFINITY,
): number {
  const { count, x, y, z } = points;
  if (count === 0 || !(radius > 0)) return 0;
  // The box is a hair larger than the radius, so that rounding of a sum never hides a point on its edge.
  const reach = radius * (1 + 1e-9) + 1e-6;
  const perSide = 1 / (reach * 3);
  // Levels lie metres apart; cells at least a metre high seldom need a second one looked into.
  const perHeight = 1 / Math.max(reach * 3, 1000);
  const mask = bucketMask(count);
  const bucketOf = new Int32Array(count).fill(-1);
  const starts = new Int32Array(mask + 2);
  for (let i = 0; i < count; i++) {
    if (skip[i] !== 0 || !(x[i] - x[i] === 0 && y[i] - y[i] === 0 && z[i] - z[i] === 0)) continue;
    const bucket =
      (hashRow(Math.floor(y[i] * perSide), Math.floor(z[i] * perHeight)) + Math.floor(x[i] * perSide)) & mask;
    bucketOf[i] = bucket;
    starts[bucket + 1]++;
  }
  if (mostTogether < Number.POSITIVE_INFINITY) {
    let together = 0;
    for (let bucket = 1; bucket <= mask + 1; bucket++) together += starts[bucket] * starts[bucket];
    if (together > mostTogether * count + FEW) return -1;
  }
  for (let bucket = 0; bucket <= mask; bucket++) starts[bucket + 1] += starts[bucket];
  const items = new Int32Array(starts[mask + 1]);
  // Only points already seen are between `starts` and `ends`, so each pair comes once.
  const ends = starts.slice(0, mask + 1);
  const radiusSq = radius * radius;
  const looked = new Int32Array(64);
  let tests = 0;
  for (let i = 0; i < count; i++) {
    const own = bucketOf[i];
    if (own < 0) continue;
    const xi = x[i];
    const yi = y[i];
    const zi = z[i];
    const x0 = Math.floor((xi - reach) * perSide);
    const x1 = Math.floor((xi + reach) * perSide);
    const y1 = Math.floor((yi + reach) * perSide);
    const z1 = Math.floor((zi + reach) * perHeight);
    let lookedCount = 0;
    for (let cz = Math.floor((zi - reach) * perHeight); cz <= z1; cz++) {
      for (let cy = Math.floor((yi - reach) * perSide); cy <= y1; cy++) {
        const row = hashRow(cy, cz);
        for (let cx = x0; cx <= x1; cx++) {
          const bucket = (row + cx) & mask;
          const end = ends[bucket];
          let k = starts[bucket];
          if (k === end) continue;
          // Two cells may share a bucket; looking twice would report a pair twice.
          for (let n = 0; n < lookedCount; n++) if (looked[n] === bucket) k = end;
          looked[lookedCount++] = bucket;
          for (; k < end; k++) {
            const j = items[k];
            const dx = xi - x[j];
            const dy = yi - y[j];
            const dz = zi - z[j];
            tests++;
            const distanceSq = dx * dx + dy * dy + dz * dz;
            if (distanceSq <= radiusSq) visit(i, j, Math.sqrt(distanceSq));
          }
        }
      }
    }
    items[ends[own]++] = i;
  }
  return tests;
}

/** Mask of a table with room for `count` cells, half empty. */
export function bucketMask(count: number): number {
  let size = 16;
  while (size < count * 2) size *= 2;
  return size - 1;
}

/** Hash of a row of cells; a cell of the row is as many buckets further on. */
export function hashRow(cy: number, cz: number): number {
  let h = Math.imul(cy, 0xd8163841) ^ Math.imul(cz, 0xcb1ab31f);
  h ^= h >>> 15;
  h = Math.imul(h, 0x2c1b3c6d);
  return (h ^ (h >>> 13)) | 0;
}
