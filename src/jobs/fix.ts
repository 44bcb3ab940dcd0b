import { planEdits } from '../edit/plan-edits.js';
import { composed, edited, type TextEdit } from '../edit/text-edit.js';
import type { Finding, Report } from '../generated/report.js';
import type { Fix, FixOperation } from '../model/fix.js';
import { blanks, Scanner } from '../read/scan.js';
import { Checker, type CheckOptions } from './checker.js';
import { verifyFixes } from './verify-fixes.js';

export { FixFault } from './verify-fixes.js';

/** What is to be fixed. */
export interface FixOptions extends Omit<CheckOptions, 'sampleLimit' | 'sha256'> {
  /** Whether fixes are made too that change where or how a hole is made. Absent: they are not. */
  geometry?: boolean;
  /** Ids of the rules whose findings are fixed; absent: all. */
  rules?: readonly string[];
}

/** A finding whose fix is not made, and why. */
export interface RefusedFix {
  finding: Finding;
  reason: string;
}

/** What was fixed in a document. */
export interface Fixing {
  /** Whether the document is sound JSON to its end; if not, only its byte order mark can be fixed. */
  isSound: boolean;
  /** The findings whose fixes were made, in turn, at most 100,000; places are those of the text at that time. */
  fixed: Finding[];
  /** How many they are in all. */
  fixedCount: number;
  refused: RefusedFix[];
  /** Errors of the form of the file that nothing could see before: their records were broken. */
  cameToLight: Finding[];
  /** What was done to the text; in order, none overlapping another. */
  edits: TextEdit[];
  /** The same as a JSON Patch (RFC 6902) of the document; the byte order mark is no part of it. */
  patch: FixOperation[];
  /** The text with all edits made. */
  bytes: Uint8Array;
  before: Report;
  after: Report;
}

/** Most findings that are looked at for fixes at a time; the others have their turn when these are gone. */
export const MOST_FINDINGS = 100_000;
/** Fixes bring further findings to light; after so many rounds the rest waits for the next run. */
const MOST_ROUNDS = 100;

/** Checks a document and lists all fixes, however long they are. */
class FixChecker extends Checker {
  protected override readonly mostOperations = Number.POSITIVE_INFINITY;
}

/**
 * Fixes the findings of a JSON document that have one right answer, and leaves every other byte as it is.
 *
 * The result is checked again, and what that brings to light is fixed too, until nothing more is to be fixed: so a
 * second run finds nothing to do. Takes the time of one check for each round and twice the memory of the text.
 *
 * @throws FixFault where a fix did not do what it should, and errors of the checker's options
 */
export function fix(input: { name: string; data: string | Uint8Array }, options: FixOptions = {}): Fixing {
  const rounds = fixInRounds(input, options);
  for (;;) {
    const { done, value } = rounds.next();
    if (done) return value;
  }
}

/** The same as {@link fix}, with a stop after each check of the text, for who has to listen to others meanwhile. */
export function* fixInRounds(
  input: { name: string; data: string | Uint8Array },
  options: FixOptions = {},
): Generator<void, Fixing> {
  const original = typeof input.data === 'string' ? new TextEncoder().encode(input.data) : input.data;
  const isSound = isSoundJson(original);
  let bytes = original;
  let report = checked(input.name, bytes, options);
  const result: Fixing = {
    ...{ isSound, fixed: [], fixedCount: 0, refused: [], cameToLight: [], edits: [], patch: [], bytes },
    ...{ before: report, after: report },
  };
  for (let round = 0; round < MOST_ROUNDS; round++) {
    yield;
    const wanted = report.findings.filter((finding) => isWanted(finding, options));
    const plan = planEdits(
      bytes,
      wanted.map(({ fix }) => fix as Fix),
      isSound,
    );
    result.refused = wanted.flatMap((finding, k) => {
      const reason = plan.refused[k];
      return reason === undefined ? [] : [{ finding, reason }];
    });
    const fixed = wanted.filter((_, k) => plan.refused[k] === undefined);
    if (fixed.length === 0) break;
    bytes = edited(bytes, plan.edits);
    const after = checked(input.name, bytes, options);
    result.cameToLight.push(...verifyFixes({ before: report, fixed, patch: plan.patch, after }));
    result.edits = composed(original.length, result.edits, plan.edits);
    result.fixedCount += fixed.length;
    for (const finding of fixed.slice(0, MOST_FINDINGS - result.fixed.length)) result.fixed.push(finding);
    for (const operation of plan.patch) result.patch.push(operation);
    report = after;
  }
  return { ...result, cameToLight: stillThere(result.cameToLight, report), bytes, after: report };
}

/** What a project has accepted is not changed behind its back. */
function isWanted({ rule, fix, accepted }: Finding, { geometry = false, rules }: FixOptions): boolean {
  if (fix === undefined || accepted !== undefined || (fix.geometry === true && !geometry)) return false;
  return rules === undefined || rules.includes(rule);
}

function checked(name: string, bytes: Uint8Array, { geometry, rules, ...options }: FixOptions): Report {
  const checker = new FixChecker({ ...options, sampleLimit: MOST_FINDINGS });
  const source = { byteLength: bytes.length, slice: (start: number, end: number) => bytes.subarray(start, end) };
  checker.open(name, { source });
  checker.write(bytes);
  return checker.end();
}

/** Whether a text is one JSON document from beginning to end. */
function isSoundJson(bytes: Uint8Array): boolean {
  const padded = new Uint8Array(bytes.length + 32);
  padded.set(bytes);
  const hasMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  const scanner = new Scanner();
  const start = blanks(padded, hasMark ? 3 : 0);
  return scanner.scan(padded, start, bytes.length, true) === 'whole' && blanks(padded, scanner.end) >= bytes.length;
}

/** What came to light and was not fixed in a later round. */
function stillThere(found: readonly Finding[], { findings }: Report): Finding[] {
  const keyOf = ({ rule, place }: Finding) => `${rule} ${place.pointer ?? ''}`;
  const now = new Set(findings.map(keyOf));
  return found.filter((finding) => now.has(keyOf(finding)));
}
