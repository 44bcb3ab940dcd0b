/** Other spellings of the symbols of units, blanks and full stops left out, in small letters. */
const SPELLINGS: Readonly<Record<string, readonly string[]>> = {
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['metre', 'metres', 'meter', 'meters'],
  in: ['inch', 'inches', '"', '\u2033', '\u201d', "''"],
  ft: ['foot', 'feet', "'", '\u2032', '\u2019'],
  'us-ft': ['ussurveyfoot', 'ussurveyfeet', 'surveyfoot', 'surveyfeet', 'usfoot', 'usfeet', 'ftus', 'sft', 'usft'],
  'ft-in': ['feetandinches', 'feetinches', 'feet-inches', 'foot-inch', 'ft+in', '\'-"', '\u2032-\u2033'],
};

/**
 * The symbol of a unit among the choices that another spelling means; undefined where the choices are no units
 * or two of them can be meant: the foot is one unit only where the survey foot is no choice.
 */
export function unitMeant(spelling: string, choices: readonly string[]): string | undefined {
  if (!choices.includes('mm')) return undefined;
  const plain = spelling.toLowerCase().replace(/[\s.]/g, '');
  const [unit] = Object.entries(SPELLINGS).find(([, others]) => others.includes(plain)) ?? [];
  if (unit === undefined || !choices.includes(unit)) return undefined;
  return unit === 'ft' && choices.includes('us-ft') ? undefined : unit;
}
