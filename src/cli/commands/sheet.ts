import type { Report } from '../../generated/report.js';
import { whyNot } from '../../jobs/convert.js';
import { layoutsBeside } from '../../jobs/layouts-beside.js';
import {
  holesOfChoice,
  type SheetChoice,
  type SheetPaper,
  type SheetSet,
  sheetOptions,
  sheetsOf,
} from '../../jobs/sheet.js';
import type { LayoutSource } from '../../model/layout-source.js';
import { nearest } from '../../model/nearest.js';
import { isSameFile } from '../../node/output-file.js';
import { counted } from '../../report/counted.js';
import { printable } from '../../model/printable.js';
import type { SheetWords } from '../../report/sheet/sheet-words.js';
import { textReport, verdictLines } from '../../report/text.js';
import { type CheckedFiles, checkFiles } from '../check-files.js';
import { print, say, wantsColour } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';
import { readParents } from '../read-parents.js';
import { writeSheetFiles } from '../sheet-files.js';
import { sheetWordsOf } from '../sheet-language.js';
import { type CheckCommandFlags, exitCode } from './check.js';

/** What `ahx sheet` was asked for. */
export interface SheetFlags extends Omit<CheckCommandFlags, 'format' | 'limit'> {
  package?: string;
  area?: string;
  level?: string;
  trade?: string;
  /** The file whose package, area or level it is, where several have it. */
  of?: string;
  parent?: string;
  paper?: SheetPaper;
  force: boolean;
}

const MOST_LISTED = 200;
/** Findings kept one by one; the sheets say how many more there are. */
const MOST_FINDINGS = 200_000;

/** Checks the files, writes the crew sheets of a package, an area, or a trade on a level, and returns the exit code of the check. */
export async function runSheet(names: readonly string[], flags: SheetFlags): Promise<number> {
  const choice = choiceOf(flags);
  const { files, out } = filesAndOut(names, choice !== undefined);
  const form = out === undefined ? undefined : formOf(out);
  const read = out === undefined ? undefined : [...files, flags.parent].find((file) => file && isSameFile(file, out));
  if (read !== undefined)
    throw new WrongUse(`${out} is read and cannot be written at once; name another file to write.`);
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  // What a config says of the purpose is for checks at large; a sheet is for drilling.
  const checkFlags = { ...flags, purpose: flags.purpose ?? 'for-drilling' };
  const checked = await checkFiles(files, checkFlags, { manners, sampleLimit: MOST_FINDINGS });
  try {
    const { report } = checked;
    if (report === undefined) return EXIT.unreadable;
    const words = await sheetWordsOf(checked.language);
    const reason = whyNone(checked);
    if (reason !== undefined) {
      say(reportText(checked, wantsColour(flags.colour, 2)));
      say(`Nothing was written: no sheet can be made ${reason}.`);
      return checked.unreadable > 0 ? EXIT.unreadable : EXIT.findings;
    }
    if (choice === undefined || out === undefined || form === undefined) return listOptions(checked);
    const index = inputOf(checked, choice, flags.of);
    return await writeSheets({ checked, report, index, choice, out, form, words }, flags);
  } finally {
    checked.close();
  }
}

/** The last name is what is written, unless the layouts are only to be looked through. */
function filesAndOut(names: readonly string[], isChosen: boolean): { files: readonly string[]; out?: string } {
  const last = names.at(-1);
  const isForm = last !== undefined && /\.(html?|svg)$/i.test(last);
  if (!isChosen && !(isForm && names.length > 1)) return { files: names };
  if (last === undefined || (names.length === 1 && !isForm)) {
    throw new WrongUse('The file to write is missing: OUT.html or OUT.svg. See: ahx sheet --help');
  }
  return { files: names.slice(0, -1), out: last };
}

/** Why no sheet can be made of the files, in words that end a sentence. */
function whyNone({ report, inputs, unreadable }: CheckedFiles): string | undefined {
  if (unreadable > 0) return 'while a file cannot be read';
  for (const input of inputs) {
    if (report === undefined || input === undefined) continue;
    const reason = whyNot(report, input);
    if (reason === undefined) continue;
    return `of ${printable(input.summary.name)} because ${inputs.length > 1 && reason === FORM ? 'it or another one of the files has errors of form' : reason}`;
  }
  return undefined;
}
const FORM = 'it has errors of form';

/**
 * Number of the input whose holes are chosen, from 0.
 *
 * @throws WrongUse where none has what is chosen, or more than one
 */
function inputOf({ inputs }: CheckedFiles, choice: SheetChoice, of: string | undefined): number {
  const counts = inputs.map((input) => {
    const source = input?.layout();
    return source === undefined ? undefined : holesOfChoice(source, choice);
  });
  const having = counts.flatMap((count, k) => (count === undefined ? [] : [k]));
  const nameOf = (k: number) => inputs[k]?.summary.name ?? '';
  if (of !== undefined) {
    const k = inputs.findIndex((_, index) => nameOf(index) === of || isSameFile(nameOf(index), of));
    if (k < 0) throw new WrongUse(`--of names one of the files that are read; "${of}" is none.`);
    return k;
  }
  // Layouts of one building share its areas and levels; who has no hole there is not meant.
  const withHoles = having.filter((k) => counts[k] !== 0);
  const found = withHoles.length > 0 ? withHoles : having;
  if (found.length > 1) {
    const names = found.map((k) => printable(nameOf(k))).join(', ');
    throw new WrongUse(`More than one layout has ${inWords(choice)}: ${names}. --of FILE says whose holes are meant.`);
  }
  if (found.length === 0 && inputs.length > 1) {
    throw new WrongUse(`None of the layouts has ${inWords(choice)}. Without a choice, ahx sheet lists what there is.`);
  }
  return found[0] ?? 0;
}

interface Task {
  checked: CheckedFiles;
  report: Report;
  /** Input whose holes are chosen, from 0. */
  index: number;
  choice: SheetChoice;
  out: string;
  form: 'html' | 'svg';
  words: SheetWords | undefined;
}

async function writeSheets(task: Task, flags: SheetFlags): Promise<number> {
  const { checked, choice, out, form } = task;
  const set = await setOf(task, flags);
  const notToDrill = `${counted(set.notToDrill, 'hole')} cast in or there already`;
  if (set.sheets.length === 0) {
    const why = set.notToDrill > 0 ? `; ${notToDrill}` : '';
    say(`Nothing was written: ${inWords(choice)} has no hole to drill${why}.`);
    return EXIT.findings;
  }
  const read = checked.inputs.flatMap((input) => (input === undefined ? [] : [input.summary.name]));
  const written = await writeSheetFiles(set, form, out, read, flags.force);
  if (flags.quiet) print(`${verdictLines(task.report, checked.language?.phrases).join('\n')}\n`);
  else {
    print(reportText(checked, wantsColour(flags.colour)));
    say(`Written: ${printable(written)}, ${counted(set.sheets.length, 'sheet')}, ${counted(set.holeCount, 'hole')}.`);
    sayMarked(set);
    if (set.notToDrill > 0) say(`Left out: ${notToDrill}.`);
  }
  return exitCode(task.report, flags.threshold ?? checked.config?.threshold ?? 'error');
}

function sayMarked({ marked: { errors, warnings } }: SheetSet): void {
  if (errors > 0) say(`Marked as not to be drilled before the office has settled them: ${counted(errors, 'hole')}.`);
  if (warnings > 0) say(`Marked with warnings: ${counted(warnings, 'hole')}.`);
}

/** The causes as `ahx check` prints them. */
function reportText({ report, language }: CheckedFiles, colour: boolean): string {
  return report === undefined ? '' : textReport(report, { colour, findingsOfCause: 5, phrases: language?.phrases });
}

async function setOf({ checked, report, index, choice, words }: Task, flags: SheetFlags): Promise<SheetSet> {
  const input = checked.inputs[index];
  const source = input?.layout();
  if (source === undefined) throw new WrongUse('The layout whose holes are chosen could not be read.');
  const { sources, together, apart } = layoutsBeside(checked.inputs, index);
  const parents =
    flags.parent === undefined ? [] : await readParents({ parent: [flags.parent], profile: flags.profile }, [input]);
  const check = { report, input: index, together, apart };
  try {
    return sheetsOf(source, choice, { paper: flags.paper, words, check, others: sources, parent: parents[0] });
  } catch (error) {
    if (!(error instanceof RangeError) || !/^the layout has no /.test(error.message)) throw error;
    throw new WrongUse(
      `${capital(error.message)}.${hint(source, choice)} Without a choice, ahx sheet lists what there is.`,
    );
  }
}

/** The id that was likely meant. */
function hint({ header }: LayoutSource, choice: SheetChoice): string {
  const asked: [string, readonly { id: string }[] | undefined][] =
    'package' in choice
      ? [[choice.package, header.packages]]
      : 'area' in choice
        ? [[choice.area, header.areas]]
        : [
            [choice.level, header.levels],
            [choice.trade, header.trades],
          ];
  const near = asked.flatMap(([id, records = []]) => {
    const ids = records.map((record) => record.id);
    return ids.includes(id) ? [] : (nearest(id, ids) ?? []);
  });
  return near.length === 0 ? '' : ` Did you mean "${near.join('", "')}"?`;
}

/** @throws WrongUse where more than one thing is chosen, or half of one */
function choiceOf({ package: id, area, level, trade }: SheetFlags): SheetChoice | undefined {
  const isByLevel = level !== undefined || trade !== undefined;
  if ([id !== undefined, area !== undefined, isByLevel].filter(Boolean).length > 1) {
    throw new WrongUse('Choose one: --package, --area, or --level with --trade.');
  }
  if (id !== undefined) return { package: id };
  if (area !== undefined) return { area };
  if (!isByLevel) return undefined;
  if (level === undefined || trade === undefined) throw new WrongUse('--level and --trade are given together.');
  return { level, trade };
}

function listOptions({ inputs }: CheckedFiles): number {
  const sources = inputs.flatMap((input) => {
    const source = input?.layout();
    return source === undefined ? [] : [{ name: printable(input?.summary.name ?? ''), source }];
  });
  for (const { name, source } of sources) {
    const options = sheetOptions(source);
    if (options.length === 0) {
      say(`${name} has no package, area or level to make sheets of.`);
      continue;
    }
    say(`Choose what the sheets are for; ${name} has:`);
    for (const { choice, name: title, holes } of options.slice(0, MOST_LISTED)) {
      print(`${inFlags(choice)}  ${title === undefined ? '' : `${printable(title)}, `}${counted(holes, 'hole')}\n`);
    }
    if (options.length > MOST_LISTED) say(`and ${options.length - MOST_LISTED} more.`);
  }
  return EXIT.usage;
}

function inFlags(choice: SheetChoice): string {
  if ('package' in choice) return `--package ${quoted(choice.package)}`;
  if ('area' in choice) return `--area ${quoted(choice.area)}`;
  return `--level ${quoted(choice.level)} --trade ${quoted(choice.trade)}`;
}

function inWords(choice: SheetChoice): string {
  if ('package' in choice) return `package ${printable(choice.package)}`;
  if ('area' in choice) return `area ${printable(choice.area)}`;
  return `trade ${printable(choice.trade)} on level ${printable(choice.level)}`;
}

/** An id as one can paste it into a shell. */
function quoted(id: string): string {
  return /^[\w./:-]+$/.test(id) ? id : `'${printable(id).replace(/'/g, `'\\''`)}'`;
}

function formOf(out: string): 'html' | 'svg' {
  if (/\.html?$/i.test(out)) return 'html';
  if (/\.svg$/i.test(out)) return 'svg';
  throw new WrongUse(`The file to write ends in .html or .svg: not "${out}".`);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
