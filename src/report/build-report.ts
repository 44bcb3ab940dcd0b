import type { Cause, Coverage as CoverageRow, Finding, Place, Report } from '../generated/report.js';
import { SCHEMA_VERSION } from '../generated/schema-tables.js';
import type { Severity } from '../model/observation.js';
import type { Purpose } from '../model/rule.js';

/** What a report is made from: everything is known, only the form is missing. */
export interface ReportParts {
  tool: { name: string; version: string };
  asOf: string | undefined;
  purpose: Purpose;
  /** Language of the messages, a BCP 47 tag; undefined: English. */
  language: string | undefined;
  /** In that language. */
  caution: string;
  settings: Report['settings'];
  inputs: Report['inputs'];
  verdict: Report['verdict'];
  counts: Record<Severity, number>;
  baseline: Report['baseline'];
  coverage: CoverageRow[];
  causes: Omit<Cause, 'id'>[];
  /** In the order of the report; `cause` is an index into `causes`. */
  findings: Finding[];
  limit: number;
  total: number;
}

const WEIGHT: Readonly<Record<Severity, number>> = { error: 0, warning: 1, info: 2 };

/** Puts a report together: the gravest causes first, the findings with the numbers of their causes. */
export function buildReport(parts: ReportParts): Report {
  const order = parts.causes.map((_, index) => index);
  order.sort((a, b) => WEIGHT[parts.causes[a].severity] - WEIGHT[parts.causes[b].severity] || a - b);
  const numberOf = new Map(order.map((index, position) => [index, position + 1]));
  return {
    ahx: SCHEMA_VERSION,
    kind: 'report',
    tool: parts.tool,
    ...(parts.asOf !== undefined && { asOf: parts.asOf }),
    purpose: parts.purpose,
    ...(parts.language !== undefined && { language: parts.language }),
    ...(parts.settings !== undefined && { settings: parts.settings }),
    inputs: parts.inputs,
    verdict: parts.verdict,
    counts: parts.counts,
    ...(parts.baseline !== undefined && { baseline: parts.baseline }),
    coverage: parts.coverage,
    causes: order.map((index) => ({ id: numberOf.get(index) as number, ...parts.causes[index] })),
    findings: parts.findings.map((finding) => ({ ...finding, cause: numberOf.get(finding.cause) as number })),
    sample: { limit: parts.limit, listed: parts.findings.length, total: parts.total },
    caution: parts.caution,
  };
}

/** Place of a finding as people write it: `line 12, column 5`, `row 7, column 3`, or the byte. */
export function placeInWords({ line, column, row, sheet, byte, pointer }: Place): string {
  if (line !== undefined) return `line ${line}, column ${column ?? 1}`;
  if (row !== undefined) {
    const cell = column === undefined ? `row ${row}` : `row ${row}, column ${column}`;
    return sheet === undefined ? cell : `sheet ${sheet}, ${cell}`;
  }
  if (byte !== undefined) return `byte ${byte}`;
  return pointer === undefined ? 'the profile' : `profile ${pointer}`;
}
