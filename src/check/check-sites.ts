import type { Georeference } from '../generated/layout.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { Covered } from './check-layout.js';
import { rules } from './list.js';
import type { Rule } from './rule.js';
import { InputsRun, type Settings, SiteRun } from './run.js';
import { Site } from './site.js';
import type { InputLayout } from './site-part.js';

/**
 * Runs the rules of the stages from frame on over layouts that went through the stages before.
 *
 * Layouts of one frame are one site and judged together; what cannot be compared is judged by itself.
 *
 * @returns what each rule judged, once for all layouts and once for each site
 */
export function checkSites(layouts: readonly InputLayout[], settings: Settings): Covered[] {
  const ofAll: Covered = new Map();
  for (const rule of rules) {
    if (rule.checkInputs === undefined || settings.severityOf(rule.id) === 'off') continue;
    const run = new InputsRun(rule, settings);
    rule.checkInputs(layouts, run);
    ofAll.set(rule.id, run.coverage);
  }
  return [ofAll, ...sitesOf(layouts).map((parts) => checkSite(parts, settings))];
}

function checkSite(parts: readonly InputLayout[], settings: Settings): Covered {
  const covered: Covered = new Map();
  const inDoubt = new Set<LayoutModel>();
  const first = new Site(parts);
  const run = (site: Site, isWanted: (rule: Rule) => boolean) => {
    for (const rule of rules) {
      if (rule.checkSite === undefined || settings.severityOf(rule.id) === 'off' || !isWanted(rule)) continue;
      const ruleRun = new SiteRun(rule, settings, site, inDoubt);
      rule.checkSite(site, ruleRun);
      covered.set(rule.id, ruleRun.coverage);
    }
  };
  run(first, ({ stage }) => stage === 'frame');
  const site = inDoubt.size === 0 ? first : new Site(parts, inDoubt);
  run(site, ({ stage }) => stage !== 'frame');
  return covered;
}

/** Sorts layouts into sites: each goes to the first site with which it can be compared. */
export function sitesOf(layouts: readonly InputLayout[]): InputLayout[][] {
  const sites: InputLayout[][] = [];
  for (const part of layouts) {
    const site = sites.find((parts) => parts.every(({ layout }) => whyApart(layout, part.layout) === undefined));
    if (site === undefined) sites.push([part]);
    else site.push(part);
  }
  return sites;
}

/**
 * Why two layouts are not judged together: they are one layout twice, such as two revisions of it, or
 * their coordinates are of different frames.
 */
export function whyApart(
  a: LayoutModel,
  b: LayoutModel,
): 'same layout' | 'name' | 'height datum' | 'georeference' | undefined {
  if (a.header.id !== undefined && a.header.id === b.header.id) return 'same layout';
  const { frame } = a.header;
  const other = b.header.frame;
  // A frame that broke the schema is nobody's; the header is then broken and the verdict cannot be a pass.
  if (frame === undefined || other === undefined || frame.name !== other.name) return 'name';
  if (frame.heightDatum !== other.heightDatum) return 'height datum';
  return isSamePlace(frame.georeference, other.georeference) ? undefined : 'georeference';
}

/** Where only one is georeferenced, nothing speaks against the name. */
function isSamePlace(a: Georeference | undefined, b: Georeference | undefined): boolean {
  if (a === undefined || b === undefined) return true;
  const numbers = ({ eastings, northings, height, xAxisAbscissa = 1, xAxisOrdinate = 0, scale = 1 }: Georeference) => [
    eastings,
    northings,
    height,
    Math.atan2(xAxisOrdinate, xAxisAbscissa),
    scale,
  ];
  return a.crs === b.crs && numbers(a).every((value, k) => Object.is(value, numbers(b)[k]));
}
