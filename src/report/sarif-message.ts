import { printable } from '../model/printable.js';

/** A message of SARIF: plain text. */
export interface SarifMessage {
  text: string;
}

/**
 * A text as a plain text message (SARIF 2.1.0, 3.11): control characters as escapes, braces doubled, for single ones
 * are placeholders (3.11.5), and a blank between `](`, for that would make a link of it (3.11.6), which the standard
 * gives no other way to write.
 */
export function sarifMessage(text: string): SarifMessage {
  // A message must not be empty.
  const shown = printable(text === '' ? '(no text)' : text);
  return { text: shown.replace(/[{}]/g, '$&$&').replaceAll('](', '] (') };
}
