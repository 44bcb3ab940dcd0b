import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { ruleCatalogue } from '../../src/check/list.js';
import { reportAs } from '../../src/cli/other-forms.js';
import { jsonReportPieces } from '../../src/report/json.js';
import { textReport } from '../../src/report/text.js';
import { manyFindings } from '../report/html/many-findings.js';
import { largeReport } from '../report/synthetic-report.js';
import { type BenchLayout, writeBenchLayout } from './make-layout.js';
import { runMeasured, type Spread, spread, timeOf } from './run-measured.js';

/*
 * Ratios against yardsticks that run in the same minutes on the same machine: absolute times say little on
 * a machine that others share. Each round runs both sides, in turns; a ratio is of one round.
 */

const root = join(import.meta.dirname, '../..');
const cli = join(root, 'dist/cli.cjs');
const folder = join(root, 'out', 'bench');
const SEED = 20260325;
/** Reading the same file and `JSON.parse` of it whole. */
const YARDSTICK = "JSON.parse(require('node:fs').readFileSync(process.argv[1], 'utf8'))";

interface Row {
  what: string;
  limits: string;
  time: Spread;
  memory?: Spread;
  note: string;
}

mkdirSync(folder, { recursive: true });
const only = process.argv[2];
const rows: Row[] = [];
const measure = (name: string, run: () => Row) => {
  if (only !== undefined && !name.includes(only)) return;
  process.stderr.write(`${name} …\n`);
  rows.push(run());
};

measure('start-up', startUp);
for (const holes of [100_000, 1_000_000]) {
  for (const indent of [0, 2]) {
    const form = indent === 0 ? 'minified' : 'indented';
    measure(`check ${holes} ${form}`, () => check({ holes, indent, fault: 'none' }, 'time 0.8, memory 0.35'));
  }
}
measure('check 100000 every record fails', () =>
  check({ holes: 100_000, indent: 0, fault: 'every-record' }, 'time 1.6'),
);
measure('check 100000 every second hole too close', () =>
  check({ holes: 100_000, indent: 0, fault: 'crowded' }, 'none yet'),
);
measure('check 1000000 every record fails', () =>
  check({ holes: 1_000_000, indent: 0, fault: 'every-record' }, 'time 1.6'),
);
for (const fault of [
  'wrong-type',
  'null-members',
  'missing',
  'bad-text',
  'no-choice',
  'wrong-shape',
  'lost-digits',
  'twice',
  'mixed',
  'own-names',
] as const) {
  measure(`check 100000 every record ${fault}`, () => check({ holes: 100_000, indent: 0, fault }, 'none yet'));
}
measure('check 1000000 every record mixed', () => check({ holes: 1_000_000, indent: 0, fault: 'mixed' }, 'time 1.6'));
measure('check 1000000 all in one place', () => check({ holes: 1_000_000, indent: 0, fault: 'one-place' }, 'time 1.6'));
measure('report 10000', report);
if (only === undefined || 'forms'.includes(only)) printForms();
print();

function startUp(): Row {
  const small = join(root, 'examples/workshop-deck/workshop.ahx.json');
  const ratios: number[] = [];
  for (let round = 0; round < 21; round++) {
    const empty = timeOf(['-e', '0']);
    ratios.push(timeOf([cli, 'check', small]) / empty);
  }
  const note = `${(statSync(small).size / 1000).toFixed(0)} KB; yardstick node -e 0`;
  return { what: '`ahx check`, small file, whole process', limits: 'time 1.6', time: spread(ratios), note };
}

function check(layout: Omit<BenchLayout, 'seed'>, limits: string): Row {
  const { holes, indent, fault } = layout;
  const file = join(folder, `${holes}-${indent}-${fault}.ahx.json`);
  if (!existsSync(file)) writeBenchLayout(file, { ...layout, seed: SEED });
  const time: number[] = [];
  const memory: number[] = [];
  for (let round = 0; round < 7; round++) {
    const yardstick = runMeasured(['-e', YARDSTICK, file]);
    const own = runMeasured([cli, 'check', '--quiet', file], fault === 'none' || fault === 'lost-digits' ? [0] : [1]);
    time.push(own.ms / yardstick.ms);
    memory.push(own.peakMb / yardstick.peakMb);
  }
  const form = indent === 0 ? 'minified' : 'indented';
  const kind = fault === 'none' ? 'clean' : fault.replace('-', ' ');
  return {
    what: `\`ahx check\`, ${holes.toLocaleString('en')} holes, ${form}, ${kind}`,
    limits,
    time: spread(time),
    memory: spread(memory),
    note: `${(statSync(file).size / 1e6).toFixed(0)} MB`,
  };
}

/** The report for people, against `ahx check` of the same files. */
function report(): Row {
  const files = manyFindings().map((layout, k) => {
    const file = join(folder, `report-${k}.ahx.json`);
    writeFileSync(file, JSON.stringify(layout));
    return file;
  });
  const page = join(folder, 'report.html');
  const time: number[] = [];
  const memory: number[] = [];
  for (let round = 0; round < 7; round++) {
    const yardstick = runMeasured([cli, 'check', ...files], [1]);
    const own = runMeasured([cli, 'report', '--force', ...files, page], [1]);
    time.push(own.ms / yardstick.ms);
    memory.push(own.peakMb / yardstick.peakMb);
  }
  return {
    what: '`ahx report`, 10,000 holes, some 600 findings, against `ahx check`',
    limits: 'time 4, 3 MB',
    time: spread(time),
    memory: spread(memory),
    note: `${(statSync(page).size / 1e6).toFixed(2)} MB of HTML`,
  };
}

/** Sizes of the forms of a made-up report with a million findings in 10,000 causes, all of them listed. */
function printForms(): void {
  const large = largeReport(1_000_000);
  const facts = { rules: ruleCatalogue, threshold: 'error', exitCode: 1 } as const;
  const sizeOf: Record<string, () => number> = {
    text: () => Buffer.byteLength(textReport(large, { colour: false, findingsOfCause: 5 })),
    json: () => [...jsonReportPieces(large)].reduce((sum, piece) => sum + Buffer.byteLength(piece), 0),
    sarif: () => Buffer.byteLength(reportAs('sarif', large, facts)),
    junit: () => Buffer.byteLength(reportAs('junit', large, facts)),
    github: () => Buffer.byteLength(reportAs('github', large, facts)),
    markdown: () => Buffer.byteLength(reportAs('markdown', large, facts)),
    csv: () => Buffer.byteLength(reportAs('csv', large, facts)),
  };
  console.log('| form of a report | bytes, 1,000,000 findings |\n|---|---|');
  for (const [form, size] of Object.entries(sizeOf)) console.log(`| ${form} | ${size().toLocaleString('en')} |`);
  console.log('');
}

function print(): void {
  const show = (value: Spread | undefined) =>
    value === undefined ? '' : `${value.min.toFixed(2)} / ${value.median.toFixed(2)}`;
  console.log(
    `Node ${process.version}, ${cpus().length} × ${cpus()[0].model}, seed ${SEED}. Ratios, min / median of the rounds.\n`,
  );
  console.log('| what | at most | time | peak memory | input |\n|---|---|---|---|---|');
  for (const { what, limits, time, memory, note } of rows) {
    console.log(`| ${what} | ${limits} | ${show(time)} | ${show(memory)} | ${note} |`);
  }
}
