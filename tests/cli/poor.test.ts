import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/generated/report.js';
import { ahx, example, poor, survey, surveyProfile } from './run-ahx.js';

// The findings that examples/poor/README.md promises, read off its two tables.

function reportOf(...args: string[]): Report {
  return JSON.parse(ahx(['check', '--format', 'json', ...args]).out) as Report;
}

/** Rows of the Markdown table under a heading. */
function tableUnder(heading: string): string[][] {
  const text = readFileSync(example('poor/README.md'), 'utf8');
  const section = text.slice(text.indexOf(`## ${heading}`)).split('\n## ')[0];
  return section
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .slice(2)
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

describe('the poor layout', () => {
  const { findings, causes, counts, verdict } = reportOf(poor);

  it('gives exactly the findings that its page lists', () => {
    expect(findings.map(({ rule, place, id }) => [rule, place.pointer, id]).sort()).toEqual(
      [
        ['not-a-choice', '/parties/1/role', undefined],
        ['unknown-reference', '/holes/1/trade', 'P-02'],
        ['duplicate-id', '/holes/3/id', 'P-03'],
        ['holes-coincide', '/holes/5/point', 'P-06'],
        ['holes-too-close', '/holes/6/point', 'P-07'],
        ['holes-too-close', '/holes/7/point', 'P-08'],
        ['outside-substrate', '/holes/8/point', 'P-09'],
        ['breaks-through', '/holes/9', 'P-10'],
        ['crosses-keep-out', '/holes/10', 'P-11'],
        ['wrong-type', '/holes/11/depth', 'P-12'],
        ['unknown-member', '/holes/12/diametre', 'P-13'],
        ['missing-member', '/holes/13', 'P-14'],
        ['duplicate-name', '/holes/14/depth', 'P-15'],
      ].sort(),
    );
    expect([counts, causes.length]).toEqual([{ error: 13, warning: 0, info: 0 }, 12]);
    expect(verdict).toEqual({ format: 'fail', site: 'fail' });
  });

  it('has a page that lists every pointer and rule', () => {
    const rows = tableUnder('poor.ahx.json');
    expect(rows.map(([, , rule]) => rule).sort()).toEqual(causes.map(({ rule }) => rule).sort());
    for (const [where, , rule] of rows) {
      const pointers = [...where.matchAll(/`(\/[^`]+)`/g)].map(([, pointer]) => pointer);
      expect(pointers.length).toBeGreaterThan(0);
      const found = findings.filter((finding) => finding.rule === rule).map(({ place }) => place.pointer ?? '');
      expect(found.map((pointer, k) => pointer.startsWith(pointers[k]))).toEqual(pointers.map(() => true));
    }
  });

  it('points at the text', () => {
    const lines = readFileSync(poor, 'utf8').split('\n');
    for (const { place, rule } of findings) {
      const rest = lines[(place.line ?? 0) - 1].slice((place.column ?? 0) - 1);
      const begins: Readonly<Record<string, RegExp>> = {
        'not-a-choice': /^"forman"/,
        'unknown-reference': /^"sprinker"/,
        'duplicate-id': /^"P-03"/,
        'wrong-type': /^"60"/,
        'unknown-member': /^"diametre"/,
        'duplicate-name': /^"depth": 65/,
        'missing-member': /^\{ "id": "P-14"/,
      };
      expect(rest).toMatch(begins[rule] ?? /^(\{ "id"|\[\d)/);
    }
  });

  it('names what was likely meant', () => {
    const nearest = findings.map(({ rule, data }) => [rule, data.nearest]).filter(([, near]) => near !== undefined);
    expect(nearest.sort()).toEqual([
      ['not-a-choice', 'foreman'],
      ['unknown-member', 'diameter'],
      ['unknown-reference', 'sprinkler'],
    ]);
  });
});

describe('the poor list', () => {
  const { findings, causes, counts, verdict, inputs } = reportOf(survey, '--profile', surveyProfile);

  it('gives exactly the findings that its page lists', () => {
    expect(findings.map(({ rule, severity, place }) => [rule, severity, place.row, place.column])).toEqual([
      ['rows-left-out', 'info', 2, undefined],
      ['code-unmapped', 'error', 5, 5],
      ['code-unmapped', 'error', 6, 5],
      ['cell-unreadable', 'error', 7, 3],
      ['cell-empty', 'error', 8, 2],
      ['code-unmapped', 'error', 9, 5],
      ['row-length', 'error', 10, 4],
    ]);
    expect(counts).toEqual({ error: 6, warning: 0, info: 1 });
    expect(causes.filter(({ severity }) => severity === 'error')).toHaveLength(5);
    expect(verdict).toEqual({ format: 'fail', site: 'cannot-judge' });
    expect(inputs[0]).toMatchObject({ kind: 'layout', format: 'csv', holes: 4 });
  });

  it('has a page that lists every rule, and the nearest code', () => {
    const rules = tableUnder('survey-list.csv').map(([, , rule]) => rule);
    expect(rules.sort()).toEqual(
      causes
        .filter(({ severity }) => severity === 'error')
        .map(({ rule }) => rule)
        .sort(),
    );
    expect(findings.find(({ place }) => place.row === 9)?.data).toMatchObject({ code: 'HRG-38', nearest: 'HGR-38' });
  });
});
