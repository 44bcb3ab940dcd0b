import type { Severity } from './observation.js';

/** `format`: the file breaks AHX. `data`: it is valid but cannot be meant. `site`: it will not work up there. */
export type RuleClass = 'format' | 'data' | 'site';

/** What a layout is checked for. */
export type Purpose = 'for-review' | 'for-drilling' | 'for-closeout';

export type Stage =
  | 'bytes'
  | 'JSON'
  | 'table'
  | 'schema'
  | 'references'
  /** Definitions by themselves: rings, keep-outs, hole types. */
  | 'records'
  /** Units and frames: whether the numbers can be what they are said to be. */
  | 'frame'
  | 'geometry'
  /** Control, tolerances, trades. */
  | 'control'
  /** Whether all is there that the purpose needs. */
  | 'completeness';

/** A severity for each purpose; `off` is run on request only. */
export type SeverityByPurpose = Readonly<Record<Purpose, Severity | 'off'>>;

/** A number that a project may set for a rule. */
export interface RuleOption {
  /** What it sets, as one sentence. */
  what: string;
  unit: 'mm' | 'degree' | 'count' | 'ratio';
  default: number;
  least: number;
  most: number;
}

/** An example of a rule page. The tests run both texts, as of 2 March 2026. */
export interface RuleExample {
  /**
   * `members`: JSON members that are laid over a small sound layout. `bytes`: the whole input, one character a byte.
   * `table`: rows of a point list that is read with the profile of the examples. `profile`: members that
   * are laid over that profile. `layouts`: members as before for each of several layouts that are checked
   * together, parted by a line of three hyphens.
   */
  form: 'members' | 'layouts' | 'bytes' | 'table' | 'profile';
  /** Gives this rule and no other one of severity error or warning. */
  bad: string;
  /** Gives no finding. */
  good: string;
}

/** How the reader of a message wants values written. */
export interface Say {
  /** A length of the document, in millimetres, in the reader's unit. */
  length(mm: unknown): string;
}

/** Everything about a rule but the code that checks it. */
export interface RuleInfo {
  id: string;
  class: RuleClass;
  /** Severity unless the case or a policy says otherwise; one for all purposes, or one for each. `off` is run on request only. */
  severity: Severity | 'off' | SeverityByPurpose;
  /** When a finding is less grave than that, as one sentence; absent: never. A severity that a project sets holds in every case. */
  lessGrave?: string;
  since: string;
  stage: Stage;
  /** What is wrong, as one sentence. */
  title: string;
  /** Why it matters on site or in software. */
  why: string;
  /** How to mend it. */
  mend: string;
  /** When it may be left as it is; absent: never. */
  accept?: string;
  /** What it needs to judge a record, as one sentence; absent: that the record can be read. */
  needs?: string;
  /** Numbers that a project may set for it, by name. */
  options?: Readonly<Record<string, RuleOption>>;
  /** Keys of the data of a finding, and what they hold. */
  data: Readonly<Record<string, string>>;
  /** The finding as a sentence. */
  message(data: Record<string, unknown>, say: Say): string;
  /** What findings with one cause share, as a sentence; absent: the message of the first one. */
  causeMessage?(data: Record<string, unknown>, say: Say): string;
  example: RuleExample;
}

/** The severity of a rule for a purpose. */
export function severityFor({ severity }: RuleInfo, purpose: Purpose): Severity | 'off' {
  return typeof severity === 'string' ? severity : severity[purpose];
}
