import { describe, expect, it } from 'vitest';
import { check } from '../../../src/jobs/check.js';
import { sheetsOf } from '../../../src/jobs/sheet.js';
import { acceptFindings } from '../../../src/policy/accept.js';
import { hole, typeWithSpacing } from '../../jobs/small-layout.js';
import { checkedSheets, drawn, drawnText, layoutOf } from './checked-sheets.js';
import { packaged, sheetSource } from './sheet-source.js';

/** Two holes too close to each other and one by itself; none has a tolerance. */
const CLOSE = layoutOf([hole('a', [0, 0, 0]), hole('b', [50, 0, 0]), hole('c', [5000, 0, 0])], {
  holeTypes: [typeWithSpacing(200)],
});
const ONLY_CLOSE = { severities: { 'tolerance-missing': 'off' } } as const;
const DO_NOT = 'Do not drill before the office has settled this.';

/** The crosses over boxes: lines from corner to corner. */
const crosses = (sheet: Parameters<typeof drawn>[0]) =>
  drawn(sheet, 'polyline').filter(({ style }) => style.strokeWidth === 0.6);

describe('a hole with an error of the check', () => {
  const { sheets, marked } = checkedSheets(CLOSE, { options: ONLY_CLOSE });
  const [sheet] = sheets;
  const text = drawnText(sheet);

  it('says so in its row, in the words of the check', () => {
    const [a, b, c] = sheet.rows;
    expect([a, b, c].map(({ findings }) => findings?.state)).toEqual(['error', 'error', undefined]);
    expect(a.findings?.lines).toEqual([
      expect.stringMatching(/^Error: The hole lies 50 mm from hole "b"; at least 200 mm/),
    ]);
    expect(text.split(DO_NOT)).toHaveLength(3);
    expect(marked).toEqual({ errors: 2, warnings: 0 });
  });

  it('has its boxes closed and its mark on the plan crossed out, and no other has', () => {
    expect(crosses(sheet)).toHaveLength(2);
    const [cross] = drawn(sheet, 'marks').filter(({ sign }) => sign[0].kind === 'polyline');
    expect(cross.at).toHaveLength(2);
    const [fine] = checkedSheets(layoutOf([hole('c', [0, 0, 0])]), { options: ONLY_CLOSE }).sheets;
    expect(crosses(fine)).toHaveLength(0);
    expect(drawn(fine, 'marks').filter(({ sign }) => sign[0].kind === 'polyline')).toEqual([]);
    expect(drawnText(fine)).not.toContain(DO_NOT);
  });

  it('is counted in the band', () => {
    expect(text).toContain('Of the 3 holes of this sheet 2 have findings. Errors, boxes closed: No. 1, 2.');
    expect(sheet.texts.findings[0]).toMatch(/^Site checks \(for drilling\): \d errors/);
    expect([...checkedSheets(CLOSE, { options: ONLY_CLOSE }).html()].join('').split(DO_NOT)).toHaveLength(5);
  });

  it('is marked where its group is what is wrong', () => {
    const group = {
      id: 'G',
      kind: 'trapeze',
      pattern: [
        [0, 0],
        [300, 0],
      ],
      run: [1, 0, 0],
      patternTolerance: 5,
    };
    const layout = layoutOf(
      [hole('a', [0, 0, 0], { group: 'G' }), hole('b', [900, 0, 0], { group: 'G' }), hole('c', [5000, 0, 0])],
      { groups: [group] },
    );
    const set = checkedSheets(layout, { options: ONLY_CLOSE });
    const [one] = set.sheets;
    expect(one.rows.map(({ findings }) => findings?.state)).toEqual(['error', 'error', undefined]);
    expect(one.rows[0].findings?.lines[0]).toContain('"G"');
    expect(one.texts.findings.slice(1).join(' ')).not.toContain('"G"');
  });
});

describe('a finding between two holes', () => {
  it('marks both, also where the check says it at the other one alone, in another layout', () => {
    const [one] = checkedSheets(layoutOf([hole('a', [0, 0, 0]), hole('b', [0, 0, 0])]), { options: ONLY_CLOSE }).sheets;
    expect(one.rows.map(({ findings }) => findings?.state)).toEqual(['error', 'error']);
    const own = layoutOf([hole('a', [0, 0, 0]), hole('c', [5000, 0, 0])]);
    const other = layoutOf([hole('z', [0, 0, 0], { tag: 'Z-1' })], { id: 'T-2' });
    const inputs = [own, other].map((layout, k) => ({ name: `${k}`, data: JSON.stringify(layout) }));
    const report = check(inputs, { purpose: 'for-drilling', ...ONLY_CLOSE });
    expect(report.findings.filter(({ rule }) => rule === 'holes-coincide').map(({ input }) => input)).toEqual([2]);
    const said = { report, input: 0, together: ['1'], apart: [] };
    const [sheet] = sheetsOf(sheetSource(own), { package: 'P' }, { check: said }).sheets;
    expect(sheet.rows.map(({ findings }) => findings?.state)).toEqual(['error', undefined]);
    expect(sheet.rows[0].findings?.lines[0]).toMatch(
      /^Error: with hole Z-1, of which the check says: The hole lies at/,
    );
  });
});

describe('a hole with warnings', () => {
  it('is marked, and may be drilled: its boxes are open', () => {
    const { sheets, marked } = checkedSheets(layoutOf([hole('a', [0, 0, 0])]));
    expect(marked).toEqual({ errors: 0, warnings: 1 });
    expect(sheets[0].rows[0].findings?.state).toBe('warning');
    expect(crosses(sheets[0])).toHaveLength(0);
    expect(drawnText(sheets[0])).toMatch(/ 1 ! .*Warning: /);
    expect(drawnText(sheets[0])).toContain('Warnings: No. 1.');
  });

  it('shows the gravest finding, and the band how many are not shown', () => {
    const [sheet] = checkedSheets(CLOSE).sheets;
    expect(sheet.rows[0].findings?.lines).toHaveLength(1);
    expect(sheet.rows[0].findings?.lines[0]).toMatch(/^Error/);
    expect(sheet.texts.findings[0]).toContain('2 findings of these holes not shown here.');
  });
});

describe('findings that name no hole', () => {
  it('are said once on a sheet, those of the layout of the sheets alone', () => {
    const [sheet] = checkedSheets(layoutOf([hole('a', [0, 0, 0])])).sheets;
    const said = sheet.texts.findings.slice(1);
    expect(said.length).toBeGreaterThan(0);
    for (const line of said) {
      expect(line).toMatch(/^(Error|Warning): /);
      expect(sheet.texts.findings.filter((other) => other === line)).toHaveLength(1);
    }
    const report = check([
      { name: 'other', data: JSON.stringify(layoutOf([hole('a', [0, 0, 0])], { id: 'T-2' })) },
      { name: 'own', data: JSON.stringify({ ...layoutOf([hole('a', [9000, 0, 0])]) }) },
    ]);
    const set = sheetsOf(
      packaged([hole('a', [9000, 0, 0])]),
      { package: 'P' },
      { check: { report, input: 1, together: ['x/other'], apart: [] } },
    );
    const own = report.causes.filter(({ input, holes }) => input === 2 && holes.length === 0);
    expect(set.sheets[0].texts.findings.slice(1)).toHaveLength(own.length);
    expect(set.sheets[0].texts.findings[0]).toContain('Checked together with other.');
  });
});

describe('accepted findings', () => {
  it('are named with owner and end, and close nothing', () => {
    const asOf = '2026-03-02T07:30:00-05:00';
    const options = { ...ONLY_CLOSE, purpose: 'for-drilling', asOf } as const;
    const report = check([{ name: 'x', data: JSON.stringify(CLOSE) }], options);
    const expires = '2026-06-30';
    const baseline = acceptFindings(report, {
      reason: 'Calculated',
      owner: 'Office <1>',
      expires,
      rules: ['holes-too-close'],
    });
    const [sheet] = checkedSheets(CLOSE, { options: { ...options, baseline } }).sheets;
    expect(sheet.rows[0].findings).toEqual({
      state: 'accepted',
      lines: [expect.stringMatching(/^Accepted by Office <1> until 2026-06-30: The hole lies 50 mm/)],
    });
    expect(crosses(sheet)).toHaveLength(0);
    expect(sheet.texts.findings[0]).toContain('Accepted for a time: No. 1, 2.');
    expect(drawnText(sheet)).not.toContain(DO_NOT);
  });
});

describe('what was not looked at', () => {
  it('is said: no check at all, one file alone, findings beyond the most that are kept', () => {
    const source = packaged([hole('a', [0, 0, 0])]);
    expect(drawnText(sheetsOf(source, { package: 'P' }).sheets[0])).toContain('this sheet was made without a check');
    const [alone] = checkedSheets(CLOSE, { options: ONLY_CLOSE }).sheets;
    expect(drawnText(alone)).toContain('Checked alone: layouts of other trades were not looked at.');
    const [cut] = checkedSheets(CLOSE, { options: { ...ONLY_CLOSE, sampleLimit: 1 } }).sheets;
    expect(cut.texts.findings.at(-1)).toMatch(/^\d findings? of the check not looked at here/);
  });

  it('is said of a name with a bad character without it', () => {
    const report = check([{ name: 'x', data: JSON.stringify(CLOSE) }]);
    const said = { report, input: 0, together: [], apart: ['a/\u202eb.json'] };
    const set = sheetsOf(packaged([hole('a', [0, 0, 0])]), { package: 'P' }, { check: said });
    expect(set.sheets[0].texts.findings[0]).toContain('cannot be compared with this layout: \\u202eb.json.');
  });
});
