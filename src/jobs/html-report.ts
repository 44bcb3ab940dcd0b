import type { Report } from '../generated/report.js';
import { rules } from '../check/list.js';
import { htmlReport, type Paper } from '../report/html/html-report.js';
import type { ClosedInput } from './checked-input.js';

/**
 * A report for people as one HTML file, in pieces: what was checked, what was found, plans and schedule.
 *
 * @param inputs what was checked, in the order of the report; those that could not be read are undefined
 */
export function htmlReportOf(
  report: Report,
  inputs: readonly (ClosedInput | undefined)[],
  paper?: Paper,
): Iterable<string> {
  const layouts = inputs.flatMap((input, index) =>
    input?.model === undefined
      ? []
      : [{ input: index, model: input.model, tagOf: (hole: number) => input.hole(hole).tag }],
  );
  const byId = new Map(rules.map((rule) => [rule.id, rule]));
  return htmlReport({ report, layouts, ruleOf: (id) => byId.get(id) }, paper);
}
