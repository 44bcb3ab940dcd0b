import type { Content, Markup } from './markup.js';
import { type HtmlReportParts, toldIn } from './reported-layout.js';
import { section, table } from './table.js';

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
