import type { Spot } from './primitive.js';

/** Spots that are looked at. */
const MOST_SAMPLED = 400;

/**
 * The distance from a spot to its nearest other one that four of five of the sampled spots keep; spots at
 * one place are one. Infinite for fewer than two places.
 */
export function usualSpacing(spots: readonly Spot[]): number {
  const places = new Map(spots.map((spot) => [`${Math.round(spot[0] * 20)} ${Math.round(spot[1] * 20)}`, spot]));
  const sorted = [...places.values()].sort((a, b) => a[0] - b[0]);
  const step = Math.max(1, Math.floor(sorted.length / MOST_SAMPLED));
  const nearest: number[] = [];
  for (let k = 0; k < sorted.length; k += step) nearest.push(nearestIn(sorted, k));
  nearest.sort((a, b) => a - b);
  return nearest.length < 2 ? Number.POSITIVE_INFINITY : nearest[Math.floor(nearest.length / 5)];
}

function nearestIn(sorted: readonly Spot[], k: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const direction of [1, -1]) {
    for (let j = k + direction; j >= 0 && j < sorted.length; j += direction) {
      const dx = Math.abs(sorted[j][0] - sorted[k][0]);
      if (dx >= least) break;
      least = Math.min(least, Math.hypot(dx, sorted[j][1] - sorted[k][1]));
    }
  }
  return least;
}
