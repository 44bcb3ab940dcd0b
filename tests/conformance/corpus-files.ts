import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type CorpusCase,
  type CorpusConversion,
  type CorpusFinding,
  readManifest,
} from '../../src/build/corpus-manifest.js';
import { CORPUS } from '../../src/build/derive-cases.js';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import type { Finding, Report } from '../../src/generated/report.js';
import { type CheckOptions, check, createChecker } from '../../src/jobs/check.js';
import { type ConvertTarget, convert } from '../../src/jobs/convert.js';
import type { Loss } from '../../src/model/layout-source.js';

export const root = join(import.meta.dirname, '../..');
export const manifest = readManifest(root);

/** Bytes of a file of the corpus. */
export function corpusBytes(path: string): Uint8Array {
  return readFileSync(join(root, CORPUS, path));
}

export function corpusJson(path: string): unknown {
  return JSON.parse(new TextDecoder().decode(corpusBytes(path)));
}

/** What our checker says of a case, with more options than the case has. */
export function reportOf(one: CorpusCase, more: CheckOptions = {}): Report {
  const profile = one.profile === undefined ? undefined : (corpusJson(one.profile) as ColumnProfile);
  const inputs = one.files.map((name) => ({
    name,
    data: corpusBytes(name),
    profile: name.endsWith('.csv') ? profile : undefined,
  }));
  return check(inputs, { ...(one.options as CheckOptions), ...more });
}

/** What our converter makes of an input. */
export async function conversionOf(one: CorpusConversion): Promise<{ text: string; losses: readonly Loss[] }> {
  const bytes = corpusBytes(one.file);
  const profileOf = (path: string | undefined) =>
    path === undefined ? undefined : (corpusJson(path) as ColumnProfile);
  const checker = createChecker();
  checker.open(one.file, { profile: profileOf(one.profile) });
  checker.write(bytes);
  const layout = checker.close().layout();
  const toProfile = profileOf(one.toProfile);
  if (layout === undefined || (one.to === 'csv') !== (toProfile !== undefined))
    throw new Error(`${one.id} is no sound case`);
  const target: ConvertTarget =
    toProfile === undefined ? { form: one.to as 'layout' } : { form: 'csv', profile: toProfile };
  const { text, losses } = await convert(layout, target);
  return { text: [...text].join(''), losses };
}

/** A finding as far as the manifest speaks of it: its place in the same terms, and the same keys of its data. */
export function inTermsOf(expected: CorpusFinding | undefined, { rule, severity, input, place, data }: Finding) {
  const { pointer, line, column, byte, row } = place;
  const shown =
    expected?.byte !== undefined
      ? { byte, line, column }
      : expected?.pointer !== undefined
        ? { pointer, line, column, row }
        : { row, column };
  const keys = Object.keys(expected?.data ?? {});
  const known = Object.fromEntries(keys.map((key) => [key, data[key]]));
  const ofInput = input === 1 && expected?.input === undefined ? {} : { input };
  return { rule, severity, ...ofInput, ...shown, ...(expected?.data !== undefined && { data: known }) };
}
