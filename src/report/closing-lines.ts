import type { Report } from '../generated/report.js';
import type { Phrases } from '../model/language.js';
import { english } from './languages/en.js';
import { settingsInWords } from './settings-in-words.js';
import { verdictLines } from './text.js';

/** More acceptances that ran out than this are counted. */
const MOST_ACCEPTANCES = 5;

/**
 * What every form of a report ends with, a line each: the two verdicts, what was set for the check, which acceptances
 * ran out, what the form leaves out, the caution. Texts of inputs stand in them as they are.
 *
 * @param leftOut what the form leaves out; undefined where that is nothing
 */
export function closingLines(report: Report, leftOut: string | undefined, phrases: Phrases = english): string[] {
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
    ...(leftOut === undefined ? [] : [leftOut]),
    phrases.shortCaution,
  ];
}
