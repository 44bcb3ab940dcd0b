import type { Cause, Finding, Report } from '../generated/report.js';
import { placeInWords } from './build-report.js';
import { utf8Length } from './byte-budget.js';
import { clip } from './clip.js';
import { closingLines } from './closing-lines.js';
import { counted } from './counted.js';
import { firstOfCauses } from './first-of-causes.js';
import { idAndTag } from './hole-name.js';
import { markdownCode, markdownSentence } from './markdown-text.js';

/**
 * Most bytes of the summary. A comment of the service for which it is made holds 65,536 characters (its API
 * refuses longer ones with that number), the summary of a step 1 MiB
 * (docs.github.com/en/actions/reference/workflows-and-actions/workflow-commands).
 */
export const MARKDOWN_MOST_BYTES = 60_000;

const MOST_INPUTS = 10;
const MOST_CAUSES = 50;
const MOST_FINDINGS = 20;
const MOST_REASONS = 30;
/** Longest texts, in UTF-16 units before they are escaped. */
const MOST_MESSAGE = 300;
const MOST_LINE = 1000;
const MOST_NAME = 130;
/** Bytes that may be taken by the inputs, then by these and the causes, before lists of holes are written. */
const BYTES_OF_INPUTS = 8_000;
const BYTES_OF_CAUSES = 30_000;
const BYTES_OF_LISTS = 50_000;
const BYTES_OF_REASONS = 57_000;

/**
 * A report as a summary in Markdown, for a comment or the summary of a job: the two verdicts, the caution, the
 * inputs, a table of causes with the gravest first, lists of their holes that fold away, and what did not run.
 *
 * Nothing that an input carries becomes markup, a link or a mention. It holds at most
 * {@link MARKDOWN_MOST_BYTES} bytes, and says what it leaves out.
 */
export function markdownReport(report: Report): string {
  const out = new Pieces();
  out.add('### AHX check\n\n');
  const [format, site, ...others] = closingLines(report, undefined);
  const verdicts = [format, site].map((line) => `**${markdownSentence(clip(line, MOST_MESSAGE))}**`);
  out.add(`${verdicts.join('<br>\n')}\n\n`);
  for (const line of others) out.add(`${markdownSentence(clip(line, MOST_LINE))}\n\n`);
  addInputs(out, report);
  const shown = addCauses(out, report);
  addHoles(out, report, shown);
  addNotRun(out, report);
  addLeftOut(out, report, shown.length);
  return out.text();
}

/** Pieces of the summary while they fit. */
class Pieces {
  private readonly pieces: string[] = [];
  private bytes = 0;

  add(piece: string): void {
    this.pieces.push(piece);
    this.bytes += utf8Length(piece);
  }

  /** Adds a piece if all is then still within so many bytes. */
  fits(piece: string, mostBytes: number): boolean {
    if (this.bytes + utf8Length(piece) > mostBytes) return false;
    this.add(piece);
    return true;
  }

  text(): string {
    return `${this.pieces.join('').trimEnd()}\n`;
  }
}

function addInputs(out: Pieces, { inputs }: Report): void {
  out.add('| input | kind | revision | holes |\n|---|---|---|---|\n');
  let shown = 0;
  for (const { name, kind, revision, holes, judged } of inputs.slice(0, MOST_INPUTS)) {
    const count =
      holes === undefined ? '' : judged !== undefined && judged < holes ? `${holes}, ${judged} judged` : `${holes}`;
    const cells = [code(name), kind, revision === undefined ? '' : code(revision), count];
    if (!out.fits(`| ${cells.join(' | ')} |\n`, BYTES_OF_INPUTS)) break;
    shown++;
  }
  out.add(shown < inputs.length ? `\nand ${counted(inputs.length - shown, 'more input')}\n\n` : '\n');
}

/** Adds the table of causes and returns those that it holds. What is accepted comes last. */
function addCauses(out: Pieces, { causes, inputs }: Report): Cause[] {
  const ordered = [
    ...causes.filter((one) => one.accepted === undefined),
    ...causes.filter((one) => one.accepted !== undefined),
  ];
  const shown: Cause[] = [];
  if (causes.length === 0) return shown;
  out.add('| | severity | cause | rule | findings | first hole | first at |\n|---|---|---|---|---|---|---|\n');
  for (const cause of ordered.slice(0, MOST_CAUSES)) {
    const { id, severity, message, rule, findings, holes, input, place, accepted } = cause;
    const where = inputs.length > 1 ? `${code(inputs[input - 1]?.name ?? `input ${input}`)}, ` : '';
    const cells = [
      `${id}`,
      accepted === undefined ? severity : `${severity}, accepted`,
      markdownSentence(clip(message, MOST_MESSAGE)),
      code(rule),
      `${findings}`,
      holes.length === 0 ? '' : code(idAndTag(holes[0])),
      `${where}${markdownSentence(clip(placeInWords(place), MOST_NAME))}`,
    ];
    if (!out.fits(`| ${cells.join(' | ')} |\n`, BYTES_OF_CAUSES)) break;
    shown.push(cause);
  }
  out.add('\n');
  return shown;
}

/** Adds what folds away: the first findings of each cause that has more than one, and reasons of what is accepted. */
function addHoles(out: Pieces, report: Report, causes: readonly Cause[]): void {
  const first = firstOfCauses(report, MOST_FINDINGS);
  for (const { id, findings, accepted, rule } of causes) {
    const listed = first.get(id) ?? [];
    const entry = accepted === undefined ? undefined : report.baseline?.entries[accepted - 1];
    if ((findings === 1 && entry === undefined) || (listed.length === 0 && entry === undefined)) continue;
    const rest = findings - listed.length;
    const items = [
      ...(entry === undefined
        ? []
        : [
            `Accepted: ${markdownSentence(clip(entry.reason, MOST_MESSAGE))} (${code(entry.owner)}, until ${code(entry.expires)})`,
          ]),
      ...listed.map(findingItem),
      ...(rest > 0 ? [`and ${counted(rest, 'more finding')}`] : []),
    ];
    const summary = `Cause ${id}, ${code(rule)}: ${counted(findings, 'finding')}`;
    const block = `<details><summary>${summary}</summary>\n\n${items.map((item) => `- ${item}\n`).join('')}\n</details>\n\n`;
    out.fits(block, BYTES_OF_LISTS);
  }
}

function findingItem({ id, tag, message, place }: Finding): string {
  const name = id === undefined ? 'No hole' : `Hole ${code(idAndTag({ id, tag }))}`;
  return `${name}: ${markdownSentence(clip(message, MOST_MESSAGE))} (${markdownSentence(clip(placeInWords(place), MOST_NAME))})`;
}

function addNotRun(out: Pieces, { coverage }: Report): void {
  const rows = coverage.filter(({ outcome }) => outcome === 'not-run');
  if (rows.length === 0) return;
  const items: string[] = [];
  for (const { rule, reason = 'no reason given' } of rows.slice(0, MOST_REASONS))
    items.push(`- ${code(rule)}: ${markdownSentence(clip(reason, MOST_MESSAGE))}\n`);
  const head = `<details><summary>${counted(rows.length, 'rule')} not run</summary>\n\n`;
  out.add(head);
  let shown = 0;
  for (const item of items) {
    if (!out.fits(item, BYTES_OF_REASONS)) break;
    shown++;
  }
  out.add(`${shown < rows.length ? `- and ${counted(rows.length - shown, 'more rule')}\n` : ''}\n</details>\n\n`);
}

function addLeftOut(out: Pieces, { causes, sample }: Report, shown: number): void {
  if (sample.listed < sample.total)
    out.add(
      `The report lists ${sample.listed} of ${counted(sample.total, 'finding')}; the numbers above count all.\n\n`,
    );
  out.add(
    shown < causes.length
      ? `Left out here: ${counted(causes.length - shown, 'further cause')}, and lists of holes beyond ${MARKDOWN_MOST_BYTES} bytes. \`ahx check --format json\` lists all causes.\n`
      : `Lists show at most ${MOST_FINDINGS} findings of a cause, and none beyond ${MARKDOWN_MOST_BYTES} bytes.\n`,
  );
}

function code(text: string): string {
  return markdownCode(clip(text, MOST_NAME));
}
