import type { Report } from '../generated/report.js';

/** A report as JSON after `report.schema.json`. The same report gives the same text byte for byte. */
export function jsonReport(report: Report): string {
  return [...jsonReportPieces(report)].join('');
}

/** How many findings are put into a piece. */
const OF_PIECE = 1000;

/** The same in pieces: a million findings are longer than a text can be. */
export function* jsonReportPieces(report: Report): Generator<string> {
  const shell = JSON.stringify({ ...report, findings: [] }, null, 2);
  // A line feed in a string is written as an escape, so that this is the member itself.
  const [before, behind] = shell.split('\n  "findings": [],\n');
  if (report.findings.length === 0) {
    yield `${shell}\n`;
    return;
  }
  yield `${before}\n  "findings": [\n`;
  for (let from = 0; from < report.findings.length; from += OF_PIECE) {
    const text = JSON.stringify(report.findings.slice(from, from + OF_PIECE), null, 2);
    const isLast = from + OF_PIECE >= report.findings.length;
    // Each line stands a level deeper; the brackets of the piece go.
    yield `  ${text.slice(2, -2).replaceAll('\n', '\n  ')}${isLast ? '\n' : ',\n'}`;
  }
  yield `  ],\n${behind}\n`;
}
