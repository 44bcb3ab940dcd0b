import { rules } from '../check/list.js';
import type { Rule } from '../check/rule.js';
import type { Finding, Place } from '../generated/report.js';
import type { Kept } from '../model/collector.js';
import type { RuleInfo, Say } from '../model/rule.js';
import { printable } from '../report/printable.js';
import { sayAs } from '../report/say.js';
import type { CheckedInput, HoleIdentity } from './checked-input.js';

const orderOfRule = new Map(rules.map((rule, index) => [rule.id, index]));

/** The rule with this id; there must be one. */
export function ruleOf(id: string): Rule {
  const index = orderOfRule.get(id);
  if (index === undefined) throw new Error(`There is no rule "${id}".`);
  return rules[index];
}

/** What the findings of a cause share, as a sentence. */
export function causeMessage(
  info: RuleInfo,
  data: Record<string, unknown>,
  count: number,
  isRest: boolean,
  say: Say,
): string {
  if (isRest) return `${info.title} (There are more causes of this rule than are told apart.)`;
  return messageText(
    count > 1 && info.causeMessage !== undefined ? info.causeMessage(data, say) : info.message(data, say),
  );
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
): Finding {
  const identity = kept.at.hole === undefined ? undefined : hole(kept.at.hole);
  return {
    rule: kept.rule,
    severity: kept.severity,
    input: kept.input + 1,
    place,
    ...(identity !== undefined && identity.id !== '' && { id: identity.id }),
    ...(identity?.tag !== undefined && { tag: identity.tag }),
    ...(identity?.row !== undefined && place.row === undefined && { source: { row: identity.row } }),
    data: kept.data,
    message: messageText(ruleOf(kept.rule).message(kept.data, sayAs(input.display))),
    cause: kept.causeIndex,
    ...(kept.accepted !== undefined && { accepted: kept.accepted }),
  };
}
