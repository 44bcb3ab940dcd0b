import { rules } from '../check/list.js';
import type { Rule } from '../check/rule.js';
import type { Finding, Place } from '../generated/report.js';
import type { Kept, KeptCause } from '../model/collector.js';
import type { Language, RuleWords } from '../model/language.js';
import type { Fix } from '../model/fix.js';
import type { RuleInfo, Say } from '../model/rule.js';
import { english } from '../report/languages/en.js';
import { recordName } from './record-name.js';
import { printable } from '../model/printable.js';
import { sayAs } from '../report/say.js';
import type { CheckedInput, HoleIdentity } from './checked-input.js';

const orderOfRule = new Map(rules.map((rule, index) => [rule.id, index]));

/** The rule with this id; there must be one. */
export function ruleOf(id: string): Rule {
  const index = orderOfRule.get(id);
  if (index === undefined) throw new Error(`There is no rule "${id}".`);
  return rules[index];
}

/** What the findings of a cause share, as a sentence; in English where the language lacks words for it. */
export function causeMessage(
  info: RuleInfo,
  { first: { data }, count, isRest }: Pick<KeptCause, 'first' | 'count' | 'isRest'>,
  say: Say,
  language: Language | undefined,
): string {
  const words = wordsOf(language, info.id);
  if (isRest) {
    const known = words && language;
    return `${known ? words.title : info.title} ${(known ? language.phrases : english).restOfCauses}`;
  }
  if (count === 1 || info.causeMessage === undefined) return message(info, data, say, language);
  return messageText(words?.causeMessage?.(data, say) ?? info.causeMessage(data, say));
}

function message(info: RuleInfo, data: Record<string, unknown>, say: Say, language: Language | undefined): string {
  return messageText(wordsOf(language, info.id)?.message(data, say) ?? info.message(data, say));
}

function wordsOf(language: Language | undefined, rule: string): RuleWords | undefined {
  return language && Object.hasOwn(language.rules, rule) ? language.rules[rule] : undefined;
}

const LONGEST_MESSAGE = 2000;

/** A message as a report can hold it, whatever the file put into it. */
function messageText(message: string): string {
  const clipped = message.length > LONGEST_MESSAGE ? `${message.slice(0, LONGEST_MESSAGE - 3)}...` : message;
  return printable(clipped);
}

/** Order of findings of one input: by record, then by rule. */
export function inOrder(a: Kept, b: Kept): number {
  return (
    recordOf(a) - recordOf(b) ||
    (orderOfRule.get(a.rule) ?? 0) - (orderOfRule.get(b.rule) ?? 0) ||
    spotOf(a) - spotOf(b)
  );
}

function recordOf({ at }: Kept): number {
  return at.row ?? at.recordByte ?? at.byte ?? -1;
}

function spotOf({ at }: Kept): number {
  return at.byte ?? at.recordByte ?? at.column ?? 0;
}

/** A finding as the report has it. */
export function newFinding(
  kept: Kept,
  place: Place,
  input: CheckedInput,
  hole: (index: number) => HoleIdentity,
  { language, mostOperations }: { language: Language | undefined; mostOperations: number },
): Finding {
  const fix = fixOf(kept, input, mostOperations);
  const identity = kept.at.hole === undefined ? undefined : hole(kept.at.hole);
  const record = identity === undefined ? recordName(input.model, kept.at.pointer) : undefined;
  return {
    rule: kept.rule,
    severity: kept.severity,
    input: kept.input + 1,
    place,
    ...(identity !== undefined && identity.id !== '' && { id: identity.id }),
    ...(identity?.tag !== undefined && { tag: identity.tag }),
    ...(record !== undefined && { record }),
    ...(identity?.row !== undefined && place.row === undefined && { source: { row: identity.row } }),
    data: kept.data,
    message: message(ruleOf(kept.rule), kept.data, sayAs(input.display), language),
    ...(fix !== undefined && { fix }),
    cause: kept.causeIndex,
    ...(kept.accepted !== undefined && { accepted: kept.accepted }),
  };
}

/** The fix of a finding, unless it takes more operations than a report is to hold. */
function fixOf(kept: Kept, input: CheckedInput, mostOperations: number): Fix | undefined {
  const fix = input.fix?.(ruleOf(kept.rule), kept);
  return (fix?.patch?.length ?? 0) > mostOperations ? undefined : fix;
}
