import { CONTROL_BROKEN, type ControlSet, controlSets, isControlBroken } from './control-sets.js';
import type { Said, SiteRun } from './run.js';
import type { Site } from './site.js';

/** What a rule says of a set of control: nothing wrong, why it is left out, or what is wrong. */
export type OfSet = 'passed' | { leftOut: string } | { finding: Said };

/**
 * Judges the control of each layout of a site, set by set. A finding stands at the first point of its set.
 *
 * A set of which `judge` says undefined is none of the rule's business and is not counted. Nor is one that an
 * earlier layout of the site has alike: trades that share control would all hear the same of it. Control of
 * which a record is broken is left out as a whole: that record might be what is missing.
 */
export function judgeControl(site: Site, run: SiteRun, judge: (set: ControlSet) => OfSet | undefined): void {
  const seen = new Set<string>();
  for (const part of site.parts) {
    if (isControlBroken(part.layout)) {
      run.leftOut(CONTROL_BROKEN);
      continue;
    }
    for (const set of controlSets(part.layout)) {
      const key = keyOf(set);
      const said = seen.has(key) ? undefined : judge(set);
      seen.add(key);
      if (said === undefined) continue;
      if (said !== 'passed' && 'leftOut' in said) {
        run.leftOut(said.leftOut);
        continue;
      }
      run.judged(1);
      if (said !== 'passed') run.atRecord(part, 'control', set.first.index, said.finding);
    }
  }
}

function keyOf({ level, places }: ControlSet): string {
  return JSON.stringify([level, places.map(({ record: { id, point, sigmaPlan } }) => [id, point, sigmaPlan])]);
}
