import type { Cause, Report } from '../generated/report.js';
import { SHORT_CAUTION } from '../model/caution.js';
import { OFF } from '../model/report-words.js';
import { placeInWords } from './build-report.js';
import { counted } from './counted.js';
import { printable } from './printable.js';

/** How a text report looks. */
export interface TextOptions {
  /** Whether severities are coloured with escape sequences. */
  colour: boolean;
  /** Most findings written out under a cause. */
  findingsOfCause: number;
}

const COLOURS: Readonly<Record<string, string>> = { error: '31', warning: '33', info: '36' };
const HOLES_OF_CAUSE = 8;
/** More causes of one input than this are counted, not written out. */
const MOST_CAUSES = 100;
/** More reasons why something was not judged than this, and more rules of one reason, are counted. */
const MOST_REASONS = 12;
const MOST_RULES = 3;

/** A report as text for people, lines ending in a line feed. The two verdicts come last, then the caution. */
export function textReport(report: Report, { colour, findingsOfCause }: TextOptions): string {
  const paint = (code: string, text: string) => (colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  const lines: string[] = [];
  report.inputs.forEach((input, index) => {
    const ofInput = report.causes.filter((cause) => cause.input === index + 1);
    // What is accepted comes last: it is there to be seen, not to be acted on.
    const isAccepted = ({ accepted }: Cause) => accepted !== undefined;
    const causes = [...ofInput.filter((cause) => !isAccepted(cause)), ...ofInput.filter(isAccepted)];
    if (causes.length === 0) return;
    lines.push(paint('1', printable(input.name)));
    for (const cause of causes.slice(0, MOST_CAUSES)) lines.push(...causeLines(report, cause, findingsOfCause, paint));
    const rest = causes.slice(MOST_CAUSES);
    if (rest.length > 0) {
      lines.push(
        `  and ${counted(rest.length, 'more cause')} with ${counted(sum(rest), 'finding')}; --format json lists them`,
      );
    }
    lines.push('');
  });
  if (report.sample.listed < report.sample.total) {
    lines.push(
      `${report.sample.listed} of ${report.sample.total} findings are listed; the numbers below count all of them.`,
      '',
    );
  }
  const ofBaseline = baselineLines(report);
  if (ofBaseline.length > 0) lines.push(...ofBaseline, '');
  const settings = settingsInWords(report);
  if (settings !== '') lines.push(`  set for this check: ${settings}`, '');
  const unjudged = unjudgedLines(report);
  if (unjudged.length > 0) lines.push(...unjudged, '');
  return `${[...lines, ...verdictLines(report), '', SHORT_CAUTION].join('\n')}\n`;
}

type Paint = (code: string, text: string) => string;

function causeLines(report: Report, cause: Cause, most: number, paint: Paint): string[] {
  const where = placeInWords(cause.place);
  const entry = cause.accepted === undefined ? undefined : report.baseline?.entries[cause.accepted - 1];
  const label = entry === undefined ? paint(COLOURS[cause.severity], cause.severity.padEnd(7)) : 'accepted';
  const head = `  ${label} ${cause.message} ${paint('2', `[${cause.rule}]`)}`;
  if (entry !== undefined) {
    const until = `${cause.severity}, accepted until ${entry.expires} by ${entry.owner}: ${entry.reason}`;
    return [
      head,
      `          ${counted(cause.findings, 'finding')}${holesInWords(cause)}`,
      `          ${printable(until)}`,
    ];
  }
  if (cause.findings === 1) return [head, `          ${[holeName(cause.holes[0]), where].filter(Boolean).join(', ')}`];
  const listed = report.findings.filter((finding) => finding.cause === cause.id).slice(0, most);
  const lines = [head, `          ${cause.findings} findings, the first at ${where}${holesInWords(cause)}`];
  // Where each says the same there is nothing to add.
  if (listed.length > 1 && new Set(listed.map(({ message }) => message)).size === 1) return lines;
  for (const finding of listed) {
    const name = finding.id === undefined ? '' : `${holeName({ id: finding.id, tag: finding.tag })}: `;
    lines.push(`          - ${name}${finding.message} (${placeInWords(finding.place)})`);
  }
  const rest = cause.findings - listed.length;
  if (listed.length > 0 && rest > 0) lines.push(`          - and ${rest} more`);
  return lines;
}

/** What became of entries of the baseline that no longer do what they were made for. */
function baselineLines({ baseline }: Report): string[] {
  const entries = baseline?.entries ?? [];
  const lines = entries.flatMap(({ state, rule, layout, owner, expires, matched }) =>
    state === 'expired'
      ? [
          `  ran out on ${expires}: the acceptance of ${rule} in "${layout}" by ${owner}; ${counted(matched, 'finding')} count again`,
        ]
      : [],
  );
  const rest = lines.splice(MOST_REASONS).length;
  if (rest > 0) lines.push(`  and ${counted(rest, 'more acceptance')} that ran out; --format json lists them`);
  const gone = entries.filter(({ state }) => state === 'stale').length;
  const thinner = entries.filter(({ state, findings, matched }) => state === 'in-force' && matched < findings).length;
  if (gone + thinner > 0)
    lines.push(
      `  stale: ${gone} of ${entries.length} entries of the baseline have no finding left, ${thinner} only some; it can be pruned`,
    );
  return lines.map(printable);
}

/** What rules left out and why, a line for each reason; rules that are off are only counted in the verdict. */
function unjudgedLines({ coverage }: Report): string[] {
  const rulesOf = new Map<string, string[]>();
  for (const { rule, outcome, reason, class: ruleClass, judged } of coverage) {
    if (reason === undefined || ruleClass === 'format' || outcome === 'not-applicable') continue;
    if (isOff({ outcome, judged, reason })) continue;
    for (const part of reason.split('; ')) rulesOf.set(part, [...(rulesOf.get(part) ?? []), rule]);
  }
  const lines = [...rulesOf].map(([reason, rules]) => `  not judged: ${reason} (${namesInWords(rules)})`);
  const rest = lines.splice(MOST_REASONS).length;
  return rest === 0 ? lines : [...lines, `  and ${counted(rest, 'more reason')}; --format json lists them`];
}

function namesInWords(rules: readonly string[]): string {
  const shown = rules.length > MOST_RULES ? rules.slice(0, MOST_RULES - 1) : rules;
  const rest = rules.length - shown.length;
  return `${shown.join(', ')}${rest > 0 ? ` and ${counted(rest, 'more rule')}` : ''}`;
}

/** What was set otherwise than usual; nobody is to take a rule that was switched off for one that found nothing. */
function settingsInWords({ settings: { severities = {}, ruleOptions = {} } = {} }: Report): string {
  const options = Object.entries(ruleOptions).flatMap(([rule, values]) =>
    Object.entries(values).map(([name, value]) => `${rule}.${name}=${value}`),
  );
  return [...Object.entries(severities).map(([rule, severity]) => `${rule}=${severity}`), ...options].join(', ');
}

function holesInWords({ holes, findings }: Cause): string {
  if (holes.length === 0) return '';
  const names = holes.slice(0, HOLES_OF_CAUSE).map(idAndTag).join(', ');
  return `; holes ${names}${findings > Math.min(holes.length, HOLES_OF_CAUSE) ? ', …' : ''}`;
}

function holeName(hole: { id: string; tag?: string } | undefined): string {
  return hole === undefined ? '' : `hole ${idAndTag(hole)}`;
}

function idAndTag({ id, tag }: { id: string; tag?: string }): string {
  return printable(tag === undefined || tag === id ? id : `${id} (tag ${tag})`);
}

/** The two verdicts, one a line: whether the inputs are AHX, and whether they can be meant and work on site. */
export function verdictLines(report: Report): string[] {
  return [formatVerdict(report), siteVerdict(report)];
}

function formatVerdict({ ahx, verdict, inputs, causes }: Report): string {
  const table = inputs.every(({ format }) => format === 'csv');
  if (verdict.format === 'pass') return table ? `Readable by its profile as AHX ${ahx}.` : `Valid AHX ${ahx}.`;
  if (verdict.format === 'cannot-judge') return `Cannot judge whether this is valid AHX ${ahx}.`;
  const errors = sum(causes.filter((cause) => cause.class === 'format' && cause.severity === 'error'));
  return `Not ${table ? 'readable by its profile as' : 'valid'} AHX ${ahx}: ${counted(errors, 'error')}.`;
}

function siteVerdict({ purpose, verdict, causes, coverage, inputs, baseline }: Report): string {
  const own = causes.filter((cause) => cause.class !== 'format' && cause.accepted === undefined);
  const parts = (['error', 'warning'] as const).map((severity) =>
    counted(sum(own.filter((cause) => cause.severity === severity)), severity),
  );
  const infos = sum(own.filter((cause) => cause.severity === 'info'));
  if (infos > 0) parts.push(`${infos} info`);
  const wanted = coverage.filter((row) => row.class !== 'format' && !isOff(row));
  const notRun = wanted.filter(({ outcome }) => outcome === 'not-run').length;
  const inPart = wanted.filter(isInPart).length;
  const { error = 0, warning = 0, info = 0 } = baseline?.counts ?? {};
  const accepted = error + warning + info;
  const gaps = [
    ...(accepted > 0 ? [`${counted(accepted, 'more finding')} accepted`] : []),
    ...(notRun > 0 ? [`${counted(notRun, 'rule')} not run`] : []),
    ...(inPart > 0 ? [`${counted(inPart, 'rule')} run in part`] : []),
  ];
  const holes = inputs.reduce((total, input) => total + (input.holes ?? 0), 0);
  const ofThem = inputs.reduce((total, input) => total + (input.judged ?? 0), 0);
  const judged = verdict.site === 'cannot-judge' ? 'cannot judge all of it; ' : '';
  const on = `${counted(holes, 'hole')}${ofThem < holes ? `, ${ofThem} of them judged` : ''}`;
  const found = `${parts.join(', ')}${own.length > 0 ? ` in ${counted(own.length, 'cause')}` : ''} on ${on}`;
  return `Site checks (${purpose.replaceAll('-', ' ')}): ${judged}${found}${gaps.length > 0 ? `; ${gaps.join(', ')}` : ''}.`;
}

/** Whether a rule judged some of what it is about and left some out. */
function isInPart({ outcome, judged, of }: { outcome: string; judged?: number; of?: number }): boolean {
  return (outcome === 'passed' || outcome === 'failed') && judged !== undefined && of !== undefined && judged < of;
}

/** Whether a rule did not run because it was not wanted; one that found nothing to judge has counted records. */
function isOff({ outcome, judged, reason }: { outcome: string; judged?: number; reason?: string }): boolean {
  return outcome === 'not-run' && judged === undefined && reason === OFF;
}

function sum(causes: readonly Cause[]): number {
  return causes.reduce((total, cause) => total + cause.findings, 0);
}
