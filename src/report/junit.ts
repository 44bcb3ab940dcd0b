import type { Cause, Coverage, Finding, Input, Report } from '../generated/report.js';
import type { FormPhrases } from '../model/form-phrases.js';
import type { Phrases } from '../model/language.js';
import type { Severity } from '../model/observation.js';
import { findingsIn } from './counted.js';
import { clip } from './clip.js';
import { closingLines } from './closing-lines.js';
import { firstOfCauses } from './first-of-causes.js';
import type { FormOptions } from './form-options.js';
import { SEVERITIES } from './gravest-first.js';
import { idAndTag } from './hole-name.js';
import { english } from './languages/en.js';
import { englishForms } from './languages/forms-en.js';
import { verdictLines } from './text.js';
import { unjudgedInWords } from './unjudged-lines.js';
import { xmlElement, xmlText } from '../model/xml-text.js';

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
 * A report as JUnit XML, for services that show test results, in three suites: `verdicts`; `inputs` with a case for
 * each input; `rules` with a case for each rule, named by class and rule, over all inputs, for that is how a report
 * says what became of it.
 *
 * A rule that found something of at least the severity `threshold` fails; what is less grave, and what a baseline
 * accepts, stands in the output of its case. A rule that did not run or judged only a part is skipped, with the
 * reason, unless it fails; one that does not apply has no case. An input fails with the findings in it, and is skipped
 * where not all of its holes were judged. A verdict that cannot be given is an error. No times: a report knows no
 * clock. The text of a case is cut at {@link JUNIT_MOST_TEXT} and says so.
 */
export function junitReport(report: Report, { threshold = 'error', phrases = english }: JUnitOptions = {}): string {
  const telling: Telling = {
    report,
    told: firstOfCauses(report, MOST_FINDINGS),
    failing: SEVERITIES.slice(0, SEVERITIES.indexOf(threshold) + 1),
    phrases,
    forms: phrases.forms ?? englishForms,
  };
  const ofRule = byKey(report.causes, ({ rule }) => rule);
  const ofInput = byKey(report.causes, ({ input }) => input);
  const rules = report.coverage.filter(({ outcome }) => outcome !== 'not-applicable');
  const all = [
    verdictSuite(report, phrases),
    suite(
      'inputs',
      report.inputs.map((input, index) => inputCase(input, index + 1, ofInput.get(index + 1) ?? [], telling)),
    ),
    suite(
      'rules',
      rules.map((row) => ruleCase(row, ofRule.get(row.rule) ?? [], telling)),
    ),
  ];
  const body = all.map(({ xml }) => xml).join('\n');
  const counts = countsOf(all.flatMap(({ cases }) => cases));
  const attributes = { name: telling.forms.title, ...counts };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${xmlElement('testsuites', attributes, `\n${body}\n`)}\n`;
}

function byKey<K>(causes: readonly Cause[], key: (cause: Cause) => K): ReadonlyMap<K, readonly Cause[]> {
  const groups = new Map<K, Cause[]>();
  for (const cause of causes) {
    const known = groups.get(key(cause));
    if (known === undefined) groups.set(key(cause), [cause]);
    else known.push(cause);
  }
  return groups;
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
  forms: FormPhrases;
}

function suite(
  name: string,
  cases: Case[],
  facts: Record<string, string> = {},
  output = '',
): { xml: string; cases: Case[] } {
  const properties = Object.entries(facts).map(([key, value]) =>
    xmlElement('property', { name: key, value: clip(value, MOST_MESSAGE) }),
  );
  const head = properties.length === 0 ? '' : xmlElement('properties', {}, properties.join(''));
  const parts = [head, ...cases.map(({ xml }) => xml), output];
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
    findings: `${sample.total}`,
    findingsListed: `${sample.listed}`,
  };
  const about = closingLines(report, [], phrases).map((line) => xmlText(clip(line, MOST_MESSAGE)));
  return suite('verdicts', cases, facts, xmlElement('system-out', {}, about.join('\n')));
}

/** What was found in one input and whether all of its holes were judged; the findings stand in the cases of rules. */
function inputCase(input: Input, number: number, causes: readonly Cause[], telling: Telling): Case {
  const { name, kind, revision, digest, holes, judged = 0 } = input;
  const { phrases, forms } = telling;
  const fails = causes.filter((cause) => isFailure(cause, telling));
  const isLeft = holes !== undefined && judged < holes;
  const left = kind === 'unknown' ? forms.unknownKind : isLeft ? forms.holesJudged(judged, holes) : undefined;
  const found = fails.length === 0 ? undefined : forms.inCauses(phrases.findings(findingsIn(fails)), fails.length);
  const message = [found, left].filter((text) => text !== undefined).join('; ');
  const outcome = found !== undefined ? 'failures' : left !== undefined ? 'skipped' : 'passed';
  const facts = {
    kind,
    ...(revision !== undefined && { revision }),
    ...(digest !== undefined && { digest }),
    ...(holes !== undefined && { holes, judged }),
  };
  const lines = Object.entries(facts).map(([fact, value]) => xmlText(clip(`${fact}: ${value}`, MOST_MESSAGE)));
  const content = [
    ...(outcome === 'failures' ? [xmlElement('failure', { message, type: fails[0].severity })] : []),
    ...(outcome === 'skipped' ? [xmlElement('skipped', { message })] : []),
    xmlElement('system-out', {}, lines.join('\n')),
  ];
  const shown = clip(name === '' ? forms.input(number) : name, MOST_MESSAGE);
  return { outcome, xml: xmlElement('testcase', { classname: 'input', name: shown }, content.join('')) };
}

/** What became of one rule in all inputs. */
function ruleCase(row: Coverage, causes: readonly Cause[], telling: Telling): Case {
  const { phrases, forms } = telling;
  const fails = causes.filter((cause) => isFailure(cause, telling));
  const others = causes.filter((cause) => !isFailure(cause, telling));
  const unjudged = unjudgedInWords(row, forms);
  const left = unjudged === undefined ? undefined : clip(unjudged, MOST_MESSAGE);
  const outcome = fails.length > 0 ? 'failures' : left !== undefined ? 'skipped' : 'passed';
  const parts: string[] = [];
  if (outcome === 'failures') {
    const findings = phrases.findings(findingsIn(fails));
    const count = fails.length > 1 ? forms.inCauses(findings, fails.length) : findings;
    const message = `${clip(fails[0].message, MOST_MESSAGE)} (${[count, ...(left === undefined ? [] : [left])].join('; ')})`;
    parts.push(xmlElement('failure', { message, type: fails[0].severity }, told(fails, telling)));
  }
  if (outcome === 'skipped') parts.push(xmlElement('skipped', { message: left ?? '' }));
  if (others.length > 0) parts.push(xmlElement('system-out', {}, told(others, telling)));
  const attributes = { classname: row.class, name: row.rule };
  return { outcome, xml: xmlElement('testcase', attributes, parts.length === 0 ? undefined : parts.join('')) };
}

function isFailure({ severity, accepted }: Cause, { failing }: Telling): boolean {
  return accepted === undefined && failing.includes(severity);
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
  const rest = findingsIn(causes) - findings;
  return [...lines, ...(rest > 0 ? [telling.phrases.more(rest)] : [])].join('\n');
}

/** Lines to tell causes, each with the number of findings that it tells whole. */
function* linesOf(
  causes: readonly Cause[],
  { report, told: first, phrases, forms }: Telling,
): Generator<{ text: string; findings: number }> {
  const { inputs } = report;
  for (const { id, severity, message, findings, input, place, accepted } of causes) {
    const file = inputs.length > 1 ? `${clip(inputs[input - 1]?.name ?? forms.input(input), MOST_MESSAGE)}, ` : '';
    const entry = accepted === undefined ? undefined : report.baseline?.entries[accepted - 1];
    const until = entry && phrases.acceptedUntil(severity, entry.expires, entry.owner, entry.reason);
    const facts = [
      phrases.findingsFrom(findings, `${file}${phrases.place(place)}`),
      ...(until === undefined ? [] : [until]),
    ];
    yield { text: `${phrases.severity[severity]}: ${clip(message, MOST_MESSAGE)} (${facts.join('; ')})`, findings: 0 };
    for (const { id: hole, tag, message: own, place: at } of first.get(id) ?? []) {
      const name = hole === undefined ? '' : `${phrases.hole(idAndTag({ id: hole, tag }, phrases))}: `;
      yield { text: `- ${name}${clip(own, MOST_MESSAGE)} (${phrases.place(at)})`, findings: 1 };
    }
  }
}
