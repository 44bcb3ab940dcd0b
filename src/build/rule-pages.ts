import type { Rule } from '../check/rule.js';
import type { GeneratedFiles } from './generator.js';
import { clausesByRule, readRequirements } from './requirements.js';
import { readSchemas } from './schema-source.js';
import { PURPOSES, rulePage, severityInWords } from '../report/rule-page.js';
import { severityFor } from '../model/rule.js';

const PAGES = 'spec/rules';

/**
 * A page for every rule, a table of all, and the catalogue for software, `rules.json`.
 *
 * What a rule says of itself stands in its module, what it checks in the text of the specification.
 */
export async function rulePageFiles(root: string): Promise<GeneratedFiles> {
  // Rules import generated modules, which are not there when this module is loaded on a fresh tree.
  const { rules } = await import('../check/list.js');
  const clauses = clausesByRule(
    readRequirements(root),
    rules.map(({ id }) => id),
  );
  const of = ({ id }: Rule): string[] => clauses.get(id) ?? [];
  const files: GeneratedFiles = {
    [`${PAGES}/README.md`]: overview(rules, of),
    [`${readSchemas(root).folder}/rules.json`]: catalogue(rules, of),
  };
  for (const rule of rules) files[`${PAGES}/${rule.id}.md`] = rulePage(rule, of(rule));
  return files;
}

type ClausesOf = (rule: Rule) => string[];

function overview(rules: readonly Rule[], of: ClausesOf): string {
  const rows = rules.map(
    (rule) =>
      `| [${rule.id}](${rule.id}.md) | ${rule.class} | ${severityInWords(rule)} | ${rule.stage} | ${rule.title} | ${of(rule).join(', ')} |`,
  );
  return `# Rules

Made from the code of the rules; where a page and chapter 4 disagree, that is a defect. The order is that of the findings at one record.

| rule | class | severity | stage | what a finding says | checks |
| ---- | ----- | -------- | ----- | ------------------- | ------ |
${rows.join('\n')}
`;
}

/** The catalogue as JSON, a rule an element; the keys of `data` are those of the findings. */
function catalogue(rules: readonly Rule[], of: ClausesOf): string {
  const entries = rules.map((rule) => {
    const { id, class: ruleClass, lessGrave, stage, since, title, needs, options, data } = rule;
    const severity = Object.fromEntries(PURPOSES.map((purpose) => [purpose, severityFor(rule, purpose)]));
    return { id, class: ruleClass, severity, lessGrave, stage, since, title, clauses: of(rule), needs, options, data };
  });
  return `${JSON.stringify(entries, null, 2)}\n`;
}
