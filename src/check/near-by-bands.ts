import { GAVE_UP, NeighbourGrid } from '../geometry/neighbour-grid.js';
import { distanceOf, type HolePoints, MOST_TESTS } from './hole-points.js';
import type { NearestOther } from './nearest-other.js';
import type { Site } from './site.js';
import { COINCIDENT_REACH_MM, type SpacingLimits } from './spacing-limits.js';

/** Holes of which the largest of two limits is less than twice the least: where one is too close, most are. */
interface Band {
  largest: number;
  part: 0 | 1;
  grid: NeighbourGrid;
}

/**
 * Finds for each hole the nearest one that is too close, looking from near to far, so that limits that are
 * far too large cost no more than others. Holes of one group with a spacing of its own are compared apart.
 *
 * @returns the distances that were computed
 */
export function findTooCloseByBands(
  site: Site,
  holes: HolePoints,
  limits: SpacingLimits,
  found: NearestOther,
  giveUp: (i: number) => void,
): number {
  const { points } = holes;
  const bands = bandsOf(site, holes, limits);
  let own = 0;
  let self = 0;
  const accept = (j: number, distance: number) =>
    limits.areTooClose(self, j, distance) && (own < 0 || limits.spacedGroup(j) !== own);
  for (let i = 0; i < points.count; i++) {
    if (!holes.has(i)) continue;
    self = i;
    own = limits.spacedGroup(i);
    const part = holes.partOf(i);
    for (const band of bands) {
      if (!holes.areCompared(part, band.part)) continue;
      const radius = Math.min(Math.max(limits.ofHole(i), band.largest), found.distanceOf(i));
      const other = radius > COINCIDENT_REACH_MM ? band.grid.nearest(i, radius, accept, MOST_TESTS) : -1;
      if (other === GAVE_UP) giveUp(i);
      else if (other >= 0) found.keep(i, other, distanceOf(points, i, other));
    }
  }
  return bands.reduce((tests, { grid }) => tests + grid.tests, 0);
}

function bandsOf(site: Site, holes: HolePoints, limits: SpacingLimits): Band[] {
  const { points } = holes;
  const largest = new Map<number, number>();
  const keyOf = (i: number) => 2 * Math.max(0, Math.floor(Math.log2(limits.ofHole(i) + 1e-9))) + holes.partOf(i);
  const keys = new Int16Array(site.holeCount).fill(-1);
  for (let i = 0; i < points.count; i++) {
    if (!holes.has(i)) continue;
    keys[i] = keyOf(i);
    largest.set(keys[i], Math.max(largest.get(keys[i]) ?? 0, limits.ofHole(i)));
  }
  return [...largest].map(([key, most]) => {
    const others = Uint8Array.from(keys, (own) => (own === key ? 0 : 1));
    return { largest: most, part: key % 2 === 0 ? 0 : 1, grid: new NeighbourGrid(points, others) };
  });
}
