import { printable } from '../model/printable.js';

/**
 * Words that mean nothing in any flavour of Markdown wherever they stand in a line: letters, digits and common
 * marks. Signs of markup, and colons and at signs, which make links, mentions and emoji, are not among them.
 */
const PLAIN = /^[\p{L}\p{M}\p{N}.,;!?¡¿'"()%°²³±×≤≥–—‘’“”„…′″/-]*:?$/u;
/** What a service makes a link of without any sign of markup: names of hosts, numbers of issues, digests of commits. */
const LINKED = /\.\p{L}|www\.|gh-\d|[0-9a-f]{7}/iu;

/**
 * A text of an input as a piece of Markdown that shows it letter by letter: as code, in which nothing is a link, a
 * mention or markup, and with the signs that markup and links are made of as character references, so that neither
 * backticks nor bars end it.
 */
export function markdownCode(text: string): string {
  const shown = printable(text);
  return `<code>${shown.replace(/[^\p{L}\p{M}\p{N} .,;!?¡¿'"()/%+=-]|\.(?=\p{L})/gu, reference)}</code>`;
}

/**
 * A sentence that may quote texts of an input, as a piece of Markdown within a line: words that could mean anything
 * as markup, link or mention become code, the others stay as they are. Runs of blanks show as one.
 */
export function markdownSentence(text: string): string {
  return printable(text)
    .split(/\s+/)
    .filter((word) => word !== '')
    .map((word) => (PLAIN.test(word) && !LINKED.test(word) ? word : markdownCode(word)))
    .join(' ');
}

function reference(character: string): string {
  return `&#${character.codePointAt(0)};`;
}
