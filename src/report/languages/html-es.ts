import type { HtmlLanguage } from '../html/html-phrases.js';
import { es } from './es.js';
import { html } from './es/html.js';

/**
 * Spanish with the words of the report for people; it serves wherever `es` does. Apart from it, since a check has no
 * use for them.
 */
export const htmlEs: HtmlLanguage = { ...es, html };
