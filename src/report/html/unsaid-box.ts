import { changesInShort } from './changes-in-short.js';
import { html, type Markup } from './markup.js';
import type { HtmlReportParts } from './reported-layout.js';

/** What a reader of the first page alone must know besides the verdicts: what the check is silent about. */
export function unsaidBox(parts: HtmlReportParts): Markup | undefined {
  const lines = changesInShort(parts);
  if (lines.length === 0) return undefined;
  return html`<ul class="unsaid">${lines.map((line) => html`<li>${line}</li>`)}</ul>\n`;
}
