import { rules } from '../check/list.js';
import type { Covered } from '../check/check-layout.js';
import type { Rule } from '../check/rule.js';
import type { Coverage } from '../check/run.js';
import type { Coverage as CoverageRow, Report } from '../generated/report.js';
import type { KeptCause } from '../model/collector.js';
import { OFF } from '../model/report-words.js';
import type { Stage } from '../model/rule.js';
import type { CheckedInput, Hindrance } from './checked-input.js';

const classOf = new Map(rules.map((rule) => [rule.id, rule.class]));

/** Rules that say that something could not be judged; they do not make a verdict fail. */
const UNJUDGED = new Set(['unsupported-version', 'required-extension-unknown']);

const WHY: Readonly<Record<Hindrance, string>> = {
  text: 'the text could not be read to its end',
  version: 'the version of AHX is not known',
  extension: 'a required extension is not known',
  table: 'the table could not be read with the profile',
  kind: 'the kind of the document is not known',
  unreadable: 'an input cannot be read',
};

/** What keeps even the form of an input from being judged to its end. */
const CUTS: readonly Hindrance[] = ['text', 'table', 'kind', 'unreadable'];

/** The two verdicts; see section 4.4 of the specification. */
export function verdictOf(causes: readonly KeptCause[], inputs: readonly CheckedInput[]): Report['verdict'] {
  const hasError = (isFormat: boolean) =>
    causes.some(
      ({ rule, severity, accepted }) =>
        accepted === undefined &&
        severity === 'error' &&
        !UNJUDGED.has(rule) &&
        (classOf.get(rule) === 'format') === isFormat,
    );
  const isHindered = inputs.some(({ hindrances }) => hindrances.size > 0);
  const isPartial = isHindered || inputs.some(({ hasBrokenRecords }) => hasBrokenRecords);
  return {
    format: hasError(true) ? 'fail' : isHindered ? 'cannot-judge' : 'pass',
    site: hasError(false) ? 'fail' : isPartial ? 'cannot-judge' : 'pass',
  };
}

/**
 * What became of a rule over all inputs.
 *
 * @param covered what the rules of the later stages judged, layout by layout and site by site
 */
export function coverageOf(
  rule: Rule,
  findings: number,
  isOff: boolean,
  inputs: readonly CheckedInput[],
  covered: readonly Covered[],
): CoverageRow {
  const row = (outcome: CoverageRow['outcome'], rest: Partial<CoverageRow> = {}): CoverageRow => ({
    rule: rule.id,
    class: rule.class,
    outcome,
    ...rest,
    findings,
  });
  if (isOff) return row('not-run', { reason: OFF });
  const own = inputs.filter((input) => concerns(rule, input));
  if (own.length === 0) return row(findings > 0 ? 'failed' : 'not-applicable');
  const isLater = [rule.checkLayout, rule.checkInputs, rule.checkSite].some((check) => check !== undefined);
  if (!isLater) return firstStage(own, findings, row);
  const kept = own.filter((input) => input.judged === undefined);
  const why = [...new Set(kept.flatMap((input) => [...input.hindrances]))].map((h) => WHY[h]);
  if (kept.length === own.length) return row('not-run', { reason: why.join('; ') });
  const ran = covered.flatMap((rules) => rules.get(rule.id) ?? []);
  return laterStage(ran, why, findings, row);
}

/** A rule of reading: it judges what was read, and says why where that was not all. */
function firstStage(
  own: readonly CheckedInput[],
  findings: number,
  row: (outcome: CoverageRow['outcome'], rest?: Partial<CoverageRow>) => CoverageRow,
): CoverageRow {
  const cut = own.filter(({ hindrances }) => CUTS.some((hindrance) => hindrances.has(hindrance)));
  const whole = own.filter((input) => !cut.includes(input));
  const judged = whole.reduce((sum, input) => sum + input.records, 0);
  const why = [...new Set(cut.flatMap(({ hindrances }) => [...hindrances]))].map((hindrance) => WHY[hindrance]);
  const rest = {
    judged,
    of: own.reduce((sum, input) => sum + input.records, 0),
    ...(why.length > 0 && { reason: why.join('; ') }),
  };
  if (findings > 0) return row('failed', rest);
  return row(whole.length > 0 ? 'passed' : 'not-run', rest);
}

function laterStage(
  ran: readonly Coverage[],
  why: readonly string[],
  findings: number,
  row: (outcome: CoverageRow['outcome'], rest?: Partial<CoverageRow>) => CoverageRow,
): CoverageRow {
  let judged = 0;
  let of = 0;
  const leftOut = new Map<string, number>();
  for (const coverage of ran) {
    judged += coverage.judged;
    of += coverage.of;
    for (const [reason, count] of coverage.leftOut) leftOut.set(reason, (leftOut.get(reason) ?? 0) + count);
  }
  const reasons = [...[...leftOut].map(([reason, count]) => `${count} left out: ${reason}`), ...why];
  const rest = { judged, of, ...(reasons.length > 0 && { reason: reasons.join('; ') }) };
  if (findings > 0) return row('failed', rest);
  if (of === 0) return row('not-applicable', rest);
  return row(judged > 0 ? 'passed' : 'not-run', rest);
}

/** Stages that every document goes through. */
const EARLY: ReadonlySet<Stage> = new Set(['bytes', 'JSON', 'schema']);

/** Whether a rule is about an input of this form and kind at all. */
function concerns(rule: Rule, { summary }: CheckedInput): boolean {
  const isTable = summary.format === 'csv';
  if (rule.id === 'profile-unfit' && summary.kind === 'column-profile') return true;
  if (rule.stage === 'table') return isTable;
  if (!EARLY.has(rule.stage)) return summary.kind === 'layout';
  return !isTable || rule.stage === 'schema' || rule.id === 'not-utf8';
}
