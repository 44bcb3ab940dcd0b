import { html, type Markup } from './markup.js';
import { type HtmlReportParts, toldIn } from './reported-layout.js';
import { row } from './table.js';

/** The block in which people say what comes of it; the check leaves it empty. */
export function reviewSection(parts: HtmlReportParts): Markup {
  const words = parts.language.html.review;
  return html`<section class="review" aria-labelledby="review"><h2 id="review">${words.heading}</h2>
<p>${words.byHand}</p>
<ul class="boxes">${words.outcomes.map((outcome) => html`<li><span class="box" aria-hidden="true"></span>${outcome}</li>`)}</ul>
<table><caption>${words.signatures}</caption><thead><tr>${words.heads.map(
    (head) => html`<th scope="col">${head}</th>`,
  )}</tr></thead><tbody>${words.roles.map((hand) => row([hand, '', '', '', '']))}</tbody></table>
<p class="caution">${toldIn(parts, parts.report.caution)}</p>
</section>
`;
}
