import type { Cause, Finding, Report } from '../generated/report.js';
import type { FormPhrases } from '../model/form-phrases.js';
import type { Phrases } from '../model/language.js';
import { utf8Length } from './byte-budget.js';
import { clip } from './clip.js';
import { closingLines } from './closing-lines.js';
import { firstOfCauses } from './first-of-causes.js';
import type { FormOptions } from './form-options.js';
import { idAndTag } from './hole-name.js';
import { english } from './languages/en.js';
import { englishForms } from './languages/forms-en.js';
import { markdownCode, markdownSentence } from './markdown-text.js';
import { unjudgedInWords, unjudgedRules } from './unjudged-lines.js';

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
/** Most bytes of a line that stands whatever it takes. */
const BYTES_OF_LINE = 3_000;
/** Bytes that may be taken by the inputs, then by these and the causes, before lists of holes are written. */
const BYTES_OF_INPUTS = 8_000;
const BYTES_OF_CAUSES = 30_000;
const BYTES_OF_LISTS = 50_000;
const BYTES_OF_REASONS = 57_000;

/**
 * A report as a summary in Markdown, for a comment or the summary of a job: the two verdicts, the caution, the
 * inputs, a table of causes with the gravest first, lists of their holes that fold away, and what did not run or only
 * in part.
 *
 * Nothing that an input carries becomes markup, a link or a mention. It holds at most
 * {@link MARKDOWN_MOST_BYTES} bytes, and says what it leaves out.
 */
export function markdownReport(report: Report, { phrases = english }: FormOptions = {}): string {
  const out = new Pieces();
  const forms = phrases.forms ?? englishForms;
  const words: Words = { phrases, forms };
  out.add(`### ${forms.title}\n\n`);
  const [format, site, ...others] = closingLines(report, [], phrases);
  const verdicts = [format, site].map((line) => `**${lineOfHead(line)}**`);
  out.add(`${verdicts.join('<br>\n')}\n\n`);
  for (const line of others) out.add(`${lineOfHead(line)}\n\n`);
  addInputs(out, report, words);
  const shown = addCauses(out, report, words);
  const lists = addHoles(out, report, shown, words);
  addUnjudged(out, report, words);
  addLeftOut(out, report, report.causes.length - shown.length, lists, words);
  return out.text();
}

/** A line that stands whatever it takes, cut where it takes too much. */
function lineOfHead(line: string): string {
  let most = MOST_LINE;
  let text = markdownSentence(clip(line, most));
  while (utf8Length(text) > BYTES_OF_LINE) {
    most = Math.floor(most / 2);
    text = markdownSentence(clip(line, most));
  }
  return text;
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

interface Words {
  phrases: Phrases;
  forms: FormPhrases;
}

function tableHead(heads: readonly string[]): string {
  return `| ${heads.join(' | ')} |\n|${'---|'.repeat(heads.length)}\n`;
}

function addInputs(out: Pieces, { inputs }: Report, { forms }: Words): void {
  out.add(tableHead(forms.markdown.inputHeads));
  let shown = 0;
  for (const { name, kind, revision, holes, judged } of inputs.slice(0, MOST_INPUTS)) {
    const isLess = holes !== undefined && judged !== undefined && judged < holes;
    const count = isLess ? forms.holesJudged(judged, holes) : `${holes ?? ''}`;
    const cells = [code(name), forms.kind(kind), revision === undefined ? '' : code(revision), count];
    if (!out.fits(`| ${cells.join(' | ')} |\n`, BYTES_OF_INPUTS)) break;
    shown++;
  }
  out.add(shown < inputs.length ? `\n${forms.markdown.moreInputs(inputs.length - shown)}\n\n` : '\n');
}

/** Adds the table of causes and returns those that it holds. What is accepted comes last. */
function addCauses(out: Pieces, { causes, inputs }: Report, { phrases, forms }: Words): Cause[] {
  const ordered = [
    ...causes.filter((one) => one.accepted === undefined),
    ...causes.filter((one) => one.accepted !== undefined),
  ];
  const shown: Cause[] = [];
  if (causes.length === 0) return shown;
  out.add(tableHead(['', ...forms.markdown.causeHeads]));
  for (const cause of ordered.slice(0, MOST_CAUSES)) {
    const { id, severity, message, rule, findings, holes, input, place, accepted } = cause;
    const where = inputs.length > 1 ? `${code(inputs[input - 1]?.name ?? forms.input(input))}, ` : '';
    const cells = [
      `${id}`,
      accepted === undefined ? phrases.severity[severity] : `${phrases.severity[severity]}, ${phrases.accepted}`,
      markdownSentence(clip(message, MOST_MESSAGE)),
      code(rule),
      `${findings}`,
      holes.length === 0 ? '' : code(idAndTag(holes[0], phrases)),
      `${where}${markdownSentence(clip(phrases.place(place), MOST_NAME))}`,
    ];
    if (!out.fits(`| ${cells.join(' | ')} |\n`, BYTES_OF_CAUSES)) break;
    shown.push(cause);
  }
  out.add('\n');
  return shown;
}

/**
 * Adds what folds away: the first findings of each cause that has more than one, and why what is accepted is. Returns
 * how many of these lists did not fit.
 */
function addHoles(out: Pieces, report: Report, causes: readonly Cause[], { phrases, forms }: Words): number {
  const first = firstOfCauses(report, MOST_FINDINGS);
  let leftOut = 0;
  for (const { id, severity, findings, accepted, rule } of causes) {
    const listed = first.get(id) ?? [];
    const entry = accepted === undefined ? undefined : report.baseline?.entries[accepted - 1];
    if (entry === undefined && (findings === 1 || listed.length === 0)) continue;
    const until = entry && phrases.acceptedUntil(severity, entry.expires, entry.owner, entry.reason);
    const rest = findings - listed.length;
    const items = [
      ...(until === undefined ? [] : [markdownSentence(clip(until, MOST_LINE))]),
      ...listed.map((finding) => findingItem(finding, phrases)),
      ...(rest > 0 ? [phrases.more(rest)] : []),
    ];
    const summary = forms.markdown.cause(id, code(rule), phrases.findings(findings));
    const block = `<details><summary>${summary}</summary>\n\n${items.map((item) => `- ${item}\n`).join('')}\n</details>\n\n`;
    if (!out.fits(block, BYTES_OF_LISTS)) leftOut++;
  }
  return leftOut;
}

function findingItem({ id, tag, message, place }: Finding, phrases: Phrases): string {
  const where = markdownSentence(clip(phrases.place(place), MOST_NAME));
  const text = markdownSentence(clip(message, MOST_MESSAGE));
  // Words of ours come first: at the beginning of an item a message could be taken for a list of its own.
  if (id === undefined) return `${where}: ${text}`;
  return `${phrases.hole(code(idAndTag({ id, tag }, phrases)))}: ${text} (${where})`;
}

function addUnjudged(out: Pieces, report: Report, { forms }: Words): void {
  const { notRun, inPart } = unjudgedRules(report);
  const rows = [...notRun, ...inPart];
  if (rows.length === 0) return;
  out.add(`<details><summary>${forms.markdown.unjudged(notRun.length, inPart.length)}</summary>\n\n`);
  let shown = 0;
  for (const row of rows.slice(0, MOST_REASONS)) {
    const why = markdownSentence(clip(unjudgedInWords(row, forms) ?? '', MOST_MESSAGE));
    if (!out.fits(`- ${code(row.rule)}: ${why}\n`, BYTES_OF_REASONS)) break;
    shown++;
  }
  out.add(`${shown < rows.length ? `- ${forms.markdown.moreRules(rows.length - shown)}\n` : ''}\n</details>\n\n`);
}

function addLeftOut(out: Pieces, { sample }: Report, causes: number, lists: number, { forms }: Words): void {
  const { listed, leftOut, limits } = forms.markdown;
  if (sample.listed < sample.total) out.add(`${listed(sample.listed, sample.total)}\n\n`);
  if (causes + lists > 0) out.add(`${leftOut(causes, lists)}\n\n`);
  out.add(`${limits(MOST_FINDINGS, MARKDOWN_MOST_BYTES)}\n`);
}

function code(text: string): string {
  return markdownCode(clip(text, MOST_NAME));
}
