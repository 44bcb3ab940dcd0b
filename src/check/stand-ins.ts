import type { Level } from '../generated/layout.js';
import { HoleLevels } from './hole-levels.js';
import { type Kind, kindsOf } from './kinds.js';
import type { Site } from './site.js';

/** A height is a stand-in if the two agree as far as this, mm. */
const SAME_HEIGHT_MM = 0.5;
/** Fewer holes at one height may lie there by chance. */
const LEAST_HOLES = 3;

/** A height of a level that may have been written where the height of a hole was not known. */
export interface StandIn {
  /** Id of the level. */
  level: string;
  name: string;
  height: number;
  /** Holes of the level that have it. */
  count: number;
}

const found = new WeakMap<Site, ReadonlyMap<number, StandIn>>();

/** The holes whose height is that of a floor of their level, in order, with that height; worked out once. */
export function standInsIn(site: Site): ReadonlyMap<number, StandIn> {
  const known = found.get(site) ?? search(site);
  found.set(site, known);
  return known;
}

/**
 * The level with whose floors the heights of a kind of holes are compared, or why they are not; undefined
 * for holes that are not drilled upward, have a face, or have no height.
 */
export function floorsOf(site: Site, kind: Kind, levels: HoleLevels): Level | string | undefined {
  const { hasHeight, surface, axis, out, first } = kind;
  if (!hasHeight || surface !== undefined || (axis !== undefined && axis[2] <= Math.SQRT1_2)) return undefined;
  if (out !== undefined) return out;
  const noSurface = site.whyNoSurface(first);
  if (noSurface === 'record of its substrate broken') return noSurface;
  if (axis === undefined) return 'axis not known';
  const level = levels.of(kind);
  if (level === undefined) return 'no level named';
  if (level.record === undefined) return 'record of its level broken';
  return standInsOf(level.record).length === 0 ? 'level without heights' : level.record;
}

function search(site: Site): Map<number, StandIn> {
  const { list, of } = kindsOf(site);
  const levels = new HoleLevels(site);
  const known = new Map<Level, StandIn[]>();
  const ofKind = list.map((kind) => {
    const level = floorsOf(site, kind, levels);
    if (level === undefined || typeof level === 'string') return undefined;
    const standIns = known.get(level) ?? standInsOf(level);
    known.set(level, standIns);
    return standIns;
  });
  const holes = new Map<number, StandIn>();
  for (let i = 0; known.size > 0 && i < site.holeCount; i++) {
    const standIn = standInAt(ofKind[of[i]], site.ownHeights[i]);
    if (standIn === undefined) continue;
    standIn.count++;
    holes.set(i, standIn);
  }
  for (const [i, { count }] of holes) if (count < LEAST_HOLES) holes.delete(i);
  return holes;
}

/** The heights of a level at which nothing is drilled upward; none at which it has a soffit. */
function standInsOf({ id, elevation, finishedFloor, structuralTop, soffits = [] }: Level): StandIn[] {
  const all: [string, number | undefined][] = [
    ['the finished floor', finishedFloor],
    ['the structural top', structuralTop],
    ['the datum of the level', elevation],
    ['zero', elevation === undefined ? undefined : 0],
  ];
  return all.flatMap(([name, height]) => {
    if (height === undefined || soffits.some((soffit) => Math.abs(soffit - height) <= SAME_HEIGHT_MM)) return [];
    return [{ level: id, name, height, count: 0 }];
  });
}

function standInAt(standIns: readonly StandIn[] | undefined, z: number): StandIn | undefined {
  if (standIns === undefined) return undefined;
  for (const standIn of standIns) if (Math.abs(z - standIn.height) <= SAME_HEIGHT_MM) return standIn;
  return undefined;
}
