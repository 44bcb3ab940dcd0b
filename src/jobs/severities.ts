import { rules } from '../check/list.js';
import { nearest } from '../model/nearest.js';
import type { Severity } from '../model/observation.js';
import { severityFor } from '../model/rule.js';

/** A severity that cannot be set; the message says why. */
export class BadSeverity extends Error {}

const WEIGHT = { error: 3, warning: 2, info: 1, off: 0 } as const;

/**
 * What the specification says with MUST about the form of a file is an error for everybody: it may be
 * raised, not lowered.
 *
 * @throws BadSeverity
 */
export function checkSeverities(severities: Readonly<Record<string, Severity | 'off'>>): void {
  for (const [id, severity] of Object.entries(severities)) {
    const rule = rules.find((candidate) => candidate.id === id);
    if (rule === undefined) {
      const near = nearest(
        id,
        rules.map((candidate) => candidate.id),
      );
      throw new BadSeverity(`There is no rule "${id}".${near === undefined ? '' : ` Did you mean "${near}"?`}`);
    }
    const usual = severityFor(rule, 'for-review');
    if (rule.class === 'format' && WEIGHT[severity] < WEIGHT[usual]) {
      throw new BadSeverity(`The rule "${id}" is about the form of a file; it stays ${usual} for everybody.`);
    }
  }
}
