import type { Report } from '../generated/report.js';
import type { Phrases } from '../model/language.js';
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
  /** Sentences in the language of the report; absent: English. */
  phrases?: Phrases;
}

/** A report in one of these forms. */
export function reportAs(form: OtherForm, report: Report, facts: FormFacts): string {
  switch (form) {
    case 'sarif':
      return sarifReport(report, facts);
    case 'junit':
      return junitReport(report, facts);
    case 'github':
      return githubReport(report, facts);
    case 'markdown':
      return markdownReport(report, facts);
    case 'csv':
      return csvReport(report, facts);
  }
}
