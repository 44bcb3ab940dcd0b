import type { Finding } from '../generated/report.js';
import type { Severity } from '../model/observation.js';

/** Severities, the gravest first. */
export const SEVERITIES: readonly Severity[] = ['error', 'warning', 'info'];

/**
 * Findings in the order in which a form with a limit takes them: errors, warnings, infos, then what a baseline
 * accepts; within each the order of the report. Nothing is copied.
 */
export function* gravestFirst(findings: readonly Finding[]): Generator<Finding> {
  for (const severity of SEVERITIES)
    for (const finding of findings) if (finding.severity === severity && finding.accepted === undefined) yield finding;
  for (const finding of findings) if (finding.accepted !== undefined) yield finding;
}
