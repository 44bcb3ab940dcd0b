import type { Report } from '../generated/report.js';
import type { FormPhrases } from '../model/form-phrases.js';

/**
 * What a form of a report does not list, as a sentence; none where it lists every finding.
 *
 * @param written findings that the form lists
 */
export function leftOutInWords({ sample }: Report, written: number, phrases: FormPhrases): string[] {
  if (written >= sample.total) return [];
  return [phrases.findingsLeftOut(written, sample.total, sample.listed > written ? sample.listed : undefined)];
}
