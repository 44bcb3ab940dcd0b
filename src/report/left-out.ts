import type { Report } from '../generated/report.js';

/**
 * What a form of a report does not list, as a sentence; undefined where it lists every finding.
 *
 * @param written findings that the form lists
 */
export function leftOutInWords({ sample }: Report, written: number): string | undefined {
  if (written >= sample.total) return undefined;
  const more = sample.listed > written ? ` The report itself lists ${sample.listed}.` : '';
  return `${written} of ${sample.total} findings are listed here, the gravest first; the counts in the verdicts cover all.${more}`;
}
