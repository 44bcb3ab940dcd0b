import { HoleLevels } from './hole-levels.js';
import { kindsOf } from './kinds.js';
import { KnownHeights } from './known-heights.js';
import type { Site } from './site.js';
import type { Surface } from './surface.js';

/** What a hole off its face shares with others. */
export interface OffCause {
  cause: string;
  /** Id of its level. */
  level?: string;
  looksLike?: string;
  /** Holes of the level that lie off in the same way, of how many that were judged; absent for one alone. */
  shared?: number;
  ofLevel?: number;
}

/** Holes that lie off in one way are a cause of their own if they are as many as this, and this part of all of their level. */
const LEAST_SHARED = 3;
const LEAST_PART = 0.1;
/** Puts offsets that differ by the noise of computing on one side of a half millimetre. */
const NOISE_MM = 1e-6;

/** Holes of one level of one layout. */
interface Floor {
  level: string | undefined;
  judged: number;
  off: number;
  /** How many lie off in each way: by a known height, or by an offset in whole millimetres. */
  ways: Map<string | number, number>;
}

/**
 * Sorts holes off their faces by what may have brought it about: one offset or one known height on many
 * holes of a level is one fault, whatever their substrates; what is left is a matter of each substrate.
 */
export function offCauses(site: Site, holes: readonly number[], offsets: readonly number[]): OffCause[] {
  if (holes.length === 0) return [];
  const kinds = kindsOf(site);
  const floors = floorsOfKinds(site);
  const heights = new KnownHeights(site);
  const looks = holes.map((i, k) => heights.of(i, kinds.at(i).surface as Surface, offsets[k]));
  const wayOf = (k: number) => looks[k] ?? Math.round(offsets[k] + NOISE_MM);
  holes.forEach((i, k) => {
    const floor = floors[kinds.of[i]];
    floor.off++;
    floor.ways.set(wayOf(k), (floor.ways.get(wayOf(k)) ?? 0) + 1);
  });
  return holes.map((i, k) => {
    const { level, judged, off, ways } = floors[kinds.of[i]];
    const shared = ways.get(wayOf(k)) ?? 0;
    const isShared = shared >= LEAST_SHARED && shared >= LEAST_PART * off;
    return {
      cause: isShared ? JSON.stringify([level, wayOf(k)]) : `substrate ${kinds.at(i).surface?.substrate.id}`,
      ...(level !== undefined && { level }),
      ...(looks[k] !== undefined && { looksLike: looks[k] }),
      ...(isShared && { shared, ofLevel: judged }),
    };
  });
}

/** The floor of each kind of holes. */
function floorsOfKinds(site: Site): Floor[] {
  const levels = new HoleLevels(site);
  const floors = new Map<string, Floor>();
  return kindsOf(site).list.map((kind) => {
    const level = levels.of(kind)?.id;
    const key = JSON.stringify([kind.part.input, level]);
    const floor = floors.get(key) ?? { level, judged: 0, off: 0, ways: new Map() };
    floors.set(key, floor);
    if (kind.hasHeight && kind.surface !== undefined && kind.out === undefined) floor.judged += kind.count;
    return floor;
  });
}
