/**
 * The SDK of AHX, the Anchor Hole Exchange: check and convert layouts of anchor holes.
 *
 * Nothing here does input or output, prints, or asks a clock: bytes, time and hashes are arguments.
 *
 * @packageDocumentation
 */
export * from './jobs/check.js';
export type { CheckedInput, HoleIdentity } from './jobs/checked-input.js';
export { convert, type Conversion, type ConvertTarget, lossInWords, whyNot } from './jobs/convert.js';
export type { ByteSource } from './model/byte-source.js';
export type { LayoutSource, Loss } from './model/layout-source.js';
export type { Severity } from './model/observation.js';
export type { Purpose, RuleClass, RuleExample, RuleInfo, Say, Stage } from './model/rule.js';
export { rules } from './check/list.js';
export { jsonReport } from './report/json.js';
export { textReport, type TextOptions, verdictLines } from './report/text.js';
export { SCHEMA_VERSION } from './generated/schema-tables.js';
export type { ColumnProfile } from './generated/column-profile.js';
export type { Hole, HoleType, Layout } from './generated/layout.js';
export type { Report } from './generated/report.js';
