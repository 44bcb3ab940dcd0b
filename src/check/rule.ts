import type { LayoutModel } from '../model/layout-model.js';
import type { RuleInfo } from '../model/rule.js';
import type { RuleRun } from './run.js';
import type { Site } from './site.js';

/**
 * A rule that is checked on a whole layout. Rules of the earlier stages are only a {@link RuleInfo}:
 * reading makes their findings.
 */
export type Rule = RuleInfo & {
  /** For the references stage. */
  checkReferences?(layout: LayoutModel, run: RuleRun): void;
  /** For the geometry stage. */
  checkSite?(site: Site, run: RuleRun): void;
};
