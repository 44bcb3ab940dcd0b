import { idOf, type Rec } from './records.js';

/** Which record of one layout is which of another: indices, or -1. */
export interface Pairs {
  /** For each record of the later layout the one of the earlier. */
  before: Int32Array;
  /** For each record of the earlier layout the one of the later. */
  after: Int32Array;
}

/** Pairs records of equal ids; where an id is there several times, in their order. Linear. */
export function pairById(before: readonly Rec[], after: readonly Rec[]): Pairs {
  const pairs: Pairs = {
    before: new Int32Array(after.length).fill(-1),
    after: new Int32Array(before.length).fill(-1),
  };
  const first = new Map<string, number>();
  const next = new Int32Array(before.length).fill(-1);
  for (let i = before.length - 1; i >= 0; i--) {
    const id = idOf(before[i]);
    next[i] = first.get(id) ?? -1;
    first.set(id, i);
  }
  for (let j = 0; j < after.length; j++) {
    const id = idOf(after[j]);
    const i = first.get(id) ?? -1;
    if (i < 0) continue;
    first.set(id, next[i]);
    pairs.before[j] = i;
    pairs.after[i] = j;
  }
  return pairs;
}
