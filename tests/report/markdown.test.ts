import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/generated/report.js';
import type { Phrases } from '../../src/model/language.js';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { es } from '../../src/report/languages/es.js';
import { MARKDOWN_MOST_BYTES, markdownReport } from '../../src/report/markdown.js';
import { printable } from '../../src/model/printable.js';
import { verdictLines } from '../../src/report/text.js';
import { cause, coverage, finding, HOSTILE, hostileReport, largeReport, reportOf } from './synthetic-report.js';

/** Tables, strikethrough, HTML and addresses without markup, as services that show summaries read them. */
const reader = new MarkdownIt({ html: true, linkify: true });

/** Elements of the summary's own. */
const OWN = [
  ...['h3', 'p', 'strong', 'br', 'code', 'ul', 'li', 'details', 'summary'],
  ...['table', 'thead', 'tbody', 'tr', 'th', 'td'],
];

function elementsOf(html: string): Set<string> {
  return new Set([...html.matchAll(/<\/?([^\s>/]*)/g)].map(([, name]) => name));
}

function textOf(html: string): string {
  return html
    .replace(/<[^>]*>/g, '')
    .replace(/&#(\d+);/g, (_, code) => String.fromCodePoint(Number(code)))
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');
}

function bytesOf(report: Report): number {
  return Buffer.byteLength(markdownReport(report));
}

describe('the summary in Markdown', () => {
  it('begins with the two verdicts and the caution', () => {
    const report = reportOf();
    const text = textOf(reader.render(markdownReport(report)));
    for (const line of [...verdictLines(report), SHORT_CAUTION]) expect(text).toContain(line);
  });

  it('has a table of causes, what they are about folded away, and what did not run', () => {
    const report = reportOf({
      causes: [cause(1, { findings: 2 }), cause(2, { severity: 'warning', place: { row: 4, column: 1 } })],
      findings: [finding({ tag: 'B 7' }), finding({ id: 'H-2' })],
      coverage: [coverage('off-surface', { outcome: 'not-run', reason: 'no substrate' })],
    });
    expect(markdownReport(report)).toMatchInlineSnapshot(`
      "### AHX check

      **Valid AHX 0.1.**<br>
      **Site checks (for review): 2 errors, 1 warning in 2 causes on 10 holes; 1 rule not run.**

      Layout data only. Not a design, not a permit to drill. Follow product approvals, local law and site rules; scan and permit still apply.

      | input | kind | revision | holes |
      |---|---|---|---|
      | <code>level3&#46;ahx&#46;json</code> | layout |  | 10 |

      |  | severity | cause | rule | findings | first hole | first at |
      |---|---|---|---|---|---|---|
      | 1 | error | Cause 1. | <code>holes-too-close</code> | 2 | <code>H-1</code> | line 7, column 3 |
      | 2 | warning | Cause 2. | <code>holes-too-close</code> | 1 | <code>H-1</code> | row 4, column 1 |

      <details><summary>Cause 1, <code>holes-too-close</code>: 2 findings</summary>

      - hole <code>H-1 (tag B 7)</code>: The hole lies 50 mm from hole "H-2"; at least 80 mm is needed (invented). (line 7, column 3)
      - hole <code>H-2</code>: The hole lies 50 mm from hole "H-2"; at least 80 mm is needed (invented). (line 7, column 3)

      </details>

      <details><summary>1 rule not run</summary>

      - <code>off-surface</code>: no substrate

      </details>

      A list shows the first 20 findings of a cause; all of this takes at most 60000 bytes.
      "
    `);
  });

  it('lists what judged only a part behind what did not run', () => {
    const coverageRows = [
      coverage('breaks-through', { judged: 2, of: 5, reason: '3 left out: depth not known' }),
      coverage('off-surface', { outcome: 'not-run', reason: 'no substrate named' }),
      coverage('tag-clash', { judged: 5, of: 5 }),
    ];
    const items = (phrases?: Phrases) =>
      markdownReport(reportOf({ coverage: coverageRows }), { phrases })
        .split('\n')
        .filter((line) => /^(- |<details>)/.test(line));
    expect(items()).toEqual([
      '<details><summary>1 rule not run, 1 rule run in part</summary>',
      '- <code>off-surface</code>: no substrate named',
      '- <code>breaks-through</code>: judged 2 of 5: 3 left out: depth not known',
    ]);
    expect(items(es.phrases)).toEqual([
      '<details><summary>1 regla sin ejecutar, 1 regla ejecutada en parte</summary>',
      '- <code>off-surface</code>: sin elemento de concreto indicado',
      '- <code>breaks-through</code>: juzgados 2 de 5: se omiten 3: profundidad desconocida',
    ]);
  });

  it('is in the language of the report, heads and all', () => {
    const message = '¿Quiso decir "sprinkler"? ¡Nombre desconocido!';
    const report = reportOf({ causes: [cause(1, { message, findings: 2 })], findings: [finding({ message })] });
    report.sample = { ...report.sample, total: 2 };
    const text = markdownReport(report, { phrases: es.phrases });
    expect(text.split('\n')[0]).toBe('### Comprobación AHX');
    expect(text).toContain('| entrada | clase | revisión | perforaciones |');
    expect(text).toContain(`| 1 | error | ${message} | <code>holes-too-close</code> |`);
    expect(text).toContain('Causa 1, <code>holes-too-close</code>: 2 hallazgos');
    expect(textOf(reader.render(text))).not.toMatch(/\b(the|of|cause|findings|holes|list|rule)\b(?!-)/i);
  });

  it('gives the reason, owner and end of what a baseline accepts', () => {
    const entry = { rule: 'x', layout: 'L', reason: 'agreed in RFI 12', owner: 'E. C.', expires: '2027-01-01' };
    const text = textOf(
      reader.render(
        markdownReport(
          reportOf({
            causes: [cause(1, { accepted: 1 }), cause(2)],
            baseline: {
              entries: [{ ...entry, state: 'in-force', findings: 1, matched: 1 }],
              counts: { error: 1, warning: 0, info: 0 },
            },
          }),
        ),
      ),
    );
    expect(text).toContain('accepted until 2027-01-01 by E. C.: agreed in RFI 12');
    expect(text.indexOf('Cause 2.')).toBeLessThan(text.indexOf('Cause 1.'));
    expect(text).toContain('1 more finding accepted');
  });

  it('makes neither markup nor links nor mentions of any text, whatever it is', () => {
    const markup = fc.string({
      unit: fc.constantFrom(...'<>[]()!*_~`|\\&#@:/.-= \n$^{}"\'aw1'.split(''), 'www.', 'b.org', 'https://', 'GH-1'),
      maxLength: 40,
    });
    const nasty = fc.oneof(fc.constantFrom(...HOSTILE), markup, fc.string({ unit: 'binary' }));
    fc.assert(
      fc.property(nasty, (text) => {
        const html = reader.render(markdownReport(hostileReport(text)));
        expect([...elementsOf(html)].filter((name) => !OWN.includes(name))).toEqual([]);
        // No element of ours has attributes, so none can have been put in.
        expect(html).not.toMatch(/<[a-z]+\d?\s/);
        // Mentions, numbers of issues, digests of commits and emoji are made of text outside of code only.
        const outside = textOf(html.replace(/<code>.*?<\/code>/gs, ''));
        expect(outside).not.toMatch(/[@#]|gh-\d|[0-9a-f]{7}|:\w+:|www\.|:\/\//i);
        // Each cell that was written is still one cell.
        for (const [row] of html.matchAll(/<tr>.*?<\/tr>/gs)) expect([4, 7]).toContain(row.split(/<t[dh]>/).length - 1);
        expect(html.match(/<tr>/g)).toHaveLength(1 + 2 + 1 + 3);
        const shown = printable(text);
        const names = [...html.slice(html.indexOf('<table>')).matchAll(/<code>(.*?)<\/code>/gs)].map(([, inner]) =>
          textOf(inner),
        );
        expect(names[0]).toBe(shown);
      }),
      { numRuns: 500 },
    );
  });

  it('stays below 60,000 bytes, takes the gravest and says what it left out', () => {
    const report = largeReport(30_000);
    report.causes.sort((a, b) => (a.severity < b.severity ? -1 : a.severity > b.severity ? 1 : a.id - b.id));
    const markdown = markdownReport(report);
    expect(markdown).toBe(markdownReport(structuredClone(report)));
    expect(Buffer.byteLength(markdown)).toBeLessThan(MARKDOWN_MOST_BYTES);
    expect(markdown).toContain('Left out here: 9950 further causes.');
    expect(markdown).not.toContain('| warning |');
  });

  it('stays below 60,000 bytes where every text is long and every letter of it has to be escaped', () => {
    for (const character of ['|', '\u0000', '中', '😀', '\u{1fffe}', 'a ']) {
      const text = character.repeat(5000);
      const hostile = hostileReport(text);
      const causes = Array.from({ length: 300 }, (_, k) => cause(k + 1, { message: text, rule: text, findings: 30 }));
      const findings = causes.flatMap(({ id }) =>
        Array.from({ length: 30 }, () => finding({ id: text, message: text, cause: id })),
      );
      const inputs = Array.from({ length: 100 }, () => hostile.inputs[0]);
      const rows = Array.from({ length: 100 }, () => coverage(text, { outcome: 'not-run', reason: text }));
      const { entries, counts } = hostile.baseline as NonNullable<Report['baseline']>;
      const baseline = { entries: Array(30).fill({ ...entries[0], state: 'expired' }), counts };
      const bytes = bytesOf({ ...hostile, ahx: text, inputs, causes, findings, coverage: rows, baseline });
      expect(bytes).toBeLessThan(MARKDOWN_MOST_BYTES);
    }
  });
});
