import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import { check, type CheckOptions } from '../../src/jobs/check.js';
import { hole, layoutText, smallLayout, typeWithSpacing } from './small-layout.js';

function report(members: Record<string, unknown>, options?: CheckOptions) {
  return check([{ name: 'a', data: layoutText(members) }], options);
}

function coverageOf(rule: string, members: Record<string, unknown>, options?: CheckOptions) {
  const row = report(members, options).coverage.find((coverage) => coverage.rule === rule);
  if (row === undefined) throw new Error(`no coverage of ${rule}`);
  const { rule: _, class: __, ...rest } = row;
  return rest;
}

const wall = { id: 'W', name: 'Wall', kind: 'wall', face: { point: [0, 0, 0], inward: [0, 1, 0] } };
const bar = {
  id: 'B',
  kind: 'tendon',
  standoff: 5,
  knownFrom: 'scan',
  shape: { sphere: { centre: [0, 0, 0], radius: 5 } },
};

const idAndPoint: ColumnProfile['columns'] = [
  { column: 'A', field: 'id' },
  { column: 'B', field: 'x', unit: 'mm' },
  { column: 'C', field: 'y', unit: 'mm' },
];

describe('coverage', () => {
  it('says passed with the number of records that were judged', () => {
    expect(coverageOf('holes-coincide', { holes: [hole('A', [0, 0, 0]), hole('B', [9, 0, 0])] })).toEqual({
      outcome: 'passed',
      judged: 2,
      of: 2,
      findings: 0,
    });
    expect(coverageOf('wrong-type', {})).toEqual({ outcome: 'passed', judged: 5, of: 5, findings: 0 });
  });

  it('says failed with the number of findings', () => {
    const members = {
      holeTypes: [typeWithSpacing(80)],
      holes: [hole('A', [0, 0, 0]), hole('B', [9, 0, 0]), hole('C', [500, 0, 0])],
    };
    expect(coverageOf('holes-too-close', members)).toEqual({ outcome: 'failed', judged: 3, of: 3, findings: 2 });
  });

  it('says not-applicable where there is nothing that a rule is about', () => {
    expect(coverageOf('holes-too-close', {})).toMatchObject({ outcome: 'not-applicable', findings: 0 });
    expect(coverageOf('crosses-keep-out', {})).toMatchObject({ outcome: 'not-applicable' });
    expect(coverageOf('cell-empty', {})).toEqual({ outcome: 'not-applicable', findings: 0 });
    expect(coverageOf('holes-coincide', { holes: [] })).toMatchObject({ outcome: 'not-applicable' });
  });

  it('says not-run where all of it was left out, and why', () => {
    const broken = { holes: [hole('A', [0, 0, 0], { depth: 'x' })] };
    expect(coverageOf('holes-coincide', broken)).toEqual({
      outcome: 'not-run',
      judged: 0,
      of: 1,
      findings: 0,
      reason: '1 left out: record broken',
    });
    const onWall = { substrates: [wall], keepOuts: [bar], holes: [hole('A', [0, 0], { substrate: 'W' })] };
    expect(coverageOf('crosses-keep-out', onWall)).toEqual({
      outcome: 'not-run',
      judged: 0,
      of: 1,
      findings: 0,
      reason: '1 left out: height not known',
    });
  });

  it('says what was left out where the rest was judged', () => {
    const some = {
      holes: [
        hole('A', [0, 0, 0]),
        hole('B', [9, 0, 0], { depth: null }),
        hole('C', [99, 0, 0]),
        hole('D', [0, 0], { substrate: undefined }),
      ],
    };
    expect(coverageOf('holes-coincide', some)).toEqual({
      outcome: 'passed',
      judged: 2,
      of: 4,
      findings: 0,
      reason: '1 left out: record broken; 1 left out: height not known, and no substrate to compare in plan',
    });
  });

  it('says not-run for a rule that is off', () => {
    expect(coverageOf('unused-definition', {})).toMatchObject({
      outcome: 'not-run',
      reason: 'it is off unless asked for',
    });
    expect(coverageOf('holes-coincide', {}, { severities: { 'holes-coincide': 'off' } })).toMatchObject({
      outcome: 'not-run',
    });
  });

  it('says not-run for the later stages of a text that breaks off', () => {
    const { coverage } = check([{ name: 'a', data: layoutText().slice(0, -5) }]);
    const row = coverage.find(({ rule }) => rule === 'duplicate-id');
    expect(row).toMatchObject({ outcome: 'not-run', reason: 'the text could not be read to its end' });
  });

  it('adds several inputs up', () => {
    const { coverage } = check([
      { name: 'a', data: layoutText() },
      { name: 'b', data: layoutText({ holes: [hole('A', [0, 0, 0]), hole('B', [9, 0, 0])] }) },
      { name: 'c', data: layoutText().slice(0, -5) },
    ]);
    expect(coverage.find(({ rule }) => rule === 'holes-coincide')).toMatchObject({
      outcome: 'passed',
      judged: 3,
      of: 3,
      reason: 'the text could not be read to its end',
    });
  });
});

describe('verdicts', () => {
  it('pass where there is no error', () => {
    expect(report({}).verdict).toEqual({ format: 'pass', site: 'pass' });
    expect(report({ holes: [hole('A', [0, 0, 0]), hole('a', [99, 0, 0])] }).verdict).toEqual({
      format: 'pass',
      site: 'pass',
    });
  });

  it('fail each for its own classes', () => {
    expect(report({ holes: [hole('A', [0, 0, 0]), hole('B', [0, 0, 0])] }).verdict).toEqual({
      format: 'pass',
      site: 'fail',
    });
    expect(report({ colour: 'red' }).verdict.format).toBe('fail');
  });

  it('cannot be given for the site where a record was left out', () => {
    expect(report({ holes: [hole('A', [0, 0, 0], { depth: 'x' })] }).verdict).toEqual({
      format: 'fail',
      site: 'cannot-judge',
    });
    expect(report({ holes: [hole('A', [0, 0, 0], { trade: 'XX' })] }).verdict).toEqual({
      format: 'fail',
      site: 'cannot-judge',
    });
  });

  it('cannot be given for the site where a text breaks off, and fail where it is no JSON', () => {
    expect(check([{ name: 'a', data: '{"ahx":"0.1"' }]).verdict).toEqual({ format: 'fail', site: 'cannot-judge' });
  });

  it('are the worst of all inputs', () => {
    const inputs = [
      layoutText(),
      layoutText({ ahx: '0.2' }),
      layoutText({ holes: [hole('A', [0, 0, 0]), hole('B', [0, 0, 0])] }),
    ];
    expect(check(inputs.map((data) => ({ name: 'a', data }))).verdict).toEqual({
      format: 'cannot-judge',
      site: 'fail',
    });
  });
});

describe('a version that is not known', () => {
  it('of a later minor is a warning and is not judged, though its rules run', () => {
    const later = report({ ahx: '0.2', future: 1, holes: [hole('A', [0, 0, 0]), hole('B', [0, 0, 0])] });
    expect(later.findings.map(({ rule, severity }) => [rule, severity]).sort()).toEqual([
      ['holes-coincide', 'error'],
      ['unknown-member', 'info'],
      ['unsupported-version', 'warning'],
    ]);
    expect(later.verdict).toEqual({ format: 'cannot-judge', site: 'fail' });
    expect(report({ ahx: '0.2' }).verdict).toEqual({ format: 'cannot-judge', site: 'cannot-judge' });
  });

  it('of another major is an error that alone makes no verdict fail', () => {
    const other = report({ ahx: '1.0' });
    expect(other.findings.map(({ rule, severity, place }) => [rule, severity, place.pointer])).toEqual([
      ['unsupported-version', 'error', '/ahx'],
    ]);
    expect(other.verdict).toEqual({ format: 'cannot-judge', site: 'cannot-judge' });
  });

  it('in a profile or a report is not judged either', () => {
    const profile = { kind: 'column-profile', columns: idAndPoint, constants: { trade: 'FP', holeType: 'T' } };
    for (const [ahx, severity] of [
      ['0.2', 'warning'],
      ['1.0', 'error'],
    ]) {
      const other = check([{ name: 'p', data: JSON.stringify({ ahx, ...profile }) }]);
      expect(other.findings.map((finding) => [finding.rule, finding.severity])).toEqual([
        ['unsupported-version', severity],
      ]);
      expect(other.verdict).toEqual({ format: 'cannot-judge', site: 'cannot-judge' });
    }
    expect(check([{ name: 'p', data: JSON.stringify({ ahx: '0.1', ...profile }) }]).verdict.format).toBe('pass');
  });
});

describe('an extension that is required', () => {
  const uri = 'https://example.org/ahx/vacuum-log';
  const crowded = { extensionsRequired: [uri], holes: [hole('A', [0, 0, 0]), hole('B', [0, 0, 0])] };

  it('and not known keeps the later stages from running', () => {
    const { findings, verdict, coverage } = report(crowded);
    expect(findings.map(({ rule, place, data }) => [rule, place.pointer, data])).toEqual([
      ['required-extension-unknown', '/extensionsRequired/0', { extension: uri }],
    ]);
    expect(verdict).toEqual({ format: 'cannot-judge', site: 'cannot-judge' });
    expect(coverage.find(({ rule }) => rule === 'holes-coincide')).toMatchObject({
      outcome: 'not-run',
      reason: 'a required extension is not known',
    });
  });

  it('and known to the caller is no hindrance', () => {
    expect(report(crowded, { extensions: [uri] })).toMatchObject({ verdict: { format: 'pass', site: 'fail' } });
  });

  it('holds for the layout of a profile as well', () => {
    const profile: ColumnProfile = {
      ahx: '0.1',
      kind: 'column-profile',
      columns: idAndPoint,
      constants: { trade: 'FP', holeType: 'T' },
      layout: {
        id: 'T',
        revision: { label: 'A' },
        frame: smallLayout.frame,
        trades: smallLayout.trades,
        holeTypes: smallLayout.holeTypes,
        extensionsRequired: [uri],
      },
    };
    const ofTable = (options?: CheckOptions) => check([{ name: 't', data: 'A,B,C\n1,2,3\n', profile }], options);
    expect(ofTable().verdict).toEqual({ format: 'cannot-judge', site: 'cannot-judge' });
    expect(ofTable().findings.map(({ rule, place }) => [rule, place])).toEqual([
      ['required-extension-unknown', { pointer: '/layout/extensionsRequired/0' }],
    ]);
    expect(ofTable({ extensions: [uri] }).verdict).toEqual({ format: 'pass', site: 'pass' });
  });
});

describe('a document of a kind that is not known', () => {
  it('gets one finding, at its kind, however strange its members are', () => {
    const data = '{ "ahx": "0.1", "kind": "layuot", "events": [{ "x": 1 }], "strange": 2 }';
    const report = check([{ name: 'a', data }]);
    expect(
      report.findings.map(({ rule, place, data: facts }) => [rule, place.pointer, place.column, facts.nearest]),
    ).toEqual([['not-a-choice', '/kind', 25, 'layout']]);
    expect(report.verdict).toEqual({ format: 'fail', site: 'cannot-judge' });
    expect(report.inputs[0].kind).toBe('unknown');
    expect(report.coverage.filter(({ outcome }) => outcome === 'passed')).toEqual([]);
  });
});
