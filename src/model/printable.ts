/**
 * A text of an input as a line of a report can show it: control characters, line separators, marks that
 * turn the direction of writing and what is no character at all (lone surrogates, noncharacters) become
 * escapes, so that no file can rule the terminal of its reader.
 */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Bidi_Control}\p{Noncharacter_Code_Point}]/gu, escaped);
}

function escaped(character: string): string {
  const digits = (character.codePointAt(0) as number).toString(16);
  return digits.length > 4 ? `\\u{${digits}}` : `\\u${digits.padStart(4, '0')}`;
}
