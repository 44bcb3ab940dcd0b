import type { Cause, Report } from '../../generated/report.js';
import { OFF } from '../../model/report-words.js';
import { idAndTag } from '../hole-name.js';
import { type Content, coded, html, type Markup } from './markup.js';
import { type HtmlReportParts, toldIn } from './reported-layout.js';
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
  const { report, language } = parts;
  const { causes: words, rulesElsewhere } = language.html;
  const open = report.causes.filter(({ accepted }) => accepted === undefined);
  const shown = open.slice(0, MOST_CAUSES);
  const rest = open.length - shown.length;
  const byCause = new Map<number, Report['findings']>();
  for (const finding of report.findings) {
    const known = byCause.get(finding.cause) ?? [];
    byCause.set(finding.cause, known);
    if (known.length < FINDINGS_OF_CAUSE) known.push(finding);
  }
  return html`<section aria-labelledby="causes"><h2 id="causes">${words.heading}</h2>
${shown.length > 0 && rulesElsewhere !== undefined && html`<p>${coded(rulesElsewhere)}</p>\n`}${shown.length === 0 ? html`<p>${words.nothing}</p>\n` : shown.map((cause) => oneCause(parts, cause, byCause.get(cause.id) ?? []))}${
  rest > 0 && html`<p>${words.more(rest)}</p>\n`
}${report.sample.listed < report.sample.total && html`<p>${words.kept(report.sample.listed, report.sample.total)}</p>\n`}</section>
`;
}

function oneCause(parts: HtmlReportParts, cause: Cause, findings: Report['findings']): Markup {
  const { report, language, ruleOf } = parts;
  const { phrases, html: all } = language;
  const words = all.causes;
  const rule = all.rulesElsewhere === undefined ? ruleOf(cause.rule) : undefined;
  const { name } = report.inputs[cause.input - 1];
  const rest = cause.findings - findings.length;
  const isOne = cause.findings === 1;
  return html`<article class="cause" id="${causeId(cause)}"><h3><span class="number">${cause.id}</span> <span class="severity ${cause.severity}">${phrases.severity[cause.severity]}</span> ${toldIn(parts, cause.message)}</h3>
<p class="where">${name}, ${phrases.place(cause.place)}; ${words.rule(cause.rule)}${!isOne && html`; ${phrases.findings(cause.findings)}`}</p>
${
  cause.holes.length > 0 &&
  html`<p><b>${words.holes}</b> ${cause.holes.map((hole) => idAndTag(hole, phrases)).join(', ')}${cause.findings > cause.holes.length && ', …'}</p>
`
}${
  !isOne &&
  differing(findings) &&
  html`<ul>${findings.map((finding) => html`<li>${finding.tag ?? finding.id ?? phrases.place(finding.place)}: ${toldIn(parts, finding.message)}</li>`)}${rest > 0 && html`<li>${phrases.more(rest)}</li>`}</ul>
`
}${
  rule &&
  html`<p><b>${words.why}</b> ${coded(rule.why)} <b>${words.mend}</b> ${coded(rule.mend)}${rule.accept && html` <b>${words.accept}</b> ${coded(rule.accept)}`}</p>
`
}</article>
`;
}

/** Whether findings say different things; alike ones add nothing to their cause. */
function differing(findings: Report['findings']): boolean {
  return new Set(findings.map(({ message }) => message)).size > 1;
}

/** What the project has accepted, why, until when and who answers for it. */
export function acceptedSection(parts: HtmlReportParts): Markup | undefined {
  const { report, language } = parts;
  const { accepted: words } = language.html;
  const rows = (report.baseline?.entries ?? []).map((entry, k): Content[] => {
    const causes = report.causes.filter(({ accepted }) => accepted === k + 1);
    const holes = causes.flatMap((cause) => cause.holes.map(({ id, tag }) => tag ?? id));
    const shown = holes.slice(0, 20).join(', ');
    return [
      entry.rule,
      toldIn(parts, causes.map(({ message }) => message).join(' ')),
      `${shown}${entry.matched > 20 ? ', …' : ''}`,
      words.matched(entry.matched, entry.findings),
      entry.reason,
      entry.question,
      entry.owner,
      entry.accepted,
      entry.expires,
      words.states[entry.state],
    ];
  });
  return section('accepted', words.heading, table(words.caption, words.heads, rows));
}

/** Findings between trades: who has to talk with whom. */
export function tradesSection(parts: HtmlReportParts): Markup | undefined {
  const { report, language } = parts;
  const { trades: words } = language.html;
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
    words.heading,
    table(
      words.caption(isPart),
      words.heads,
      [...pairs.values()].map(({ a, b, rule, count, example }) => [a, b, rule, count, toldIn(parts, example)]),
    ),
  );
}

/** Rules that judged nothing or a part, and why: what this report does not say. */
export function unjudgedSection({ report, ruleOf, language }: HtmlReportParts): Markup | undefined {
  const { unjudged: words, reason: why } = language.html;
  const rows = report.coverage.flatMap(({ rule, outcome, judged, of, reason }): Content[][] => {
    const isPart = judged !== undefined && of !== undefined && judged < of;
    if (reason === undefined || reason === OFF || outcome === 'not-applicable') return [];
    if (outcome !== 'not-run' && !isPart) return [];
    const { title } = language.rules[rule] ?? ruleOf(rule) ?? {};
    const number = of === undefined ? words.notRun : words.judged(judged ?? 0, of);
    return [[rule, title, number, reason.split('; ').map(why).join('; ')]];
  });
  const off = report.coverage.filter(({ reason }) => reason === OFF).map(({ rule }) => rule);
  const { severities = {}, ruleOptions = {} } = report.settings ?? {};
  const set = [
    ...Object.entries(severities).map(([rule, severity]) => [rule, words.severity(severity)]),
    ...Object.entries(ruleOptions).flatMap(([rule, values]) =>
      Object.entries(values).map(([name, value]) => [rule, `${name} = ${value}`]),
    ),
  ];
  return section(
    'unjudged',
    words.heading,
    off.length > 0 &&
      html`<p>${words.off(off.join(', '))}</p>
`,
    table(words.rules, words.ruleHeads, rows),
    table(words.settings, words.settingHeads, set),
  );
}
