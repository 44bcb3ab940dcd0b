import { OFF } from '../../model/report-words.js';
import { type Content, html, type Markup } from './markup.js';
import type { HtmlReportParts } from './reported-layout.js';
import { section, table } from './table.js';

type Row = HtmlReportParts['report']['coverage'][number];

/** How many rules of data and site did not run although they were wanted, and how many judged a part. */
export function unjudgedNumbers({ coverage }: HtmlReportParts['report']): { notRun: number; inPart: number } {
  const rows = coverage.filter((row) => row.class !== 'format' && isUnjudged(row));
  const notRun = rows.filter(({ outcome }) => outcome === 'not-run').length;
  return { notRun, inPart: rows.length - notRun };
}

/** Whether a rule left something out that it is about. */
function isUnjudged({ outcome, judged, of, reason }: Row): boolean {
  if (reason === undefined || reason === OFF || outcome === 'not-applicable') return false;
  return outcome === 'not-run' || (judged !== undefined && of !== undefined && judged < of);
}

/** Rules that judged nothing or a part, and why: what this report does not say. */
export function unjudgedSection({ report, ruleOf, language }: HtmlReportParts): Markup | undefined {
  const { unjudged: words, reason: why } = language.html;
  const rows = report.coverage.filter(isUnjudged).map(({ rule, judged, of, reason = '' }): Content[] => {
    const { title } = language.rules[rule] ?? ruleOf(rule) ?? {};
    const number = of === undefined ? words.notRun : words.judged(judged ?? 0, of);
    return [rule, title, number, reason.split('; ').map(why).join('; ')];
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
