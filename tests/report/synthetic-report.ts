import type { Cause, Coverage, Finding, Report } from '../../src/generated/report.js';
import { CAUTION } from '../../src/model/caution.js';

/** Texts that mean something in one of the forms; a report must show them as they are or as escapes. */
export const HOSTILE: readonly string[] = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '</details></table>&amp;&#64;&lt;b&gt;',
  ']]><![CDATA[x]]>',
  '--> <?xml version="1.0"?>',
  '\u0000\u0001\u000b\u001b[31m\u007f\u009b',
  'a\r\nb\n::error file=x::forged\n##[error]forged',
  '::add-mask::x%0A%0D%25',
  '\ud800 lone, \ufffe \uffff \u{1fffe}',
  '\u202e\u2066 turned \u061c',
  '=1+1',
  "+cmd|' /C x'!A0",
  '-1',
  '@team @SUM(A1)',
  "'=x",
  'a,b;"c"\t|d|',
  '| a | b |\n|---|---|',
  '[link](https://example.org) ![i](x) <https://example.org>',
  'example.org',
  'www.example.org https://example.org a@example.org',
  '@someone #12 GH-12 owner/repo#1 deadbeefdeadbeefdeadbeefdeadbeefdeadbeef :tada:',
  '**bold** _em_ ~~s~~ `code` ``two`` $x$ [^1] - [ ] x',
  '# head\n> quote\n```\nfence',
  '\\',
  '\\|',
  'ends in a backslash \\',
  '{0} {{1}} [text](1) {',
  '../../etc/passwd?x#y%20 a:b',
  'C:\\plans\\level 3.ahx.json',
  'größe 中間 😀 a\u0301',
  '  blanks  ',
  '',
];

/** A report whose parts can be set one by one; invented. */
export function reportOf(parts: Partial<Report> = {}): Report {
  const { findings = [] } = parts;
  const count = (severity: string) =>
    findings.filter((one) => one.severity === severity && one.accepted === undefined).length;
  const total = findings.length;
  return {
    ahx: '0.1',
    kind: 'report',
    tool: { name: 'anchor-hole-exchange', version: '0.0.0' },
    purpose: 'for-review',
    inputs: [{ name: 'level3.ahx.json', kind: 'layout', format: 'json', bytes: 100, holes: 10, judged: 10 }],
    verdict: { format: 'pass', site: 'fail' },
    counts: { error: count('error'), warning: count('warning'), info: count('info') },
    coverage: [coverage('holes-too-close', { findings: total })],
    causes: [],
    findings,
    sample: { limit: 1000, listed: total, total },
    caution: CAUTION,
    ...parts,
  };
}

export function coverage(rule: string, parts: Partial<Coverage> = {}): Coverage {
  return { rule, class: 'site', outcome: (parts.findings ?? 0) > 0 ? 'failed' : 'passed', findings: 0, ...parts };
}

export function cause(id: number, parts: Partial<Cause> = {}): Cause {
  return {
    id,
    rule: 'holes-too-close',
    class: 'site',
    severity: 'error',
    message: `Cause ${id}.`,
    input: 1,
    place: { pointer: '/holes/0/point', line: 7, column: 3 },
    findings: 1,
    holes: [{ id: 'H-1' }],
    ...parts,
  };
}

export function finding(parts: Partial<Finding> = {}): Finding {
  return {
    rule: 'holes-too-close',
    severity: 'error',
    input: 1,
    place: { pointer: '/holes/0/point', line: 7, column: 3 },
    id: 'H-1',
    data: { other: 'H-2', distance: 50, limit: 80 },
    message: 'The hole lies 50 mm from hole "H-2"; at least 80 mm is needed (invented).',
    cause: 1,
    ...parts,
  };
}

/** A report with one text in every member that can hold one. */
export function hostileReport(text: string): Report {
  const place = { pointer: `/${text}`, line: 2, column: 1 };
  const holes = [
    { id: text, tag: `t${text}` },
    { id: 'H-2', tag: text },
  ];
  const row = { row: 4, column: 2, sheet: text };
  return reportOf({
    tool: { name: text, version: text },
    asOf: text,
    inputs: [
      { name: text, kind: 'layout', format: 'json', bytes: 9, id: text, revision: text, holes: 2, judged: 1 },
      { name: `other ${text}`, kind: 'unknown', format: 'csv', bytes: 9, digest: `sha256:${'0'.repeat(64)}` },
    ],
    settings: { severities: { [text]: 'off' }, ruleOptions: { [text]: { [text]: 1 } } },
    coverage: [
      coverage('holes-too-close', { findings: 3 }),
      coverage(text, { findings: 1 }),
      coverage('off-surface', { outcome: 'not-run', reason: text }),
    ],
    causes: [
      cause(1, { message: text, place, holes, findings: 3 }),
      cause(2, { rule: text, message: text, place: row, input: 2, holes, severity: 'warning' }),
      cause(3, { message: text, place: { byte: 3 }, input: 2, holes: [], severity: 'info', accepted: 1 }),
    ],
    findings: [
      finding({
        id: text,
        tag: text,
        place,
        message: text,
        data: { [text]: text, other: text, otherInput: 2, otherName: text },
      }),
      finding({ place: { pointer: text }, message: text, data: {} }),
      finding({ rule: text, input: 2, place: row, message: text, cause: 2, severity: 'warning', source: { row: 3 } }),
      finding({ input: 2, place: { byte: 3 }, message: text, cause: 3, severity: 'info', accepted: 1 }),
    ],
    baseline: {
      entries: [
        {
          rule: text,
          layout: text,
          reason: text,
          owner: text,
          expires: text,
          state: 'in-force',
          findings: 1,
          matched: 1,
        },
      ],
      counts: { error: 0, warning: 0, info: 1 },
    },
    caution: text,
  });
}

/** A report that lists as many findings as it is asked to, each with a message of its own; every tenth is an error. */
export function largeReport(count: number, most = 10_000): Report {
  const causes = Array.from({ length: Math.min(count, most) }, (_, k) =>
    cause(k + 1, {
      severity: severityOf(k),
      findings: Math.ceil((count - k) / most),
      message: `Cause ${k} <&"|@> of many.`,
    }),
  );
  const findings = Array.from({ length: count }, (_, k) =>
    finding({
      severity: severityOf(k % most),
      id: `H-${k}`,
      tag: `${k}`,
      place: { pointer: `/holes/${k}/point`, line: k + 1, column: 5 },
      data: { other: `H-${k + 1}`, distance: 50 + k / 1000, limit: 80 },
      message: `The hole lies ${50 + k / 1000} mm from hole "H-${k + 1}"; at least 80 mm is needed (invented).`,
      cause: (k % most) + 1,
    }),
  );
  return reportOf({ causes, findings, coverage: [coverage('holes-too-close', { findings: count })] });
}

function severityOf(k: number): 'error' | 'warning' {
  return k % 10 === 0 ? 'error' : 'warning';
}
