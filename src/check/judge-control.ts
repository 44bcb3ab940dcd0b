import { CONTROL_BROKEN, type ControlSet, controlSets, isControlBroken } from './control-sets.js';
import type { Said, SiteRun } from './run.js';
import type { Site } from './site.js';

/** What a rule says of a set of control: nothing wrong, why it is left out, or what is wrong. */
export type OfSet = 'passed' | { leftOut: string } | { finding: Said };

/**
 * Judges the control of each layout of a site, set by set. A finding stands at the first point of its set.
 *
 * A set of which `judge` says undefined is none of the rule's business and is not counted. Control of which a
 * record is broken is left out as a whole: that record might be what is missing.
 */
export function judgeControl(site: Site, run: SiteRun, judge: (set: ControlSet) => OfSet | undefined): void {
  for (const part of site.parts) {
    if (isControlBroken(part.layout)) {
      run.leftOut(CONTROL_BROKEN);
      continue;
    }
    for (const set of controlSets(part.layout)) {
      const said = judge(set);
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
