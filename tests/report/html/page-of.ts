import { type CheckOptions, createChecker } from '../../../src/jobs/check.js';
import { htmlReportOf } from '../../../src/jobs/html-report.js';
import type { Language } from '../../../src/model/language.js';
import type { HtmlLanguage } from '../../../src/report/html/html-phrases.js';

const asOf = '2026-03-02T07:30:00-05:00';

/** The report for people on some texts; `spoken` is the language of the check where it is not that of the page. */
export function pageOf(
  texts: readonly string[],
  options: CheckOptions & { language?: HtmlLanguage } = {},
  paper?: 'A4' | 'letter',
  before: readonly string[] = [],
  spoken: Language | undefined = options.language,
): string {
  const checker = createChecker({ asOf, ...options, language: spoken });
  const inputs = texts.map((text, k) => {
    checker.open(`file ${k + 1}`);
    checker.write(new TextEncoder().encode(text));
    return checker.close();
  });
  const parents = before.flatMap((text) => {
    const reader = createChecker();
    reader.write(new TextEncoder().encode(text));
    return reader.close().layout() ?? [];
  });
  return [...htmlReportOf(checker.end(), inputs, { paper, language: options.language, parents })].join('');
}
