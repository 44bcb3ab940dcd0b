import type { Report } from '../generated/report.js';
import type { Phrases } from '../model/language.js';
import { english } from './languages/en.js';
import { settingsInWords } from './settings-in-words.js';
import { verdictLines } from './text.js';

/** More acceptances that ran out than this are counted. */
const MOST_ACCEPTANCES = 5;

/**
 * What every form of a report ends with, a line each: the two verdicts, what was set for the check, which acceptances
 * ran out, what the form has to say besides, the caution. Texts of inputs stand in them as they are.
 *
 * @param others lines of the form's own, such as what it leaves out
 */
export function closingLines(report: Report, others: readonly string[] = [], phrases: Phrases = english): string[] {
  const settings = settingsInWords(report);
  const expired = (report.baseline?.entries ?? []).filter(({ state }) => state === 'expired');
  const rest = expired.length - MOST_ACCEPTANCES;
  return [
    ...verdictLines(report, phrases),
    ...(settings === '' ? [] : [phrases.settings(settings)]),
    ...expired
      .slice(0, MOST_ACCEPTANCES)
      .map(({ rule, layout, owner, expires, matched }) => phrases.ranOut(rule, layout, owner, expires, matched)),
    ...(rest > 0 ? [phrases.moreRanOut(rest)] : []),
    ...others,
    phrases.shortCaution,
  ];
}
