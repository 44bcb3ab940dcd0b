import type { Phrases } from '../model/language.js';

/** How a form of a report is written. */
export interface FormOptions {
  /**
   * Fixed sentences in the language of the report; absent: English. Ids of rules, classes, and names of members,
   * suites and properties are English always.
   */
  phrases?: Phrases;
}
