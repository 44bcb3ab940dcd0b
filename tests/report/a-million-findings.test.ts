import { describe, expect, it } from 'vitest';
import { CSV_MOST_BYTES, csvReport } from '../../src/report/findings-csv.js';
import { githubReport } from '../../src/report/github.js';
import { JUNIT_MOST_TEXT, junitReport } from '../../src/report/junit.js';
import { MARKDOWN_MOST_BYTES, markdownReport } from '../../src/report/markdown.js';
import { SARIF_MOST_BYTES, sarifReport } from '../../src/report/sarif.js';
import { cause, coverage, finding, reportOf } from './synthetic-report.js';

const MILLION = 1_000_000;
/** As long as a message can be, and as hard to write as any: each letter becomes an escape. */
const message = '\u0001'.repeat(2000);
// The same few findings again and again: a million different ones would only need more memory.
const few = Array.from({ length: 1000 }, (_, k) => finding({ id: `H-${k}`, message, cause: k + 1 }));
const report = reportOf({
  causes: few.map((_, k) => cause(k + 1, { message, findings: MILLION / few.length })),
  findings: Array.from({ length: MILLION }, (_, k) => few[k % few.length]),
  coverage: [coverage('holes-too-close', { findings: MILLION })],
});

/** What stands around the findings: rules, inputs, verdicts. */
const FRAME = 50_000;

describe('a million findings with messages of the greatest length', () => {
  it.each([
    ['SARIF', sarifReport, SARIF_MOST_BYTES + FRAME, /\d+ of 1000000 findings are listed here/],
    ['CSV', csvReport, CSV_MOST_BYTES + FRAME, /\d+ of 1000000 findings are listed here/],
    ['JUnit XML', junitReport, 2 * JUNIT_MOST_TEXT + FRAME, /and 1000000 more\b/],
    ['annotations', githubReport, 20 * 15_000, /Not shown here: 990 further causes/],
    ['Markdown', markdownReport, MARKDOWN_MOST_BYTES, /Left out here: \d+ further causes/],
  ])('stay below the stated size in %s, which says what is left out', (_, write, mostBytes, leftOut) => {
    const text = write(report);
    expect(Buffer.byteLength(text)).toBeLessThanOrEqual(mostBytes);
    expect(text).toMatch(leftOut);
  });
});
