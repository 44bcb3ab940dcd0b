import { OFF } from '../../model/report-words.js';
import { changesInShort } from './changes-in-short.js';
import { html, type Markup } from './markup.js';
import { displayOf, distinctRecords, type HtmlReportParts, unitName } from './reported-layout.js';
import { unjudgedRules } from '../unjudged-lines.js';

/** What a reader of the first page alone must know besides the verdicts: what was found, and what was not looked at. */
export function unsaidBox(parts: HtmlReportParts): Markup {
  const { report, language } = parts;
  const { unsaid: words } = language.html;
  const { error = 0, warning = 0, info = 0 } = report.baseline?.counts ?? {};
  const { notRun, inPart } = unjudgedRules(report);
  const isScanOff = report.coverage.some(({ rule, reason }) => rule === 'scan-missing' && reason === OFF);
  const lines = [
    words.found({ ...report.counts, accepted: error + warning + info }),
    ...(notRun.length + inPart.length > 0 ? [words.unjudged(notRun.length, inPart.length)] : []),
    ...aboutKeepOuts(parts),
    ...(isScanOff ? [words.scansOff] : []),
    ...otherUnits(parts),
    ...changesInShort(parts),
  ];
  return html`<aside class="unsaid" aria-labelledby="unsaid"><h3 id="unsaid">${words.heading}</h3><ul>${lines.map((line) => html`<li>${line}</li>`)}</ul></aside>
`;
}

/** What holes could cross: nothing says so little as that no hole crosses what is in no file. */
function aboutKeepOuts({ report, layouts, language }: HtmlReportParts): string[] {
  const { unsaid: words } = language.html;
  if (layouts.length === 0) return [];
  const broken = layouts.flatMap(({ model }) =>
    model.collection('keepOuts').records.filter((one) => one === undefined),
  );
  const count = distinctRecords(layouts, 'keepOuts').length + broken.length;
  if (count === 0) return [words.noKeepOuts];
  const isJudged = report.coverage.some(
    ({ rule, outcome }) => rule === 'crosses-keep-out' && (outcome === 'passed' || outcome === 'failed'),
  );
  return [isJudged ? words.keepOuts(count) : words.keepOutsUnjudged(count)];
}

/** Inputs whose messages are in another unit than the page. */
function otherUnits({ report, layouts, language: { html: phrases } }: HtmlReportParts): string[] {
  const own = unitName(displayOf(layouts), phrases);
  return layouts.flatMap(({ input, model }) => {
    const unit = unitName(model.header.display, phrases);
    return unit === own ? [] : [phrases.unsaid.otherUnit(report.inputs[input].name, unit, own)];
  });
}
