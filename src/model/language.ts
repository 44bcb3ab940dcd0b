import type { Place } from '../generated/report.js';
import type { FormPhrases } from './form-phrases.js';
import type { Severity } from './observation.js';
import type { Purpose, Say } from './rule.js';

/**
 * What a rule says in a language. A message takes the same data as the English one, and gives undefined where the
 * language lacks a word for them: then the finding is said in English as a whole.
 */
export interface RuleWords {
  title: string;
  message(data: Record<string, unknown>, say: Say): string | undefined;
  /** There where the rule has one in English. */
  causeMessage?(data: Record<string, unknown>, say: Say): string | undefined;
}

/** What the verdict about the site counts. */
export interface SiteNumbers {
  purpose: Purpose;
  /** Whether something that is needed to judge could not be read. */
  isPartial: boolean;
  error: number;
  warning: number;
  info: number;
  causes: number;
  holes: number;
  judged: number;
  /** Findings that the baseline accepts; absent: none was applied. */
  accepted?: number;
  notRun: number;
  inPart: number;
  /** Rules whose severity or options were set otherwise than usual. */
  set: number;
}

/** The fixed sentences of a report, and how its parts are put together. Texts that are handed in are printable. */
export interface Phrases {
  /** Severities at the head of a cause; seven characters wide at most. */
  severity: Readonly<Record<Severity, string>>;
  /** At the head of a cause that a baseline accepts; eight characters wide at most. */
  accepted: string;
  acceptedUntil(severity: Severity, expires: string, owner: string, reason: string): string;
  place(place: Place): string;
  tagged(id: string, tag: string): string;
  hole(name: string): string;
  holes(names: string): string;
  findings(count: number): string;
  findingsFrom(count: number, where: string): string;
  more(count: number): string;
  moreCauses(causes: number, findings: number): string;
  listed(listed: number, total: number): string;
  settings(list: string): string;
  ranOut(rule: string, layout: string, owner: string, expires: string, findings: number): string;
  moreRanOut(count: number): string;
  stale(gone: number, entries: number, thinner: number): string;
  /** @param reason as the report has it, in English; the language says it in its own words where it knows them */
  notJudged(reason: string, rules: readonly string[], moreRules: number): string;
  moreReasons(count: number): string;
  valid(ahx: string, isTable: boolean): string;
  formUnjudged(ahx: string): string;
  notValid(ahx: string, isTable: boolean, errors: number): string;
  site(numbers: SiteNumbers): string;
  /** Behind the title of a rule whose causes are too many to be told apart. */
  restOfCauses: string;
  caution: string;
  shortCaution: string;
  /** What forms other than the text say of themselves. Absent: in English. */
  forms?: FormPhrases;
}

/** A language that reports can be written in besides English, whose words stand in the rules themselves. */
export interface Language {
  /** BCP 47 tag, such as `es`. */
  tag: string;
  /** By rule id. A rule that is missing is told in English. */
  rules: Readonly<Record<string, RuleWords>>;
  phrases: Phrases;
}
