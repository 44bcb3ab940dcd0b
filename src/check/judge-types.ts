import type { HoleType } from '../generated/layout.js';
import { kindsOf } from './kinds.js';
import type { Said, SiteRun } from './run.js';
import { IN_DOUBT, type Site } from './site.js';

/** What a rule says of a hole type: nothing wrong, why it is left out, or what is wrong. */
export type OfType = 'passed' | { leftOut: string } | { finding: Said };

/**
 * Judges the hole types of all layouts of a site, record by record.
 *
 * One of which `judge` says undefined is none of the rule's business and is not counted. A type of a layout whose
 * unit is in doubt is left out where the rule looks at lengths.
 */
export function judgeTypes(
  site: Site,
  run: SiteRun,
  { readsLengths }: { readsLengths: boolean },
  judge: (type: HoleType) => OfType | undefined,
): void {
  for (const part of site.parts) {
    part.layout.collection('holeTypes').judged.forEach((type, index) => {
      let said = type && judge(type);
      if (said === undefined) return;
      if (readsLengths && run.isInDoubt(part)) said = { leftOut: IN_DOUBT };
      if (said === 'passed') run.judged(1);
      else if ('leftOut' in said) run.leftOut(said.leftOut);
      else {
        run.judged(1);
        run.atRecord(part, 'holeTypes', index, said.finding);
      }
    });
  }
}

/** The hole types that a hole names. */
export function typesInUse(site: Site): ReadonlySet<HoleType> {
  return new Set(kindsOf(site).list.flatMap(({ type }) => type ?? []));
}
