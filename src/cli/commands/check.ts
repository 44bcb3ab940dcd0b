import type { Report } from '../../generated/report.js';
import type { Severity } from '../../model/observation.js';
import { jsonReport } from '../../report/json.js';
import { textReport, verdictLines } from '../../report/text.js';
import { type CheckFlags, checkFiles } from '../check-files.js';
import { print, wantsColour } from '../console.js';
import { EXIT } from '../exit.js';

export interface CheckCommandFlags extends CheckFlags {
  format: 'text' | 'json';
  threshold?: Severity;
  colour?: string;
}

/** Checks the files and returns the exit code. */
export async function runCheck(files: readonly string[], flags: CheckCommandFlags): Promise<number> {
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  // Only the machine's form shows digests, and loading the hash takes its time.
  const sha256 = flags.format === 'json' ? (await import('../../node/sha256.js')).sha256 : undefined;
  const { report, unreadable, config, close } = await checkFiles(files, flags, { manners, sha256 });
  close();
  if (report === undefined) return EXIT.unreadable;
  if (flags.format === 'json') print(jsonReport(report));
  else if (flags.quiet) print(`${verdictLines(report).join('\n')}\n`);
  else print(textReport(report, { colour: manners.colour, findingsOfCause: 5 }));
  return unreadable > 0 ? EXIT.unreadable : exitCode(report, flags.threshold ?? config?.threshold ?? 'error');
}

/** 1 for findings at or above the threshold and for what could not be judged. */
export function exitCode({ counts, verdict }: Report, threshold: Severity): number {
  const severities: readonly Severity[] = ['error', 'warning', 'info'];
  const counted = severities.slice(0, severities.indexOf(threshold) + 1);
  const isUnjudged = verdict.format === 'cannot-judge' || verdict.site === 'cannot-judge';
  return isUnjudged || counted.some((severity) => counts[severity] > 0) ? EXIT.findings : EXIT.clean;
}
