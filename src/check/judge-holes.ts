import { type OfKind, unlessOut } from './judge-kinds.js';
import { type Kind, kindsOf } from './kinds.js';
import type { SiteRun } from './run.js';
import type { Site } from './site.js';

/**
 * Judges holes: those of a kind at once where all of them fare alike, else one by one.
 *
 * Holes that an earlier stage has found broken are left out. A kind or a hole of which a function says undefined
 * is none of the rule's business and is not counted, broken or not. Costs nothing a hole where all kinds are judged at once.
 *
 * @param ofKind says `{ each }` with what it made ready, where the holes of the kind differ
 * @param ofHole judges one of those
 */
export function judgeHoles<T>(
  site: Site,
  run: SiteRun,
  ofKind: (kind: Kind) => OfKind | { each: T } | undefined,
  ofHole: (i: number, ready: T) => OfKind | undefined,
): void {
  const { list, of } = kindsOf(site);
  const saidOfKind = list.map((kind) => {
    const said = unlessOut(kind, ofKind(kind));
    if (said === 'passed') run.judged(kind.count);
    else if (said !== undefined && 'leftOut' in said) run.leftOut(said.leftOut, kind.count);
    else return said;
    return undefined;
  });
  if (saidOfKind.every((said) => said === undefined)) return;
  let judged = 0;
  for (let i = 0; i < site.holeCount; i++) {
    const common = saidOfKind[of[i]];
    if (common === undefined) continue;
    const said = 'each' in common ? ofHole(i, common.each) : common;
    if (said === undefined) continue;
    if (said !== 'passed' && 'leftOut' in said) {
      run.leftOut(said.leftOut);
      continue;
    }
    judged++;
    if (said !== 'passed') run.atHole(i, said.finding);
  }
  run.judged(judged);
}
