import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { CORPUS } from '../../src/build/derive-cases.js';
import { rules } from '../../src/check/list.js';
import { manifest, reportOf, root } from './corpus-files.js';

const ids = rules.map(({ id }) => id);
const camelCase = (id: string) => id.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
const namesIn = (folder: string, ending: string) =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith(ending))
    .map((name) => name.slice(0, -ending.length));

describe('every rule', () => {
  it('stands in a file of its name, under its name, and in the list', async () => {
    expect(namesIn('src/check/rules', '.ts').sort()).toEqual(ids.toSorted());
    for (const rule of rules) {
      const module = (await import(`../../src/check/rules/${rule.id}.ts`)) as Record<string, unknown>;
      expect(Object.entries(module)).toEqual([[camelCase(rule.id), rule]]);
    }
  });

  it('has a page, and there is no page of another', () => {
    expect(namesIn('spec/rules', '.md').sort()).toEqual(['README', ...ids].sort());
  });

  it('has a case that passes, one that fails and one to which it does not apply, or the reason why there is none', () => {
    const missing = ids.flatMap((id) => {
      const kinds = new Set(manifest.cases.filter(({ rule }) => rule === id).map(({ kind }) => kind));
      const needed = manifest.alwaysApplicable[id] === undefined ? ['pass', 'fail', 'na'] : ['pass', 'fail'];
      return needed.filter((kind) => !kinds.has(kind as 'pass')).map((kind) => `${id}: ${kind}`);
    });
    expect(missing).toEqual([]);
    expect(Object.keys(manifest.alwaysApplicable).filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('says of itself in whole sentences', () => {
    for (const { id, title, why, mend, accept = 'Never.' } of rules) {
      for (const text of [title, why, mend, accept])
        expect([id, text]).toEqual([id, expect.stringMatching(/^[A-Z].*\.$/)]);
    }
  });
});

describe('the catalogue of rules', () => {
  const catalogue = JSON.parse(readFileSync(join(root, 'schema/0.1/rules.json'), 'utf8')) as { id: string }[];

  it('holds to its schema and lists all rules in order', () => {
    const schema = JSON.parse(readFileSync(join(root, 'schema/0.1/rules.schema.json'), 'utf8')) as object;
    const validate = new Ajv2020({ strict: true }).compile(schema);
    expect(validate(catalogue), JSON.stringify(validate.errors)).toBe(true);
    expect(catalogue.map(({ id }) => id)).toEqual(ids);
  });
});

describe('the cases', () => {
  it('stand in the file of their rule and lie in its folder, and no file lies there without a case', () => {
    for (const { id, part, files, rule } of manifest.cases) {
      expect([id, part]).toEqual([expect.stringMatching(`^${rule}/`), { file: `cases/${rule}/cases.json`, rule }]);
      const form = files.length === 1 ? `^cases/${id}\\.` : `^cases/${id}[.-]`;
      for (const file of files) expect([id, file]).toEqual([id, expect.stringMatching(form)]);
    }
    const profiles = manifest.cases.flatMap(({ profile }) => profile ?? []).filter((path) => path.startsWith('cases/'));
    const ofConversions = manifest.conversions.flatMap((one) =>
      [one.file, one.profile ?? [], one.toProfile ?? []].flat(),
    );
    const named = [...manifest.parts, ...manifest.cases.flatMap(({ files }) => files), ...profiles, ...ofConversions];
    const there = readdirSync(join(root, CORPUS, 'cases'), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => `cases/${parentPath.split(/[\\/]/).at(-1)}/${name}`);
    expect(there.sort()).toEqual([...new Set(named)].sort());
  });

  it('fail for their own reason alone, but for the rules that they name beside it', () => {
    const fails = manifest.cases.filter(({ kind }) => kind === 'fail');
    const others = fails.map(({ id, rule, findings }) => {
      const rulesFound = new Set(findings.map((finding) => finding.rule));
      return [id, [...rulesFound].filter((found) => found !== rule).sort()];
    });
    expect(others).toEqual(fails.map(({ id, besides = [] }) => [id, besides.toSorted()]));
    expect(manifest.cases.filter(({ kind, besides }) => kind !== 'fail' && besides !== undefined)).toEqual([]);
  });
});

/** Keys of findings for which the input would have to be larger than a corpus can be. */
const TOO_LARGE: Record<string, string[]> = { 'row-length': ['limit'] };

describe('the data of findings', () => {
  const seen = new Map<string, Set<string>>(ids.map((id) => [id, new Set()]));
  for (const one of manifest.cases) {
    for (const { rule, data } of reportOf(one).findings) for (const key of Object.keys(data)) seen.get(rule)?.add(key);
  }

  it.each(rules.map((rule) => [rule.id, rule] as const))('of %s have the keys that the rule declares', (id, rule) => {
    const declared = Object.keys(rule.data).filter((key) => !TOO_LARGE[id]?.includes(key));
    expect([...(seen.get(id) ?? [])].sort()).toEqual(declared.sort());
  });
});
