import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One numbered requirement of the specification. */
export interface Requirement {
  /** Such as `AHX-CHK-22`. */
  id: string;
  /** The requirement in the words of the specification. */
  text: string;
  /** File of the chapter, relative to `spec/`. */
  chapter: string;
  /** Rules that check it; empty where it is not checked. */
  rules: string[];
  /** Why no rule checks it; absent where one does. */
  reason?: string;
}

const REQUIREMENT = /^\*\*(AHX-[A-Z]{3}-\d+)\*\* (.*) \((?:rules?: ([a-z0-9, -]+)|not checked: ([^)]+))\)$/;

/** The chapters of the specification, relative to the repository, in order. */
export function chapterFiles(root: string): string[] {
  return readdirSync(join(root, 'spec'))
    .filter((name) => /^\d\d-.*\.md$/.test(name))
    .sort()
    .map((name) => `spec/${name}`);
}

/**
 * The requirements of all chapters, in the order of the text.
 *
 * @throws Error where a line begins like a requirement and does not have the form of one, or where an id is used twice
 */
export function readRequirements(root: string): Requirement[] {
  const found = chapterFiles(root).flatMap((file) =>
    requirementsIn(readFileSync(join(root, file), 'utf8'), file.slice('spec/'.length)),
  );
  const twice = found.find(({ id }, index) => found.findIndex((other) => other.id === id) < index);
  if (twice !== undefined) throw new Error(`the requirement ${twice.id} stands twice in the specification`);
  return found;
}

/** The requirements in the text of one chapter. */
export function requirementsIn(text: string, chapter: string): Requirement[] {
  return text
    .split('\n')
    .filter((line) => line.startsWith('**AHX-'))
    .map((line) => {
      const match = REQUIREMENT.exec(line);
      if (match === null) throw new Error(`${chapter} has a requirement without rules or reason: ${line}`);
      const [, id, words, rules, reason] = match;
      const names = rules === undefined ? [] : rules.split(', ');
      return { id, text: words, chapter, rules: names, ...(reason !== undefined && { reason }) };
    });
}

/**
 * The requirements that each rule checks.
 *
 * @throws Error where a requirement names a rule that there is not, or a rule is named by no requirement
 */
export function clausesByRule(requirements: readonly Requirement[], ruleIds: readonly string[]): Map<string, string[]> {
  const clauses = new Map<string, string[]>(ruleIds.map((id) => [id, []]));
  for (const { id, rules } of requirements) {
    for (const rule of rules) {
      const own = clauses.get(rule);
      if (own === undefined) throw new Error(`${id} names the rule ${rule}, which there is not`);
      own.push(id);
    }
  }
  for (const [rule, own] of clauses) {
    if (own.length === 0) throw new Error(`no requirement of the specification names the rule ${rule}`);
  }
  return clauses;
}
