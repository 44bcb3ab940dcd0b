import type { Report } from '../generated/report.js';
import type { Severity } from '../model/observation.js';
import type { RuleInfo } from '../model/rule.js';
import { csvReport } from '../report/findings-csv.js';
import { githubReport } from '../report/github.js';
import { junitReport } from '../report/junit.js';
import { markdownReport } from '../report/markdown.js';
import { sarifReport } from '../report/sarif.js';

/** Forms of a report that are loaded when they are asked for. */
export type OtherForm = 'sarif' | 'junit' | 'github' | 'markdown' | 'csv';

/** What a form may say besides the report. */
export interface FormFacts {
  rules: readonly RuleInfo[];
  threshold: Severity;
  exitCode: number;
}

/** A report in one of these forms. */
export function reportAs(form: OtherForm, report: Report, { rules, threshold, exitCode }: FormFacts): string {
  switch (form) {
    case 'sarif':
      return sarifReport(report, { rules, exitCode });
    case 'junit':
      return junitReport(report, { threshold });
    case 'github':
      return githubReport(report);
    case 'markdown':
      return markdownReport(report);
    case 'csv':
      return csvReport(report);
  }
}
