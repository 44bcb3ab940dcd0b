import type { Phrases } from '../model/language.js';

/** How a form of a report is written. */
export interface FormOptions {
  /**
   * Fixed sentences in the language of the report; absent: English. Names of columns and members, and what a form
   * says of itself, are English always.
   */
  phrases?: Phrases;
}
