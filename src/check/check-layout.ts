import type { LayoutModel } from '../model/layout-model.js';
import type { Observe } from '../model/observation.js';
import { rules } from './list.js';
import { type Coverage, LayoutRun, type Settings } from './run.js';

/** What each rule judged; a rule that is off or did not run is absent. */
export type Covered = Map<string, Coverage>;

/** Runs the rules of the stages references and records over a layout that was read to its end. */
export function checkLayout(layout: LayoutModel, observe: Observe, settings: Settings): Covered {
  const covered: Covered = new Map();
  for (const rule of rules) {
    if (rule.checkLayout === undefined || settings.severityOf(rule.id) === 'off') continue;
    const run = new LayoutRun(rule, settings, layout, observe);
    rule.checkLayout(run);
    covered.set(rule.id, run.coverage);
  }
  return covered;
}
