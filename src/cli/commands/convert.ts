import { Checker } from '../../jobs/checker.js';
import { type ConvertTarget, convert, lossInWords, whyNot } from '../../jobs/convert.js';
import { checkOutputName, writeWhole } from '../../node/output-file.js';
import { counted } from '../../report/counted.js';
import { textReport, verdictLines } from '../../report/text.js';
import { pause, print, say, wantsColour } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';
import { feed, STANDARD_INPUT } from '../feed.js';
import { isTableName, readProfile } from '../read-profile.js';

export interface ConvertFlags {
  profile?: string;
  to?: 'layout' | 'csv' | 'geojson';
  force: boolean;
  leaveOutBadRows: boolean;
  strict: boolean;
  quiet: boolean;
  colour?: string;
}

/** Converts one file and returns the exit code. */
export async function runConvert(from: string, to: string, flags: ConvertFlags): Promise<number> {
  const form = flags.to ?? formOf(to);
  const profile = flags.profile === undefined ? undefined : readProfile(flags.profile);
  // With a profile, whatever is not named as JSON is a table, unless the table is what is to be written.
  const isTable = isTableName(from) || (profile !== undefined && form !== 'csv' && !/\.(geo)?json$/i.test(from));
  if ((isTable || form === 'csv') && profile === undefined) {
    throw new WrongUse('A table needs --profile FILE, which says which column is what. See: ahx convert --help');
  }
  if (to !== STANDARD_INPUT) checkOutputName(to, flags.force);
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  const checker = new Checker({ sampleLimit: 1000 });
  const { input, close } = await feed(checker, from, isTable ? profile : undefined, manners);
  try {
    const report = checker.end();
    const reason = whyNot(report, input, flags.leaveOutBadRows);
    const source = input.layout();
    if (reason !== undefined || source === undefined) {
      say(textReport(report, { colour: wantsColour(flags.colour, 2), findingsOfCause: 5 }));
      const hint = isTable && !flags.leaveOutBadRows ? ' --leave-out-bad-rows converts the rows that are sound.' : '';
      say(`Nothing was written: ${from} cannot be converted because ${reason}.${hint}`);
      return EXIT.findings;
    }
    const target: ConvertTarget = form === 'csv' ? { form, profile: profile as NonNullable<typeof profile> } : { form };
    const { text, losses } = await convert(source, target);
    if (to === STANDARD_INPUT) for (const chunk of text) print(chunk);
    else await writeWhole(to, text, flags.force, pause);
    if (!flags.quiet) {
      for (const line of verdictLines(report)) say(line);
      if (report.sample.total > 0)
        say(
          `To see the ${counted(report.sample.total, 'finding')}: ahx check ${quoted(from)}${profileFlag(flags, isTable)}`,
        );
      say(`Written: ${to === STANDARD_INPUT ? 'standard output' : to}, ${counted(source.holeCount, 'hole')}.`);
      if (losses.length > 0) say(`Did not travel:\n${losses.map((loss) => `  ${lossInWords(loss)}`).join('\n')}`);
    }
    return flags.strict && losses.length > 0 ? EXIT.findings : EXIT.clean;
  } finally {
    close();
  }
}

function formOf(path: string): NonNullable<ConvertFlags['to']> {
  if (/\.geojson$/i.test(path)) return 'geojson';
  if (/\.json$/i.test(path)) return 'layout';
  if (isTableName(path)) return 'csv';
  throw new WrongUse(
    `The form of "${path}" cannot be told from its name; say --to layout, --to csv or --to geojson, or end the name in .ahx.json, .csv or .geojson.`,
  );
}

function profileFlag({ profile }: ConvertFlags, isTable: boolean): string {
  return isTable && profile !== undefined ? ` --profile ${quoted(profile)}` : '';
}

/** A name as one can paste it back. */
function quoted(path: string): string {
  return /^[\w./\\:-]+$/.test(path) ? path : JSON.stringify(path);
}
