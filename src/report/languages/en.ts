import { CAUTION, SHORT_CAUTION } from '../../model/caution.js';
import type { Phrases, SiteNumbers } from '../../model/language.js';
import { placeInWords } from '../build-report.js';
import { counted } from '../counted.js';

/** The fixed sentences of a report in English; the messages of findings stand in the rules. */
export const english: Phrases = {
  severity: { error: 'error', warning: 'warning', info: 'info' },
  accepted: 'accepted',
  acceptedUntil: (severity, expires, owner, reason) => `${severity}, accepted until ${expires} by ${owner}: ${reason}`,
  place: placeInWords,
  tagged: (id, tag) => `${id} (tag ${tag})`,
  hole: (name) => `hole ${name}`,
  holes: (names) => `holes ${names}`,
  findings: (count) => counted(count, 'finding'),
  findingsFrom: (count, where) => `${counted(count, 'finding')}, the first at ${where}`,
  more: (count) => `and ${count} more`,
  moreCauses: (causes, findings) =>
    `and ${counted(causes, 'more cause')} with ${counted(findings, 'finding')}; --format json lists them`,
  listed: (listed, total) => `${listed} of ${total} findings are listed; the numbers below count all of them.`,
  settings: (list) => `set for this check: ${list}`,
  ranOut: (rule, layout, owner, expires, findings) =>
    `ran out on ${expires}: the acceptance of ${rule} in "${layout}" by ${owner}; ${counted(findings, 'finding')} ${findings === 1 ? 'counts' : 'count'} again`,
  moreRanOut: (count) => `and ${counted(count, 'more acceptance')} that ran out; --format json lists them`,
  stale: (gone, entries, thinner) =>
    `stale: ${gone} of ${entries} entries of the baseline have no finding left, ${thinner} only some; it can be pruned`,
  notJudged: (reason, rules, moreRules) =>
    `not judged: ${reason} (${rules.join(', ')}${moreRules > 0 ? ` and ${counted(moreRules, 'more rule')}; --format json lists them` : ''})`,
  moreReasons: (count) => `and ${counted(count, 'more reason')}; --format json lists them`,
  valid: (ahx, isTable) => (isTable ? `Readable by its profile as AHX ${ahx}.` : `Valid AHX ${ahx}.`),
  formUnjudged: (ahx) => `Cannot judge whether this is valid AHX ${ahx}.`,
  notValid: (ahx, isTable, errors) =>
    `Not ${isTable ? 'readable by its profile as' : 'valid'} AHX ${ahx}: ${counted(errors, 'error')}.`,
  site: siteInWords,
  restOfCauses: '(There are more causes of this rule than are told apart.)',
  caution: CAUTION,
  shortCaution: SHORT_CAUTION,
};

function siteInWords(numbers: SiteNumbers): string {
  const { purpose, isPartial, error, warning, info, causes, holes, judged, accepted, notRun, inPart, set } = numbers;
  const parts = [counted(error, 'error'), counted(warning, 'warning'), ...(info > 0 ? [`${info} info`] : [])];
  const gaps = [
    // Where none is accepted it still matters that a baseline was applied: nobody is to look for it in vain.
    ...(accepted === undefined ? [] : [`${counted(accepted, 'more finding')} accepted`]),
    ...(notRun > 0 ? [`${counted(notRun, 'rule')} not run`] : []),
    ...(inPart > 0 ? [`${counted(inPart, 'rule')} run in part`] : []),
    ...(set > 0 ? [`${counted(set, 'rule')} set otherwise`] : []),
  ];
  const on = `${counted(holes, 'hole')}${judged < holes ? `, ${judged} of them judged` : ''}`;
  const found = `${parts.join(', ')}${causes > 0 ? ` in ${counted(causes, 'cause')}` : ''} on ${on}`;
  const partial = isPartial ? 'cannot judge all of it; ' : '';
  return `Site checks (${purpose.replaceAll('-', ' ')}): ${partial}${found}${gaps.length > 0 ? `; ${gaps.join(', ')}` : ''}.`;
}
