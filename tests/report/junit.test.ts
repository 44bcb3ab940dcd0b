import fc from 'fast-check';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { check } from '../../src/jobs/check.js';
import { JUNIT_MOST_TEXT, type JUnitOptions, junitReport } from '../../src/report/junit.js';
import { es } from '../../src/report/languages/es.js';
import { printable } from '../../src/model/printable.js';
import { verdictLines } from '../../src/report/text.js';
import { cause, coverage, finding, HOSTILE, hostileReport, largeReport, reportOf } from './synthetic-report.js';
import { hole, layoutText } from '../jobs/small-layout.js';
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
  return parse(junitReport(report, options)).suites[2].testcase;
}

describe('the report as JUnit XML', () => {
  it('has a suite for the verdicts, which ends with the caution, one for inputs and one for rules', () => {
    const report = reportOf({ causes: [cause(1)], findings: [finding()] });
    const { counts, suites } = parse(junitReport(report));
    expect(suites.map((suite) => suite['@'].name)).toEqual(['verdicts', 'inputs', 'rules']);
    expect(suites[0]['system-out']).toEqual([[...verdictLines(report), SHORT_CAUTION].join('\n')]);
    expect(counts).toEqual({ name: 'AHX check', tests: '4', failures: '3', errors: '0', skipped: '0' });
    expect(suites.map((suite) => suite['@'].tests)).toEqual(['2', '1', '1']);
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

  it('skips a rule that judged only a part, and says which, even where it found less than a failure', () => {
    const reason = '1 left out: record broken; 2 left out: depth not known';
    const report = reportOf({
      causes: [cause(1, { severity: 'warning' })],
      findings: [finding({ severity: 'warning' })],
      coverage: [
        coverage('holes-too-close', { findings: 1, judged: 2, of: 5, reason }),
        coverage('off-surface', { judged: 2, of: 5, reason }),
        coverage('tag-clash', { judged: 5, of: 5 }),
        // One of several inputs was left out as a whole, and its records are not counted.
        coverage('edge-too-close', { judged: 5, of: 5, reason: 'an input cannot be read' }),
      ],
    });
    const skipped = cases(report).map((one) => one.skipped?.[0]['@'].message);
    expect(skipped).toEqual([
      `judged 2 of 5: ${reason}`,
      `judged 2 of 5: ${reason}`,
      undefined,
      'judged in part: an input cannot be read',
    ]);
    expect(cases(report)[0]['system-out']?.[0]).toContain('warning: Cause 1.');
    expect(cases(report, { threshold: 'warning' })[0].failure?.[0]['@'].message).toBe(
      `Cause 1. (1 finding; judged 2 of 5: ${reason})`,
    );
    const spanish = cases(report, { phrases: es.phrases })[1].skipped?.[0]['@'].message;
    expect(spanish).toBe('juzgados 2 de 5: se omite 1: registro dañado; se omiten 2: profundidad desconocida');
  });

  it('has a case for each input, which fails with what is in it and passes only if all holes were judged', () => {
    const input = { kind: 'layout', format: 'json', bytes: 1, holes: 4, judged: 4 } as const;
    const digest = `sha256:${'a'.repeat(64)}`;
    const report = reportOf({
      inputs: [
        { ...input, name: 'a' },
        { ...input, name: 'b', revision: 'R2', digest },
        { ...input, name: 'c', judged: 0 },
        { ...input, name: 'd', kind: 'unknown', holes: undefined, judged: undefined },
      ],
      causes: [
        cause(1, { input: 2, findings: 3 }),
        cause(2, { input: 2 }),
        cause(3, { input: 1, severity: 'warning' }),
      ],
      findings: [],
    });
    const { suites } = parse(junitReport(report));
    const [a, b, c, d] = suites[1].testcase;
    expect([a, b, c, d].map((one) => [one['@'].classname, one['@'].name])).toEqual(
      ['a', 'b', 'c', 'd'].map((name) => ['input', name]),
    );
    expect([a.failure, a.skipped]).toEqual([undefined, undefined]);
    expect(b.failure?.[0]['@'].message).toBe('4 findings in 2 causes');
    expect(b['system-out']).toEqual([`kind: layout\nrevision: R2\ndigest: ${digest}\nholes: 4\njudged: 4`]);
    expect(c.skipped?.[0]['@'].message).toBe('0 of 4 holes judged');
    expect(d.skipped?.[0]['@'].message).toBe('it is not known what this is; nothing in it was judged');
    // With several inputs each cause says where it is.
    expect(String(suites[2].testcase[0].failure?.[0]['#text'])).toContain('(3 findings, the first at b, line 7,');
  });

  it('has no case that passes for what was not judged of a file whose records are all broken', () => {
    const broken = layoutText({ id: 'broken', holes: [hole('X', [0, 0, 0], { depth: 'x' })] });
    const report = check([
      { name: 'good', data: layoutText() },
      { name: 'broken', data: broken },
    ]);
    const { suites } = parse(junitReport(report));
    expect(suites[1].testcase.map((one) => Object.keys(one)[0])).toEqual(['system-out', 'failure']);
    expect(suites[1].testcase[1].failure?.[0]['@'].message).toContain('0 of 1 hole judged');
    const passed = suites[2].testcase.filter((one) => one.failure === undefined && one.skipped === undefined);
    const names = passed.map((one) => one['@'].name);
    expect(names.length).toBeGreaterThan(0);
    for (const { rule, judged, of } of report.coverage) if (names.includes(rule)) expect(judged).toBe(of);
  });

  it('is well-formed and gives back every text, whatever it is', () => {
    const nasty = fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'binary' }));
    fc.assert(
      fc.property(nasty, (text) => {
        const { suites } = parse(junitReport(hostileReport(text)));
        const shown = printable(text);
        expect(suites).toHaveLength(3);
        expect(suites[1].testcase[0]['@'].name).toBe(text === '' ? 'input 1' : shown);
        expect(suites[2].testcase[1]['@'].name).toBe(shown);
        expect(suites[2].testcase[2].skipped?.[0]['@'].message).toBe(shown);
        expect(String(suites[2].testcase[0].failure?.[0]['#text'])).toContain(`- hole ${shown}: ${shown}`);
      }),
      { numRuns: 300 },
    );
  });

  it('cuts the text of a case at the stated length and counts what it left out', () => {
    const report = largeReport(30_000);
    const xml = junitReport(report);
    expect(xml).toBe(junitReport(structuredClone(report)));
    const failure = parse(xml).suites[2].testcase[0].failure?.[0];
    const text = String(failure?.['#text']);
    const lines = text.split('\n');
    expect(lines.at(-1)).toBe(`and ${3000 - lines.filter((line) => line.startsWith('- ')).length} more`);
    expect(xml.length).toBeLessThan(3 * JUNIT_MOST_TEXT);
  });
});
