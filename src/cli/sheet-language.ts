import type { Language } from '../model/language.js';
import type { SheetWords } from '../report/sheet/sheet-words.js';
import { WrongUse } from './exit.js';

/**
 * Words of sheets in the language of a report, which are loaded here; undefined for English.
 *
 * @throws WrongUse where there are none
 */
export async function sheetWordsOf(language: Language | undefined): Promise<SheetWords | undefined> {
  if (language === undefined) return undefined;
  if (language.tag === 'es') return (await import('../report/languages/es/sheet.js')).sheetWords;
  throw new WrongUse(`Sheets cannot be written in "${language.tag}"; they can in en and es.`);
}
