import type { Level } from '../generated/layout.js';
import type { SitePart } from './site-part.js';

/** The heights between which the holes of a level lie, mm. */
export interface LevelHeights {
  /** Id of the level. */
  id: string;
  low: number;
  /** Infinite where no higher level is given. */
  high: number;
  /** Id of the level of the same building whose heights hold z: the highest one that does not begin above it. */
  levelAt(z: number): string | undefined;
}

/**
 * The heights of a level: from its elevation to the next higher one of its building, or to its own highest
 * soffit where that is higher. Undefined where it has no elevation.
 */
export function heightsOfLevel({ layout }: SitePart, id: string): LevelHeights | undefined {
  const levels = layout.collection('levels');
  const level = levels.judged[levels.indexOf(levels.names.find(id))];
  const low = level?.elevation;
  if (level === undefined || low === undefined) return undefined;
  const ofBuilding = levels.judged
    .filter((other): other is Level & { elevation: number } => other?.elevation !== undefined)
    .filter(({ building }) => building === level.building)
    .sort((a, b) => a.elevation - b.elevation);
  const next = ofBuilding.find(({ elevation }) => elevation > low)?.elevation;
  const high = next === undefined ? Number.POSITIVE_INFINITY : Math.max(next, ...(level.soffits ?? []));
  const levelAt = (z: number) => ofBuilding.filter(({ elevation }) => elevation <= z).at(-1)?.id;
  return { id, low, high, levelAt };
}
