import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { unguardFormula } from '../../src/model/formula-guard.js';
import { TableReader } from '../../src/read/table/table-reader.js';
import { CSV_MOST_BYTES, csvReport } from '../../src/report/findings-csv.js';
import { es } from '../../src/report/languages/es.js';
import { printable } from '../../src/model/printable.js';
import { verdictLines } from '../../src/report/text.js';
import { cause, coverage, finding, HOSTILE, hostileReport, largeReport, reportOf } from './synthetic-report.js';

/** The rows as the reader of point lists cuts them. */
function rowsOf(csv: string): string[][] {
  const rows: string[][] = [];
  const faults: unknown[] = [];
  const reader = new TableReader(
    'comma',
    (cells) => rows.push([...cells]),
    (fault) => faults.push(fault),
  );
  reader.write(csv);
  reader.end();
  expect(faults).toEqual([]);
  return rows;
}

/** Findings as objects by the names of the columns, without the notes at the end. */
function findingsOf(csv: string): Record<string, string>[] {
  const [header, ...rows] = rowsOf(csv);
  return rows
    .map((cells) => Object.fromEntries(cells.map((cell, k) => [header[k], cell])))
    .filter(({ severity }) => severity !== 'note');
}

describe('the findings as CSV', () => {
  it('are a header, a row for each finding, and notes that end with the caution', () => {
    const report = reportOf({ causes: [cause(1)], findings: [finding({ tag: 'B 7' })] });
    expect(rowsOf(csvReport(report))).toEqual([
      'input rule class severity cause hole§id tag pointer line column row message accepted accepted§by accepted§until'
        .split(' ')
        .map((name) => name.replace('§', ' ')),
      [
        'level3.ahx.json',
        'holes-too-close',
        'site',
        'error',
        '1',
        'H-1',
        'B 7',
        '/holes/0/point',
        '7',
        '3',
        '',
        report.findings[0].message,
        '',
        '',
        '',
      ],
      ...[...verdictLines(report), SHORT_CAUTION].map((note) => [
        '',
        '',
        '',
        'note',
        ...Array(7).fill(''),
        note,
        '',
        '',
        '',
      ]),
    ]);
  });

  it('end each row with CRLF and are the same text for the same report', () => {
    const report = largeReport(30);
    expect(csvReport(report)).toBe(csvReport(structuredClone(report)));
    expect(csvReport(report).split('\r\n')).toHaveLength(1 + 30 + 3 + 1);
  });

  it('come gravest first, and accepted ones last with the reason, who accepted them and until when', () => {
    const entry = { rule: 'x', layout: 'L', reason: 'agreed with the designer', owner: 'EC', expires: '2027-01-01' };
    const report = reportOf({
      causes: [cause(1), cause(2, { severity: 'info' })],
      findings: [
        finding({ id: 'info', severity: 'info', cause: 2 }),
        finding({ id: 'accepted', accepted: 1 }),
        finding({ id: 'error' }),
      ],
      baseline: {
        entries: [{ ...entry, state: 'in-force', findings: 1, matched: 1 }],
        counts: { error: 1, warning: 0, info: 0 },
      },
    });
    expect(
      findingsOf(csvReport(report)).map((row) => [
        row['hole id'],
        row.accepted,
        row['accepted by'],
        row['accepted until'],
      ]),
    ).toEqual([
      ['error', '', '', ''],
      ['info', '', '', ''],
      ['accepted', 'agreed with the designer', 'EC', '2027-01-01'],
    ]);
  });

  it('name the row of the table that a hole came from', () => {
    const findings = [finding({ place: { row: 9, column: 2 } }), finding({ source: { row: 12 } })];
    const rows = findingsOf(csvReport(reportOf({ findings })));
    expect(rows.map(({ row, column, line }) => [row, column, line])).toEqual([
      ['9', '2', ''],
      ['12', '3', '7'],
    ]);
  });

  it('end with what was not judged and why', () => {
    const rows = rowsOf(
      csvReport(
        reportOf({
          coverage: [
            coverage('off-surface', { outcome: 'not-run', reason: 'no substrate named' }),
            coverage('breaks-through', { judged: 2, of: 5, reason: '3 left out: depth not known' }),
          ],
        }),
      ),
    );
    expect(rows.slice(-3, -1).map((cells) => [cells[3], cells[11]])).toEqual([
      ['note', 'not judged: no substrate named (off-surface)'],
      ['note', 'not judged: 3 left out: depth not known (breaks-through)'],
    ]);
  });

  it('have columns, severities and notes in the language of the report', () => {
    const report = reportOf({ causes: [cause(1)], findings: [finding({ severity: 'warning' })] });
    report.sample = { ...report.sample, total: 9 };
    const [columns, first, ...notes] = rowsOf(csvReport(report, { phrases: es.phrases }));
    expect(columns).toEqual([...(es.phrases.forms?.csv.columns ?? [])]);
    expect([first[1], first[2], first[3]]).toEqual(['holes-too-close', 'site', 'aviso']);
    expect(notes.map((cells) => cells[3])).toEqual(Array(4).fill('nota'));
    expect(notes[2][11]).toMatch(/^Aquí se muestra 1 de 9 hallazgos, /);
  });

  it('give back every text, whatever it is, and none that a spreadsheet takes for a formula', () => {
    const nasty = fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'binary' }));
    fc.assert(
      fc.property(nasty, (text) => {
        const csv = csvReport(hostileReport(text));
        const rows = findingsOf(csv);
        expect(rows).toHaveLength(4);
        const shown = printable(text);
        expect(unguardFormula(rows[0]['hole id'])).toBe(shown);
        for (const row of rows) expect(unguardFormula(row.message)).toBe(shown);
        for (const column of ['accepted', 'accepted by', 'accepted until'])
          expect(unguardFormula(rows[3][column])).toBe(shown);
        for (const cell of rowsOf(csv).flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
        // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
        expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028\u202e]/);
      }),
      { numRuns: 300 },
    );
  });

  it('stay below the stated size, take the gravest and say what is left out', () => {
    const message = 'x'.repeat(2000);
    const findings = Array.from({ length: 60_000 }, (_, k) =>
      finding({ message, severity: k < 50_000 ? 'info' : 'error' }),
    );
    const csv = csvReport(reportOf({ causes: [cause(1)], findings }));
    expect(csv.length).toBeLessThanOrEqual(CSV_MOST_BYTES + 10_000);
    const rows = rowsOf(csv);
    const listed = rows.filter(([, , , severity]) => severity === 'error' || severity === 'info');
    expect(listed.slice(0, 10_000).every(([, , , severity]) => severity === 'error')).toBe(true);
    expect(listed.length).toBeLessThan(60_000);
    expect(rows.at(-2)?.[11]).toContain(`${listed.length} of 60000 findings are listed here`);
  });
});
