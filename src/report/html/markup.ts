import { xmlText } from '../../model/xml-text.js';

/** A piece of HTML that is sound by itself; only this module makes one from a text. */
export class Markup {
  constructor(readonly text: string) {}
}

export type Content = Markup | string | number | undefined | false | readonly Content[];

/**
 * A template of HTML: what is put in is text and is escaped, unless it is markup already. It serves for the content
 * of elements and for attribute values in double quotes; nothing is put into tags, names, scripts or styles.
 */
export function html(parts: TemplateStringsArray, ...values: readonly Content[]): Markup {
  return new Markup(parts.reduce((text, part, k) => `${text}${k > 0 ? contentText(values[k - 1]) : ''}${part}`, ''));
}

/** A text of ours in which backticks mark words of the format. */
export function coded(text: string): Markup[] {
  return text.split('`').map((part, k) => (k % 2 === 0 ? html`${part}` : html`<code>${part}</code>`));
}

/** The text of a content: lists one after the other, undefined and false as nothing. */
export function contentText(content: Content): string {
  if (content instanceof Markup) return content.text;
  if (content === undefined || content === false) return '';
  if (typeof content === 'string' || typeof content === 'number') return xmlText(String(content));
  return content.map(contentText).join('');
}
