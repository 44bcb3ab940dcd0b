import { kindsOf } from './kinds.js';
import type { Site } from './site.js';

/** Whether the tags of two holes are equal texts; undefined where that is not looked up. */
export type AreEqual = (hole: number, first: number) => boolean | undefined;

/**
 * For each hole that has the tag of an earlier one of its scope the first such one.
 *
 * Tags are found by their hashes, in a table of at least two places for each; texts are compared only where two
 * hashes are equal. Costs nothing for holes without a tag.
 *
 * @param scopes for each kind of holes the number of its scope, below 0 for those that are not looked at
 * @returns `tagged`: for each kind how many of its holes have a tag; `unknown`: how many of these could not be told
 */
export function equalTags(
  site: Site,
  scopes: Float64Array,
  areEqual: AreEqual,
): { firsts: Map<number, number>; tagged: Int32Array; unknown: number } {
  const { list, of } = kindsOf(site);
  const tagged = new Int32Array(list.length);
  const firsts = new Map<number, number>();
  const size = sizeFor(site);
  // A place holds the number of a hole and one more, so that 0 is a free one.
  const holes = new Int32Array(size);
  const hashes = new Int32Array(size);
  let unknown = 0;
  for (const { layout, firstHole } of site.parts) {
    const { tagHash, count } = layout.holes;
    const end = Math.min(count, tagHash.length);
    for (let own = 0; own < end; own++) {
      const hash = tagHash[own];
      if (hash === 0) continue;
      const hole = firstHole + own;
      const kind = of[hole];
      const scope = scopes[kind];
      tagged[kind]++;
      if (scope < 0) continue;
      let place = Math.imul(hash ^ Math.imul(scope, 0x9e3779b1), 0x85ebca6b) >>> 0;
      for (; ; place++) {
        place &= size - 1;
        const first = holes[place] - 1;
        if (first < 0) {
          holes[place] = hole + 1;
          hashes[place] = hash;
          break;
        }
        if (hashes[place] !== hash || scopes[of[first]] !== scope) continue;
        const isEqual = areEqual(hole, first);
        if (isEqual === false) continue;
        if (isEqual) firsts.set(hole, first);
        else unknown++;
        break;
      }
    }
  }
  return { firsts, tagged, unknown };
}

/** A power of two, at least twice the number of holes that may have a tag. */
function sizeFor({ parts }: Site): number {
  let tags = 0;
  for (const { layout } of parts) tags += Math.min(layout.holes.count, layout.holes.tagHash.length);
  return tags === 0 ? 1 : 2 ** Math.ceil(Math.log2(2 * tags));
}
