import { readFileSync, statSync } from 'node:fs';
import { rules } from '../../check/list.js';
import { unifiedDiff } from '../../edit/unified-diff.js';
import type { Finding, Report } from '../../generated/report.js';
import { FixFault, type Fixing, fixInRounds } from '../../jobs/fix.js';
import type { Phrases } from '../../model/language.js';
import { nearest } from '../../model/nearest.js';
import { UnreadableInput } from '../../node/input-file.js';
import { checkOutputName, UnwritableOutput, writeWhole } from '../../node/output-file.js';
import { counted } from '../../report/counted.js';
import { fixLine } from '../../report/fix-text.js';
import { english } from '../../report/languages/en.js';
import { printable } from '../../model/printable.js';
import { verdictLines } from '../../report/text.js';
import { type CheckFlags, checkOptionsOf, orWrongUse } from '../check-files.js';
import { isTerminal, pause, print, say } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';
import { STANDARD_INPUT } from '../feed.js';
import { isTableName } from '../read-document.js';

export interface FixFlags extends CheckFlags {
  format: 'diff' | 'patch';
  write: boolean;
  geometry: boolean;
  rule: string[];
}

/** Larger files are refused: the text is held in memory twice. */
const MOST_BYTES = 256 * 1024 * 1024;
/** More fixes, or findings, than this are counted, not written out. */
const MOST_LINES = 100;
const CHUNK = 1 << 20;

/** Shows the fixes of a file, or writes them into it, and returns the exit code. */
export async function runFix(file: string, flags: FixFlags): Promise<number> {
  checkUse(file, flags);
  const bytes = readInput(file);
  const name = file === STANDARD_INPUT ? 'standard input' : file;
  const options = await checkOptionsOf(flags);
  // What was accepted until a day is held against today.
  const asOf = options.asOf ?? (options.baseline === undefined ? undefined : new Date().toISOString());
  const { geometry } = flags;
  const { language } = options;
  const chosen = flags.rule.length > 0 ? flags.rule : undefined;
  try {
    const rounds = fixInRounds({ name, data: bytes }, { ...options, asOf, geometry, rules: chosen });
    let step = orWrongUse(() => rounds.next());
    while (!step.done) {
      await pause();
      step = orWrongUse(() => rounds.next());
    }
    return await finish(file, name, bytes, step.value, flags, language?.phrases);
  } catch (error) {
    if (!(error instanceof FixFault)) throw error;
    tellFault(error, language?.phrases);
    return EXIT.fault;
  }
}

/** @throws WrongUse, RefusedName */
function checkUse(file: string, { write, rule: chosen }: FixFlags): void {
  if (isTableName(file)) {
    throw new WrongUse(
      `${file} is a table; only JSON is fixed. Mend the table where it comes from, or turn it into a layout: ahx convert --help`,
    );
  }
  if (write && file === STANDARD_INPUT) throw new WrongUse('Standard input cannot be written to; name a file.');
  if (write) checkOutputName(file, true);
  const fixing = rules.filter((rule) => rule.fix !== undefined).map(({ id }) => id);
  for (const id of chosen) {
    if (fixing.includes(id)) continue;
    const near = nearest(id, fixing);
    const why = rules.some((rule) => rule.id === id) ? `The rule "${id}" has no fixes.` : `There is no rule "${id}".`;
    const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
    throw new WrongUse(`${why}${hint} Rules with fixes: ${fixing.join(', ')}.`);
  }
}

/** @throws UnreadableInput */
function readInput(file: string): Uint8Array {
  const isPiped = file === STANDARD_INPUT;
  const refuse = (size: number) => {
    if (size > MOST_BYTES)
      throw new WrongUse(`${file} has ${size} bytes; files of more than ${MOST_BYTES} are not fixed.`);
  };
  try {
    if (!isPiped) refuse(statSync(file).size);
    const bytes = readFileSync(isPiped ? 0 : file);
    refuse(bytes.length);
    return bytes;
  } catch (error) {
    throw error instanceof WrongUse ? error : new UnreadableInput(isPiped ? 'standard input' : file, error);
  }
}

async function finish(
  file: string,
  name: string,
  bytes: Uint8Array,
  result: Fixing,
  flags: FixFlags,
  phrases = english,
): Promise<number> {
  const isFixed = result.fixed.length > 0;
  if (isFixed && flags.write) {
    if (!Buffer.from(bytes).equals(readInput(file)))
      throw new UnwritableOutput(`${file} has changed while it was checked; nothing was written.`);
    await writeWhole(file, inChunks(result.bytes), true, pause);
  } else if (flags.format === 'patch' && !flags.write) {
    print(patchText(result));
  } else if (isFixed && !flags.write) {
    printDiff(name, bytes, result);
  }
  if (!flags.quiet) tell(name, result, flags, phrases);
  if (!result.isSound) return EXIT.findings;
  return isFixed && !flags.write ? EXIT.findings : EXIT.clean;
}

function* inChunks(bytes: Uint8Array): Generator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += CHUNK) yield bytes.subarray(at, at + CHUNK);
}

/** A JSON Patch, one operation a line. */
function patchText({ patch }: Fixing): string {
  if (patch.length === 0) return '[]\n';
  return `[\n${patch.map((operation) => `  ${JSON.stringify(operation)}`).join(',\n')}\n]\n`;
}

function printDiff(name: string, bytes: Uint8Array, { edits }: Fixing): void {
  const hunks = unifiedDiff(printable(name), bytes, edits);
  if (hunks === undefined) {
    say('The lines of the file are too long for a diff; --format patch shows the fixes as JSON Patch.');
    return;
  }
  // On a terminal nothing of the file may act; for programs every byte stays.
  const isShown = isTerminal(1);
  for (const hunk of hunks) print(isShown ? hunk.split('\n').map(printable).join('\n') : hunk);
}

function tell(name: string, result: Fixing, flags: FixFlags, phrases: Phrases): void {
  const { write, format } = flags;
  const inLine = (finding: Finding) => findingLine(finding, phrases);
  const { fixed, fixedCount, refused, cameToLight, after, isSound } = result;
  const fixes = fixed.slice(0, MOST_LINES).map((finding) => fixLine(finding, phrases));
  for (const line of capped(fixes, 'fix', 'fixes', fixedCount)) say(line);
  const notMade = refused.map(({ finding, reason }) => `${inLine(finding)} Not fixed: ${printable(reason)}.`);
  for (const line of capped(notMade, 'refused fix', 'refused fixes')) say(line);
  if (cameToLight.length > 0) {
    say('Came to light, because their records could not be judged before:');
    for (const line of capped(cameToLight.map(inLine), 'finding', 'findings')) say(`  ${line}`);
  }
  if (!isSound)
    say(`${printable(name)} is no JSON to its end; nothing but a byte order mark can be fixed. See: ahx check`);
  const isMarkFixed = fixed.some(({ fix: one }) => one?.byteOrderMark !== undefined);
  if (isMarkFixed && format === 'patch' && !write) say('The byte order mark is no part of JSON: the patch leaves it.');
  const done =
    fixed.length === 0 ? 'Nothing to fix' : `${counted(fixedCount, 'finding')} ${write ? 'fixed' : 'to be fixed'}`;
  say(`${done}; ${rest(result.after, flags)}`);
  if (write && fixed.length > 0) {
    say(`Written: ${printable(name)}.`);
    for (const line of verdictLines(after, phrases)) say(line);
  } else if (fixed.length > 0) say('Nothing was written; --write does it.');
}

/** What a check still finds, and why it was not fixed. */
function rest({ purpose, sample, findings }: Report, { geometry, rule: chosen }: FixFlags): string {
  const check = `in a check ${purpose.replaceAll('-', ' ')}`;
  if (sample.total === 0) return `no finding is left ${check}.`;
  const whyNot = ({ accepted, rule, fix: one }: Finding) => {
    if (accepted !== undefined) return 'accepted';
    if (one === undefined) return 'without a fix that is sure';
    if (chosen.length > 0 && !chosen.includes(rule)) return 'of rules that were not named';
    return one.geometry === true && !geometry ? 'to be fixed with --geometry' : 'with a fix that cannot be made';
  };
  const counts = new Map<string, number>();
  for (const why of findings.map(whyNot)) counts.set(why, (counts.get(why) ?? 0) + 1);
  const unseen = sample.total - findings.length;
  if (unseen > 0) counts.set('not looked at for fixes', unseen);
  const parts = [...counts].map(([why, count]) => `${count} ${why}`);
  return `${counted(sample.total, 'finding')} ${sample.total === 1 ? 'is' : 'are'} left ${check}: ${parts.join(', ')}.`;
}

function findingLine({ place, message, rule }: Finding, phrases: Phrases): string {
  return `${phrases.place(place)}: ${message} [${rule}]`;
}

/** At most so many lines, with the number of the others of `count`. */
function capped(lines: readonly string[], one: string, many: string, count = lines.length): string[] {
  const left = count - MOST_LINES;
  return left <= 0 ? [...lines] : [...lines.slice(0, MOST_LINES), `and ${left} more ${left === 1 ? one : many}`];
}

function tellFault({ notGone, appeared }: FixFault, phrases = english): void {
  const inLine = (finding: Finding) => findingLine(finding, phrases);
  say('ahx: a fault of ahx itself, not of the data: its fixes did not do what they should. Nothing was written.');
  say(`Fixed and still there: ${notGone.length === 0 ? 'none' : ''}`.trimEnd());
  for (const line of capped(notGone.map(inLine), 'finding', 'findings')) say(`  ${line}`);
  say(`Errors that came with the fixes: ${appeared.length === 0 ? 'none' : ''}`.trimEnd());
  for (const line of capped(appeared.map(inLine), 'finding', 'findings')) say(`  ${line}`);
}
