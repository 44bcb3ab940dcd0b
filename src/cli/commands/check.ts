import { rules } from '../../check/list.js';
import type { Report } from '../../generated/report.js';
import type { Severity } from '../../model/observation.js';
import { jsonReportPieces } from '../../report/json.js';
import { textReport, verdictLines } from '../../report/text.js';
import { type CheckFlags, checkFiles } from '../check-files.js';
import { print, wantsColour } from '../console.js';
import { EXIT } from '../exit.js';
import type { OtherForm } from '../other-forms.js';

export interface CheckCommandFlags extends CheckFlags {
  format: 'text' | 'json' | OtherForm;
  threshold?: Severity;
  colour?: string;
}

/** Forms that show the digests of the inputs. */
const WITH_DIGESTS: readonly string[] = ['json', 'sarif', 'junit'];

/** Checks the files and returns the exit code. */
export async function runCheck(files: readonly string[], flags: CheckCommandFlags): Promise<number> {
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  // Loading the hash takes its time.
  const sha256 = WITH_DIGESTS.includes(flags.format) ? (await import('../../node/sha256.js')).sha256 : undefined;
  const { report, unreadable, config, language, close } = await checkFiles(files, flags, { manners, sha256 });
  close();
  if (report === undefined) return EXIT.unreadable;
  const threshold = flags.threshold ?? config?.threshold ?? 'error';
  const code = unreadable > 0 ? EXIT.unreadable : exitCode(report, threshold);
  if (flags.format === 'json') for (const piece of jsonReportPieces(report)) print(piece);
  else if (flags.format !== 'text') {
    const { reportAs } = await import('../other-forms.js');
    print(reportAs(flags.format, report, { rules, threshold, exitCode: code, phrases: language?.phrases }));
  } else if (flags.quiet) print(`${verdictLines(report, language?.phrases).join('\n')}\n`);
  else print(textReport(report, { colour: manners.colour, findingsOfCause: 5, phrases: language?.phrases }));
  return code;
}

/** 1 for findings at or above the threshold and for what could not be judged. */
export function exitCode({ counts, verdict }: Report, threshold: Severity): number {
  const severities: readonly Severity[] = ['error', 'warning', 'info'];
  const counted = severities.slice(0, severities.indexOf(threshold) + 1);
  const isUnjudged = verdict.format === 'cannot-judge' || verdict.site === 'cannot-judge';
  return isUnjudged || counted.some((severity) => counts[severity] > 0) ? EXIT.findings : EXIT.clean;
}
