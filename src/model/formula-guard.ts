const EQUALS = 0x3d;
const PLUS = 0x2b;
const MINUS = 0x2d;
const AT = 0x40;
const TAB = 0x09;
const CR = 0x0d;
const APOSTROPHE = 0x27;

/**
 * A text as it may stand in a table that a spreadsheet opens: with an apostrophe in front where the
 * spreadsheet would take it for a formula, that is where it begins with `=`, `+`, `-`, `@`, a tab or a
 * carriage return. Texts that begin so after apostrophes get one more, so that nothing is lost.
 */
export function guardFormula(text: string): string {
  return beginsFormula(text, afterApostrophes(text)) ? `'${text}` : text;
}

/** The text that `guardFormula` was given; other texts stay as they are. */
export function unguardFormula(text: string): string {
  if (text.charCodeAt(0) !== APOSTROPHE) return text;
  return beginsFormula(text, afterApostrophes(text)) ? text.slice(1) : text;
}

/** The text that a cell of a table stands for: without blanks around it and without the guard. */
export function cellText(cell: string): string {
  return unguardFormula(cell.trim());
}

function afterApostrophes(text: string): number {
  let at = 0;
  while (text.charCodeAt(at) === APOSTROPHE) at++;
  return at;
}

function beginsFormula(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code === EQUALS || code === PLUS || code === MINUS || code === AT || code === TAB || code === CR;
}
