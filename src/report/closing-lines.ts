import type { Report } from '../generated/report.js';
import { SHORT_CAUTION } from '../model/caution.js';
import { counted } from './counted.js';
import { settingsInWords } from './settings-in-words.js';
import { verdictLines } from './text.js';

/**
 * What every form of a report for people ends with, a line each: the two verdicts, what was set for the check, which
 * acceptances ran out, what the form leaves out, the caution. Texts of inputs stand in them as they are.
 *
 * @param leftOut what the form leaves out; undefined where that is nothing
 */
export function closingLines(report: Report, leftOut: string | undefined): string[] {
  const settings = settingsInWords(report);
  const expired = (report.baseline?.entries ?? []).filter(({ state }) => state === 'expired').map(({ rule }) => rule);
  const lines = [
    ...verdictLines(report),
    settings === '' ? undefined : `Set for this check: ${settings}.`,
    expired.length === 0
      ? undefined
      : `${counted(expired.length, 'acceptance')} ran out, so that its findings count again: ${[...new Set(expired)].join(', ')}.`,
    leftOut,
    SHORT_CAUTION,
  ];
  return lines.filter((line) => line !== undefined);
}
