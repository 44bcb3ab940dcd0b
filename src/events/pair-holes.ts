import type { NewIds } from './layout-changes.js';
import { type Pairs, pairById } from './pair-by-id.js';
import { pairByPlace } from './pair-by-place.js';
import { idOf, type Rec, textOf } from './records.js';

/** Where at most this share of ids is known again, ids may have been given anew. */
export const FEW_IDS = 0.1;
/** Ids were given anew where at least this share of the holes lies where others lay. */
export const MANY_PLACES = 0.5;

/** Which hole is which. */
export interface HolePairs extends Pairs {
  /** Removed holes and the added ones that name them in `replaces`, by the added one. */
  replaced: [before: number, after: number][];
  newIds?: NewIds;
}

/**
 * Pairs holes by id; then, for a trade of which few ids are known again, by place where most places are.
 *
 * A hole that is named in `replaces`, or names one, keeps out of the second: that says which is which.
 */
export function pairHoles(before: readonly Rec[], after: readonly Rec[]): HolePairs {
  const pairs = pairById(before, after);
  const replaced = replacedHoles(before, after, pairs);
  const undone = replacedHoles(after, before, { before: pairs.after, after: pairs.before });
  const taken = new Set([...replaced.map(([i]) => i), ...undone.map(([, i]) => i)]);
  const taking = new Set([...replaced.map(([, j]) => j), ...undone.map(([j]) => j)]);
  const counts = countByTrade(before, after, pairs);
  const isCandidate = (hole: Rec) => isFewKnown(counts.get(tradeOf(hole)));
  const left = indicesWhere(before, (hole, i) => pairs.after[i] < 0 && !taken.has(i) && isCandidate(hole));
  const right = indicesWhere(after, (hole, j) => pairs.before[j] < 0 && !taking.has(j) && isCandidate(hole));
  const places = pairByPlace(
    left.map((i) => before[i]),
    right.map((j) => after[j]),
  ).map(([i, j]): [number, number] => [left[i], right[j]]);
  for (const [i] of places) countOf(counts, before[i]).matched++;
  const found = places.filter(([i]) => isManyMatched(countOf(counts, before[i])));
  for (const [i, j] of found) {
    pairs.before[j] = i;
    pairs.after[i] = j;
  }
  const mapping = found.map(([i, j]) => ({ before: idOf(before[i]), after: idOf(after[j]) }));
  return { ...pairs, replaced, ...(found.length > 0 && { newIds: newIdsOf(counts, mapping) }) };
}

/** Unpaired holes of the second list that name an unpaired one of the first in `replaces`. */
function replacedHoles(before: readonly Rec[], after: readonly Rec[], pairs: Pairs): [number, number][] {
  const removed = new Map<string, number>();
  before.forEach((hole, i) => {
    if (pairs.after[i] < 0 && !removed.has(idOf(hole))) removed.set(idOf(hole), i);
  });
  const found: [number, number][] = [];
  after.forEach((hole, j) => {
    const replaces = pairs.before[j] < 0 ? textOf(hole, 'replaces') : undefined;
    const i = replaces === undefined ? undefined : removed.get(replaces);
    if (i !== undefined) found.push([i, j]);
  });
  return found;
}

/** The holes of one trade. */
interface TradeCount {
  before: number;
  after: number;
  shared: number;
  matched: number;
}

/** Counts by trade, in the order of the first holes of the later layout. */
function countByTrade(before: readonly Rec[], after: readonly Rec[], pairs: Pairs): Map<string, TradeCount> {
  const counts = new Map<string, TradeCount>();
  after.forEach((hole, j) => {
    const count = countOf(counts, hole);
    count.after++;
    const i = pairs.before[j];
    if (i >= 0 && tradeOf(before[i]) === tradeOf(hole)) count.shared++;
  });
  for (const hole of before) countOf(counts, hole).before++;
  return counts;
}

function countOf(counts: Map<string, TradeCount>, hole: Rec): TradeCount {
  const trade = tradeOf(hole);
  const known = counts.get(trade);
  if (known !== undefined) return known;
  const count = { before: 0, after: 0, shared: 0, matched: 0 };
  counts.set(trade, count);
  return count;
}

function tradeOf(hole: Rec): string {
  return textOf(hole, 'trade') ?? '';
}

function isFewKnown(count: TradeCount | undefined): boolean {
  return count !== undefined && count.shared <= FEW_IDS * Math.min(count.before, count.after);
}

function isManyMatched(count: TradeCount): boolean {
  return isFewKnown(count) && count.matched >= MANY_PLACES * (Math.min(count.before, count.after) - count.shared);
}

function newIdsOf(counts: Map<string, TradeCount>, mapping: NewIds['mapping']): NewIds {
  const concerned = [...counts].filter(([, count]) => count.matched > 0 && isManyMatched(count));
  const sum = (of: (count: TradeCount) => number) => concerned.reduce((total, [, count]) => total + of(count), 0);
  const lesser = sum((count) => Math.min(count.before, count.after));
  const sharedIds = sum((count) => count.shared);
  return {
    trades: concerned.map(([trade]) => trade),
    holesBefore: sum((count) => count.before),
    holesAfter: sum((count) => count.after),
    sharedIds,
    sharedRate: sharedIds / lesser,
    matched: mapping.length,
    matchRate: mapping.length / (lesser - sharedIds),
    mapping,
  };
}

function indicesWhere(holes: readonly Rec[], accept: (hole: Rec, i: number) => boolean): number[] {
  const indices: number[] = [];
  holes.forEach((hole, i) => {
    if (accept(hole, i)) indices.push(i);
  });
  return indices;
}
