import type { Finding, Report } from '../generated/report.js';
import { guardFormula } from '../model/formula-guard.js';
import { ByteBudget } from './byte-budget.js';
import { closingLines } from './closing-lines.js';
import type { FormOptions } from './form-options.js';
import { gravestFirst } from './gravest-first.js';
import { leftOutInWords } from './left-out.js';
import { printable } from './printable.js';

/** Most findings in a table: a spreadsheet holds 1,048,576 rows (common practice). */
export const CSV_MOST_FINDINGS = 1_000_000;
/** Most bytes of all rows of findings. */
export const CSV_MOST_BYTES = 100_000_000;

const COLUMNS = [
  ...['input', 'rule', 'class', 'severity', 'cause', 'hole id', 'tag', 'pointer'],
  ...['line', 'column', 'row', 'message', 'accepted'],
];
const SEVERITY = COLUMNS.indexOf('severity');
const MESSAGE = COLUMNS.indexOf('message');

/**
 * The findings of a report as a table for spreadsheets (RFC 4180, comma, CRLF): a header, a row for each
 * finding, the gravest first, then rows of the severity `note` without a rule: the two verdicts, what
 * was set, what is left out, the caution.
 *
 * `accepted` holds the reason where a baseline accepts the finding. Texts that a spreadsheet would take for a
 * formula are guarded by an apostrophe, control characters are written as escapes; numbers stand as they are.
 * At most {@link CSV_MOST_FINDINGS} findings and {@link CSV_MOST_BYTES} bytes of them.
 */
export function csvReport(report: Report, { phrases }: FormOptions = {}): string {
  const classOf = new Map(report.causes.map((cause) => [cause.id, cause.class]));
  const rows = new ByteBudget(CSV_MOST_FINDINGS, CSV_MOST_BYTES);
  for (const finding of gravestFirst(report.findings)) {
    if (!rows.take(line(cellsOf(finding, report, classOf.get(finding.cause))))) break;
  }
  const notes = closingLines(report, leftOutInWords(report, rows.pieces.length), phrases).map((note) =>
    line(COLUMNS.map((_, k) => (k === SEVERITY ? 'note' : k === MESSAGE ? text(note) : ''))),
  );
  return [line(COLUMNS), ...rows.pieces, ...notes].join('');
}

function cellsOf(finding: Finding, { inputs, baseline }: Report, ruleClass = ''): string[] {
  const { rule, severity, place, id = '', tag = '', message, cause, accepted } = finding;
  const reason = accepted === undefined ? '' : (baseline?.entries[accepted - 1]?.reason ?? `entry ${accepted}`);
  const texts = [inputs[finding.input - 1]?.name ?? `input ${finding.input}`, rule, ruleClass, severity].map(text);
  return [
    ...texts,
    number(cause),
    ...[id, tag, place.pointer ?? ''].map(text),
    ...[place.line, place.column, place.row ?? finding.source?.row].map(number),
    ...[message, reason].map(text),
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
