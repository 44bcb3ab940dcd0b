import { renamed } from '../edit/renamed.js';
import type { Finding, Report } from '../generated/report.js';
import type { FixOperation } from '../model/fix.js';
import { ruleOf } from './findings.js';
import { hiddenBefore } from './hidden-before.js';

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

/**
 * Looks whether fixes did what they should: each finding is gone, and no error of the form of the file is there
 * that was not there before. Errors that could not be seen before are no fault; see {@link hiddenBefore}.
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
  const isHidden = hiddenBefore(before.inputs[0]?.kind, before.findings.filter(isFormatError), patch, moved);
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
