import { Command, CommanderError, Option } from 'commander';
import { PACKAGE_VERSION } from '../generated/package-version.js';
import { SHORT_CAUTION } from '../model/caution.js';
import { nearest } from '../model/nearest.js';
import { runCheck } from './commands/check.js';
import { print, say } from './console.js';
import { EXIT, SIGNAL_EXIT, WrongUse } from './exit.js';
import { checking, collect, judging, wholeNumber } from './options.js';

/** Builds the command line; each command is loaded when it is called. */
function program(done: Done): Command {
  const ahx = new Command('ahx')
    .description('Check and convert layouts of anchor holes.')
    .version(PACKAGE_VERSION)
    .addHelpText(
      'after',
      `\nExamples:\n  ahx check level3.ahx.json\n  ahx convert points.csv level3.ahx.json --profile points.profile.json\n\n${SHORT_CAUTION}`,
    )
    .showSuggestionAfterError()
    .showHelpAfterError('(ahx --help says more)')
    .configureOutput({
      writeOut: print,
      writeErr: (text) => say(text.trimEnd()),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .exitOverride();

  for (const add of [addCheck, addConvert, addReport, addBaseline, addFix, addSheet, addExplain]) add(ahx, done);
  return ahx;
}

type Done = (code: number) => void;

function addCheck(ahx: Command, done: Done): void {
  judging(checking(ahx.command('check')), 'language of the messages')
    .description('Say whether files are valid AHX, and what will not work on site.')
    .argument(
      '[files...]',
      'layouts or other AHX documents in JSON, or tables with --profile; - is standard input; absent: those of the config',
    )
    .addOption(
      new Option('-f, --format <format>', 'form of the report')
        .choices(['text', 'json', 'sarif', 'junit', 'github', 'markdown', 'csv'])
        .default('text'),
    )
    .option('-n, --limit <count>', 'most findings listed; counts are exact all the same (default: 1000)', wholeNumber)
    .option('-q, --quiet', 'print the two verdicts only, and no progress', false)
    .addOption(new Option('--colour <when>', 'colour in the text').choices(['auto', 'always', 'never']).default('auto'))
    .addHelpText(
      'after',
      '\nLayouts of one frame are judged together: holes of all against holes and keep-outs of all.\n\nExamples:\n  ahx check level3.ahx.json\n  ahx check sprinkler.ahx.json ducts.ahx.json\n  ahx check points.csv --profile points.profile.json\n  ahx check --format json level3.ahx.json > report.json\n  ahx check --baseline accepted.ahx.json --as-of now level3.ahx.json\n  ahx check --language es level3.ahx.json\n\nExit codes: 0 no findings, 1 findings or not judged, 2 wrong use, 3 cannot be read, 4 fault of ahx.',
    )
    .action(async (files: string[], flags) => {
      done(await runCheck(files, flags));
    });
}

function addConvert(ahx: Command, done: Done): void {
  ahx
    .command('convert')
    .description('Turn a table into a layout, or a layout into a table or GeoJSON.')
    .argument('<in>', 'layout or table; - is standard input')
    .argument('<out>', 'file to write; its ending says the form; - is standard output')
    .option('-p, --profile <file>', 'column profile of the table; - is standard input')
    .addOption(
      new Option('--to <form>', 'form to write, where the name does not say it').choices(['layout', 'csv', 'geojson']),
    )
    .option('--force', 'overwrite an existing file', false)
    .option(
      '--leave-out-bad-rows',
      'convert the sound rows of a table even where others are bad, or could not be read again',
      false,
    )
    .option('--strict', 'exit with 1 when anything did not travel', false)
    .option('-q, --quiet', 'print nothing but errors', false)
    .addOption(new Option('--colour <when>', 'colour in the text').choices(['auto', 'always', 'never']).default('auto'))
    .addHelpText(
      'after',
      '\nExamples:\n  ahx convert points.csv level3.ahx.json --profile points.profile.json\n  ahx convert level3.ahx.json level3.geojson\n  ahx convert level3.ahx.json back.csv --profile points.profile.json\n\nNothing is written when the conversion fails. With --force, a symbolic link stays and its target is overwritten.\n\nExit codes: 0 converted, 1 not converted, or with --strict something did not travel, 2 wrong use, 3 cannot be read or written, 4 fault of ahx.',
    )
    .action(async (from: string, to: string, flags) => {
      const { runConvert } = await import('./commands/convert.js');
      done(await runConvert(from, to, flags));
    });
}

function addReport(ahx: Command, done: Done): void {
  judging(checking(ahx.command('report')), 'language of the report')
    .description('Check files and write a report for people: one HTML file with plans and hole schedule.')
    .argument('<names...>', 'what is checked, as for ahx check, and last the report to write')
    .option('-n, --limit <count>', 'most findings kept one by one; counts are exact all the same', wholeNumber)
    .option('--parent <file>', 'revision before, to show what was changed; may be repeated', collect, [])
    .addOption(
      new Option('--paper <size>', 'paper to print on (default: what the printer has)').choices(['a4', 'letter']),
    )
    .option('--pdf', 'print it as PDF too, through the Chromium of the system', false)
    .option('--force', 'overwrite an existing file', false)
    .option('-q, --quiet', 'show no progress', false)
    .addHelpText(
      'after',
      '\nExamples:\n  ahx report level3.ahx.json report.html\n  ahx report sprinkler.ahx.json ducts.ahx.json report.html --pdf --paper letter\n  ahx report --language es level3.ahx.json informe.html\n\nThe report is one file without scripts, to be read on a screen and printed.\n\nExit codes: 0 no findings, 1 findings or not judged, 2 wrong use, 3 cannot be read or written, 4 fault of ahx.',
    )
    .action(async (names: string[], flags) => {
      const { runReport } = await import('./commands/report.js');
      done(await runReport(names, flags));
    });
}

function addBaseline(ahx: Command, done: Done): void {
  checking(ahx.command('baseline'))
    .description('Accept findings for a time, or say what became of those that were accepted.')
    .argument('<baseline>', 'file of the accepted findings; made where it is not there')
    .argument('[files...]', 'what is checked, as for ahx check; absent: the files of the config')
    .option('--reason <text>', 'why the findings are accepted')
    .option('--owner <name>', 'who answers for it')
    .option('--expires <day>', 'last day on which they are accepted, such as 2026-06-30')
    .option('--question <number>', 'number of the request for information that it follows from')
    .option('-r, --rule <id>', 'accept the findings of this rule only; may be repeated', collect, [])
    .option('--prune', 'take out what is there no more', false)
    .option('-q, --quiet', 'show no progress', false)
    .addHelpText(
      'after',
      '\nExamples:\n  ahx baseline accepted.ahx.json level3.ahx.json --reason "Group calculated, RFI 17" --owner "J. Doe" --expires 2030-06-30 --rule holes-too-close\n  ahx baseline accepted.ahx.json level3.ahx.json\n  ahx baseline accepted.ahx.json level3.ahx.json --prune\n\nWithout --as-of the time is now. To accept a finding is no approval. Findings about the form of a file cannot be accepted.\n\nExit codes: 0 done, 2 wrong use, 3 cannot be read or written, 4 fault of ahx.',
    )
    .action(async (baseline: string, files: string[], flags) => {
      const { runBaseline } = await import('./commands/baseline.js');
      done(await runBaseline(baseline, files, flags));
    });
}

function addFix(ahx: Command, done: Done): void {
  ahx
    .command('fix')
    .description('Show the findings of a file that have one right answer as a diff, or fix them.')
    .argument('<file>', 'AHX document in JSON; - is standard input')
    .addOption(new Option('-f, --format <format>', 'form of what is shown').choices(['diff', 'patch']).default('diff'))
    .option('-w, --write', 'write the fixes into the file', false)
    .option('-g, --geometry', 'fix also what changes where or how a hole is made', false)
    .option('-r, --rule <id>', 'fix the findings of this rule only; may be repeated', collect, [])
    .addOption(
      new Option('--purpose <purpose>', 'what the layout is checked for (default: for-review)').choices([
        'for-review',
        'for-drilling',
        'for-closeout',
      ]),
    )
    .option('-s, --severity <rule=level>', 'severity of one rule, as for ahx check; may be repeated', collect, [])
    .option('-o, --option <rule.name=number>', 'option of one rule; may be repeated', collect, [])
    .option('-c, --config <file>', 'config of the project (default: ahx.config.json, where it is there)')
    .option('--no-config', 'fix without the config that is there')
    .option('-b, --baseline <file>', 'findings that the project has accepted for a time; they stay as they are')
    .option('-l, --language <tag>', 'language of the messages of findings: en or es (default: en)')
    .option('-q, --quiet', 'print the diff or the patch only', false)
    .addHelpText(
      'after',
      '\nAll other bytes of the file stay as they are, and the result is checked before it is shown or written. The diff or the JSON Patch (RFC 6902) goes to standard output, a line for each fix to standard error. Files of more than 256 MiB are not fixed.\n\nExamples:\n  ahx fix level3.ahx.json\n  ahx fix level3.ahx.json --write\n  ahx fix level3.ahx.json --rule bad-text --format patch > level3.patch.json\n\nExit codes: 0 nothing to fix, or written, 1 there are fixes that were not written, or the file is no JSON, 2 wrong use, 3 cannot be read or written, 4 fault of ahx.',
    )
    .action(async (file: string, flags) => {
      const { runFix } = await import('./commands/fix.js');
      done(await runFix(file, flags));
    });
}

function addSheet(ahx: Command, done: Done): void {
  judging(checking(ahx.command('sheet'), 'for-drilling, whatever the config says'), 'language of the sheets')
    .description(
      'Check files and write one side of paper for the crew: plan, control, list of holes with findings, no-drill zones, boxes to fill in.',
    )
    .argument('[names...]', 'what is checked, as for ahx check, and last the file to write, .html or .svg')
    .option('--package <id>', 'the holes of a package')
    .option('--area <id>', 'the holes of an area')
    .option('--level <id>', 'the holes of a trade on a level; with --trade')
    .option('--trade <id>', 'the trade; with --level')
    .option('--of <file>', 'the layout whose holes are meant, where several have what is chosen')
    .option('--parent <file>', 'revision before, to mark what was changed')
    .addOption(
      new Option('--paper <size>', 'paper (default: letter where the project reads feet or inches, else a4)').choices([
        'a4',
        'letter',
      ]),
    )
    .option('--force', 'overwrite existing files', false)
    .option('-q, --quiet', 'print the two verdicts only, and no progress', false)
    .addOption(new Option('--colour <when>', 'colour in the text').choices(['auto', 'always', 'never']).default('auto'))
    .addHelpText(
      'after',
      "\nExamples:\n  ahx sheet level3.ahx.json\n  ahx sheet level3.ahx.json monday.html --package shift-1\n  ahx sheet sprinkler.ahx.json ducts.ahx.json monday.html --package shift-1\n  ahx sheet level3.ahx.json monday.html --package shift-1 --parent level3-before.ahx.json\n  ahx sheet level3.ahx.json bay.svg --area bay-1 --paper a4\n  ahx sheet level3.ahx.json ducts.html --level L3 --trade duct\n\nWithout a choice it lists what there is to choose from. Holes with errors are marked, and their boxes are closed. Layouts of other trades are checked and drawn together with the one whose holes are chosen. More holes than one side holds in a type that is readable at arm's length go on further sheets: pages of one HTML file, or files OUT-1.svg, OUT-2.svg and so on.\n\nExit codes: 0 written and no findings, 1 findings (written all the same) or not written, 2 wrong use or nothing chosen, 3 cannot be read or written, 4 fault of ahx.",
    )
    .action(async (names: string[], flags) => {
      const { runSheet } = await import('./commands/sheet.js');
      done(await runSheet(names, flags));
    });
}

function addExplain(ahx: Command, done: Done): void {
  ahx
    .command('explain')
    .description('Say what a rule is about, why it matters and how to mend it.')
    .argument('[rule]', 'id of the rule; absent: list all rules')
    .addHelpText('after', '\nExample:\n  ahx explain holes-too-close')
    .action(async (rule: string | undefined) => {
      const { runExplain } = await import('./commands/explain.js');
      done(await runExplain(rule));
    });
}

/** Runs the command line and returns the exit code. */
export async function main(args: readonly string[]): Promise<number> {
  let code: number = EXIT.clean;
  try {
    const ahx = program((result) => {
      code = result;
    });
    checkHelp(ahx, args);
    await ahx.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    return codeOf(error);
  }
}

/** Help on a command that does not exist is a wrong use like the command itself. */
function checkHelp(ahx: Command, [first, topic]: readonly string[]): void {
  if (first !== 'help' || topic === undefined || topic.startsWith('-')) return;
  const names = [...ahx.commands.map((command) => command.name()), 'help'];
  if (names.includes(topic)) return;
  const near = nearest(topic, names);
  const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
  throw new WrongUse(`There is no command "${topic}".${hint} ahx --help lists all.`);
}

function codeOf(error: unknown): number {
  // Commander has printed its message already; help and version are no errors.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.clean : EXIT.usage;
  // Errors of commands that are loaded late are of classes of their own; they are known by their code.
  if (error instanceof Error && 'exitCode' in error) {
    say(`ahx: ${error.message}`);
    return error.exitCode as number;
  }
  say(faultText(error));
  return EXIT.fault;
}

function faultText(error: unknown): string {
  const where = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `ahx: a fault of ahx itself, not of the data. Please report it with this text:\n${where}`;
}

// An exit, other than a signal without a listener, lets half-written files be removed.
for (const [signal, code] of Object.entries(SIGNAL_EXIT)) process.on(signal, () => process.exit(code));

void main(process.argv.slice(2)).then((code) => {
  process.exitCode = code;
});
