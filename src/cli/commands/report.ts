import { htmlReportOf } from '../../jobs/html-report.js';
import { checkOutputName, isSameFile, writeWhole } from '../../node/output-file.js';
import { printPdf } from '../../node/print-pdf.js';
import { sha256 } from '../../node/sha256.js';
import { printable } from '../../model/printable.js';
import { verdictLines } from '../../report/text.js';
import { checkFiles } from '../check-files.js';
import { pause, print, wantsColour } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';
import { htmlLanguageOf } from '../html-language.js';
import { readParents } from '../read-parents.js';
import { type CheckCommandFlags, exitCode } from './check.js';

export interface ReportFlags extends Omit<CheckCommandFlags, 'format'> {
  paper?: 'a4' | 'letter';
  parent: string[];
  pdf: boolean;
  force: boolean;
}

/** Findings listed one by one; the page shows the first ones of each cause. */
const LISTED = 20_000;

/** Checks the files, writes the report for people, and returns the exit code of the check. */
export async function runReport(names: readonly string[], flags: ReportFlags): Promise<number> {
  const files = names.slice(0, -1);
  const out = names[names.length - 1];
  if (!/\.html?$/i.test(out))
    throw new WrongUse(`The last name is the report to write, and ends in .html: not "${out}".`);
  const pdf = out.replace(/\.html?$/i, '.pdf');
  const outputs = [out, ...(flags.pdf ? [pdf] : [])];
  for (const path of outputs) checkOutputName(path, flags.force);
  keepInputs(outputs, [...files, ...flags.parent]);
  const manners = { quiet: flags.quiet, colour: wantsColour(flags.colour) };
  const checked = await checkFiles(files, flags, { manners, sha256, usualLimit: LISTED });
  try {
    keepInputs(outputs, checked.files);
    const { report, inputs, unreadable, config, language } = checked;
    if (report === undefined) return EXIT.unreadable;
    const parents = await readParents(flags, inputs);
    const paper = flags.paper === 'a4' ? 'A4' : flags.paper;
    const words = await htmlLanguageOf(language);
    await writeWhole(out, htmlReportOf(report, inputs, { paper, parents, language: words }), flags.force, pause);
    if (flags.pdf) printPdf(out, pdf);
    const written = flags.pdf ? `${out} and ${pdf}` : out;
    print(`${verdictLines(report, language?.phrases).join('\n')}\n${printable(written)} written.\n`);
    return unreadable > 0 ? EXIT.unreadable : exitCode(report, flags.threshold ?? config?.threshold ?? 'error');
  } finally {
    checked.close();
  }
}

/** @throws WrongUse where what is to be written would overwrite what was read */
function keepInputs(outputs: readonly string[], inputs: readonly string[]): void {
  for (const path of outputs) {
    if (inputs.some((input) => isSameFile(input, path)))
      throw new WrongUse(`${path} is a file that is read; it is not overwritten.`);
  }
}
