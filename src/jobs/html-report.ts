import { diffLayouts } from '../events/diff-layouts.js';
import type { Report } from '../generated/report.js';
import type { LayoutSource } from '../model/layout-source.js';
import { rules } from '../check/list.js';
import type { HtmlLanguage } from '../report/html/html-phrases.js';
import { htmlReport, type Paper } from '../report/html/html-report.js';
import { htmlEnglish } from '../report/html/phrases-en.js';
import type { HtmlReportParts } from '../report/html/reported-layout.js';
import { layoutForm } from '../write/layout-forms.js';
import type { ClosedInput } from './checked-input.js';

/** What is said of the page besides. */
export interface HtmlReportOptions {
  /** Paper to print on; absent: what the printer has. */
  paper?: Paper;
  /** Revisions before, to tell what was changed; each is held against the inputs of its layout id. */
  parents?: readonly LayoutSource[];
  /**
   * Language of the page, such as `htmlEs` from `anchor-hole-exchange/languages/html-es`; absent: English. The check
   * should be given the same, since its messages stay as they are.
   */
  language?: HtmlLanguage;
}

/**
 * A report for people as one HTML file, in pieces: what was checked, what was found, plans and schedule.
 *
 * @param inputs what was checked, in the order of the report; those that could not be read are undefined
 */
export function htmlReportOf(
  report: Report,
  inputs: readonly (ClosedInput | undefined)[],
  { paper, parents = [], language = htmlEnglish }: HtmlReportOptions = {},
): Iterable<string> {
  const layouts = inputs.flatMap((input, index) =>
    input?.model === undefined
      ? []
      : [{ input: index, model: input.model, tagOf: (hole: number) => input.hole(hole).tag }],
  );
  const byId = new Map(rules.map((rule) => [rule.id, rule]));
  const sources = inputs.flatMap((input) => input?.layout() ?? []);
  const changes = parents.flatMap((parent) =>
    sources.filter(({ header }) => header.id === parent.header.id).map((source) => diffLayouts(parent, source)),
  );
  const compared = new Set(sources.map(({ header }) => header.id));
  const ids = new Set(inputs.map((input) => input?.summary.id));
  const uncompared = parents.map(({ header }) => header.id).filter((id) => ids.has(id) && !compared.has(id));
  const parts: HtmlReportParts = {
    report,
    layouts,
    ruleOf: (id) => byId.get(id),
    changes,
    uncompared,
    lengthForm: layoutForm,
    language,
  };
  return htmlReport(parts, paper);
}
