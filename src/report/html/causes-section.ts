import type { Cause, Report } from '../../generated/report.js';
import { OFF } from '../../model/report-words.js';
import { placeInWords } from '../build-report.js';
import { counted } from '../counted.js';
import { type Content, coded, html, type Markup } from './markup.js';
import type { HtmlReportParts } from './reported-layout.js';
import { section, table } from './table.js';

/** More causes than this are counted; the report as JSON lists them. */
const MOST_CAUSES = 500;
const FINDINGS_OF_CAUSE = 5;

/** Number and severity of a cause, as the plans name it. */
export function causeId({ id }: Cause): string {
  return `cause-${id}`;
}

/** What was found, each cause with its holes and how to mend it; then what is accepted. */
export function causesSection(parts: HtmlReportParts): Markup {
  const { report } = parts;
  const open = report.causes.filter(({ accepted }) => accepted === undefined);
  const shown = open.slice(0, MOST_CAUSES);
  const rest = open.length - shown.length;
  const byCause = new Map<number, Report['findings']>();
  for (const finding of report.findings) {
    const known = byCause.get(finding.cause) ?? [];
    byCause.set(finding.cause, known);
    if (known.length < FINDINGS_OF_CAUSE) known.push(finding);
  }
  return html`<section aria-labelledby="causes"><h2 id="causes">Findings by cause</h2>
${shown.length === 0 ? html`<p>Nothing was found.</p>\n` : shown.map((cause) => oneCause(parts, cause, byCause.get(cause.id) ?? []))}${
  rest > 0 && html`<p>And ${counted(rest, 'more cause')}; the report as JSON lists them.</p>\n`
}${report.sample.listed < report.sample.total && html`<p>${report.sample.listed} of ${report.sample.total} findings were kept one by one; all are counted.</p>\n`}</section>
`;
}

function oneCause({ report, ruleOf }: HtmlReportParts, cause: Cause, findings: Report['findings']): Markup {
  const rule = ruleOf(cause.rule);
  const { name } = report.inputs[cause.input - 1];
  const rest = cause.findings - findings.length;
  const isOne = cause.findings === 1;
  return html`<article class="cause" id="${causeId(cause)}"><h3><span class="number">${cause.id}</span> <span class="severity ${cause.severity}">${cause.severity}</span> ${cause.message}</h3>
<p class="where">${name}, ${placeInWords(cause.place)}; rule ${cause.rule}${!isOne && html`; ${counted(cause.findings, 'finding')}`}</p>
${
  cause.holes.length > 0 &&
  html`<p><b>Holes:</b> ${cause.holes.map(({ id, tag }) => (tag === undefined || tag === id ? id : `${id} (tag ${tag})`)).join(', ')}${cause.findings > cause.holes.length && ', …'}</p>
`
}${
  !isOne &&
  differing(findings) &&
  html`<ul>${findings.map((finding) => html`<li>${finding.tag ?? finding.id ?? placeInWords(finding.place)}: ${finding.message}</li>`)}${rest > 0 && html`<li>and ${rest} more</li>`}</ul>
`
}${
  rule &&
  html`<p><b>Why it matters:</b> ${coded(rule.why)} <b>What mends it:</b> ${coded(rule.mend)}${rule.accept && html` <b>When it may stay:</b> ${coded(rule.accept)}`}</p>
`
}</article>
`;
}

/** Whether findings say different things; alike ones add nothing to their cause. */
function differing(findings: Report['findings']): boolean {
  return new Set(findings.map(({ message }) => message)).size > 1;
}

/** What the project has accepted, why, until when and who answers for it. */
export function acceptedSection({ report }: HtmlReportParts): Markup | undefined {
  const rows = (report.baseline?.entries ?? []).map((entry, k): Content[] => {
    const causes = report.causes.filter(({ accepted }) => accepted === k + 1);
    const holes = causes.flatMap((cause) => cause.holes.map(({ id, tag }) => tag ?? id));
    const shown = holes.slice(0, 20).join(', ');
    return [
      entry.rule,
      causes.map(({ message }) => message).join(' '),
      `${shown}${entry.matched > 20 ? ', …' : ''}`,
      `${entry.matched} of ${entry.findings}`,
      entry.reason,
      entry.question,
      entry.owner,
      entry.accepted,
      entry.expires,
      STATES[entry.state],
    ];
  });
  return section(
    'accepted',
    'Findings that are accepted for a time',
    table(
      'To accept a finding is no approval.',
      ['Rule', 'What', 'Holes', 'There now', 'Reason', 'RFI', 'Owner', 'Since', 'Until', 'State'],
      rows,
    ),
  );
}

const STATES: Readonly<Record<string, string>> = {
  'in-force': 'in force',
  expired: 'ran out; counts again',
  stale: 'stale: there no more',
  'not-checked': 'not checked here',
};

/** Findings between trades: who has to talk with whom. */
export function tradesSection({ report }: HtmlReportParts): Markup | undefined {
  const pairs = new Map<string, { rule: string; a: string; b: string; count: number; example: string }>();
  for (const { rule, data, message, input } of report.findings) {
    const { trade, otherTrade, otherName } = data as Record<string, unknown>;
    const own = report.inputs[input - 1].name;
    const isBetweenTrades = typeof otherTrade === 'string' && trade !== otherTrade;
    if (!isBetweenTrades && typeof otherName !== 'string') continue;
    const a = typeof trade === 'string' ? trade : own;
    const b = typeof otherTrade === 'string' ? otherTrade : String(otherName);
    const key = JSON.stringify([rule, ...[a, b].sort()]);
    const known = pairs.get(key) ?? { rule, a, b, count: 0, example: message };
    known.count++;
    pairs.set(key, known);
  }
  const isPart = report.sample.listed < report.sample.total;
  return section(
    'trades',
    'Between trades',
    table(
      `Findings that two trades or files have to settle${isPart ? '; of those that were kept one by one' : ''}`,
      ['Between', 'And', 'Rule', 'Findings', 'Such as'],
      [...pairs.values()].map(({ a, b, rule, count, example }) => [a, b, rule, count, example]),
    ),
  );
}

/** Rules that judged nothing or a part, and why: what this report does not say. */
export function unjudgedSection({ report, ruleOf }: HtmlReportParts): Markup | undefined {
  const rows = report.coverage.flatMap(({ rule, outcome, judged, of, reason }): Content[][] => {
    const isPart = judged !== undefined && of !== undefined && judged < of;
    if (reason === undefined || reason === OFF || outcome === 'not-applicable') return [];
    if (outcome !== 'not-run' && !isPart) return [];
    return [[rule, ruleOf(rule)?.title, of === undefined ? 'not run' : `${judged ?? 0} of ${of}`, reason]];
  });
  const off = report.coverage.filter(({ reason }) => reason === OFF).map(({ rule }) => rule);
  const { severities = {}, ruleOptions = {} } = report.settings ?? {};
  const set = [
    ...Object.entries(severities).map(([rule, severity]) => [rule, `severity ${severity}`]),
    ...Object.entries(ruleOptions).flatMap(([rule, values]) =>
      Object.entries(values).map(([name, value]) => [rule, `${name} = ${value}`]),
    ),
  ];
  return section(
    'unjudged',
    'What was not judged',
    off.length > 0 &&
      html`<p>Rules that are off unless asked for, or were switched off: ${off.join(', ')}.</p>
`,
    table('Rules that did not run, or not on all', ['Rule', 'About', 'Judged', 'Why'], rows),
    table('What the project set otherwise than usual', ['Rule', 'Set to'], set),
  );
}
