import { rules } from '../../check/list.js';
import { nearest } from '../../model/nearest.js';
import { severityFor } from '../../model/rule.js';
import { rulePage } from '../../report/rule-page.js';
import { print } from '../console.js';
import { EXIT, WrongUse } from '../exit.js';

/** Prints the page of a rule, or the list of all. */
export async function runExplain(id: string | undefined): Promise<number> {
  if (id === undefined) {
    const width = Math.max(...rules.map((rule) => rule.id.length));
    const lines = rules.map((rule) => {
      const severity = severityFor(rule, 'for-review').padEnd(7);
      return `${rule.id.padEnd(width)}  ${rule.class.padEnd(6)}  ${severity}  ${rule.title}`;
    });
    print(`${lines.join('\n')}\n`);
    return EXIT.clean;
  }
  const rule = rules.find((candidate) => candidate.id === id);
  if (rule === undefined) {
    const near = nearest(
      id,
      rules.map((candidate) => candidate.id),
    );
    throw new WrongUse(
      `There is no rule "${id}".${near === undefined ? '' : ` Did you mean "${near}"?`} "ahx explain" lists all.`,
    );
  }
  print(rulePage(rule));
  return EXIT.clean;
}
