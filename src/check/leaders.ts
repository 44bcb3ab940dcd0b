import { bucketMask } from '../geometry/near-pairs.js';
import { kindsOf } from './kinds.js';
import type { Site } from './site.js';

const made = new WeakMap<Site, Int32Array>();

/**
 * For each hole the first one before it that no rule about two holes can tell apart from it: same place, kind,
 * own diameter and depth, and group if that has a spacing of its own. -1 for a hole that has none before it.
 *
 * A list without coordinates has all its holes at one place; each pair of them would be looked at.
 */
export function leadersOf(site: Site): Int32Array {
  const known = made.get(site) ?? findLeaders(site);
  made.set(site, known);
  return known;
}

function findLeaders(site: Site): Int32Array {
  const { groups, holeCount, ownHeights } = site;
  const { x, y } = site.points;
  const kinds = kindsOf(site);
  const tells = Uint8Array.from(groups.records, (group) => (group && group.designSpacing === undefined ? 0 : 1));
  const own = (i: number): [number, number] => {
    const { layout, firstHole } = site.partOf(i);
    return [layout.holes.diameterOf(i - firstHole), layout.holes.depthOf(i - firstHole)];
  };
  const groupOf = (i: number) => {
    const group = groups.nameOf(i);
    return group >= 0 && tells[group] !== 0 ? group : -1;
  };
  const isSame = (i: number, j: number): boolean => {
    if (x[i] !== x[j] || y[i] !== y[j] || kinds.of[i] !== kinds.of[j] || groupOf(i) !== groupOf(j)) return false;
    if (ownHeights[i] !== ownHeights[j] && kinds.at(i).hasHeight) return false;
    const { hasDiameter, hasDepth } = kinds.at(i);
    if (!hasDiameter && !hasDepth) return true;
    const [a, b] = [own(i), own(j)];
    return Object.is(a[0], b[0]) && Object.is(a[1], b[1]);
  };
  const leaderOf = new Int32Array(holeCount).fill(-1);
  const mask = bucketMask(holeCount);
  const table = new Int32Array(mask + 1).fill(-1);
  const place = new Float64Array(3);
  const words = new Int32Array(place.buffer);
  for (let i = 0; i < holeCount; i++) {
    // -0 and 0 are one place.
    place[0] = x[i] + 0;
    place[1] = y[i] + 0;
    place[2] = ownHeights[i] + 0;
    let hash = kinds.of[i];
    for (let k = 0; k < 6; k++) hash = Math.imul(hash ^ words[k] ^ (hash >>> 15), 0x2c1b3c6d);
    hash ^= hash >>> 13;
    let slot = hash & mask;
    while (table[slot] >= 0 && !isSame(i, table[slot])) slot = (slot + 1) & mask;
    if (table[slot] >= 0) leaderOf[i] = table[slot];
    else table[slot] = i;
  }
  return leaderOf;
}
