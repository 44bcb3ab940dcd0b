import { clip } from '../clip.js';
import { printable } from '../../model/printable.js';
import type { HtmlReportParts } from './reported-layout.js';

/** More layouts than this are counted. */
const MOST_LAYOUTS = 4;

/** What stands at the foot of each printed page, line by line, so that a page by itself tells where it comes from. */
export function pageFooter({ report, layouts, language }: HtmlReportParts, title: string): string[] {
  const { layout: words, first, changes } = language.html;
  const named = layouts.slice(0, MOST_LAYOUTS).map(({ model: { header } }) => {
    const id = clip(header.id ?? '', 32);
    return header.revision === undefined ? id : words.revisionOf(clip(header.revision.label, 16), id);
  });
  const rest = layouts.length - MOST_LAYOUTS;
  const issued = layouts.map(({ model }) => model.header.revision?.issued).find((date) => date !== undefined);
  const date =
    report.asOf !== undefined
      ? `${first.asOf} ${report.asOf}`
      : issued !== undefined && `${words.issued} ${clip(issued, 40)}`;
  const names = [clip(title, 60), ...named, ...(rest > 0 ? [changes.moreIds(rest)] : [])].filter((name) => name !== '');
  return [names.join(' · '), ...(date ? [date] : [])].map(printable);
}
