import {
  CONTROL_BROKEN,
  type ControlSet,
  controlSets,
  isControlBroken,
  TOO_MANY_SETS,
  tooManySets,
} from './control-sets.js';
import type { Said, SiteRun } from './run.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';

/** What a rule says of a set of control: nothing wrong, why it is left out, or what is wrong. */
export type OfSet = 'passed' | { leftOut: string } | { finding: Said };

/** The sets of a site that are judged, and why others are not. */
interface JudgedSets {
  sets: { part: SitePart; set: ControlSet }[];
  leftOut: [reason: string, count: number][];
}

/** Several rules ask for the same sets. */
const made = new WeakMap<Site, JudgedSets>();

/**
 * Judges the control of each layout of a site, set by set. A finding stands at the first point of its set.
 *
 * A set of which `judge` says undefined is none of the rule's business and is not counted. Nor is one that an
 * earlier layout of the site has alike: trades that share control would all hear the same of it. Control of
 * which a record is broken is left out as a whole: that record might be what is missing.
 */
export function judgeControl(site: Site, run: SiteRun, judge: (set: ControlSet) => OfSet | undefined): void {
  const { sets, leftOut } = made.get(site) ?? newSets(site);
  for (const [reason, count] of leftOut) run.leftOut(reason, count);
  for (const { part, set } of sets) {
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

function newSets(site: Site): JudgedSets {
  const found: JudgedSets = { sets: [], leftOut: [] };
  const seen = new Map<string, ControlSet[]>();
  for (const part of site.parts) {
    const tooMany = tooManySets(part.layout);
    if (isControlBroken(part.layout)) found.leftOut.push([CONTROL_BROKEN, 1]);
    else if (tooMany > 0) found.leftOut.push([TOO_MANY_SETS, tooMany]);
    else
      for (const set of controlSets(part.layout)) {
        const key = JSON.stringify([set.level, set.places.length, set.first.record.id]);
        const before = seen.get(key) ?? [];
        if (before.some((other) => isAlike(set, other))) continue;
        seen.set(key, [...before, set]);
        found.sets.push({ part, set });
      }
  }
  made.set(site, found);
  return found;
}

/** Whether two sets have the same places, with id, coordinates and sigma. */
function isAlike({ places }: ControlSet, { places: others }: ControlSet): boolean {
  return places.every(({ record: a }, k) => {
    const { record: b } = others[k];
    const isSamePoint = a.point.length === b.point.length && a.point.every((value, j) => value === b.point[j]);
    return isSamePoint && a.id === b.id && a.sigmaPlan === b.sigmaPlan;
  });
}
