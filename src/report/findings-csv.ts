import type { Finding, Report } from '../generated/report.js';
import type { FormPhrases } from '../model/form-phrases.js';
import { guardFormula } from '../model/formula-guard.js';
import type { Phrases } from '../model/language.js';
import { ByteBudget } from './byte-budget.js';
import { closingLines } from './closing-lines.js';
import type { FormOptions } from './form-options.js';
import { gravestFirst } from './gravest-first.js';
import { english } from './languages/en.js';
import { englishForms } from './languages/forms-en.js';
import { leftOutInWords } from './left-out.js';
import { printable } from '../model/printable.js';
import { unjudgedLines } from './unjudged-lines.js';

/** Most findings in a table: a spreadsheet holds 1,048,576 rows (common practice). */
export const CSV_MOST_FINDINGS = 1_000_000;
/** Most bytes of all rows of findings. */
export const CSV_MOST_BYTES = 100_000_000;

/** Places of columns that notes fill. */
const SEVERITY = 3;
const MESSAGE = 11;

/**
 * The findings of a report as a table for spreadsheets (RFC 4180, comma, CRLF): a header, a row for each
 * finding, the gravest first, then rows of the severity `note` without a rule: the two verdicts, what
 * was set, what was not judged and why, what is left out, the caution.
 *
 * The last three columns hold reason, owner and last day where a baseline accepts the finding. Texts that a
 * spreadsheet would take for a formula are guarded by an apostrophe, control characters are written as escapes;
 * numbers stand as they are. At most {@link CSV_MOST_FINDINGS} findings and {@link CSV_MOST_BYTES} bytes of them.
 */
export function csvReport(report: Report, { phrases = english }: FormOptions = {}): string {
  const forms = phrases.forms ?? englishForms;
  const { columns, note } = forms.csv;
  const classOf = new Map(report.causes.map((cause) => [cause.id, cause.class]));
  const rows = new ByteBudget(CSV_MOST_FINDINGS, CSV_MOST_BYTES);
  for (const finding of gravestFirst(report.findings)) {
    if (!rows.take(line(cellsOf(finding, report, { ruleClass: classOf.get(finding.cause), phrases, forms })))) break;
  }
  const own = [...unjudgedLines(report, phrases), ...leftOutInWords(report, rows.pieces.length, forms)];
  const notes = closingLines(report, own, phrases).map((said) =>
    line(columns.map((_, k) => (k === SEVERITY ? note : k === MESSAGE ? text(said) : ''))),
  );
  return [line(columns), ...rows.pieces, ...notes].join('');
}

interface Telling {
  ruleClass?: string;
  phrases: Phrases;
  forms: FormPhrases;
}

function cellsOf(
  finding: Finding,
  { inputs, baseline }: Report,
  { ruleClass = '', phrases, forms }: Telling,
): string[] {
  const { rule, severity, place, id = '', tag = '', message, cause, accepted } = finding;
  const entry = accepted === undefined ? undefined : baseline?.entries[accepted - 1];
  const { reason = accepted === undefined ? '' : forms.entry(accepted), owner = '', expires = '' } = entry ?? {};
  const name = inputs[finding.input - 1]?.name ?? forms.input(finding.input);
  return [
    ...[name, rule, ruleClass, phrases.severity[severity]].map(text),
    number(cause),
    ...[id, tag, place.pointer ?? ''].map(text),
    ...[place.line, place.column, place.row ?? finding.source?.row].map(number),
    ...[message, reason, owner, expires].map(text),
  ];
}

function text(value: string): string {
  return guardFormula(printable(value));
}

function number(value: number | undefined): string {
  return value === undefined ? '' : String(value);
}

function line(cells: readonly string[]): string {
  return `${cells.map((cell) => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(',')}\r\n`;
}
