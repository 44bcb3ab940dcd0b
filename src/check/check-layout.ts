import type { LayoutModel } from '../model/layout-model.js';
import type { Observe } from '../model/observation.js';
import { rules } from './list.js';
import { type Coverage, RuleRun } from './run.js';
import { Site } from './site.js';

/**
 * Runs the rules of the references and the geometry stage over a layout that was read to its end.
 *
 * @param isOff rules that are not wanted
 * @returns what each rule judged; a rule that is off is absent
 */
export function checkLayout(
  layout: LayoutModel,
  observe: Observe,
  isOff: (rule: string) => boolean,
): Map<string, Coverage> {
  const covered = new Map<string, Coverage>();
  for (const rule of rules) {
    if (rule.checkReferences === undefined || isOff(rule.id)) continue;
    const run = new RuleRun(rule.id, observe);
    rule.checkReferences(layout, run);
    covered.set(rule.id, run.coverage);
  }
  // The rules of the references stage give holes up, so the view of the geometry rules comes after them.
  const site = new Site(layout);
  for (const rule of rules) {
    if (rule.checkSite === undefined || isOff(rule.id)) continue;
    const run = new RuleRun(rule.id, observe);
    rule.checkSite(site, run);
    covered.set(rule.id, run.coverage);
  }
  return covered;
}
