import { html, type Markup } from './markup.js';
import { row } from './table.js';

const OUTCOMES = ['No exceptions taken', 'Exceptions as noted', 'Revise and resubmit', 'Rejected', 'For record only'];
const HANDS = ['Prepared by', 'General contractor', 'Engineer of record', 'Other'];

/** The block in which people say what comes of it; the check leaves it empty. */
export function reviewSection(caution: string): Markup {
  return html`<section class="review" aria-labelledby="review"><h2 id="review">Review</h2>
<p>To be filled in by hand. This report says what was found, and nothing about who may drill.</p>
<ul class="boxes">${OUTCOMES.map((outcome) => html`<li><span class="box" aria-hidden="true"></span>${outcome}</li>`)}</ul>
<table><caption>Names and signatures</caption><thead><tr>${['Role', 'Firm', 'Name', 'Date', 'Signature'].map(
    (head) => html`<th scope="col">${head}</th>`,
  )}</tr></thead><tbody>${HANDS.map((hand) => row([hand, '', '', '', '']))}</tbody></table>
<p class="caution">${caution}</p>
</section>
`;
}
