import type { Cause, Finding, Report } from '../generated/report.js';
import type { Phrases } from '../model/language.js';
import { findingsIn } from './counted.js';
import { english } from './languages/en.js';
import { firstOfCauses } from './first-of-causes.js';
import { printable } from '../model/printable.js';
import { rulesSet, settingsInWords } from './settings-in-words.js';
import { unjudgedLines, unjudgedRules } from './unjudged-lines.js';

/** How a text report looks. */
export interface TextOptions {
  /** Whether severities are coloured with escape sequences. */
  colour: boolean;
  /** Most findings written out under a cause. */
  findingsOfCause: number;
  /** Fixed sentences, of the language of the report. Absent: English. */
  phrases?: Phrases;
}

const COLOURS: Readonly<Record<string, string>> = { error: '31', warning: '33', info: '36' };
const HOLES_OF_CAUSE = 8;
/** More causes of one input than this are counted, not written out. */
const MOST_CAUSES = 100;
/** More acceptances that ran out than this are counted. */
const MOST_ACCEPTANCES = 12;

/** A report as text for people, lines ending in a line feed. The two verdicts come last, then the caution. */
export function textReport(report: Report, { colour, findingsOfCause, phrases = english }: TextOptions): string {
  const form: Form = {
    paint: (code, text) => (colour ? `\u001b[${code}m${text}\u001b[0m` : text),
    first: firstOfCauses(report, findingsOfCause),
    phrases,
  };
  const lines: string[] = [];
  report.inputs.forEach((input, index) => {
    const ofInput = report.causes.filter((cause) => cause.input === index + 1);
    // What is accepted comes last: it is there to be seen, not to be acted on.
    const isAccepted = ({ accepted }: Cause) => accepted !== undefined;
    const causes = [...ofInput.filter((cause) => !isAccepted(cause)), ...ofInput.filter(isAccepted)];
    if (causes.length === 0) return;
    lines.push(form.paint('1', printable(input.name)));
    for (const cause of causes.slice(0, MOST_CAUSES)) lines.push(...causeLines(report, cause, form));
    const rest = causes.slice(MOST_CAUSES);
    if (rest.length > 0) lines.push(`  ${phrases.moreCauses(rest.length, findingsIn(rest))}`);
    lines.push('');
  });
  if (report.sample.listed < report.sample.total) {
    lines.push(phrases.listed(report.sample.listed, report.sample.total), '');
  }
  const ofBaseline = baselineLines(report, phrases);
  if (ofBaseline.length > 0) lines.push(...ofBaseline, '');
  const settings = settingsInWords(report);
  if (settings !== '') lines.push(`  ${phrases.settings(settings)}`, '');
  const unjudged = unjudgedLines(report, phrases).map((line) => `  ${line}`);
  if (unjudged.length > 0) lines.push(...unjudged, '');
  return `${[...lines, ...verdictLines(report, phrases), '', phrases.shortCaution].join('\n')}\n`;
}

/** How a cause is written. */
interface Form {
  paint: (code: string, text: string) => string;
  /** The findings that are written out, by cause. */
  first: ReadonlyMap<number, readonly Finding[]>;
  phrases: Phrases;
}

function causeLines(report: Report, cause: Cause, { paint, first, phrases }: Form): string[] {
  const where = phrases.place(cause.place);
  const entry = cause.accepted === undefined ? undefined : report.baseline?.entries[cause.accepted - 1];
  const severity = phrases.severity[cause.severity].padEnd(7);
  const label = entry === undefined ? paint(COLOURS[cause.severity], severity) : phrases.accepted;
  const head = `  ${label} ${cause.message} ${paint('2', `[${cause.rule}]`)}`;
  if (entry !== undefined) {
    const until = phrases.acceptedUntil(cause.severity, entry.expires, entry.owner, entry.reason);
    return [
      head,
      `          ${phrases.findings(cause.findings)}${holesInWords(cause, phrases)}`,
      `          ${printable(until)}`,
    ];
  }
  if (cause.findings === 1)
    return [head, `          ${[holeName(cause.holes[0], phrases), where].filter(Boolean).join(', ')}`];
  const listed = first.get(cause.id) ?? [];
  const lines = [head, `          ${phrases.findingsFrom(cause.findings, where)}${holesInWords(cause, phrases)}`];
  // Where each says the same there is nothing to add.
  if (listed.length > 1 && new Set(listed.map(({ message }) => message)).size === 1) return lines;
  for (const finding of listed) {
    const name = finding.id === undefined ? '' : `${holeName({ id: finding.id, tag: finding.tag }, phrases)}: `;
    lines.push(`          - ${name}${finding.message} (${phrases.place(finding.place)})`);
  }
  const rest = cause.findings - listed.length;
  if (listed.length > 0 && rest > 0) lines.push(`          - ${phrases.more(rest)}`);
  return lines;
}

/** What became of entries of the baseline that no longer do what they were made for. */
function baselineLines({ baseline }: Report, phrases: Phrases): string[] {
  const entries = baseline?.entries ?? [];
  const lines = entries.flatMap(({ state, rule, layout, owner, expires, matched }) =>
    state === 'expired' ? [`  ${phrases.ranOut(rule, layout, owner, expires, matched)}`] : [],
  );
  const rest = lines.splice(MOST_ACCEPTANCES).length;
  if (rest > 0) lines.push(`  ${phrases.moreRanOut(rest)}`);
  const gone = entries.filter(({ state }) => state === 'stale').length;
  const thinner = entries.filter(({ state, findings, matched }) => state === 'in-force' && matched < findings).length;
  if (gone + thinner > 0) lines.push(`  ${phrases.stale(gone, entries.length, thinner)}`);
  return lines.map(printable);
}

function holesInWords({ holes, findings }: Cause, phrases: Phrases): string {
  if (holes.length === 0) return '';
  const names = holes.slice(0, HOLES_OF_CAUSE).map((hole) => idAndTag(hole, phrases));
  if (findings === 1 && names.length === 1) return `; ${phrases.hole(names[0])}`;
  const more = findings > Math.min(holes.length, HOLES_OF_CAUSE) ? ', …' : '';
  return `; ${phrases.holes(`${names.join(', ')}${more}`)}`;
}

function holeName(hole: { id: string; tag?: string } | undefined, phrases: Phrases): string {
  return hole === undefined ? '' : phrases.hole(idAndTag(hole, phrases));
}

function idAndTag({ id, tag }: { id: string; tag?: string }, phrases: Phrases): string {
  return printable(tag === undefined || tag === id ? id : phrases.tagged(id, tag));
}

/**
 * The two verdicts, one a line: whether the inputs are AHX, and whether they can be meant and work on site.
 *
 * @param phrases of the language of the report; absent: English
 */
export function verdictLines(report: Report, phrases: Phrases = english): string[] {
  return [formatVerdict(report, phrases), siteVerdict(report, phrases)];
}

function formatVerdict({ ahx, verdict, inputs, causes }: Report, phrases: Phrases): string {
  const isTable = inputs.every(({ format }) => format === 'csv');
  if (verdict.format === 'pass') return phrases.valid(ahx, isTable);
  if (verdict.format === 'cannot-judge') return phrases.formUnjudged(ahx);
  return phrases.notValid(ahx, isTable, findingsIn(causes.filter(isErrorOfForm)));
}

function isErrorOfForm({ class: ruleClass, severity }: Cause): boolean {
  return ruleClass === 'format' && severity === 'error';
}

function siteVerdict(report: Report, phrases: Phrases): string {
  const { purpose, verdict, causes, inputs, baseline } = report;
  const own = causes.filter((cause) => cause.class !== 'format' && cause.accepted === undefined);
  const count = (severity: Cause['severity']) => findingsIn(own.filter((cause) => cause.severity === severity));
  const { notRun, inPart } = unjudgedRules(report);
  return phrases.site({
    purpose,
    isPartial: verdict.site === 'cannot-judge',
    error: count('error'),
    warning: count('warning'),
    info: count('info'),
    causes: own.length,
    holes: inputs.reduce((total, input) => total + (input.holes ?? 0), 0),
    judged: inputs.reduce((total, input) => total + (input.judged ?? 0), 0),
    accepted: baseline && baseline.counts.error + baseline.counts.warning + baseline.counts.info,
    notRun: notRun.length,
    inPart: inPart.length,
    set: rulesSet(report).length,
  });
}
