import type { Input } from '../generated/report.js';

/**
 * What the forms of a report other than its text say of themselves. Names that programs go by (rules, classes, suites,
 * properties) are no part of it; they are English in every language.
 */
export interface FormPhrases {
  readonly title: string;
  /** An input that has no name. */
  input(number: number): string;
  kind(kind: Input['kind']): string;
  /** Why something was not judged, from the English text of the report. */
  reason(english: string): string;
  readonly noReason: string;
  /** @param of absent: how many records there were is not known, or does not say what was left out */
  judgedPart(reason: string, judged?: number, of?: number): string;
  holesJudged(judged: number, of: number): string;
  readonly unknownKind: string;
  inCauses(findings: string, causes: number): string;
  /** An entry of the baseline that says no more of itself. */
  entry(number: number): string;
  /** @param listed findings that the report itself lists; absent: as many as the form */
  findingsLeftOut(written: number, total: number, listed?: number): string;
  annotationsLeftOut(causes: number): string;
  /** The record of another input that a finding is about too. */
  otherRecord(name?: string): string;
  readonly csv: CsvPhrases;
  readonly markdown: MarkdownPhrases;
}

/** Heads of columns in their order, and what stands for a severity in rows that are no findings. */
export interface CsvPhrases {
  readonly columns: readonly [
    ...[input: string, rule: string, ruleClass: string, severity: string, cause: string],
    ...[holeId: string, tag: string, pointer: string, line: string, column: string, row: string, message: string],
    ...[acceptedFor: string, acceptedBy: string, acceptedUntil: string],
  ];
  readonly note: string;
}

/** Words of the summary in Markdown; they must hold no markup. Names that are handed in are Markdown. */
export interface MarkdownPhrases {
  readonly inputHeads: readonly [input: string, kind: string, revision: string, holes: string];
  readonly causeHeads: readonly [
    ...[severity: string, cause: string, rule: string, findings: string],
    ...[firstHole: string, firstAt: string],
  ];
  moreInputs(count: number): string;
  cause(id: number, rule: string, findings: string): string;
  unjudged(notRun: number, inPart: number): string;
  moreRules(count: number): string;
  listed(listed: number, total: number): string;
  leftOut(causes: number, lists: number): string;
  limits(findings: number, bytes: number): string;
}
