import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { bases, CORPUS, type DerivedCase } from '../../src/build/derive-cases.js';
import type { CorpusConversion } from '../../src/build/corpus-manifest.js';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import { validateWhole } from '../../src/generated/validators.js';
import { check } from '../../src/jobs/check.js';
import { applyPatch } from './apply-patch.js';
import { conversionOf, corpusJson, inTermsOf, manifest, reportOf, root } from './corpus-files.js';

describe('the manifest', () => {
  it('holds to its schema', () => {
    const validate = new Ajv2020({ strict: true }).compile(corpusJson('manifest.schema.json') as object);
    expect(validate(corpusJson('manifest.json')), JSON.stringify(validate.errors)).toBe(true);
  });

  it('lists all parts that are there, sorted by name', () => {
    const folders = readdirSync(join(root, CORPUS, 'cases'));
    const there = folders
      .map((name) => `cases/${name}/cases.json`)
      .filter((path) => existsSync(join(root, CORPUS, path)));
    expect(manifest.parts).toEqual(there.sort());
  });

  it('has parts that hold to their schema', () => {
    const validate = new Ajv2020({ strict: true }).compile(corpusJson('cases.schema.json') as object);
    for (const part of manifest.parts) {
      expect(validate(corpusJson(part)), `${part}: ${JSON.stringify(validate.errors)}`).toBe(true);
    }
  });

  it('gives every case an id and files of its own', () => {
    const twice = (names: string[]) => names.filter((name, index) => names.indexOf(name) < index);
    const { cases, conversions } = manifest;
    expect(twice([...cases, ...conversions].map(({ id }) => id))).toEqual([]);
    expect(twice([...cases.flatMap(({ files }) => files), ...conversions.map(({ file }) => file)])).toEqual([]);
  });
});

describe('our checker', () => {
  it.each(manifest.cases.map((one) => [one.id, one] as const))('says of %s what the manifest says', (_, one) => {
    const report = reportOf(one);
    expect(report.findings.map((finding, k) => inTermsOf(one.findings[k], finding))).toEqual(one.findings);
    expect(report.verdict).toEqual(one.verdict);
    const { outcome, judged, of } = report.coverage.find(({ rule }) => rule === one.rule) ?? {};
    expect({ outcome, ...(one.coverage.judged !== undefined && { judged, of }) }).toEqual(one.coverage);
    if (one.counts !== undefined) expect(report.counts).toEqual(one.counts);
    if (one.causes !== undefined) expect(report.causes).toHaveLength(one.causes);
  });

  it.each(manifest.cases.map((one) => [one.id, one] as const))('reports on %s in sound form', (_, one) => {
    const report = reportOf(one);
    expect(validateWhole.report(report), JSON.stringify(validateWhole.report.errors)).toBe(true);
    for (const { message } of [...report.findings, ...report.causes]) {
      expect(message).toMatch(/^[^\s].{10,}[.?]$/);
      expect(message).not.toMatch(/undefined|NaN|\[object/);
    }
  });
});

describe.each(Object.entries(bases))('the cases derived from the schema of a %s', (kind, base) => {
  const document = corpusJson(base);
  const all = JSON.parse(readFileSync(join(root, CORPUS, `derived/${kind}.json`), 'utf8')) as DerivedCase[];
  // A document says by its kind which schema it is judged by; one without a known kind is judged as a layout.
  const cases = all.filter(({ id }) => kind === 'layout' || !/:\/kind: |: without kind$/.test(id));
  // Other rules may have more to say: a reference that was changed leads nowhere.
  const schemaRules = new Set(cases.flatMap(({ findings }) => findings.map(({ rule }) => rule as string)));

  it('get from our checker the findings of the schema stage that they name, and no others', () => {
    const different = cases.flatMap(({ id, patch, findings }) => {
      const text = JSON.stringify(applyPatch(document, patch));
      const found = check([{ name: id, data: text }])
        .findings.filter(({ rule }) => schemaRules.has(rule))
        .map(({ rule, place }) => ({ rule, pointer: place.pointer }));
      return JSON.stringify(found) === JSON.stringify(findings) ? [] : [{ id, expected: findings, found }];
    });
    expect(different).toEqual([]);
    expect(all.length - cases.length).toBe(kind === 'layout' ? 0 : 3);
    expect(cases.length).toBeGreaterThan(50);
  });
});

describe('our converter', () => {
  it.each(manifest.conversions.map((one) => [one.id, one] as const))(
    'makes of %s what the manifest says',
    async (_, one) => {
      const { text, losses } = await conversionOf(one);
      for (const { pointer, value, absent } of one.expect ?? []) {
        const found = valueAt(JSON.parse(text), pointer);
        expect({ pointer, found }).toEqual({ pointer, found: absent ? undefined : value });
      }
      if (one.rows !== undefined) expect(cellsOf(text, one)).toEqual(one.rows);
      expect(losses.map(({ field, count }) => ({ field, count }))).toEqual(expect.arrayContaining(one.losses ?? []));
    },
  );
});

function valueAt(document: unknown, pointer: string): unknown {
  const tokens = pointer.split('/').slice(1);
  return tokens.reduce<unknown>((value, token) => (value as Record<string, unknown> | undefined)?.[token], document);
}

/** Cells of a table whose rows have no line breaks in them. */
function cellsOf(text: string, one: CorpusConversion): string[][] {
  const { table } = corpusJson(one.toProfile ?? '') as ColumnProfile;
  const separator = table?.separator === 'semicolon' ? ';' : ',';
  const cell = new RegExp(`(?:^|${separator})(?:"((?:[^"]|"")*)"|([^${separator}]*))`, 'g');
  return text
    .trimEnd()
    .split(/\r?\n/)
    .map((line) => [...line.matchAll(cell)].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain));
}
