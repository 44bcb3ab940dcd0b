import { readFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { XMLParser } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { ahx, poor, sprinkler, survey, surveyProfile, workFolder } from './run-ahx.js';

const forms = ['sarif', 'junit', 'github', 'markdown', 'csv'];
const { path } = workFolder();

interface Sarif {
  runs: {
    results: { ruleId: string }[];
    artifacts: { hashes: Record<string, string> }[];
    invocations: { exitCode: number; executionSuccessful: boolean }[];
    tool: { driver: { rules: { id: string; help?: unknown }[] } };
  }[];
}

function sarif(args: readonly string[]): Sarif['runs'][0] {
  return (JSON.parse(ahx(['check', '--format', 'sarif', ...args]).out) as Sarif).runs[0];
}

describe.each(forms)('ahx check --format %s', (form) => {
  it('ends with the exit code of the check, says nothing else, and is the same each time', () => {
    const runs = [ahx(['check', '--format', form, poor]), ahx(['check', '-f', form, poor])];
    expect(runs[1]).toEqual(runs[0]);
    expect(runs[0]).toMatchObject({ code: 1, err: '' });
    expect(ahx(['check', '--format', form, sprinkler]).code).toBe(0);
  });

  it('tells what is in the file, and the caution', () => {
    const { out } = ahx(['check', '--format', form, poor]);
    for (const text of ['holes-coincide', 'P-06', SHORT_CAUTION]) expect(out).toContain(text);
  });

  it('tells what is wrong with a table', () => {
    const { out, code } = ahx(['check', '--format', form, survey, '--profile', surveyProfile]);
    expect(code).toBe(1);
    expect(out).toContain('code-unmapped');
  });

  it('is written whole with --quiet too, as JSON is', () => {
    expect(ahx(['check', '--quiet', '--format', form, poor]).out).toBe(ahx(['check', '--format', form, poor]).out);
  });
});

describe('ahx check --format sarif', () => {
  it('gives the digest of the file, the exit code and the rules in words', () => {
    const run = sarif([poor]);
    const digest = createHash('sha256').update(readFileSync(poor)).digest('hex');
    expect(run.artifacts[0].hashes).toEqual({ 'sha-256': digest });
    expect(run.invocations[0]).toMatchObject({ exitCode: 1, executionSuccessful: true });
    expect(run.tool.driver.rules.every(({ help }) => help !== undefined)).toBe(true);
  });

  it('lists as many results as the limit lets the report list', () => {
    expect(sarif(['--limit', '3', poor]).results).toHaveLength(3);
  });

  it('says that the tool did not succeed where an input cannot be read', () => {
    const run = sarif([poor, path('missing.ahx.json')]);
    expect(run.invocations[0]).toMatchObject({ exitCode: 3, executionSuccessful: false });
  });
});

describe('ahx check --format junit', () => {
  const failures = (...args: string[]) => {
    const xml = ahx(['check', '--format', 'junit', ...args, poor]).out;
    const parser = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '' });
    return Number((parser.parse(xml) as { testsuites: { failures: string } }).testsuites.failures);
  };

  it('fails the rules that found something of at least the threshold', () => {
    expect(failures('--severity', 'crosses-keep-out=info')).toBe(failures() - 1);
    expect(failures('--severity', 'crosses-keep-out=info', '--threshold', 'info')).toBe(failures());
  });
});
