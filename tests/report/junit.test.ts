import fc from 'fast-check';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { JUNIT_MOST_TEXT, type JUnitOptions, junitReport } from '../../src/report/junit.js';
import { printable } from '../../src/report/printable.js';
import { verdictLines } from '../../src/report/text.js';
import { cause, coverage, finding, HOSTILE, hostileReport, largeReport, reportOf } from './synthetic-report.js';
import type { Report } from '../../src/generated/report.js';

type Node = Record<string, unknown> & { '@': Record<string, string> };
interface Suite extends Node {
  testcase: (Node & { failure?: Node[]; error?: Node[]; skipped?: Node[]; 'system-out'?: string[] })[];
  'system-out'?: string[];
}

/** Characters that XML 1.0 cannot carry (https://www.w3.org/TR/xml/#NT-Char). */
const NOT_XML = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;

const parser = new XMLParser({
  ignoreAttributes: false,
  attributesGroupName: '@',
  attributeNamePrefix: '',
  parseAttributeValue: false,
  parseTagValue: false,
  trimValues: false,
  isArray: (name, _path, _leaf, isAttribute) => !isAttribute && !['testsuites', '@', 'properties'].includes(name),
});

function parse(xml: string): { counts: Record<string, string>; suites: Suite[] } {
  expect(XMLValidator.validate(xml)).toBe(true);
  expect(xml).not.toMatch(NOT_XML);
  const { testsuites } = parser.parse(xml) as { testsuites: { '@': Record<string, string>; testsuite: Suite[] } };
  return { counts: testsuites['@'], suites: testsuites.testsuite };
}

function cases(report: Report, options?: JUnitOptions): Suite['testcase'] {
  return parse(junitReport(report, options)).suites[1].testcase;
}

describe('the report as JUnit XML', () => {
  it('has a suite for the verdicts, which ends with the caution, and one for each input', () => {
    const report = reportOf({ causes: [cause(1)], findings: [finding()] });
    const { counts, suites } = parse(junitReport(report));
    expect(suites.map((suite) => suite['@'].name)).toEqual(['verdicts', 'level3.ahx.json']);
    expect(suites[0]['system-out']).toEqual([[...verdictLines(report), SHORT_CAUTION].join('\n')]);
    expect(counts).toEqual({ name: 'AHX check', tests: '3', failures: '2', errors: '0', skipped: '0' });
  });

  it('has a case for each rule: passed, failed, skipped with the reason; none for what does not apply', () => {
    const report = reportOf({
      causes: [cause(1, { findings: 2 })],
      findings: [finding(), finding({ id: 'H-2', tag: 'B', message: 'Another.' })],
      coverage: [
        coverage('holes-too-close', { findings: 2 }),
        coverage('off-surface'),
        coverage('tag-clash', { outcome: 'not-applicable' }),
        coverage('breaks-through', { outcome: 'not-run', reason: 'depth not given' }),
      ],
    });
    const found = cases(report);
    expect(found.map((one) => [one['@'].classname, one['@'].name])).toEqual([
      ['site', 'holes-too-close'],
      ['site', 'off-surface'],
      ['site', 'breaks-through'],
    ]);
    expect(found[0].failure).toEqual([
      {
        '@': { message: 'Cause 1. (2 findings)', type: 'error' },
        '#text': [
          'error: Cause 1. (2 findings, the first at line 7, column 3)',
          '- hole H-1: The hole lies 50 mm from hole "H-2"; at least 80 mm is needed (invented). (line 7, column 3)',
          '- hole H-2 (tag B): Another. (line 7, column 3)',
        ].join('\n'),
      },
    ]);
    expect(Object.keys(found[1])).toEqual(['@']);
    expect(found[2].skipped?.[0]['@'].message).toBe('depth not given');
  });

  it('fails by the threshold; what is less grave stands in the output of the case', () => {
    const report = reportOf({
      causes: [cause(1, { severity: 'warning' })],
      findings: [finding({ severity: 'warning' })],
    });
    expect(cases(report)[0].failure).toBeUndefined();
    expect(cases(report)[0]['system-out']?.[0]).toContain('warning: Cause 1.');
    expect(cases(report, { threshold: 'warning' })[0].failure).toHaveLength(1);
    expect(cases(report, { threshold: 'info' })[0].failure).toHaveLength(1);
  });

  it('does not fail for what a baseline accepts, and says why it does not', () => {
    const entry = { rule: 'holes-too-close', layout: 'L', reason: 'agreed', owner: 'EC', expires: '2027-01-01' };
    const report = reportOf({
      causes: [cause(1, { accepted: 1 })],
      findings: [finding({ accepted: 1 })],
      baseline: {
        entries: [{ ...entry, state: 'in-force', findings: 1, matched: 1 }],
        counts: { error: 1, warning: 0, info: 0 },
      },
    });
    expect(cases(report)[0].failure).toBeUndefined();
    expect(cases(report)[0]['system-out']?.[0]).toContain('accepted until 2027-01-01 by EC: agreed');
  });

  it('is an error where a verdict cannot be given, even if nothing was found', () => {
    const { counts, suites } = parse(junitReport(reportOf({ verdict: { format: 'cannot-judge', site: 'pass' } })));
    expect(counts.errors).toBe('1');
    expect(suites[0].testcase[0].error?.[0]['@'].type).toBe('cannot-judge');
  });

  it('puts the findings of each input into its own suite', () => {
    const input = { kind: 'layout', format: 'json', bytes: 1 } as const;
    const report = reportOf({
      inputs: [
        { ...input, name: 'a' },
        { ...input, name: 'b', revision: 'R2', digest: `sha256:${'a'.repeat(64)}` },
      ],
      causes: [cause(1, { input: 2 })],
      findings: [finding({ input: 2 })],
    });
    const [, a, b] = parse(junitReport(report)).suites;
    expect([a, b].map((suite) => suite['@'].failures)).toEqual(['0', '1']);
  });

  it('is well-formed and gives back every text, whatever it is', () => {
    const nasty = fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'binary' }));
    fc.assert(
      fc.property(nasty, (text) => {
        const { suites } = parse(junitReport(hostileReport(text)));
        const shown = printable(text);
        expect(suites).toHaveLength(3);
        expect(suites[1]['@'].name).toBe(shown);
        expect(suites[2].testcase[1]['@'].name).toBe(shown);
        expect(suites[1].testcase[2].skipped?.[0]['@'].message).toBe(shown);
        expect(String(suites[1].testcase[0].failure?.[0]['#text'])).toContain(`- hole ${shown}: ${shown}`);
      }),
      { numRuns: 300 },
    );
  });

  it('cuts the text of a case at the stated length and counts what it left out', () => {
    const report = largeReport(30_000);
    const xml = junitReport(report);
    expect(xml).toBe(junitReport(structuredClone(report)));
    const failure = parse(xml).suites[1].testcase[0].failure?.[0];
    const text = String(failure?.['#text']);
    const lines = text.split('\n');
    expect(lines.at(-1)).toBe(`and ${3000 - lines.filter((line) => line.startsWith('- ')).length} more`);
    expect(xml.length).toBeLessThan(3 * JUNIT_MOST_TEXT);
  });
});
