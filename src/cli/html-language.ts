import type { Language } from '../model/language.js';
import type { HtmlLanguage } from '../report/html/html-phrases.js';
import { WrongUse } from './exit.js';

/**
 * A language with its words of the report for people, which are loaded here; undefined for English.
 *
 * @throws WrongUse where it has none
 */
export async function htmlLanguageOf(language: Language | undefined): Promise<HtmlLanguage | undefined> {
  if (language === undefined) return undefined;
  if (language.tag === 'es') return (await import('../report/languages/html-es.js')).htmlEs;
  throw new WrongUse(`The report for people cannot be written in "${language.tag}"; it can in en and es.`);
}
