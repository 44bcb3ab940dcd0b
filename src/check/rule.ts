import type { Fix, Sight } from '../model/fix.js';
import type { RuleInfo } from '../model/rule.js';
import type { InputsRun, LayoutRun, SiteRun } from './run.js';
import type { Site } from './site.js';
import type { InputLayout } from './site-part.js';

/**
 * A rule that is checked on what was read. Rules of the earlier stages are only a {@link RuleInfo}:
 * reading makes their findings.
 */
export type Rule = RuleInfo & {
  /** For the stages references and records: on one layout, as soon as it is read; may give records up. */
  checkLayout?(run: LayoutRun): void;
  /** For the stage frame: on all layouts, before it is decided which of them are one site. */
  checkInputs?(layouts: readonly InputLayout[], run: InputsRun): void;
  /** For the later stages: on all layouts of one site together. */
  checkSite?(site: Site, run: SiteRun): void;
  /**
   * The one right answer to a finding of the rule, where there is one; undefined where a person has to decide.
   * A fix of the stage schema is taken only where the record then has no fault more.
   */
  fix?(data: Readonly<Record<string, unknown>>, sight: Sight): Fix | undefined;
};
