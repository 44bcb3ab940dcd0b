import { acceptedSection } from './accepted-section.js';
import { causesSection } from './causes-section.js';
import { changesSection } from './changes-section.js';
import { firstPage, partiesAndSources, reportTitle } from './first-page.js';
import { frameSection } from './frame-section.js';
import { holesSection } from './holes-section.js';
import { contentText, html } from './markup.js';
import { pageFooter } from './page-footer.js';
import { plansSection } from './plans-section.js';
import type { HtmlReportParts } from './reported-layout.js';
import { reviewSection } from './review-section.js';
import { scheduleSection } from './schedule-section.js';
import { styles } from './styles.js';
import { tradesSection } from './trades-section.js';
import { unjudgedSection } from './unjudged-section.js';

/** Paper that a report is printed on; absent: what the printer has. */
export type Paper = 'A4' | 'letter';

/**
 * A report as one HTML file for people: no script, nothing from outside, for the screen and for A4 or Letter. In
 * pieces, in order; the same parts give the same text.
 *
 * What a reader with little time needs comes first: documents, verdicts, what is not said; changes, findings and
 * plans; then what is looked up.
 */
export function* htmlReport(parts: HtmlReportParts, paper?: Paper): Generator<string> {
  const { html: words } = parts.language;
  const title = reportTitle(parts);
  const size = paper === undefined ? '' : `@page { size: ${paper}; }\n`;
  yield `<!doctype html>
<html lang="${contentText(parts.language.tag)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
${html`<title>${words.title(title)}</title>`.text}
<style>${styles(words.page, pageFooter(parts, title))}${size}</style>
</head>
<body><main>
`;
  yield firstPage(parts).text;
  for (const part of [changesSection, causesSection, acceptedSection, tradesSection]) yield contentText(part(parts));
  yield* plansSection(parts);
  for (const part of [holesSection, partiesAndSources, frameSection, unjudgedSection]) yield contentText(part(parts));
  yield* scheduleSection(parts);
  yield reviewSection(parts).text;
  yield '</main></body></html>\n';
}
