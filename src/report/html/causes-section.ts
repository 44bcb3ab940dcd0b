import type { Cause, Report } from '../../generated/report.js';
import { idAndTag } from '../hole-name.js';
import { coded, html, type Markup } from './markup.js';
import { type HtmlReportParts, toldIn } from './reported-layout.js';

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
${shown.length > 0 && rulesElsewhere !== undefined && html`<p>${coded(rulesElsewhere)}</p>\n`}${shown.length === 0 ? html`<p>${nothing(parts)}</p>\n` : shown.map((cause) => oneCause(parts, cause, byCause.get(cause.id) ?? []))}${
  rest > 0 && html`<p>${words.more(rest)}</p>\n`
}${report.sample.listed < report.sample.total && html`<p>${words.kept(report.sample.listed, report.sample.total)}</p>\n`}</section>
`;
}

/** What is true where no cause is open: others may be accepted, and rules may not have run. */
function nothing({ report: { causes, baseline }, language }: HtmlReportParts): string {
  const { error = 0, warning = 0, info = 0 } = baseline?.counts ?? {};
  const { nothing, onlyAccepted } = language.html.causes;
  return causes.length === 0 ? nothing : onlyAccepted(error + warning + info);
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
