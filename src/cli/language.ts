import type { Language } from '../model/language.js';
import { WrongUse } from './exit.js';

/**
 * The language that a BCP 47 tag asks for, whatever its region; undefined for English. Its words are loaded when they
 * are asked for.
 *
 * @throws WrongUse where there is none
 */
export async function languageOf(tag: string): Promise<Language | undefined> {
  const [primary] = tag.toLowerCase().split('-');
  if (primary === 'en') return undefined;
  if (primary === 'es') return (await import('../report/languages/es.js')).es;
  throw new WrongUse(
    `There are no messages in the language "${tag}"; there are those in en (English) and es (Spanish).`,
  );
}
