import { type Purpose, type RuleInfo, severityFor } from '../model/rule.js';

const FORMS: Readonly<Record<RuleInfo['example']['form'], { language: string; note: string }>> = {
  members: { language: 'json', note: 'The members stand in an otherwise sound layout.' },
  layouts: {
    language: 'json',
    note: 'The members stand in otherwise sound layouts, parted by hyphens, that are checked together.',
  },
  bytes: {
    language: 'text',
    note: 'The whole file; `\\x` and two digits stand for a byte that is no printable ASCII.',
  },
  table: { language: 'text', note: 'Rows of a point list, read with a sound column profile.' },
  profile: { language: 'json', note: 'The members stand in an otherwise sound column profile.' },
};

export const PURPOSES: readonly Purpose[] = ['for-review', 'for-drilling', 'for-closeout'];

/** The severity of a rule in words: one for all purposes, or each of them. */
export function severityInWords(rule: RuleInfo): string {
  const severities = PURPOSES.map((purpose) => severityFor(rule, purpose));
  if (new Set(severities).size === 1) return severities[0];
  return severities.map((severity, k) => `${severity} ${PURPOSES[k].replace('-', ' ')}`).join(', ');
}

/**
 * The page of a rule, in Markdown: what it says, why it matters, how to mend it, when to accept it.
 *
 * @param clauses numbered requirements of the specification that the rule checks
 */
export function rulePage(rule: RuleInfo, clauses: readonly string[] = []): string {
  const { language, note } = FORMS[rule.example.form];
  const data = Object.entries(rule.data).map(([key, meaning]) => `| \`${key}\` | ${meaning} |`);
  const options = Object.entries(rule.options ?? {}).map(
    ([name, option]) =>
      `| \`${name}\` | ${option.what} | ${option.default} | ${option.least} to ${option.most} | ${option.unit} |`,
  );
  const facts = [
    `class ${rule.class}`,
    `severity: ${severityInWords(rule)}`,
    `stage ${rule.stage}`,
    `since ${rule.since}`,
  ];
  const sections = [
    `# ${rule.id}`,
    rule.title,
    `${facts.join('; ')}${clauses.length > 0 ? `; checks ${clauses.join(', ')}` : ''}.`,
    ...(rule.lessGrave === undefined
      ? []
      : [`${rule.lessGrave} A severity that is set for the rule holds in every case.`]),
    `## Why it matters\n\n${rule.why}`,
    `## How to mend it\n\n${rule.mend}`,
    ...(rule.accept === undefined ? [] : [`## When to accept it\n\n${rule.accept}`]),
    ...(rule.needs === undefined
      ? []
      : [`## What it needs\n\n${rule.needs} Where that is missing the record is counted as not judged.`]),
    ...(options.length > 0
      ? [
          `## Options\n\nSet with \`--option ${rule.id}.NAME=NUMBER\`.\n\n| name | what it sets | default | range | unit |\n|---|---|---|---|---|\n${options.join('\n')}`,
        ]
      : []),
    `## Example\n\n${note}\n\nBad:\n\n${fenced(language, rule.example.bad)}\n\nGood:\n\n${fenced(language, rule.example.good)}`,
    ...(data.length > 0 ? [`## Data of a finding\n\n| key | meaning |\n|---|---|\n${data.join('\n')}`] : []),
  ];
  return `${sections.join('\n\n')}\n`;
}

function fenced(language: string, text: string): string {
  const shown = [...text].map(visible).join('');
  return `\`\`\`${language}\n${shown.replace(/\n$/, '')}\n\`\`\``;
}

/** A character as a page can show it: bytes that are no printable ASCII as escapes. */
function visible(character: string): string {
  const code = character.charCodeAt(0);
  const isPlain = (code >= 32 && code < 127) || code === 10;
  return isPlain ? character : `\\x${code.toString(16).toUpperCase().padStart(2, '0')}`;
}
