import type { ColumnProfile } from '../../generated/column-profile.js';
import type { Report } from '../../generated/report.js';
import type { ClosedInput } from '../../jobs/checked-input.js';
import { Checker } from '../../jobs/checker.js';
import {
  type ConvertTarget,
  convert,
  findLostRows,
  isKeptByRowsOnly,
  type LostRows,
  lossLines,
  TableLosses,
  whyNot,
} from '../../jobs/convert.js';
import type { LayoutSource, Loss } from '../../model/layout-source.js';
import { checkOutputName, isSameFile, writeWhole } from '../../node/output-file.js';
import { counted } from '../../report/counted.js';
import { textReport, verdictLines } from '../../report/text.js';
import { hasLostReader, pause, print, say, wantsColour } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';
import { feed, STANDARD_INPUT } from '../feed.js';
import { isTableName, readDocument } from '../read-document.js';

export interface ConvertFlags {
  profile?: string;
  to?: 'layout' | 'csv' | 'geojson';
  force: boolean;
  leaveOutBadRows: boolean;
  strict: boolean;
  quiet: boolean;
  colour?: string;
}

/** A conversion that was asked for. */
interface Task {
  from: string;
  to: string;
  flags: ConvertFlags;
  form: NonNullable<ConvertFlags['to']>;
  profile: ColumnProfile | undefined;
  /** Whether the input is read as a table. */
  isTable: boolean;
}

/** A checker that shows the bytes of its input to others too. */
class TappedChecker extends Checker {
  constructor(private readonly tap: (bytes: Uint8Array) => void) {
    super({ sampleLimit: 1000 });
  }

  override write(bytes: Uint8Array): void {
    this.tap(bytes);
    super.write(bytes);
  }
}

/** Converts one file and returns the exit code. */
export async function runConvert(from: string, to: string, flags: ConvertFlags): Promise<number> {
  const task = taskOf(from, to, flags);
  const { profile, isTable } = task;
  const table = isTable && profile !== undefined ? new TableLosses(profile) : undefined;
  let head = '';
  const checker = new TappedChecker((bytes) => {
    table?.write(bytes);
    if (head === '') head = new TextDecoder().decode(bytes.subarray(0, HEAD));
  });
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  const { input, close } = await feed(checker, from, isTable ? profile : undefined, manners);
  try {
    const report = checker.end();
    const source = input.layout();
    if (input.summary.kind === 'unknown' && FEATURES.test(head)) {
      return refuse(task, 'it is GeoJSON; reading it is not supported yet');
    }
    const reason = whyNot(report, input, flags.leaveOutBadRows);
    if (reason !== undefined || source === undefined) return refuseInput(task, report, input, reason);
    return await write(task, source, report, table?.end().losses ?? []);
  } finally {
    close();
  }
}

const HEAD = 4096;
const FEATURES = /^\s*\{[^]*"type"\s*:\s*"Feature(Collection)?"/;

/** @throws WrongUse, RefusedName */
function taskOf(from: string, to: string, flags: ConvertFlags): Task {
  const form = flags.to ?? formOf(to);
  const profile = flags.profile === undefined ? undefined : readDocument('column-profile', flags.profile, [from]);
  // With a profile, whatever is not named as JSON is a table, unless the table is what is to be written.
  const isTable = isTableName(from) || (profile !== undefined && form !== 'csv' && !/\.(geo)?json$/i.test(from));
  if ((isTable || form === 'csv') && profile === undefined) {
    throw new WrongUse('A table needs --profile FILE, which says which column is what. See: ahx convert --help');
  }
  if (to !== STANDARD_INPUT) {
    for (const read of [from, flags.profile]) {
      if (read !== undefined && read !== STANDARD_INPUT && isSameFile(read, to)) {
        throw new WrongUse(`${to} is read and cannot be written at once; name another file to write.`);
      }
    }
    checkOutputName(to, flags.force);
  }
  return { from, to, flags, form, profile, isTable };
}

async function write(task: Task, source: LayoutSource, report: Report, ofTable: readonly Loss[]): Promise<number> {
  const { to, flags, form, profile } = task;
  const lost = form === 'csv' && profile !== undefined ? findLostRows(source, profile) : [];
  const lostCount = lost.reduce((sum, { count }) => sum + count, 0);
  if (lostCount > 0 && !flags.leaveOutBadRows) return refuseRows(task, lost, lostCount, source.holeCount);
  const target: ConvertTarget =
    form === 'csv' ? { form, profile: profile as ColumnProfile, leaveOutBadRows: lostCount > 0 } : { form };
  const { text, losses: ofLayout, note } = await convert(source, target);
  if (to === STANDARD_INPUT) for (const chunk of text) print(chunk);
  else await writeWhole(to, text, flags.force, pause);
  const losses = [...ofTable, ...ofLayout];
  if (!flags.quiet && !hasLostReader()) {
    tell(task, report, source.holeCount - lostCount);
    if (losses.length > 0)
      say(
        `Did not travel:\n${lossLines(losses)
          .map((line) => `  ${line}`)
          .join('\n')}`,
      );
    if (note !== undefined) say(note);
  }
  return flags.strict && losses.length > 0 ? EXIT.findings : EXIT.clean;
}

function tell({ from, to, flags, isTable }: Task, report: Report, holes: number): void {
  for (const line of verdictLines(report)) say(line);
  if (report.sample.total > 0) {
    const profile = isTable && flags.profile !== undefined ? ` --profile ${quoted(flags.profile)}` : '';
    say(`To see the ${counted(report.sample.total, 'finding')}: ahx check ${quoted(from)}${profile}`);
  }
  say(`Written: ${to === STANDARD_INPUT ? 'standard output' : to}, ${counted(holes, 'hole')}.`);
  if (holes === 0) say('Warning: no hole is in it.');
}

function refuse({ from }: Task, reason: string): number {
  say(`Nothing was written: ${from} cannot be converted because ${reason}.`);
  return EXIT.findings;
}

function refuseInput(task: Task, report: Report, input: ClosedInput, reason: string | undefined): number {
  say(textReport(report, { colour: wantsColour(task.flags.colour, 2), findingsOfCause: 5 }));
  const code = refuse(task, reason ?? 'it could not be read to its end');
  if (task.isTable && isKeptByRowsOnly(report, input)) say('--leave-out-bad-rows converts the rows that are sound.');
  return code;
}

function refuseRows(task: Task, lost: readonly LostRows[], count: number, of: number): number {
  const code = refuse(task, `the profile could not read ${count} of ${counted(of, 'row')} again`);
  for (const { reason, count: rows, first } of lost.slice(0, MOST_REASONS)) {
    say(`  ${counted(rows, 'row')}, the first of hole ${first}: ${reason}`);
  }
  if (lost.length > MOST_REASONS) say(`  and ${counted(lost.length - MOST_REASONS, 'other reason')}`);
  say('--leave-out-bad-rows writes the other rows.');
  return code;
}

const MOST_REASONS = 5;

function formOf(path: string): NonNullable<ConvertFlags['to']> {
  if (/\.geojson$/i.test(path)) return 'geojson';
  if (/\.json$/i.test(path)) return 'layout';
  if (isTableName(path)) return 'csv';
  throw new WrongUse(
    `The form of "${path}" cannot be told from its name; say --to layout, --to csv or --to geojson, or end the name in .ahx.json, .csv or .geojson.`,
  );
}

/** A name as one can paste it back. */
function quoted(path: string): string {
  return /^[\w./\\:-]+$/.test(path) ? path : JSON.stringify(path);
}
