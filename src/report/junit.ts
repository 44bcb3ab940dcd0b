import type { Cause, Coverage, Finding, Report } from '../generated/report.js';
import type { Phrases } from '../model/language.js';
import type { Severity } from '../model/observation.js';
import { clip } from './clip.js';
import { closingLines } from './closing-lines.js';
import { firstOfCauses } from './first-of-causes.js';
import type { FormOptions } from './form-options.js';
import { SEVERITIES } from './gravest-first.js';
import { idAndTag } from './hole-name.js';
import { english } from './languages/en.js';
import { verdictLines } from './text.js';
import { xmlElement, xmlText } from './xml-text.js';

/** What makes a case of the test report fail. */
export interface JUnitOptions extends FormOptions {
  /** Least severity that is a failure. Absent: error. */
  threshold?: Severity;
}

/** Longest text of one case, in UTF-16 units of the XML; a further line says what was cut. */
export const JUNIT_MOST_TEXT = 4000;
/** Longest message, name or fact, in UTF-16 units before it is escaped. */
const MOST_MESSAGE = 500;
/** Findings told of a cause. */
const MOST_FINDINGS = 20;

/**
 * A report as JUnit XML, for services that show test results: a suite for the two verdicts, then one for each
 * input with a case for each rule that ran, named by class and rule.
 *
 * A rule that found something of at least the severity `threshold` fails; what is less grave, and what a baseline
 * accepts, stands in the output of its case. A rule that did not run is skipped, with the reason; one that does not
 * apply has no case. A verdict that cannot be given is an error. No times: a report knows no clock. The text of
 * a case is cut at {@link JUNIT_MOST_TEXT} and says so.
 */
export function junitReport(report: Report, { threshold = 'error', phrases = english }: JUnitOptions = {}): string {
  const told = firstOfCauses(report, MOST_FINDINGS);
  const failing = SEVERITIES.slice(0, SEVERITIES.indexOf(threshold) + 1);
  const causesOf = new Map<string, Cause[]>();
  for (const cause of report.causes) {
    const key = `${cause.input} ${cause.rule}`;
    const known = causesOf.get(key);
    if (known === undefined) causesOf.set(key, [cause]);
    else known.push(cause);
  }
  const suites = report.inputs.map((input, index) => {
    const cases = report.coverage
      .filter(({ outcome }) => outcome !== 'not-applicable')
      .map((row) => ruleCase(row, causesOf.get(`${index + 1} ${row.rule}`) ?? [], { report, told, failing, phrases }));
    const { name, kind, revision, digest } = input;
    const facts = { kind, ...(revision !== undefined && { revision }), ...(digest !== undefined && { digest }) };
    return suite(clip(name, MOST_MESSAGE), facts, cases);
  });
  const all = [verdictSuite(report, phrases), ...suites];
  const body = all.map(({ xml }) => xml).join('\n');
  const counts = countsOf(all.flatMap(({ cases }) => cases));
  return `<?xml version="1.0" encoding="UTF-8"?>\n${xmlElement('testsuites', { name: 'AHX check', ...counts }, `\n${body}\n`)}\n`;
}

interface Case {
  outcome: 'passed' | 'failures' | 'errors' | 'skipped';
  xml: string;
}

interface Telling {
  report: Report;
  told: ReadonlyMap<number, readonly Finding[]>;
  failing: readonly Severity[];
  phrases: Phrases;
}

function suite(
  name: string,
  facts: Record<string, string>,
  cases: Case[],
  output = '',
): { xml: string; cases: Case[] } {
  const properties = Object.entries(facts).map(([key, value]) =>
    xmlElement('property', { name: key, value: clip(value, MOST_MESSAGE) }),
  );
  const parts = [xmlElement('properties', {}, properties.join('')), ...cases.map(({ xml }) => xml), output];
  const content = parts.filter((part) => part !== '').map((part) => `\n    ${part}`);
  return { cases, xml: `  ${xmlElement('testsuite', { name, ...countsOf(cases) }, `${content.join('')}\n  `)}` };
}

function countsOf(cases: readonly Case[]): Record<string, number> {
  const count = (outcome: Case['outcome']) => cases.filter((one) => one.outcome === outcome).length;
  return { tests: cases.length, failures: count('failures'), errors: count('errors'), skipped: count('skipped') };
}

/** Without it a check that could not judge would look like one that found nothing. */
function verdictSuite(report: Report, phrases: Phrases): { xml: string; cases: Case[] } {
  const lines = verdictLines(report, phrases);
  const cases = (['format', 'site'] as const).map((name, k): Case => {
    const verdict = report.verdict[name];
    const outcome = verdict === 'pass' ? 'passed' : verdict === 'fail' ? 'failures' : 'errors';
    const attributes = { message: clip(lines[k], MOST_MESSAGE), type: verdict };
    const content = verdict === 'pass' ? undefined : xmlElement(verdict === 'fail' ? 'failure' : 'error', attributes);
    return { outcome, xml: xmlElement('testcase', { classname: 'verdict', name }, content) };
  });
  const { asOf, purpose, tool, sample } = report;
  const facts = {
    tool: `${tool.name} ${tool.version}`,
    purpose,
    ...(asOf !== undefined && { asOf }),
    findings: `${sample.total}, of which the report lists ${sample.listed}`,
  };
  const about = closingLines(report, undefined, phrases).map((line) => xmlText(clip(line, MOST_MESSAGE)));
  return suite('verdicts', facts, cases, xmlElement('system-out', {}, about.join('\n')));
}

/** What became of one rule in one input. */
function ruleCase(row: Coverage, causes: readonly Cause[], telling: Telling): Case {
  const attributes = { classname: row.class, name: row.rule };
  const isFailure = ({ severity, accepted }: Cause) => accepted === undefined && telling.failing.includes(severity);
  const fails = causes.filter(isFailure);
  const others = causes.filter((cause) => !isFailure(cause));
  const parts: string[] = [];
  if (row.outcome === 'not-run' && causes.length === 0) {
    parts.push(xmlElement('skipped', { message: clip(row.reason ?? 'no reason given', MOST_MESSAGE) }));
  } else if (fails.length > 0) {
    const findings = telling.phrases.findings(sum(fails));
    const message = `${clip(fails[0].message, MOST_MESSAGE)} (${findings}${fails.length > 1 ? ` in ${fails.length} causes` : ''})`;
    parts.push(xmlElement('failure', { message, type: fails[0].severity }, told(fails, telling)));
  }
  if (others.length > 0) parts.push(xmlElement('system-out', {}, told(others, telling)));
  const outcome =
    fails.length > 0 ? 'failures' : row.outcome === 'not-run' && causes.length === 0 ? 'skipped' : 'passed';
  return { outcome, xml: xmlElement('testcase', attributes, parts.length === 0 ? undefined : parts.join('')) };
}

/** Causes with their first findings as lines of XML text, the gravest cause first, within the limit. */
function told(causes: readonly Cause[], telling: Telling): string {
  const lines: string[] = [];
  let length = 0;
  let findings = 0;
  for (const line of linesOf(causes, telling)) {
    const text = xmlText(line.text);
    length += text.length + 1;
    if (length > JUNIT_MOST_TEXT) break;
    lines.push(text);
    findings += line.findings;
  }
  const rest = sum(causes) - findings;
  return [...lines, ...(rest > 0 ? [telling.phrases.more(rest)] : [])].join('\n');
}

/** Lines to tell causes, each with the number of findings that it tells whole. */
function* linesOf(
  causes: readonly Cause[],
  { report, told: first, phrases }: Telling,
): Generator<{ text: string; findings: number }> {
  for (const { id, severity, message, findings, place, accepted } of causes) {
    const entry = accepted === undefined ? undefined : report.baseline?.entries[accepted - 1];
    const until = entry && phrases.acceptedUntil(severity, entry.expires, entry.owner, entry.reason);
    const facts = [phrases.findingsFrom(findings, phrases.place(place)), ...(until === undefined ? [] : [until])];
    yield { text: `${phrases.severity[severity]}: ${clip(message, MOST_MESSAGE)} (${facts.join('; ')})`, findings: 0 };
    for (const { id: hole, tag, message: own, place: at } of first.get(id) ?? []) {
      const name = hole === undefined ? '' : `${phrases.hole(idAndTag({ id: hole, tag }, phrases))}: `;
      yield { text: `- ${name}${clip(own, MOST_MESSAGE)} (${phrases.place(at)})`, findings: 1 };
    }
  }
}

function sum(causes: readonly Cause[]): number {
  return causes.reduce((total, { findings }) => total + findings, 0);
}
