import type { Severity } from './observation.js';

/** `format`: the file breaks AHX. `data`: it is valid but cannot be meant. `site`: it will not work up there. */
export type RuleClass = 'format' | 'data' | 'site';

/** What a layout is checked for. */
export type Purpose = 'for-review' | 'for-drilling' | 'for-closeout';

export type Stage = 'bytes' | 'JSON' | 'table' | 'schema' | 'references' | 'geometry';

/** An example of a rule page. The tests run both texts. */
export interface RuleExample {
  /**
   * `members`: JSON members that are laid over a small sound layout. `bytes`: the whole input, one character a byte.
   * `table`: rows of a point list that is read with the profile of the examples. `profile`: members that
   * are laid over that profile.
   */
  form: 'members' | 'bytes' | 'table' | 'profile';
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
  /** Severity unless the purpose, the case or a policy says otherwise; `off` is run on request only. */
  severity: Severity | 'off';
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
  /** Keys of the data of a finding, and what they hold. */
  data: Readonly<Record<string, string>>;
  /** The finding as a sentence. */
  message(data: Record<string, unknown>, say: Say): string;
  /** What findings with one cause share, as a sentence; absent: the message of the first one. */
  causeMessage?(data: Record<string, unknown>, say: Say): string;
  example: RuleExample;
}
