import { type CorpusManifest, MANIFEST, readManifest } from './corpus-manifest.js';
import { CORPUS, type DerivedCase, derivedCaseFiles } from './derive-cases.js';
import type { GeneratedFiles } from './generator.js';
import { clausesByRule, type Requirement, readRequirements } from './requirements.js';

/** What the trace is made from besides the chapters and the rules. */
export function traceInputs(root: string): string[] {
  return [MANIFEST, ...readManifest(root).parts.map((part) => `${CORPUS}/${part}`)];
}

/** The table that leads from each requirement to the rules and cases that test it, and back. */
export async function traceFiles(root: string): Promise<GeneratedFiles> {
  const { rules } = await import('../check/list.js');
  const requirements = readRequirements(root);
  const ids = rules.map(({ id }) => id);
  const clauses = clausesByRule(requirements, ids);
  const manifest = readManifest(root);
  const derived = derivedCounts(root);
  const text = `# Trace

Made by the build from the numbered requirements, the rules and the manifest of the corpus in \`tests/conformance/\`.

## From requirement to rules and cases

${requirements.map((requirement) => requirementLine(requirement, manifest)).join('\n')}

## From rule to requirements and cases

Cases derived from the schema are those in \`tests/conformance/derived/\`.

| rule | requirements | pass | fail | not applicable | derived from the schema |
| ---- | ------------ | ---- | ---- | -------------- | ----------------------- |
${ids.map((id) => ruleRow(id, clauses.get(id) ?? [], manifest, derived.get(id) ?? 0)).join('\n')}
`;
  return { 'spec/trace.md': text };
}

/** Ids of the cases, conversions included, that name a requirement. */
export function casesOf(requirement: string, { cases, conversions }: CorpusManifest): string[] {
  return [...cases, ...conversions].filter(({ clauses }) => clauses.includes(requirement)).map(({ id }) => id);
}

function requirementLine(requirement: Requirement, manifest: CorpusManifest): string {
  const { id, chapter, rules, reason } = requirement;
  const by =
    reason === undefined ? rules.map((rule) => `[${rule}](rules/${rule}.md)`).join(', ') : `not checked: ${reason}`;
  const cases = casesOf(id, manifest);
  const lines = [`- **${id}** ([${chapter.slice(0, 2)}](${chapter})): ${by}`];
  if (cases.length > 0) lines.push(`  - ${cases.map((name) => `\`${name}\``).join(', ')}`);
  return lines.join('\n');
}

function ruleRow(rule: string, clauses: readonly string[], { cases }: CorpusManifest, derived: number): string {
  const count = (kind: string) => cases.filter((one) => one.rule === rule && one.kind === kind).length;
  const numbers = [count('pass'), count('fail'), count('na'), derived].map((n) => (n === 0 ? '' : n));
  return `| [${rule}](rules/${rule}.md) | ${[clauses.join(', '), ...numbers].join(' | ')} |`;
}

/** How many derived cases end in a finding of each rule. */
function derivedCounts(root: string): Map<string, number> {
  const counts = new Map<string, number>();
  for (const text of Object.values(derivedCaseFiles(root))) {
    for (const { findings } of JSON.parse(text) as DerivedCase[]) {
      for (const { rule } of findings) counts.set(rule, (counts.get(rule) ?? 0) + 1);
    }
  }
  return counts;
}
