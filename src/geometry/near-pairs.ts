/** What {@link nearPairs} needs of a set of points: coordinates in one unit, `count` of them. */
export interface Points {
  count: number;
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

/**
 * Calls `visit(i, j, distance)` once for each pair of points, `j < i`, that lie at most `radius` apart.
 *
 * Points go into the cells of a grid, cells into buckets by hash. A point looks only into the cells that
 * its box of `radius` touches, three or so of them, so the cost is linear as long as a cell holds few
 * points. Points for which `skip` is not 0 and points with a coordinate that is no number are left out.
 *
 * @returns the number of distances that were computed
 */
export function nearPairs(
  points: Points,
  skip: Uint8Array,
  radius: number,
  visit: (i: number, j: number, distance: number) => void,
): number {
  const { count, x, y, z } = points;
  if (count === 0 || !(radius > 0)) return 0;
  const side = radius * 3;
  // Levels lie metres apart; cells at least a metre high seldom need a second one looked into.
  const height = Math.max(side, 1000);
  const mask = bucketMask(count);
  const starts = new Int32Array(mask + 2);
  const bucketOf = new Int32Array(count).fill(-1);
  for (let i = 0; i < count; i++) {
    if (skip[i] !== 0 || !(x[i] - x[i] === 0 && y[i] - y[i] === 0 && z[i] - z[i] === 0)) continue;
    const bucket = hashCell(Math.floor(x[i] / side), Math.floor(y[i] / side), Math.floor(z[i] / height)) & mask;
    bucketOf[i] = bucket;
    starts[bucket + 1]++;
  }
  for (let bucket = 0; bucket <= mask; bucket++) starts[bucket + 1] += starts[bucket];
  const items = new Int32Array(starts[mask + 1]);
  const fill = starts.slice(0, mask + 1);
  const radiusSq = radius * radius;
  let tests = 0;
  const looked = new Int32Array(8);
  for (let i = 0; i < count; i++) {
    if (bucketOf[i] < 0) continue;
    let lookedCount = 0;
    const x1 = Math.floor((x[i] + radius) / side);
    const y1 = Math.floor((y[i] + radius) / side);
    const z1 = Math.floor((z[i] + radius) / height);
    for (let cz = Math.floor((z[i] - radius) / height); cz <= z1; cz++) {
      for (let cy = Math.floor((y[i] - radius) / side); cy <= y1; cy++) {
        cell: for (let cx = Math.floor((x[i] - radius) / side); cx <= x1; cx++) {
          const bucket = hashCell(cx, cy, cz) & mask;
          // Two cells may share a bucket; looking twice would report a pair twice.
          for (let k = 0; k < lookedCount; k++) if (looked[k] === bucket) continue cell;
          looked[lookedCount++] = bucket;
          for (let k = starts[bucket]; k < fill[bucket]; k++) {
            const j = items[k];
            const dx = x[i] - x[j];
            const dy = y[i] - y[j];
            const dz = z[i] - z[j];
            tests++;
            const distanceSq = dx * dx + dy * dy + dz * dz;
            if (distanceSq <= radiusSq) visit(i, j, Math.sqrt(distanceSq));
          }
        }
      }
    }
    // Only points already seen are in the buckets, so each pair comes once.
    items[fill[bucketOf[i]]++] = i;
  }
  return tests;
}

/** Mask of a table with room for `count` cells, half empty. */
export function bucketMask(count: number): number {
  let size = 16;
  while (size < count * 2) size *= 2;
  return size - 1;
}

/** Hash of a cell of a grid. */
export function hashCell(cx: number, cy: number, cz: number): number {
  let h = Math.imul(cx, 0x8da6b343) ^ Math.imul(cy, 0xd8163841) ^ Math.imul(cz, 0xcb1ab31f);
  h ^= h >>> 15;
  h = Math.imul(h, 0x2c1b3c6d);
  return (h ^ (h >>> 13)) >>> 1;
}
