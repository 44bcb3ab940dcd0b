import type { Report } from '../generated/report.js';
import { type RuleInfo, severityFor } from '../model/rule.js';
import { ByteBudget } from './byte-budget.js';
import { closingLines } from './closing-lines.js';
import { Fingerprints } from './fingerprints.js';
import type { FormOptions } from './form-options.js';
import { gravestFirst } from './gravest-first.js';
import { english } from './languages/en.js';
import { englishForms } from './languages/forms-en.js';
import { leftOutInWords } from './left-out.js';
import { sarifMessage } from './sarif-message.js';
import { artifactLocation, LEVELS, sarifResult } from './sarif-result.js';
import { verdictLines } from './text.js';

/** What the report itself does not know. */
export interface SarifOptions extends FormOptions {
  /** Rules to describe those that found something; absent: they are only named. */
  rules?: readonly RuleInfo[];
  /** Exit code of the command that checked; absent: no command did. */
  exitCode?: number;
}

/** Most results; services refuse runs with more (docs.github.com/en/code-security/code-scanning, results exceed limit). */
export const SARIF_MOST_RESULTS = 25_000;
/** Most bytes of all results. */
export const SARIF_MOST_BYTES = 40_000_000;

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** Exit code of a command that could not read an input. */
const UNREADABLE = 3;
const EXIT_IN_WORDS: Readonly<Record<number, string>> = {
  0: 'no finding at or above the threshold, and nothing left unjudged that hinders a verdict',
  1: 'findings at or above the threshold, or a verdict that cannot be given',
  [UNREADABLE]: 'an input cannot be read',
};

/**
 * A report as SARIF 2.1.0, with one run: for services and editors that show findings at the line.
 *
 * A result is a finding, the gravest first; what a baseline accepts is suppressed. Fingerprints do not hang on
 * lines. Places in tables are properties of the result, for SARIF knows lines only.
 * Verdicts, counts, what did not run and why, and the settings are properties of the run. At most
 * {@link SARIF_MOST_RESULTS} results and {@link SARIF_MOST_BYTES} bytes of them; a notification of the tool says
 * what is left out.
 */
export function sarifReport(report: Report, { rules = [], exitCode, phrases = english }: SarifOptions = {}): string {
  const forms = phrases.forms ?? englishForms;
  const found = rulesWithFindings(report);
  const ruleIndex = new Map(found.map((rule, index) => [rule, index]));
  const classOf = new Map(report.causes.map((cause) => [cause.id, cause.class]));
  const fingerprints = new Fingerprints(report.inputs);
  const results = new ByteBudget(SARIF_MOST_RESULTS, SARIF_MOST_BYTES);
  for (const finding of gravestFirst(report.findings)) {
    if (!results.take(json(sarifResult(finding, { report, ruleIndex, classOf, fingerprints, forms })))) break;
  }
  const { tool, language = 'en' } = report;
  const driver = {
    name: tool.name || 'unnamed',
    version: tool.version,
    rules: found.map((id) =>
      descriptor(
        id,
        rules.find((rule) => rule.id === id),
        report,
      ),
    ),
  };
  const members = [
    ['tool', json({ driver })],
    ['columnKind', json('utf16CodeUnits')],
    // SARIF knows tags of a language and a country only.
    ...(/^[a-z]{2}(-[A-Z]{2})?$/.test(language) ? [['language', json(language)]] : []),
    ['artifacts', list(report.inputs.map((_, index) => json(artifact(index, report))))],
    [
      'invocations',
      list([
        json(
          invocation(
            closingLines(report, leftOutInWords(report, results.pieces.length, forms), phrases),
            report,
            exitCode,
          ),
        ),
      ]),
    ],
    ['properties', json(propertiesOf(report, verdictLines(report, phrases), results.pieces.length))],
    ['results', list(results.pieces)],
  ];
  const run = members.map(([name, value]) => `"${name}": ${value}`).join(',\n');
  return `{\n"$schema": ${json(SCHEMA)},\n"version": "2.1.0",\n"runs": [{\n${run}\n}]\n}\n`;
}

/** A value as JSON. A lone surrogate, which no text may hold, becomes a visible escape. */
function json(value: unknown): string {
  return JSON.stringify(value, (_, member) =>
    typeof member === 'string'
      ? member.replace(/\p{Cs}/gu, (lone) => `\\u${lone.charCodeAt(0).toString(16)}`)
      : (member as unknown),
  );
}

function list(items: readonly string[]): string {
  return items.length === 0 ? '[]' : `[\n${items.join(',\n')}\n]`;
}

function rulesWithFindings({ causes, findings }: Report): string[] {
  return [...new Set([...causes, ...findings].map(({ rule }) => rule))];
}

function descriptor(id: string, rule: RuleInfo | undefined, { purpose, coverage }: Report): Record<string, unknown> {
  if (rule === undefined) return { id, properties: { class: coverage.find((row) => row.rule === id)?.class } };
  const severity = severityFor(rule, purpose);
  return {
    id,
    shortDescription: sarifMessage(rule.title),
    fullDescription: sarifMessage(rule.why),
    help: sarifMessage(rule.mend),
    defaultConfiguration: severity === 'off' ? { enabled: false } : { level: LEVELS[severity] },
    properties: { class: rule.class, stage: rule.stage },
  };
}

function artifact(index: number, report: Report): Record<string, unknown> {
  const { kind, format, bytes, digest, id, revision, holes, judged } = report.inputs[index];
  const sha256 = /^sha256:([0-9a-f]{64})$/.exec(digest ?? '')?.[1];
  return {
    location: artifactLocation(index + 1, report),
    length: bytes,
    roles: ['analysisTarget'],
    mimeType: format === 'csv' ? 'text/csv' : 'application/json',
    hashes: sha256 === undefined ? undefined : { 'sha-256': sha256 },
    properties: { kind, id, revision, holes, judged },
  };
}

function invocation(notes: readonly string[], report: Report, exitCode: number | undefined): Record<string, unknown> {
  const isUnjudged = Object.values(report.verdict).includes('cannot-judge');
  return {
    executionSuccessful: exitCode !== UNREADABLE,
    ...(exitCode !== undefined && { exitCode, exitCodeDescription: EXIT_IN_WORDS[exitCode] }),
    toolExecutionNotifications: notes.map((text, k) => ({
      level: isUnjudged && k < 2 ? 'warning' : 'note',
      message: sarifMessage(text),
    })),
  };
}

function propertiesOf(report: Report, lines: readonly string[], written: number): Record<string, unknown> {
  const { ahx, purpose, asOf, verdict, counts, baseline, sample, settings, coverage, caution } = report;
  const unjudged = coverage.filter(
    ({ outcome, reason }) => outcome === 'not-run' || (outcome !== 'not-applicable' && reason),
  );
  return {
    ...{ ahx, purpose, asOf, verdict, verdictLines: lines, counts },
    acceptedCounts: baseline?.counts,
    sample: { ...sample, results: written },
    settings,
    notJudged: unjudged.map(({ rule, class: ruleClass, outcome, judged, of, reason }) => ({
      ...{ rule, class: ruleClass, outcome, judged, of, reason },
    })),
    caution,
  };
}
