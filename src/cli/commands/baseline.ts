import { existsSync } from 'node:fs';
import type { Baseline } from '../../generated/baseline.js';
import type { Report } from '../../generated/report.js';
import { rules } from '../../check/list.js';
import { check } from '../../jobs/check.js';
import { nearest } from '../../model/nearest.js';
import { checkOutputName, writeWhole } from '../../node/output-file.js';
import { acceptFindings, pruneBaseline } from '../../policy/accept.js';
import { BadBaseline } from '../../policy/baseline.js';
import { counted } from '../../report/counted.js';
import { printable } from '../../model/printable.js';
import { type CheckFlags, checkFiles } from '../check-files.js';
import { pause, print } from '../console.js';
import { isDate } from '../date-time.js';
import { EXIT, WrongUse } from '../exit.js';
import { readDocument } from '../read-document.js';

export interface BaselineFlags extends Omit<CheckFlags, 'baseline'> {
  reason?: string;
  owner?: string;
  expires?: string;
  question?: string;
  rule: string[];
  prune: boolean;
}

/** Accepts findings of files in a baseline, or takes out of it what is there no more; returns the exit code. */
export async function runBaseline(path: string, files: readonly string[], flags: BaselineFlags): Promise<number> {
  const { accepts, asOf } = readFlags(flags);
  const before = existsSync(path) ? readDocument('baseline', path) : undefined;
  if (before === undefined && !accepts)
    throw new WrongUse(`${path} is not there; --reason, --owner and --expires make it.`);
  const checked = await checkFiles(
    files,
    { ...flags, asOf, baseline: before && path },
    { manners: { quiet: flags.quiet, colour: false }, sampleLimit: Number.MAX_SAFE_INTEGER },
  );
  checked.close();
  const { report, unreadable } = checked;
  if (report === undefined || unreadable > 0) return EXIT.unreadable;
  if (!accepts && !flags.prune) {
    print(states(report));
    return EXIT.clean;
  }
  const pruned = before !== undefined && flags.prune ? orWrongUse(() => pruneBaseline(before, report)) : before;
  const after = accepts ? orWrongUse(() => acceptFindings(report, acceptingOf(flags, asOf), pruned)) : pruned;
  checkOutputName(path, true);
  refuseInvalid(path, after);
  await writeWhole(path, [`${JSON.stringify(after, null, 2)}\n`], true, pause);
  print(said(path, before, after as Baseline));
  return EXIT.clean;
}

/** What people say must fit the format, or the file could not be read again. */
function refuseInvalid(name: string, baseline: Baseline | undefined): void {
  const report = check([{ name, data: JSON.stringify(baseline) }]);
  if (report.verdict.format === 'pass') return;
  const causes = report.causes.map(({ message, place }) => `${message} (${place.pointer ?? ''})`);
  throw new WrongUse(`The baseline would not be valid, and was not written: ${causes.join(' ')}`);
}

function readFlags({ reason, owner, expires, rule, question, asOf }: BaselineFlags): {
  accepts: boolean;
  asOf: string;
} {
  const said = [reason, owner, expires].filter((text) => text !== undefined);
  if (said.length !== 0 && said.length !== 3)
    throw new WrongUse('To accept findings, say all three: --reason, --owner and --expires.');
  if (said.length === 0 && (rule.length > 0 || question !== undefined))
    throw new WrongUse('--rule and --question go with --reason, --owner and --expires.');
  if (expires !== undefined && !isDate(expires))
    throw new WrongUse(`--expires needs a day such as 2026-06-30, not "${expires}".`);
  for (const id of rule) {
    const known = rules.find((candidate) => candidate.id === id);
    const near = nearest(
      id,
      rules.map((candidate) => candidate.id),
    );
    if (known === undefined)
      throw new WrongUse(`There is no rule "${id}".${near === undefined ? '' : ` Did you mean "${near}"?`}`);
    if (known.class === 'format')
      throw new WrongUse(`The rule "${id}" is about the form of a file; what breaks it is mended, not accepted.`);
  }
  return { accepts: said.length === 3, asOf: asOf ?? new Date().toISOString() };
}

function acceptingOf({ reason = '', owner = '', expires = '', question, rule }: BaselineFlags, asOf: string) {
  return {
    ...{ reason, owner, accepted: asOf.slice(0, 'YYYY-MM-DD'.length), expires },
    ...(question !== undefined && { question }),
    ...(rule.length > 0 && { rules: rule }),
  };
}

function said(path: string, before: Baseline | undefined, after: Baseline): string {
  const number = (baseline: Baseline | undefined) =>
    (baseline?.entries ?? []).reduce((sum, { findings }) => sum + findings.length, 0);
  const [was, is] = [number(before), number(after)];
  return `${printable(path)}: ${counted(is, 'accepted finding')} in ${after.entries.length} ${after.entries.length === 1 ? 'entry' : 'entries'} (before: ${was}). It is no approval; the findings stay in every report.\n`;
}

function states({ baseline }: Report): string {
  const lines = (baseline?.entries ?? []).map(
    ({ state, rule, layout, findings, matched, owner, expires, reason }) =>
      `${state.padEnd(11)} ${rule} in "${layout}": ${matched} of ${counted(findings, 'finding')}, until ${expires}, ${owner}: ${reason}`,
  );
  return lines.map((line) => `${printable(line)}\n`).join('') || 'The baseline has no entries.\n';
}

function orWrongUse<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw error instanceof BadBaseline ? new WrongUse(error.message) : error;
  }
}
