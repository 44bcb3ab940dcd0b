import { printable } from './printable.js';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/**
 * A text as content or as a quoted attribute of XML 1.0. What XML cannot carry, and other control characters,
 * become the escapes of {@link printable}, so that an attribute keeps its text as it is.
 */
export function xmlText(text: string): string {
  return printable(text).replace(/[&<>"']/g, (character) => ENTITIES[character]);
}

/** An element without content, or with the content that it is given, which must be XML. */
export function xmlElement(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  content?: string,
): string {
  const pairs = Object.entries(attributes).map(([key, value]) => ` ${key}="${xmlText(String(value))}"`);
  const open = `<${name}${pairs.join('')}`;
  return content === undefined ? `${open}/>` : `${open}>${content}</${name}>`;
}
