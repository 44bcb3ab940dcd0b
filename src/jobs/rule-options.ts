import { rules } from '../check/list.js';
import { nearest } from '../model/nearest.js';

/** An option of a rule that cannot be set; the message says why. */
export class BadRuleOption extends Error {}

/**
 * Holds options of rules to what the rules say of them.
 *
 * @throws BadRuleOption
 */
export function checkRuleOptions(ruleOptions: Readonly<Record<string, Readonly<Record<string, unknown>>>>): void {
  for (const [id, options] of Object.entries(ruleOptions)) {
    const rule = rules.find((candidate) => candidate.id === id);
    const known = rule?.options ?? {};
    if (rule === undefined)
      throw new BadRuleOption(
        `There is no rule "${id}".${meant(
          id,
          rules.map(({ id: other }) => other),
        )}`,
      );
    for (const [name, value] of Object.entries(options)) {
      if (!Object.hasOwn(known, name))
        throw new BadRuleOption(`The rule "${id}" has no option "${name}".${meant(name, Object.keys(known))}`);
      const { least, most, unit } = known[name];
      if (typeof value !== 'number' || !(value >= least && value <= most))
        throw new BadRuleOption(
          `Option "${name}" of rule "${id}" is a number from ${least} to ${most} (${unit}), not ${JSON.stringify(value)}.`,
        );
    }
  }
}

function meant(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  return near === undefined ? '' : ` Did you mean "${near}"?`;
}
