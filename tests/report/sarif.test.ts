import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv, type ValidateFunction } from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rules } from '../../src/check/list.js';
import type { Report } from '../../src/generated/report.js';
import { check } from '../../src/jobs/check.js';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { printable } from '../../src/model/printable.js';
import { SARIF_MOST_BYTES, SARIF_MOST_RESULTS, sarifReport } from '../../src/report/sarif.js';
import { verdictLines } from '../../src/report/text.js';
import { hole, layoutText, typeWithSpacing } from '../jobs/small-layout.js';
import { cause, coverage, finding, HOSTILE, hostileReport, largeReport, reportOf } from './synthetic-report.js';

interface Result {
  ruleId: string;
  ruleIndex: number;
  level: string;
  message: { text: string };
  locations: {
    physicalLocation: { artifactLocation: { uri: string; index: number }; region?: Record<string, number> };
    logicalLocations?: { name?: string; fullyQualifiedName?: string }[];
  }[];
  relatedLocations?: Result['locations'];
  partialFingerprints: Record<string, string>;
  suppressions?: Record<string, unknown>[];
  properties: Record<string, unknown>;
}
interface Run {
  tool: { driver: { name: string; version: string; rules: { id: string; [k: string]: unknown }[] } };
  artifacts: { location: { uri: string }; hashes?: Record<string, string> }[];
  invocations: {
    executionSuccessful: boolean;
    exitCode?: number;
    toolExecutionNotifications: { level: string; message: { text: string } }[];
  }[];
  results: Result[];
  properties: Record<string, unknown>;
}

function runOf(report: Report, options?: Parameters<typeof sarifReport>[1]): Run {
  return JSON.parse(sarifReport(report, options)).runs[0] as Run;
}

function notes(run: Run): string[] {
  return run.invocations[0].toolExecutionNotifications.map(({ message }) => message.text);
}

/** The text of a message as a reader of the standard gives it (SARIF 2.1.0, 3.11.5). */
function read(text: string): string {
  return text.replace(/\{\{|\}\}/g, ([brace]) => brace);
}

// OASIS, sarif-spec e058381: sarif-schema-2.1.0.json.
const schemaFile = join(import.meta.dirname, '../../../shared/data/sarif/sarif-schema-2.1.0.json');

/**
 * The schema is written after draft-04. All keywords that it uses mean the same in the drafts that the validator
 * knows, but for the name of the draft and its own.
 */
function compiled(): ValidateFunction | undefined {
  if (!existsSync(schemaFile)) return undefined;
  const { $schema, id, ...schema } = JSON.parse(readFileSync(schemaFile, 'utf8'));
  expect([$schema, id]).toEqual(['http://json-schema.org/draft-04/schema#', expect.stringMatching(/^https:/)]);
  return new Ajv({ strict: false, validateFormats: false }).compile(schema);
}

describe.skipIf(!existsSync(schemaFile))('the report as SARIF, held against the schema of SARIF 2.1.0', () => {
  const validate = compiled();
  const errorsOf = (report: Report, options?: Parameters<typeof sarifReport>[1]) => {
    validate?.(JSON.parse(sarifReport(report, options)));
    return validate?.errors;
  };

  it('is valid with nothing found, with findings of every kind, and with each exit code', () => {
    expect(errorsOf(reportOf())).toBeNull();
    for (const exitCode of [0, 1, 3] as const) expect(errorsOf(largeReport(20), { rules, exitCode })).toBeNull();
    expect(errorsOf(reportOf({ inputs: [], language: 'pt-BR' }))).toBeNull();
  });

  it('is valid for a check of holes that lie too close', () => {
    const holes = [0, 1, 2].map((k) => hole(`H-${k}`, [k * 50, 0, 0]));
    const data = layoutText({ holeTypes: [typeWithSpacing(80)], holes });
    const report = check([
      { name: 'a b.json', data },
      { name: 'bad', data: '{' },
    ]);
    expect(report.findings.length).toBeGreaterThan(3);
    expect(errorsOf(report, { rules })).toBeNull();
  });

  it('is valid whatever the texts are', () => {
    fc.assert(
      fc.property(fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'binary' })), (text) => {
        expect(errorsOf(hostileReport(text))).toBeNull();
      }),
      { numRuns: 100 },
    );
  });

  it('would not be valid if a level were another word', () => {
    const sarif = JSON.parse(sarifReport(largeReport(1)));
    sarif.runs[0].results[0].level = 'grave';
    expect(validate?.(sarif)).toBe(false);
  });
});

describe('the report as SARIF', () => {
  it('gives a finding its rule, level, message, file, line, pointer and hole', () => {
    const report = reportOf({ causes: [cause(1)], findings: [finding({ tag: 'B 7', source: { row: 9 } })] });
    const { results, tool } = runOf(report, { rules });
    expect(results).toEqual([
      {
        ruleId: 'holes-too-close',
        ruleIndex: 0,
        level: 'error',
        message: { text: report.findings[0].message },
        locations: [
          {
            physicalLocation: {
              artifactLocation: { uri: 'level3.ahx.json', index: 0 },
              region: { startLine: 7, startColumn: 3 },
            },
            logicalLocations: [{ name: 'H-1', fullyQualifiedName: '/holes/0/point' }],
          },
        ],
        partialFingerprints: { 'ahxFinding/v1': expect.stringMatching(/^[0-9a-f]{16}:1$/) },
        properties: { class: 'site', cause: 1, hole: 'H-1', tag: 'B 7', sourceRow: 9 },
      },
    ]);
    const rule = rules.find(({ id }) => id === 'holes-too-close');
    expect(tool.driver).toEqual({
      name: 'anchor-hole-exchange',
      version: '0.0.0',
      rules: [
        {
          id: 'holes-too-close',
          shortDescription: { text: rule?.title },
          fullDescription: { text: rule?.why },
          help: { text: rule?.mend },
          defaultConfiguration: { level: 'error' },
          properties: { class: 'site', stage: 'geometry' },
        },
      ],
    });
  });

  it('gives an offset where only that is known, and no region in a table', () => {
    const findings = [{ byte: 12 }, { row: 3, column: 2, sheet: 'A' }, { pointer: '/columns' }].map((place) =>
      finding({ place }),
    );
    const { results } = runOf(reportOf({ findings }));
    expect(results.map(({ locations }) => locations[0].physicalLocation.region)).toEqual([
      { byteOffset: 12 },
      undefined,
      undefined,
    ]);
    expect(results[1].properties).toMatchObject({ row: 3, column: 2, sheet: 'A' });
  });

  it('names the other input that a finding is about', () => {
    const inputs = ['a.json', 'b.json'].map((name) => ({ name, kind: 'layout', format: 'json', bytes: 1 }) as const);
    const data = { other: 'H-9', otherInput: 2, otherName: 'b.json' };
    const { results } = runOf(reportOf({ inputs: [...inputs], findings: [finding({ data })] }));
    expect(results[0].relatedLocations).toEqual([
      {
        id: 1,
        physicalLocation: { artifactLocation: { uri: 'b.json', index: 1 } },
        logicalLocations: [{ name: 'H-9' }],
        message: { text: 'The other record, "H-9".' },
      },
    ]);
  });

  it('suppresses what a baseline accepts, and says of the others that nothing does', () => {
    const entry = { rule: 'x', layout: 'L', reason: 'agreed {here}', owner: 'EC', expires: '2027-01-01' };
    const baseline = {
      entries: [{ ...entry, state: 'in-force' as const, findings: 1, matched: 1 }],
      counts: { error: 1, warning: 0, info: 0 },
    };
    const { results } = runOf(reportOf({ findings: [finding({ accepted: 1 }), finding()], baseline }));
    expect(results.map(({ suppressions }) => suppressions)).toEqual([
      [],
      [
        {
          kind: 'external',
          status: 'accepted',
          justification: 'agreed {{here}}',
          properties: { owner: 'EC', expires: '2027-01-01' },
        },
      ],
    ]);
    expect(runOf(reportOf({ findings: [finding()] })).results[0].suppressions).toBeUndefined();
  });

  it('gives the digest of an input, the exit code, the verdicts, what did not run and the caution', () => {
    const digest = 'ab'.repeat(32);
    const report = reportOf({
      inputs: [{ name: 'a', kind: 'layout', format: 'json', bytes: 9, digest: `sha256:${digest}` }],
      coverage: [coverage('off-surface', { outcome: 'not-run', reason: 'no substrate' }), coverage('tag-clash')],
    });
    const run = runOf(report, { exitCode: 3 });
    expect(run.artifacts[0]).toMatchObject({ length: 9, hashes: { 'sha-256': digest } });
    expect(run.invocations[0]).toMatchObject({ executionSuccessful: false, exitCode: 3 });
    expect(notes(run)).toEqual([...verdictLines(report), SHORT_CAUTION]);
    expect(run.properties).toMatchObject({
      ...{
        purpose: 'for-review',
        verdict: report.verdict,
        verdictLines: verdictLines(report),
        caution: report.caution,
      },
      notJudged: [{ rule: 'off-surface', class: 'site', outcome: 'not-run', reason: 'no substrate' }],
    });
    expect(run.properties.notJudged).toHaveLength(1);
  });

  it('names the language of the messages where SARIF has a tag for it', () => {
    const languageOf = (language?: string) => (runOf(reportOf({ language })) as { language?: string }).language;
    expect(['es', 'pt-BR', undefined, 'zh-Hant', '<x>'].map(languageOf)).toEqual([
      'es',
      'pt-BR',
      'en',
      undefined,
      undefined,
    ]);
  });

  it('warns where a verdict cannot be given', () => {
    const run = runOf(reportOf({ verdict: { format: 'pass', site: 'cannot-judge' } }));
    expect(run.invocations[0].toolExecutionNotifications[0].level).toBe('warning');
  });

  it('gives back every text, whatever it is, with no link and no placeholder in it', () => {
    const markup = fc.string({
      unit: fc.constantFrom('{', '}', '0', '[', ']', '(', ')', '\\', 'a', '\n'),
      maxLength: 20,
    });
    fc.assert(
      fc.property(fc.oneof(fc.constantFrom(...HOSTILE), markup, fc.string({ unit: 'binary' })), (text) => {
        const sarif = sarifReport(hostileReport(text));
        const { results } = JSON.parse(sarif).runs[0] as Run;
        const shown = printable(text === '' ? '(no text)' : text);
        for (const { message } of results) {
          expect(read(message.text)).toBe(shown.replaceAll('](', '] ('));
          expect(message.text).not.toMatch(/\[[^\]]*\]\([^)]+\)/);
          expect(message.text.replace(/\{\{|\}\}/g, '')).not.toMatch(/[{}]/);
        }
        expect(sarif).not.toMatch(/\p{Cs}/u);
        // In the escapes of JSON too.
        expect(JSON.stringify(results)).not.toMatch(/(?<!\\)(\\\\)*\\ud[89a-f]/);
      }),
      { numRuns: 300 },
    );
  });

  it('takes the gravest first, no more than it states, and says what is left out', () => {
    const report = largeReport(40_000);
    const sarif = sarifReport(report, { rules });
    expect(sarif).toBe(sarifReport(structuredClone(report), { rules }));
    const run = JSON.parse(sarif).runs[0] as Run;
    expect(run.results).toHaveLength(SARIF_MOST_RESULTS);
    expect(run.results.slice(0, 4000).every(({ level }) => level === 'error')).toBe(true);
    expect(run.properties.sample).toEqual({ limit: 1000, listed: 40_000, total: 40_000, results: SARIF_MOST_RESULTS });
    expect(notes(run)[2]).toContain('25000 of 40000 findings are listed here');
  });

  it('stays below the stated size where messages are long', () => {
    const message = '\u0000'.repeat(2000);
    const findings = Array.from({ length: 8000 }, () => finding({ message }));
    const sarif = sarifReport(reportOf({ causes: [cause(1)], findings }));
    expect(Buffer.byteLength(sarif)).toBeLessThan(SARIF_MOST_BYTES + 100_000);
    expect(notes(JSON.parse(sarif).runs[0])[2]).toMatch(/^\d{4} of 8000 findings are listed here/);
  });
});

describe('the fingerprint of a finding', () => {
  const holes = [0, 1, 2].map((k) => hole(`H-${k}`, [k * 50, 0, 0]));
  const members = { holeTypes: [typeWithSpacing(80)], holes };
  const prints = (data: string, name = 'a') =>
    runOf(check([{ name, data }])).results.map(({ partialFingerprints }) => partialFingerprints['ahxFinding/v1']);

  it('stays when lines are renumbered, records come before it, and the file gets another name', () => {
    const before = prints(layoutText(members));
    expect(before).toHaveLength(3);
    expect(new Set(before).size).toBe(3);
    const spread = JSON.stringify(JSON.parse(layoutText(members)), null, 2);
    expect(prints(`\n\n${spread}`)).toEqual(before);
    const more = layoutText({ ...members, holes: [hole('H-0a', [5e5, 0, 0]), ...holes] });
    expect(prints(more, 'b')).toEqual(before);
  });

  it('stays where a record without a hole gets another place, and changes with the record', () => {
    const faulty = (id: string) => ({ id, name: `Trade ${id}`, shape: 'round' });
    const sound = { id: 'FP', name: 'Sprinkler' };
    const before = prints(layoutText({ trades: [sound, faulty('A'), faulty('B')] }));
    expect(before).toHaveLength(2);
    expect(new Set(before.map((print) => print.split(':')[0])).size).toBe(2);
    expect(prints(layoutText({ trades: [faulty('B'), faulty('A'), sound] }))).toEqual(before.toReversed());
  });

  it('changes with the rule, the hole, the layout and the facts', () => {
    const print = (parts: Parameters<typeof finding>[0], id = 'L') => {
      const inputs = [{ name: 'a', id, kind: 'layout', format: 'json', bytes: 1 } as const];
      return runOf(reportOf({ inputs, findings: [finding(parts)] })).results[0].partialFingerprints['ahxFinding/v1'];
    };
    const all = [
      ...[print({}), print({ rule: 'x' }), print({ id: 'H-2' }), print({}, 'M')],
      ...[print({ data: { other: 'H-2', distance: 50.001, limit: 80 } }), print({ id: undefined })],
      ...['trades/A', 'trades/B', 'levels/A'].map((record) => print({ id: undefined, record })),
    ];
    expect(new Set(all).size).toBe(all.length);
    expect(print({ data: { limit: 80, distance: 50.0001, other: 'H-2', otherName: 'renamed.json' } })).toBe(all[0]);
  });

  it('is numbered where findings agree in all of that', () => {
    const { results } = runOf(reportOf({ findings: [finding(), finding(), finding()] }));
    expect(results.map(({ partialFingerprints }) => partialFingerprints['ahxFinding/v1'].split(':')[1])).toEqual([
      '1',
      '2',
      '3',
    ]);
  });
});
