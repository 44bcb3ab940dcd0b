import { describe, expect, it } from 'vitest';
import { rules } from '../../src/check/list.js';
import type { RuleInfo } from '../../src/model/rule.js';
import { rulePage } from '../../src/report/rule-page.js';

const invented: RuleInfo = {
  id: 'hole-sad',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'schema',
  title: 'A hole is sad.',
  why: 'Nobody likes it.',
  mend: 'Cheer it up.',
  data: { mood: 'how it feels' },
  message: () => 'The hole is sad.',
  example: { form: 'bytes', bad: '{\u00ff}\n', good: '{}' },
};

describe('the page of a rule', () => {
  it('says what, why, how to mend, and shows a bad and a good example', () => {
    expect(rulePage(invented, ['AHX-XYZ-1'])).toMatchInlineSnapshot(`
      "# hole-sad

      A hole is sad.

      class data; severity: warning; stage schema; since 0.1; checks AHX-XYZ-1.

      ## Why it matters

      Nobody likes it.

      ## How to mend it

      Cheer it up.

      ## Example

      The whole file; \`\\x\` and two digits stand for a byte that is no printable ASCII.

      Bad:

      \`\`\`text
      {\\xFF}
      \`\`\`

      Good:

      \`\`\`text
      {}
      \`\`\`

      ## Data of a finding

      | key | meaning |
      |---|---|
      | \`mood\` | how it feels |
      "
    `);
  });

  it('says when to accept a finding only where one may', () => {
    expect(rulePage(invented)).not.toContain('## When to accept it');
    expect(rulePage({ ...invented, accept: 'On Mondays.' })).toContain('## When to accept it\n\nOn Mondays.\n');
  });

  it.each(rules.map((rule) => [rule.id, rule]))('%s has one with every part', (id, rule) => {
    const page = rulePage(rule as RuleInfo);
    expect(page.startsWith(`# ${id}\n`)).toBe(true);
    expect(page).not.toMatch(/undefined|\[object/);
    for (const key of Object.keys((rule as RuleInfo).data)) expect(page).toContain(`| \`${key}\` |`);
  });
});
