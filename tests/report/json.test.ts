import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding, Report } from '../../src/generated/report.js';
import { check } from '../../src/jobs/check.js';
import { jsonReport, jsonReportPieces } from '../../src/report/json.js';
import { hole, layoutText, typeWithSpacing } from '../jobs/small-layout.js';

const holes = [0, 50].map((x, k) => hole(`H-${k}`, [x, 0, 0]));
const report = check([{ name: 'a', data: layoutText({ holeTypes: [typeWithSpacing(80)], holes }) }]);

function withFindings(findings: Finding[]): Report {
  return { ...report, findings };
}

describe('a report as JSON', () => {
  it.each([0, 1, 2, 999, 1000, 1001, 2500])('with %i findings is what the language itself writes', (count) => {
    const many = withFindings(Array.from({ length: count }, (_, k) => ({ ...report.findings[k % 2], id: `H-${k}` })));
    expect(jsonReport(many)).toBe(`${JSON.stringify(many, null, 2)}\n`);
  });

  it('keeps strings as they are, line ends of every kind and what looks like its own members', () => {
    const strange = '\n  "findings": [],\n\u2028\u2029\r\n[]';
    const one = withFindings([{ ...report.findings[0], message: strange, data: { [strange]: strange } }]);
    const named = { ...one, tool: { name: strange, version: strange } };
    expect(JSON.parse(jsonReport(named))).toEqual(named);
    expect(jsonReport(named)).toBe(`${JSON.stringify(named, null, 2)}\n`);
  });

  it('is what the language itself writes, whatever the data are', () => {
    fc.assert(
      fc.property(fc.array(fc.dictionary(fc.string(), fc.jsonValue()), { maxLength: 5 }), (data) => {
        const many = withFindings(data.map((own) => ({ ...report.findings[0], data: own })));
        expect(jsonReport(many)).toBe(`${JSON.stringify(many, null, 2)}\n`);
      }),
    );
  });

  it('comes in pieces that are short, however many findings there are', () => {
    const many = withFindings(new Array<Finding>(5000).fill(report.findings[0]));
    const pieces = [...jsonReportPieces(many)];
    expect(pieces.length).toBeGreaterThan(5);
    expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThan(1_000_000);
  });
});
