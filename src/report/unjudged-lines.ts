import type { Coverage, Report } from '../generated/report.js';
import type { FormPhrases } from '../model/form-phrases.js';
import type { Phrases } from '../model/language.js';
import { OFF } from '../model/report-words.js';

/** More reasons why something was not judged than this are counted. */
const MOST_REASONS = 12;
/** So many rules of one reason are named; of more only the first, and the others are counted. */
const MOST_RULES = 6;
const RULES_OF_MANY = 2;

/** What rules left out and why, a line for each reason; rules that are off are only counted in the verdict. */
export function unjudgedLines({ coverage }: Report, phrases: Phrases): string[] {
  const rulesOf = new Map<string, string[]>();
  for (const row of coverage) {
    const { rule, outcome, reason, class: ruleClass } = row;
    if (reason === undefined || ruleClass === 'format' || outcome === 'not-applicable' || isOff(row)) continue;
    for (const part of reason.split('; ')) rulesOf.set(part, [...(rulesOf.get(part) ?? []), rule]);
  }
  const lines = [...rulesOf].map(([reason, rules]) => {
    const shown = rules.length > MOST_RULES ? rules.slice(0, RULES_OF_MANY) : rules;
    return phrases.notJudged(reason, shown, rules.length - shown.length);
  });
  const rest = lines.splice(MOST_REASONS).length;
  return rest === 0 ? lines : [...lines, phrases.moreReasons(rest)];
}

/** Whether a rule judged some of what it is about and left some out: records, or an input as a whole. */
function isInPart(row: Pick<Coverage, 'outcome' | 'judged' | 'of' | 'reason'>): boolean {
  const hasRun = row.outcome === 'passed' || row.outcome === 'failed';
  return hasRun && (row.reason !== undefined || isFewer(row));
}

/** The rules of data and site that were wanted and did not run, and those that ran on a part of what they are about. */
export function unjudgedRules({ coverage }: Report): { notRun: readonly Coverage[]; inPart: readonly Coverage[] } {
  const wanted = coverage.filter((row) => row.class !== 'format' && !isOff(row));
  return { notRun: wanted.filter(({ outcome }) => outcome === 'not-run'), inPart: wanted.filter(isInPart) };
}

/** What a rule did not judge, in words; undefined where it judged all that it is about. */
export function unjudgedInWords(row: Coverage, phrases: FormPhrases): string | undefined {
  const isPart = isInPart(row);
  if (row.outcome !== 'not-run' && !isPart) return undefined;
  const reason = row.reason?.split('; ').map(phrases.reason).join('; ') ?? phrases.noReason;
  if (!isPart) return reason;
  return isFewer(row) ? phrases.judgedPart(reason, row.judged, row.of) : phrases.judgedPart(reason);
}

function isFewer({ judged, of }: Pick<Coverage, 'judged' | 'of'>): boolean {
  return judged !== undefined && of !== undefined && judged < of;
}

/** Whether a rule did not run because it was not wanted; one that found nothing to judge has counted records. */
function isOff({ outcome, judged, reason }: Pick<Coverage, 'outcome' | 'judged' | 'reason'>): boolean {
  return outcome === 'not-run' && judged === undefined && reason === OFF;
}
