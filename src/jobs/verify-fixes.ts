import { renamed } from '../edit/renamed.js';
import { collections } from '../generated/schema-tables.js';
import type { Finding, Report } from '../generated/report.js';
import type { FixOperation } from '../model/fix.js';
import { fromPointer } from '../read/locate.js';
import { ruleOf } from './findings.js';

/** Fixes that did not do what they should; nothing of them is to be written. */
export class FixFault extends Error {
  /**
   * @param notGone findings that were fixed and are still there
   * @param appeared errors of the form of the file that were not there before
   */
  constructor(
    readonly notGone: readonly Finding[],
    readonly appeared: readonly Finding[],
  ) {
    super(`${notGone.length} findings are still there after their fix, ${appeared.length} errors came with it.`);
  }
}

/** A document before fixes, the findings that they are to mend, and the document after. */
export interface Mended {
  before: Report;
  fixed: readonly Finding[];
  patch: readonly FixOperation[];
  after: Report;
}

const isCollection = new Set<string>(collections);

/**
 * Looks whether fixes did what they should: each finding is gone, and no error of the form of the file is there
 * that was not there before. Errors that could not be seen before are no fault: those of a later stage in a record
 * that was broken, and all where a member of the root, or the kind of the document, had a wrong name.
 *
 * @returns the errors that have come to light
 * @throws FixFault
 */
export function verifyFixes({ before, fixed, patch, after }: Mended): Finding[] {
  const moved = new Map(
    patch.flatMap((operation) => (operation.op === 'move' ? [[operation.from, operation.path]] : [])),
  );
  const known = new Set(before.findings.map((finding) => keyOf(finding, moved)));
  const now = new Set(after.findings.map((finding) => keyOf(finding)));
  const notGone = fixed.filter((finding) => now.has(keyOf(finding, moved)));
  const more = moreThanBefore(before, after);
  const appeared = after.findings.filter(
    (finding) => isFormatError(finding) && more(finding.rule) && !known.has(keyOf(finding)),
  );
  const isHidden = hiddenIn(before, patch);
  const atFault = appeared.filter((finding) => !isHidden(finding));
  if (notGone.length > 0 || atFault.length > 0) throw new FixFault(notGone, atFault);
  return appeared;
}

function isFormatError({ rule, severity }: Finding): boolean {
  return severity === 'error' && ruleOf(rule).class === 'format';
}

/** Rule and place; the place as it is called after members were renamed. */
function keyOf({ rule, place: { pointer = '' } }: Finding, moved: ReadonlyMap<string, string> = NONE): string {
  return `${rule} ${renamed(pointer, moved)}`;
}

const NONE: ReadonlyMap<string, string> = new Map();

/** Where not all findings were listed, one that is listed now is new only if there are more of its rule. */
function moreThanBefore(before: Report, after: Report): (rule: string) => boolean {
  if (before.sample.listed === before.sample.total) return () => true;
  const countIn = ({ coverage }: Report, rule: string) => coverage.find((row) => row.rule === rule)?.findings ?? 0;
  return (rule) => countIn(after, rule) > countIn(before, rule);
}

/** Whether a finding could not be seen before the patch. */
function hiddenIn(before: Report, patch: readonly FixOperation[]): (finding: Finding) => boolean {
  const isLayout = before.inputs[0]?.kind === 'layout';
  const isOpened =
    before.inputs[0]?.kind === 'unknown' || patch.some(({ path }) => path.lastIndexOf('/') === 0 && isOfRoot(path));
  const recordOf = ({ place: { pointer = '' } }: Finding) => (isLayout ? recordAt(pointer) : '');
  const broken = new Set(before.findings.filter(isFormatError).map(recordOf));
  return (finding) => {
    if (isOpened) return true;
    const isLater = AFTER_ALL.has(finding.rule) || !EARLY.has(ruleOf(finding.rule).stage);
    return isLater && broken.has(recordOf(finding));
  };
}

/** Stages that judge all records. */
const EARLY: ReadonlySet<string> = new Set(['bytes', 'JSON', 'schema']);

/** Rules of the stage schema that need a sound header. */
const AFTER_ALL: ReadonlySet<string> = new Set(['required-extension-unknown', 'unsupported-version']);

/** Whether a patch at a member of the root lets the reader see what it did not look at before. */
function isOfRoot(pointer: string): boolean {
  const [name] = fromPointer(pointer);
  return name === 'kind' || name === 'ahx' || isCollection.has(name);
}

/** The record that a pointer into a layout leads into; the members of the root that are no collection are one. */
function recordAt(pointer: string): string {
  const [name, index] = fromPointer(pointer);
  return isCollection.has(name) && index !== undefined ? `${name} ${index}` : '';
}
