import { WIDTHS, WIDTHS_BOLD } from './type-widths.js';

/** Types differ in width: this much more room is kept than the widest of the usual ones asks for. */
const SPARE = 1.03;
/** Letters with marks are as wide as those without, signs and other scripts at most so wide. */
const OTHER_EMS = { latin: 0.8, sign: 1.05, beyond: 1.4 };

/** A text cut into lines. */
export interface FittedLines {
  readonly lines: readonly string[];
  /** Whether something was cut away at the end, where an ellipsis stands. */
  readonly isCut: boolean;
}

/** About how wide a printed text is, mm; rather too wide. */
export function typeWidth(text: string, size: number, isBold = false): number {
  const widths = isBold ? WIDTHS_BOLD : WIDTHS;
  let ems = 0;
  for (const character of text) {
    const code = character.charCodeAt(0);
    ems +=
      widths[code - 32] ?? (character.length > 1 ? OTHER_EMS.beyond : code < 0x250 ? OTHER_EMS.latin : OTHER_EMS.sign);
  }
  return ems * size * SPARE;
}

/**
 * A text in lines no wider than that: cut at blanks, within a word only where it is wider than a line. What finds no
 * room in the most lines is cut away, with an ellipsis. Time grows with what finds room, not with the text.
 */
export function fitLines(text: string, width: number, size: number, most: number, isBold = false): FittedLines {
  const lines: string[] = [];
  let rest = text.trim();
  while (rest !== '' && lines.length < most) {
    const end = lineEnd(rest, width, size, isBold);
    lines.push(rest.slice(0, end).trimEnd());
    rest = rest.slice(end).trimStart();
  }
  if (rest === '') return { lines, isCut: false };
  lines.push(withEllipsis(lines.pop() ?? '', width, size, isBold));
  return { lines, isCut: true };
}

/** Where the first line of a text ends: behind the last word that has room, at least behind one character. */
function lineEnd(text: string, width: number, size: number, isBold: boolean): number {
  let used = 0;
  let blank = 0;
  let at = 0;
  for (const character of text) {
    used += typeWidth(character, size, isBold);
    if (used > width && at > 0) {
      if (character === ' ') return at;
      return blank > 0 ? blank : at;
    }
    at += character.length;
    if (character === ' ') blank = at;
  }
  return at;
}

function withEllipsis(line: string, width: number, size: number, isBold: boolean): string {
  const characters = [...line];
  while (characters.length > 0 && typeWidth(`${characters.join('')}…`, size, isBold) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}
