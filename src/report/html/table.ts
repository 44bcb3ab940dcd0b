import { type Content, html, type Markup } from './markup.js';

/** A table with a caption; nothing where it has no rows. The first cell of a row names the row. */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly Content[])[],
): Markup | undefined {
  if (rows.length === 0) return undefined;
  return html`<table><caption>${caption}</caption><thead><tr>${heads.map(
    (head) => html`<th scope="col">${head}</th>`,
  )}</tr></thead><tbody>${rows.map(row)}</tbody></table>
`;
}

/** One row of a table. */
export function row([first, ...rest]: readonly Content[]): Markup {
  return html`<tr><th scope="row">${first}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>`;
}

/** Names and what they stand for; those without a value are left out. */
export function facts(pairs: readonly (readonly [name: string, value: Content])[]): Markup | undefined {
  const given = pairs.filter(([, value]) => value !== undefined && value !== false && value !== '');
  if (given.length === 0) return undefined;
  return html`<dl>${given.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>
`;
}

/** A part of the report under a heading; nothing where all of it is nothing. */
export function section(id: string, title: string, ...content: readonly Content[]): Markup | undefined {
  if (content.every((one) => one === undefined || one === false)) return undefined;
  return html`<section aria-labelledby="${id}"><h2 id="${id}">${title}</h2>
${content}</section>
`;
}
