import { html, type Markup } from './markup.js';
import { type HtmlReportParts, toldIn } from './reported-layout.js';
import { section, table } from './table.js';

/** Findings between trades: who has to talk with whom. What is accepted is settled and stands there. */
export function tradesSection(parts: HtmlReportParts): Markup | undefined {
  const { report, language } = parts;
  const { trades: words } = language.html;
  const pairs = new Map<string, { rule: string; a: string; b: string; count: number; example: string }>();
  for (const { rule, data, message, input, accepted } of report.findings) {
    if (accepted !== undefined) continue;
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
    isPart && html`<p>${words.kept(report.sample.listed, report.sample.total)}</p>\n`,
    table(
      words.caption(isPart),
      words.heads,
      [...pairs.values()].map(({ a, b, rule, count, example }) => [a, b, rule, count, toldIn(parts, example)]),
    ),
  );
}
