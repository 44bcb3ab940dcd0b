import { OFF } from '../../model/report-words.js';
import { unjudgedRules } from '../unjudged-lines.js';
import { type Content, html, type Markup } from './markup.js';
import type { HtmlReportParts } from './reported-layout.js';
import { section, table } from './table.js';

/** Rules that judged nothing or a part, and why: what this report does not say. */
export function unjudgedSection({ report, ruleOf, language }: HtmlReportParts): Markup | undefined {
  const { unjudged: words, reason: why } = language.html;
  const { notRun, inPart } = unjudgedRules(report);
  const rows = [...notRun, ...inPart].map(({ rule, judged, of, reason = '' }): Content[] => {
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
