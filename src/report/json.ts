import type { Report } from '../generated/report.js';

/** A report as JSON after `report.schema.json`. The same report gives the same text byte for byte. */
export function jsonReport(report: Report): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}
