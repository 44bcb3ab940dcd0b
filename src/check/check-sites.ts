import type { LayoutModel } from '../model/layout-model.js';
import type { Covered } from './check-layout.js';
import { Doubts } from './doubts.js';
import { rules } from './list.js';
import { InputsRun, type Settings, SiteRun } from './run.js';
import { Site } from './site.js';
import type { InputLayout } from './site-part.js';
import { sitesOf } from './sites-of.js';

/**
 * Runs the rules of the stages from frame on over layouts that went through the stages before.
 *
 * Layouts of one frame are one site and judged together; what cannot be compared is judged by itself.
 *
 * @returns what each rule judged, once for all layouts and once for each site, and the layouts whose unit or
 *   frame is in doubt, so that no later stage judged their holes
 */
export function checkSites(
  layouts: readonly InputLayout[],
  settings: Settings,
): { covered: Covered[]; inDoubt: ReadonlySet<LayoutModel> } {
  const ofAll: Covered = new Map();
  for (const rule of rules) {
    if (rule.checkInputs === undefined || settings.severityOf(rule.id) === 'off') continue;
    const run = new InputsRun(rule, settings);
    rule.checkInputs(layouts, run);
    ofAll.set(rule.id, run.coverage);
  }
  const inDoubt = new Set<LayoutModel>();
  const ofSites = sitesOf(layouts).map((parts) => checkSite(parts, settings, inDoubt));
  return { covered: [ofAll, ...ofSites], inDoubt };
}

function checkSite(parts: readonly InputLayout[], settings: Settings, inDoubt: Set<LayoutModel>): Covered {
  const covered: Covered = new Map();
  let site = new Site(parts);
  const doubts = new Doubts(inDoubt, site.holeCount);
  for (const rule of rules) {
    if (rule.checkSite === undefined || settings.severityOf(rule.id) === 'off') continue;
    const { count } = doubts;
    const run = new SiteRun(rule, settings, site, doubts);
    rule.checkSite(site, run);
    run.end();
    covered.set(rule.id, run.coverage);
    if (doubts.count > count) site = new Site(parts, doubts);
  }
  return covered;
}
