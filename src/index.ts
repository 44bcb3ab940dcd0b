/**
 * The SDK of AHX, the Anchor Hole Exchange: check and convert layouts of anchor holes.
 *
 * Nothing here does input or output, prints, or asks a clock: bytes, time and hashes are arguments.
 *
 * @packageDocumentation
 */

export { ruleCatalogue } from './check/list.js';
export type { PlanWords } from './draw/plan-words.js';
export type { TextEdit } from './edit/text-edit.js';
export { unifiedDiff } from './edit/unified-diff.js';
export { diffLayouts } from './events/diff-layouts.js';
export type * from './events/layout-changes.js';
export type { GridDimensionWords } from './frame/grid-dimension-text.js';
export type * from './generated/baseline.js';
export type * from './generated/column-profile.js';
export type * from './generated/config.js';
export type * from './generated/layout.js';
export type * from './generated/report.js';
export { SCHEMA_VERSION } from './generated/schema-tables.js';
export * from './jobs/check.js';
export type { ClosedInput, HoleIdentity, InputSummary } from './jobs/checked-input.js';
export {
  type Conversion,
  type ConvertTarget,
  convert,
  findLostRows,
  type LostRows,
  lossInWords,
  lossLines,
  TableLosses,
  type TableOutcome,
  whyNot,
} from './jobs/convert.js';
export {
  FixFault,
  type Fixing,
  type FixOptions,
  fix,
  fixInRounds,
  MOST_FINDINGS,
  type RefusedFix,
} from './jobs/fix.js';
export { type HtmlReportOptions, htmlReportOf } from './jobs/html-report.js';
export type { ByteSource } from './model/byte-source.js';
export type { FixOperation } from './model/fix.js';
export type { CsvPhrases, FormPhrases, MarkdownPhrases } from './model/form-phrases.js';
export type { Language, Phrases, RuleWords, SiteNumbers } from './model/language.js';
export type { LayoutSource, Loss } from './model/layout-source.js';
export type { Severity } from './model/observation.js';
export type {
  Purpose,
  RuleClass,
  RuleExample,
  RuleInfo,
  RuleOption,
  Say,
  SeverityByPurpose,
  Stage,
} from './model/rule.js';
export { severityFor } from './model/rule.js';
export { type Accepting, acceptFindings, pruneBaseline } from './policy/accept.js';
export { BadBaseline } from './policy/baseline.js';
export { type ConfigOptions, configOptions } from './policy/config-options.js';
export { CSV_MOST_BYTES, CSV_MOST_FINDINGS, csvReport } from './report/findings-csv.js';
export type { FormOptions } from './report/form-options.js';
export { GITHUB_MOST_ANNOTATIONS, githubReport } from './report/github.js';
export type * from './report/html/html-phrases.js';
export type { Paper } from './report/html/html-report.js';
export { jsonReport } from './report/json.js';
export { JUNIT_MOST_TEXT, type JUnitOptions, junitReport } from './report/junit.js';
export { MARKDOWN_MOST_BYTES, markdownReport } from './report/markdown.js';
export { SARIF_MOST_BYTES, SARIF_MOST_RESULTS, type SarifOptions, sarifReport } from './report/sarif.js';
export { type TextOptions, textReport, verdictLines } from './report/text.js';
