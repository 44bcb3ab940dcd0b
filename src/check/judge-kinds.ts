import { type Kind, kindsOf } from './kinds.js';
import type { Said, SiteRun } from './run.js';
import type { Site } from './site.js';

/** What a rule says of all holes of a kind: nothing wrong, why they are left out, or what is wrong with each. */
export type OfKind = 'passed' | { leftOut: string } | { finding: Said };

/** What is said of a kind: that it is left out where an earlier stage has found it broken and the rule is about it. */
export function unlessOut<T>({ out }: Kind, said: T | undefined): T | { leftOut: string } | undefined {
  return out === undefined || said === undefined ? said : { leftOut: out };
}

/**
 * Judges holes by what they refer to, once for each kind.
 *
 * Holes that an earlier stage has found broken are left out. A kind of which `judge` says undefined is none
 * of the rule's business and is not counted, broken or not. Costs nothing a hole where nothing is wrong.
 */
export function judgeKinds(site: Site, run: SiteRun, judge: (kind: Kind) => OfKind | undefined): void {
  const { list, of } = kindsOf(site);
  const found = list.map((kind) => {
    const said = unlessOut(kind, judge(kind));
    if (said === undefined) return undefined;
    if (said === 'passed' || 'finding' in said) run.judged(kind.count);
    else run.leftOut(said.leftOut, kind.count);
    return said === 'passed' || 'leftOut' in said ? undefined : said.finding;
  });
  if (found.every((said) => said === undefined)) return;
  for (let i = 0; i < site.holeCount; i++) {
    const said = found[of[i]];
    if (said !== undefined) run.atHole(i, said);
  }
}
