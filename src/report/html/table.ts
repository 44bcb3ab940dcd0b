import { type Content, html, type Markup } from './markup.js';

/** A table with a caption; nothing where it has no rows. The first cell of a row names the row; empty columns go. */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly Content[])[],
): Markup | undefined {
  if (rows.length === 0) return undefined;
  // A column in which nothing stands takes room from the others.
  const kept = heads.map((_, k) => k === 0 || rows.some((cells) => !isEmpty(cells[k])));
  const shown = (cells: readonly Content[]) => cells.filter((_, k) => kept[k]);
  // Who has no mouse must get into the box to scroll a table that is wider than the page.
  return html`<div class="wide" role="group" aria-label="${caption}" tabindex="0"><table><caption>${caption}</caption><thead><tr>${shown(
    heads,
  ).map(
    (head) => html`<th scope="col">${head}</th>`,
  )}</tr></thead><tbody>${rows.map((cells) => row(shown(cells).map(breakable)))}</tbody></table></div>
`;
}

/** Longer words than this may be broken, and in pieces of how many characters. */
const LONGEST_WORD = 20;
const PIECE = 12;

/**
 * A text whose long words may go on in the next line. One table that is wider than the paper makes the browser print
 * the whole report smaller, and the plans are no longer to scale.
 */
export function breakable(content: Content): Content {
  if (typeof content !== 'string' || content.length <= LONGEST_WORD) return content;
  return content.split(/(\S{21,})/).map((part) => {
    const characters = [...part];
    if (characters.length <= LONGEST_WORD || /\s/.test(part)) return part;
    const pieces: Content[] = [];
    for (let k = 0; k < characters.length; k += PIECE)
      pieces.push(k > 0 && BREAK, characters.slice(k, k + PIECE).join(''));
    return pieces;
  });
}

const BREAK = html`<wbr>`;

function isEmpty(content: Content): boolean {
  if (content === undefined || content === false || content === '') return true;
  return Array.isArray(content) && content.every(isEmpty);
}

/** One row of a table. */
export function row([first, ...rest]: readonly Content[]): Markup {
  return html`<tr><th scope="row">${first}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>`;
}

/** Names and what they stand for; those without a value are left out. */
export function facts(pairs: readonly (readonly [name: string, value: Content])[]): Markup | undefined {
  const given = pairs.filter(([, value]) => !isEmpty(value));
  if (given.length === 0) return undefined;
  return html`<dl>${given.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>
`;
}

/** A part of the report under a heading; nothing where all of it is nothing. */
export function section(id: string, title: string, ...content: readonly Content[]): Markup | undefined {
  if (isEmpty(content)) return undefined;
  return html`<section aria-labelledby="${id}"><h2 id="${id}">${title}</h2>
${content}</section>
`;
}
