import type { Report } from '../../generated/report.js';
import { Checker, type CheckOptions } from '../../jobs/checker.js';
import { BadRuleOption } from '../../jobs/rule-options.js';
import { BadSeverity } from '../../jobs/severities.js';
import type { Severity } from '../../model/observation.js';
import type { Purpose } from '../../model/rule.js';
import { UnreadableInput } from '../../node/input-file.js';
import { jsonReport } from '../../report/json.js';
import { textReport, verdictLines } from '../../report/text.js';
import { print, say, wantsColour } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';
import { type Fed, feed, STANDARD_INPUT } from '../feed.js';
import { isTableName, readProfile } from '../read-profile.js';

export interface CheckFlags {
  profile?: string;
  purpose: Purpose;
  format: 'text' | 'json';
  threshold: Severity;
  limit: number;
  severity: string[];
  option: string[];
  asOf?: string;
  quiet: boolean;
  colour?: string;
}

/** Checks the files and returns the exit code. */
export async function runCheck(files: readonly string[], flags: CheckFlags): Promise<number> {
  if (files.filter((file) => file === STANDARD_INPUT).length > 1) {
    throw new WrongUse('Standard input can be read only once.');
  }
  const profile = flags.profile === undefined ? undefined : readProfile(flags.profile, files);
  const table = files.find((file) => isTableName(file));
  if (table !== undefined && profile === undefined) {
    throw new WrongUse(`${table} is a table; --profile FILE says which column is what. See: ahx check --help`);
  }
  const checker = newChecker({
    purpose: flags.purpose,
    sampleLimit: flags.limit,
    asOf: flags.asOf,
    severities: readSeverities(flags.severity),
    ruleOptions: readOptions(flags.option),
    // Only the machine's form shows digests, and loading the hash takes its time.
    sha256: flags.format === 'json' ? (await import('../../node/sha256.js')).sha256 : undefined,
  });
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  let unreadable = 0;
  // Findings about two inputs come last, and their lines are looked up in the files.
  const open: Fed[] = [];
  for (const file of files) {
    try {
      // With a profile, all but names of JSON files are tables: standard input too.
      open.push(await feed(checker, file, /\.jsonl?$/i.test(file) ? undefined : profile, manners));
    } catch (error) {
      if (!(error instanceof UnreadableInput)) throw error;
      say(`ahx: ${error.message}`);
      checker.unreadable(file);
      unreadable++;
    }
  }
  if (unreadable === files.length) return EXIT.unreadable;
  const report = checker.end();
  for (const { close } of open) close();
  if (flags.format === 'json') print(jsonReport(report));
  else if (flags.quiet) print(`${verdictLines(report).join('\n')}\n`);
  else print(textReport(report, { colour: manners.colour, findingsOfCause: 5 }));
  if (unreadable > 0) return EXIT.unreadable;
  return exitCode(report, flags.threshold);
}

function newChecker(options: CheckOptions): Checker {
  try {
    return new Checker(options);
  } catch (error) {
    throw error instanceof BadSeverity || error instanceof BadRuleOption
      ? new WrongUse(`${error.message} "ahx explain" lists all rules, "ahx explain RULE" what can be set.`)
      : error;
  }
}

/** 1 for findings at or above the threshold and for what could not be judged. */
export function exitCode({ counts, verdict }: Report, threshold: Severity): number {
  const severities: readonly Severity[] = ['error', 'warning', 'info'];
  const counted = severities.slice(0, severities.indexOf(threshold) + 1);
  const isUnjudged = verdict.format === 'cannot-judge' || verdict.site === 'cannot-judge';
  return isUnjudged || counted.some((severity) => counts[severity] > 0) ? EXIT.findings : EXIT.clean;
}

function readSeverities(pairs: readonly string[]): Record<string, Severity | 'off'> {
  return Object.fromEntries(
    pairs.map((pair) => {
      const [rule, level, ...rest] = pair.split('=');
      if (rest.length > 0 || !['error', 'warning', 'info', 'off'].includes(level)) {
        throw new WrongUse(`--severity needs RULE=LEVEL with a level of error, warning, info or off, not "${pair}".`);
      }
      return [rule, level as Severity | 'off'];
    }),
  );
}

function readOptions(settings: readonly string[]): Record<string, Record<string, number>> {
  const options: Record<string, Record<string, number>> = {};
  for (const setting of settings) {
    const [, rule, name, value] = /^([^.=]+)\.([^.=]+)=(.+)$/.exec(setting) ?? [];
    const number = Number(value);
    if (rule === undefined || !Number.isFinite(number))
      throw new WrongUse(`--option needs RULE.NAME=NUMBER, not "${setting}". See: ahx explain RULE`);
    options[rule] = { ...options[rule], [name]: number };
  }
  return options;
}
