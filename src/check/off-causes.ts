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
  /** Least and greatest offset among those, mm; absent where they are the same to the millimetre. */
  least?: number;
  most?: number;
}

/** Holes that lie off in one way are a cause of their own if they are as many as this, and this part of all of their level. */
const LEAST_SHARED = 3;
const LEAST_PART = 0.1;
/** Offsets that lie in a row without a gap are one as far as they reach over no more spreads than this. */
const MOST_SPREADS = 4;
/** Offsets that agree as far as this, mm, are said as one. */
const SAME_OFFSET_MM = 1;

/** Holes of one level of one layout. */
interface Floor {
  level: string | undefined;
  judged: number;
  /** Those that lie off, as indices into what the caller gives. */
  off: number[];
}

/** Holes of a level that lie off in one way. */
interface Way {
  members: number[];
  looksLike?: string;
}

/**
 * Sorts holes off their faces by what may have brought it about: one known height or nearly one offset on many
 * holes of a level is one fault, whatever their substrates; what is left is a matter of each substrate.
 *
 * @param spread offsets that differ by no more may be one, for heights that were measured; mm
 */
export function offCauses(
  site: Site,
  holes: readonly number[],
  offsets: readonly number[],
  spread: number,
): OffCause[] {
  if (holes.length === 0) return [];
  const kinds = kindsOf(site);
  const floors = floorsOfKinds(site);
  const heights = new KnownHeights(site);
  const looks = holes.map((i, k) => heights.of(i, kinds.at(i).surface as Surface, offsets[k]));
  holes.forEach((i, k) => {
    floors[kinds.of[i]].off.push(k);
  });
  const found: OffCause[] = [];
  for (const { level, judged, off } of new Set(floors)) {
    const ofLevel = level !== undefined && { level };
    waysOf(off, looks, offsets, spread).forEach(({ members, looksLike }, way) => {
      const [least, most] = spanOf(members, offsets);
      const span = most - least > SAME_OFFSET_MM && { least, most };
      const cause = JSON.stringify([level, way]);
      const common = { cause, ...ofLevel, ...look(looksLike), shared: members.length, ofLevel: judged, ...span };
      for (const k of members)
        found[k] = looksLike === undefined && looks[k] ? { ...common, ...look(looks[k]) } : common;
    });
    for (const k of off) {
      const cause = `substrate ${site.substrates.of(holes[k])?.id}`;
      found[k] ??= { cause, ...ofLevel, ...look(looks[k]) };
    }
  }
  return found;
}

function look(looksLike: string | undefined): { looksLike?: string } {
  return looksLike === undefined ? {} : { looksLike };
}

/** The ways in which enough of these holes lie off. */
function waysOf(
  off: readonly number[],
  looks: readonly (string | undefined)[],
  offsets: readonly number[],
  spread: number,
): Way[] {
  const enough = Math.max(LEAST_SHARED, LEAST_PART * off.length);
  const byLook = new Map<string, number[]>();
  for (const k of off) {
    const look = looks[k];
    if (look === undefined) continue;
    const members = byLook.get(look) ?? [];
    members.push(k);
    byLook.set(look, members);
  }
  const ways: Way[] = [...byLook].flatMap(([looksLike, members]) =>
    members.length >= enough ? [{ members, looksLike }] : [],
  );
  const taken = new Set(ways.flatMap(({ members }) => members));
  let rest = off.filter((k) => !taken.has(k)).sort((a, b) => offsets[a] - offsets[b] || a - b);
  for (const { members } of ways) {
    // The same height over faces of several heights is no one offset, and nothing is near to it.
    const [least, most] = spanOf(members, offsets);
    if (most - least > MOST_SPREADS * spread) continue;
    const isNear = (k: number) => offsets[k] >= least - spread && offsets[k] <= most + spread;
    for (const k of rest) if (isNear(k)) members.push(k);
    rest = rest.filter((k) => !isNear(k));
  }
  for (let from = 0, to = 1; from < rest.length; to++) {
    if (to < rest.length && offsets[rest[to]] - offsets[rest[to - 1]] <= spread) continue;
    const isNarrow = offsets[rest[to - 1]] - offsets[rest[from]] <= MOST_SPREADS * spread;
    if (isNarrow && to - from >= enough) ways.push({ members: rest.slice(from, to) });
    from = to;
  }
  return ways;
}

function spanOf(members: readonly number[], offsets: readonly number[]): [least: number, most: number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const k of members) {
    least = Math.min(least, offsets[k]);
    most = Math.max(most, offsets[k]);
  }
  return [least, most];
}

/** The floor of each kind of holes. */
function floorsOfKinds(site: Site): Floor[] {
  const levels = new HoleLevels(site);
  const floors = new Map<string, Floor>();
  return kindsOf(site).list.map((kind) => {
    const level = levels.of(kind)?.id;
    const key = JSON.stringify([kind.part.input, level]);
    const floor = floors.get(key) ?? { level, judged: 0, off: [] };
    floors.set(key, floor);
    if (kind.hasHeight && kind.surface !== undefined && kind.out === undefined) floor.judged += kind.count;
    return floor;
  });
}
