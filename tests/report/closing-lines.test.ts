import { describe, expect, it } from 'vitest';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { closingLines } from '../../src/report/closing-lines.js';
import { csvReport } from '../../src/report/findings-csv.js';
import { githubReport } from '../../src/report/github.js';
import { english } from '../../src/report/languages/en.js';
import { junitReport } from '../../src/report/junit.js';
import { markdownReport } from '../../src/report/markdown.js';
import { sarifReport } from '../../src/report/sarif.js';
import { verdictLines } from '../../src/report/text.js';
import { reportOf } from './synthetic-report.js';

const entry = { layout: 'L', reason: 'agreed', owner: 'EC', expires: '2026-01-01', findings: 1, matched: 1 };
const report = reportOf({
  settings: { severities: { 'tag-clash': 'off' }, ruleOptions: { 'off-surface': { slack: 5 } } },
  baseline: {
    entries: [
      { ...entry, rule: 'edge-too-close', state: 'expired' },
      { ...entry, rule: 'tag-clash', state: 'stale' },
    ],
    counts: { error: 0, warning: 0, info: 0 },
  },
});

describe('the closing lines', () => {
  it('of a plain report are the two verdicts and the caution', () => {
    expect(closingLines(reportOf())).toEqual([...verdictLines(reportOf()), SHORT_CAUTION]);
  });

  it('say what was set, which acceptances ran out and what is left out', () => {
    expect(closingLines(report, ['Much is left out.'])).toEqual([
      ...verdictLines(report),
      'set for this check: tag-clash=off, off-surface.slack=5',
      'ran out on 2026-01-01: the acceptance of edge-too-close in "L" by EC; 1 finding counts again',
      'Much is left out.',
      SHORT_CAUTION,
    ]);
  });

  it.each([csvReport, githubReport, junitReport, markdownReport, sarifReport])('are in what %o writes', (write) => {
    // How each form writes quotation marks and dots is tested beside it.
    const text = write(report)
      .replaceAll(/<\/?code>/g, '')
      .replaceAll('&#46;', '.')
      .replaceAll(/\\"|""|&quot;/g, '"');
    for (const line of closingLines(report)) expect(text).toContain(line);
  });

  it.each([csvReport, githubReport, junitReport, markdownReport, sarifReport])(
    'are in the language of the report in %o',
    (write) => {
      const phrases = { ...english, shortCaution: 'Solo datos de replanteo', valid: () => 'Datos conformes' };
      const text = write(reportOf(), { phrases });
      for (const word of [phrases.shortCaution, 'Datos conformes']) expect(text).toContain(word);
      expect(text).not.toContain(SHORT_CAUTION);
      expect(text).not.toContain('Valid AHX');
    },
  );

  it('count the acceptances that ran out beyond the first five', () => {
    const expired = Array.from({ length: 8 }, () => ({ ...entry, rule: 'tag-clash', state: 'expired' as const }));
    const counts = { error: 0, warning: 0, info: 0 };
    const lines = closingLines(reportOf({ baseline: { entries: expired, counts } }));
    expect(lines).toHaveLength(2 + 5 + 1 + 1);
    expect(lines[7]).toContain('3 more acceptances');
  });
});
