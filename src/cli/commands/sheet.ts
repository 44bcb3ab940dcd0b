import { existsSync } from 'node:fs';
import type { Report } from '../../generated/report.js';
import { whyNot } from '../../jobs/convert.js';
import {
  type SheetChoice,
  type SheetPaper,
  type SheetSet,
  sheetOptions,
  sheetsOf,
  usualPaper,
} from '../../jobs/sheet.js';
import { nearest } from '../../model/nearest.js';
import type { LayoutSource } from '../../model/layout-source.js';
import { checkOutputName, isSameFile, writeWhole } from '../../node/output-file.js';
import { counted } from '../../report/counted.js';
import { printable } from '../../report/printable.js';
import { textReport, verdictLines } from '../../report/text.js';
import { checkFiles } from '../check-files.js';
import { pause, print, say, wantsColour } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';
import { isTableName } from '../read-document.js';

/** What `ahx sheet` was asked for. */
export interface SheetFlags {
  package?: string;
  area?: string;
  level?: string;
  trade?: string;
  paper?: SheetPaper;
  force: boolean;
  quiet: boolean;
  colour?: string;
}

/** More SVG files than this are not written; HTML is one file. */
const MOST_FILES = 100;
const MOST_LISTED = 200;

/** Writes the crew sheets of a package, an area, or a trade on a level, and returns the exit code. */
export async function runSheet(file: string, out: string | undefined, flags: SheetFlags): Promise<number> {
  if (isTableName(file)) throw new WrongUse(`${file} is a table; ahx convert makes a layout of it first.`);
  const choice = choiceOf(flags);
  const form = out === undefined ? undefined : formOf(out);
  if (choice !== undefined && out === undefined) {
    throw new WrongUse('The file to write is missing: OUT.html or OUT.svg. See: ahx sheet --help');
  }
  if (out !== undefined && isSameFile(file, out)) {
    throw new WrongUse(`${out} is read and cannot be written at once; name another file to write.`);
  }
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  const checkFlags = { severity: [], option: [], quiet: flags.quiet, config: false as const };
  const checked = await checkFiles([file], checkFlags, { manners });
  try {
    const { report, inputs } = checked;
    const input = inputs[0];
    if (report === undefined || input === undefined) return EXIT.unreadable;
    const reason = whyNot(report, input);
    const source = input.layout();
    if (reason !== undefined || source === undefined) {
      say(textReport(report, { colour: wantsColour(flags.colour, 2), findingsOfCause: 5 }));
      say(
        `Nothing was written: no sheet can be made of ${printable(file)} because ${reason ?? 'it could not be read'}.`,
      );
      return EXIT.findings;
    }
    if (choice === undefined || out === undefined || form === undefined) return listOptions(file, source);
    return await writeSheets(file, { source, choice, out, form }, report, flags);
  } finally {
    checked.close();
  }
}

interface Task {
  source: LayoutSource;
  choice: SheetChoice;
  out: string;
  form: 'html' | 'svg';
}

async function writeSheets(file: string, task: Task, report: Report, flags: SheetFlags): Promise<number> {
  const { source, choice, out, form } = task;
  const set = setOf(source, choice, flags.paper);
  const notToDrill = `${counted(set.notToDrill, 'hole')} cast in or there already`;
  if (set.sheets.length === 0) {
    const why = set.notToDrill > 0 ? `; ${notToDrill}` : '';
    say(`Nothing was written: ${inWords(choice)} has no hole to drill${why}.`);
    return EXIT.findings;
  }
  const written = await write(set, form, out, file, flags.force);
  if (flags.quiet) return EXIT.clean;
  for (const line of verdictLines(report)) say(line);
  if (report.sample.total > 0) {
    say(`To see the ${counted(report.sample.total, 'finding')}: ahx check ${printable(file)}`);
  }
  say(`Written: ${printable(written)}, ${counted(set.sheets.length, 'sheet')}, ${counted(set.holeCount, 'hole')}.`);
  if (set.notToDrill > 0) say(`Left out: ${notToDrill}.`);
  return EXIT.clean;
}

async function write(set: SheetSet, form: 'html' | 'svg', out: string, file: string, force: boolean): Promise<string> {
  if (form === 'html') {
    checkOutputName(out, force);
    await writeWhole(out, set.html(), force, pause);
    return out;
  }
  const count = set.sheets.length;
  if (count > MOST_FILES) {
    throw new WrongUse(
      `${count} sheets are ${count} files of SVG, more than ${MOST_FILES}; write OUT.html, or choose fewer holes.`,
    );
  }
  const names =
    count === 1 ? [out] : set.sheets.map(({ number }) => out.replace(/\.svg$/i, (ending) => `-${number}${ending}`));
  // All names first, so that nothing is written where one is refused.
  for (const name of names) {
    checkOutputName(name, force);
    if (isSameFile(file, name)) throw new WrongUse(`${name} is read and cannot be written at once.`);
  }
  for (const [k, text] of set.svg().entries()) await writeWhole(names[k], [text], force, pause);
  const next = out.replace(/\.svg$/i, (ending) => `-${count + 1}${ending}`);
  if (count > 1 && existsSync(next)) say(`Warning: ${printable(next)} is there from before and is no sheet of these.`);
  return count === 1 ? out : `${names[0]} to ${names[count - 1]}`;
}

function setOf(source: LayoutSource, choice: SheetChoice, paper: SheetPaper | undefined): SheetSet {
  try {
    return sheetsOf(source, choice, paper ?? usualPaper(source));
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

function listOptions(file: string, source: LayoutSource): number {
  const options = sheetOptions(source);
  if (options.length === 0) {
    say(`${printable(file)} has no package, area or level to make sheets of.`);
    return EXIT.usage;
  }
  say(`Choose what the sheets are for; ${printable(file)} has:`);
  for (const { choice, name, holes } of options.slice(0, MOST_LISTED)) {
    print(`${inFlags(choice)}  ${name === undefined ? '' : `${printable(name)}, `}${counted(holes, 'hole')}\n`);
  }
  if (options.length > MOST_LISTED) say(`and ${options.length - MOST_LISTED} more.`);
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
