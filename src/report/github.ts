import type { Cause, Report } from '../generated/report.js';
import type { FormPhrases } from '../model/form-phrases.js';
import type { Phrases } from '../model/language.js';
import type { Severity } from '../model/observation.js';
import { clip } from './clip.js';
import { closingLines } from './closing-lines.js';
import type { FormOptions } from './form-options.js';
import { SEVERITIES } from './gravest-first.js';
import { idAndTag } from './hole-name.js';
import { english } from './languages/en.js';
import { englishForms } from './languages/forms-en.js';
import { printable } from '../model/printable.js';
import { unjudgedLines } from './unjudged-lines.js';

/**
 * Most annotations of one severity. The service shows 10 errors and 10 warnings of a step
 * (docs.github.com/en/rest/checks/runs); for notices it states no number, so they are taken to have the same.
 */
export const GITHUB_MOST_ANNOTATIONS = 10;

const COMMANDS: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'notice' };
/** Longest texts, in UTF-16 units before they are escaped. */
const MOST_MESSAGE = 2000;
const MOST_NAME = 1000;
const MOST_TITLE = 200;
const HOLES_OF_CAUSE = 8;

/**
 * Causes of a report as annotations: workflow commands for the log of a job, one a line, which the service shows
 * at the file and line. The gravest come first; of each severity at most {@link GITHUB_MOST_ANNOTATIONS} are
 * written, the last notice among them, which gives the two verdicts, says what was not judged and why and
 * what is left out, and ends with the caution. What a baseline accepts is only counted, in the verdict.
 *
 * A place in a table is given in words: a row is not always a line.
 */
export function githubReport(report: Report, { phrases = english }: FormOptions = {}): string {
  const forms = phrases.forms ?? englishForms;
  const open = report.causes.filter(({ accepted }) => accepted === undefined);
  const lines: string[] = [];
  let written = 0;
  for (const severity of SEVERITIES) {
    // The last notice needs a place of its own.
    const most = severity === 'info' ? GITHUB_MOST_ANNOTATIONS - 1 : GITHUB_MOST_ANNOTATIONS;
    const causes = open.filter((cause) => cause.severity === severity).slice(0, most);
    written += causes.length;
    lines.push(...causes.map((cause) => annotation(cause, report, { phrases, forms })));
  }
  lines.push(command('notice', { title: forms.title }, lastNotice(report, open.length - written, { phrases, forms })));
  return `${lines.join('\n')}\n`;
}

interface Words {
  phrases: Phrases;
  forms: FormPhrases;
}

function annotation(cause: Cause, { inputs }: Report, { phrases, forms }: Words): string {
  const { severity, rule, class: ruleClass, message, place, findings, holes } = cause;
  const { name = forms.input(cause.input) } = inputs[cause.input - 1] ?? {};
  const facts = [
    ...(holes.length === 0 ? [] : [clip(holesInWords(cause, phrases), MOST_NAME)]),
    ...(findings > 1 ? [phrases.findings(findings)] : []),
    ...(place.line === undefined ? [clip(phrases.place(place), MOST_NAME)] : []),
  ];
  const text = clip(message, MOST_MESSAGE) + (facts.length === 0 ? '' : ` (${facts.join('; ')})`);
  const properties = { file: clip(name, MOST_NAME), line: place.line, col: place.line && place.column };
  return command(COMMANDS[severity], { ...properties, title: clip(`${rule} (${ruleClass})`, MOST_TITLE) }, [text]);
}

function holesInWords({ holes, findings }: Cause, phrases: Phrases): string {
  const names = holes.slice(0, HOLES_OF_CAUSE).map((hole) => idAndTag(hole, phrases));
  if (findings === 1 && names.length === 1) return phrases.hole(names[0]);
  return phrases.holes(`${names.join(', ')}${findings > names.length ? ', …' : ''}`);
}

function lastNotice(report: Report, leftOut: number, { phrases, forms }: Words): string[] {
  const own = [...unjudgedLines(report, phrases), ...(leftOut > 0 ? [forms.annotationsLeftOut(leftOut)] : [])];
  return closingLines(report, own, phrases).map((line) => clip(line, MOST_MESSAGE));
}

/** A workflow command; its properties and the lines of its text are escaped as the service documents it. */
function command(
  name: string,
  properties: Record<string, string | number | undefined>,
  lines: readonly string[],
): string {
  const pairs = Object.entries(properties)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${key}=${escapeProperty(printable(String(value)))}`);
  return `::${name} ${pairs.join(',')}::${lines.map((line) => escapeData(printable(line))).join('%0A')}`;
}

function escapeData(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapeProperty(text: string): string {
  return escapeData(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
