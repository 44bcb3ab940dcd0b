import type { Level } from '../generated/layout.js';
import type { LayoutModel } from '../model/layout-model.js';
import { firstIndex } from './first-index.js';
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

type Elevated = Level & { elevation: number };

/** The levels of a layout. */
interface LevelsOfLayout {
  all: readonly (Level | undefined)[];
  /** Those of each building that have an elevation, the lowest first. */
  ofBuilding: ReadonlyMap<string | undefined, readonly Elevated[]>;
}

/** There may be as many levels as records: they are sorted once for a layout. */
const sorted = new WeakMap<LayoutModel, LevelsOfLayout>();

/**
 * The heights of a level: from its elevation to the next higher one of its building, or to its own highest
 * soffit where that is higher. Undefined where it has no elevation. Found, as `levelAt` is, by halving.
 */
export function heightsOfLevel({ layout }: SitePart, id: string): LevelHeights | undefined {
  const { all, ofBuilding } = levelsOf(layout);
  const levels = layout.collection('levels');
  const level = all[levels.indexOf(levels.names.find(id))];
  const low = level?.elevation;
  if (level === undefined || low === undefined) return undefined;
  const storeys = ofBuilding.get(level.building) ?? [];
  const next = storeys[firstAbove(storeys, low)];
  let high = next?.elevation ?? Number.POSITIVE_INFINITY;
  for (const soffit of level.soffits ?? []) high = Math.max(high, soffit);
  return { id, low, high, levelAt: (z) => storeys[firstAbove(storeys, z) - 1]?.id };
}

/** Index of the first level that begins above a height. */
function firstAbove(storeys: readonly Elevated[], z: number): number {
  return firstIndex(storeys.length, (index) => storeys[index].elevation > z);
}

function levelsOf(layout: LayoutModel): LevelsOfLayout {
  const known = sorted.get(layout) ?? newLevels(layout);
  sorted.set(layout, known);
  return known;
}

function newLevels(layout: LayoutModel): LevelsOfLayout {
  const all = layout.collection('levels').judged;
  const ofBuilding = new Map<string | undefined, Elevated[]>();
  for (const level of all) {
    if (!isElevated(level)) continue;
    const storeys = ofBuilding.get(level.building);
    if (storeys === undefined) ofBuilding.set(level.building, [level]);
    else storeys.push(level);
  }
  for (const storeys of ofBuilding.values()) storeys.sort((a, b) => a.elevation - b.elevation);
  return { all, ofBuilding };
}

function isElevated(level: Level | undefined): level is Elevated {
  return level?.elevation !== undefined;
}
