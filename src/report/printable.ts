/**
 * A text of an input as a line of a report can show it: control characters, line separators and marks that
 * turn the direction of writing become escapes, so that no file can rule the terminal of its reader.
 */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, escaped);
}

function escaped(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}
