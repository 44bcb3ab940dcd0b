import { describe, expect, it } from 'vitest';
import { check, type CheckInput, type CheckOptions } from '../../src/jobs/check.js';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { acceptFindings } from '../../src/policy/accept.js';
import type { Phrases } from '../../src/model/language.js';
import { placeInWords } from '../../src/report/build-report.js';
import { es } from '../../src/report/languages/es.js';
import { textReport, verdictLines } from '../../src/report/text.js';
import { hole, layoutText, typeWithSpacing } from '../jobs/small-layout.js';
import { cause, coverage, finding, reportOf } from './synthetic-report.js';

function text(
  members: Record<string, unknown>,
  options: CheckOptions & { most?: number; colour?: boolean } = {},
): string {
  const { most = 5, colour = false, ...rest } = options;
  const report = check([{ name: 'level 3', data: layoutText(members) }], rest);
  return textReport(report, { colour, findingsOfCause: most });
}

function verdicts(inputs: (string | CheckInput)[], options?: CheckOptions): string[] {
  return verdictLines(
    check(
      inputs.map((input) => (typeof input === 'string' ? { name: 'a', data: input } : input)),
      options,
    ),
  );
}

const spaced = { holeTypes: [typeWithSpacing(80)] };

describe('the text report', () => {
  it('of nothing found is the two verdicts and the caution', () => {
    expect(text({})).toBe(
      `Valid AHX 0.1.\nSite checks (for review): 0 errors, 0 warnings on 1 hole.\n\n${SHORT_CAUTION}\n`,
    );
  });

  it('tells a cause with one finding in two lines: what, and where', () => {
    expect(text({ holes: [hole('H-1', [0, 0, 0]), hole('H-2', [0, 0, 0.4], { tag: 'B 7' })] })).toMatchInlineSnapshot(`
      "level 3
        error   The hole lies at the place of hole "H-1" of the same trade (0.4 mm apart). [holes-coincide]
                hole H-2 (tag B 7), line 1, column 635

      Valid AHX 0.1.
      Site checks (for review): 1 error, 0 warnings in 1 cause on 2 holes.

      Layout data only. Not a design, not a permit to drill. Follow product approvals, local law and site rules; scan and permit still apply.
      "
    `);
  });

  it('tells a cause with several findings once, then the first of them', () => {
    const holes = [0, 1, 2, 3].map((k) => hole(`H-${k}`, [k * 50, 0, 0]));
    expect(text({ ...spaced, holes }, { most: 2 })).toMatchInlineSnapshot(`
      "level 3
        error   Holes of type "T" lie closer than 80 mm to holes of type "T" (invented). [holes-too-close]
                4 findings, the first at line 1, column 608; holes H-0, H-1, H-2, H-3
                - hole H-0: The hole lies 50 mm from hole "H-1"; at least 80 mm is needed (invented). (line 1, column 608)
                - hole H-1: The hole lies 50 mm from hole "H-0"; at least 80 mm is needed (invented). (line 1, column 681)
                - and 2 more

      Valid AHX 0.1.
      Site checks (for review): 4 errors, 0 warnings in 1 cause on 4 holes.

      Layout data only. Not a design, not a permit to drill. Follow product approvals, local law and site rules; scan and permit still apply.
      "
    `);
  });

  it('tells a cause whose findings all say the same without repeating them', () => {
    const holes = ['A', 'B', 'C'].map((id, k) => hole(id, [k * 500, 0, 0], { depth: 990 }));
    const type = { ...typeWithSpacing(80), backing: { value: 20, source: 'invented' } };
    expect(text({ holeTypes: [type], holes })).toMatchInlineSnapshot(`
      "level 3
        error   Holes need more concrete than the 1000 mm of substrate "S". [breaks-through]
                3 findings, the first at line 1, column 587; holes A, B, C

      Valid AHX 0.1.
      Site checks (for review): 3 errors, 0 warnings in 1 cause on 3 holes.

      Layout data only. Not a design, not a permit to drill. Follow product approvals, local law and site rules; scan and permit still apply.
      "
    `);
  });

  it('says what was set otherwise than usual', () => {
    const options = { severities: { 'holes-coincide': 'off' as const }, ruleOptions: { 'off-surface': { limit: 20 } } };
    expect(text({}, options)).toContain('  set for this check: holes-coincide=off, off-surface.limit=20\n');
    expect(text({})).not.toContain('set for this check');
  });

  it('says how many holes were judged where not all were', () => {
    const holes = [hole('A', [0, 0, 0]), hole('B', [500, 0, 0], { depth: 'x' })];
    expect(text({ holes })).toContain(' on 2 holes, 1 of them judged');
    // Types that are plainly in inches put the whole layout in doubt.
    const inches = { ...typeWithSpacing(3), diameter: 0.375, depth: 2.5, bit: { nominal: '3/8 in' } };
    expect(text({ holeTypes: [inches] })).toContain(' on 1 hole, 0 of them judged');
  });

  it('names eight holes of a cause and says that there are more', () => {
    const holes = Array.from({ length: 12 }, (_, k) => hole(`H-${k}`, [k * 50, 0, 0]));
    expect(text({ ...spaced, holes }, { most: 1 })).toContain('; holes H-0, H-1, H-2, H-3, H-4, H-5, H-6, H-7, …\n');
  });

  it('says how many are listed where not all are', () => {
    const holes = [hole('H-1', [0, 0, 0]), hole('h-1', [50, 0, 0])];
    expect(text({ ...spaced, holes }, { sampleLimit: 1 })).toMatchInlineSnapshot(`
      "level 3
        error   Holes of type "T" lie closer than 80 mm to holes of type "T" (invented). [holes-too-close]
                2 findings, the first at line 1, column 608; holes H-1, h-1
                - hole H-1: The hole lies 50 mm from hole "h-1"; at least 80 mm is needed (invented). (line 1, column 608)
                - and 1 more
        warning The id "h-1" differs from "H-1" only in the case of letters. [lookalike-id]
                hole h-1, line 1, column 623

      1 of 3 findings are listed; the numbers below count all of them.

      Valid AHX 0.1.
      Site checks (for review): 2 errors, 1 warning in 2 causes on 2 holes.

      Layout data only. Not a design, not a permit to drill. Follow product approvals, local law and site rules; scan and permit still apply.
      "
    `);
  });

  it('says what was not judged, and why', () => {
    const shown = text({ holes: [hole('H-1', [0, 0, 0]), hole('H-2', [90, 0, 0], { depth: 'x' })] });
    expect(shown).toMatch(
      /^ {2}not judged: 1 left out: record broken \(off-surface, \S+ and \d+ more rules; --format json lists them\)$/m,
    );
  });

  it('names the rules of a reason up to six; of more it counts what it does not name', () => {
    const reason = '2 left out: depth not known';
    const rows = (count: number) =>
      Array.from({ length: count }, (_, k) => coverage(`rule-${k}`, { judged: 1, of: 3, reason }));
    const shown = (count: number) =>
      textReport(reportOf({ coverage: rows(count) }), { colour: false, findingsOfCause: 5 });
    expect(shown(6)).toContain(`  not judged: ${reason} (rule-0, rule-1, rule-2, rule-3, rule-4, rule-5)\n`);
    expect(shown(20)).toContain(
      `  not judged: ${reason} (rule-0, rule-1 and 18 more rules; --format json lists them)\n`,
    );
  });

  it('keeps the causes of each input under its name, the gravest first', () => {
    const report = check([
      { name: 'good', data: layoutText({ id: 'good', holes: [hole('G', [5000, 0, 0])] }) },
      {
        name: 'first',
        data: layoutText({ id: 'first', holes: [hole('a', [0, 0, 0]), hole('A', [90, 0, 0]), hole('b', [90, 0, 0])] }),
      },
      { name: 'second', data: layoutText({ id: 'second', colour: 'red', holes: [] }) },
    ]);
    const lines = textReport(report, { colour: false, findingsOfCause: 5 }).split('\n');
    const heads = lines
      .filter((line) => /^\S|^ {2}(error|warning)/.test(line))
      .map((line) => line.replace(/^ {2}(\w+).*\[(.*)\]$/, '  $1 $2'));
    expect(heads.slice(0, -3)).toEqual([
      'first',
      '  error holes-coincide',
      '  warning lookalike-id',
      'second',
      '  error unknown-member',
    ]);
  });

  it('writes lengths as the project reads them', () => {
    const display = { length: 'ft-in', fraction: 8 };
    expect(
      text({ ...spaced, display, holes: [hole('H-1', [0, 0, 0]), hole('H-2', [79.9, 0, 0])] }, { most: 1 }),
    ).toContain(`The hole lies 0'-3 1/8" (79.9 mm) from hole "H-2"; at least 0'-3 1/8" (80 mm) is needed`);
  });

  it('has colour only where it is asked for, and the same words', () => {
    const holes = { holes: [hole('a', [0, 0, 0]), hole('A', [0, 0, 0])] };
    const coloured = text(holes, { colour: true });
    expect(coloured).toContain('\u001b[31merror  \u001b[0m');
    expect(coloured).toContain('\u001b[33mwarning\u001b[0m');
    expect(coloured.replaceAll(/\p{Cc}\[\d+m/gu, '')).toBe(text(holes));
  });

  it('shows nothing that could rule a terminal', () => {
    const wild = layoutText({ 'a\u001b[2Jb\nc': 1, holes: [hole('H\u001b[31m', [0, 0, 0], { tag: '\u0007x' })] });
    const shown = textReport(check([{ name: 'x\u001b]0;y', data: wild }]), { colour: false, findingsOfCause: 5 });
    expect(shown).toContain('AHX has no member "a\\u001b[2Jb\\u000ac" here.');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not come out
    expect(shown).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
  });
});

describe('a baseline in the text report', () => {
  const asOf = '2026-03-02T07:30:00-05:00';
  const holes = [0, 50].map((x, k) => hole(`H-${k}`, [x, 0, 0]));
  const accepted = acceptFindings(check([{ name: 'a', data: layoutText({ ...spaced, holes }) }], { asOf }), {
    reason: 'Agreed\u001b[31m with the designer',
    owner: 'Invented Engineers',
    expires: '2026-06-30',
  });

  it('shows what is accepted, until when, by whom and why', () => {
    expect(text({ ...spaced, holes }, { asOf, baseline: accepted })).toMatchInlineSnapshot(`
      "level 3
        accepted Holes of type "T" lie closer than 80 mm to holes of type "T" (invented). [holes-too-close]
                2 findings; holes H-0, H-1
                error, accepted until 2026-06-30 by Invented Engineers: Agreed\\u001b[31m with the designer

      Valid AHX 0.1.
      Site checks (for review): 0 errors, 0 warnings on 2 holes; 2 more findings accepted.

      Layout data only. Not a design, not a permit to drill. Follow product approvals, local law and site rules; scan and permit still apply.
      "
    `);
  });

  it('names the hole of a single finding that is accepted', () => {
    const entry = { rule: 'holes-too-close', layout: 'L', reason: 'agreed', owner: 'EC', expires: '2027-01-01' };
    const report = reportOf({
      causes: [cause(1, { accepted: 1 })],
      findings: [finding({ accepted: 1 })],
      baseline: {
        entries: [{ ...entry, state: 'in-force', findings: 1, matched: 1 }],
        counts: { error: 1, warning: 0, info: 0 },
      },
    });
    const of = (phrases?: Phrases) => textReport(report, { colour: false, findingsOfCause: 5, phrases });
    expect(of()).toContain('          1 finding; hole H-1\n');
    expect(of(es.phrases)).toContain('          1 hallazgo; perforación H-1\n');
  });

  it('says what has run out and counts it again', () => {
    const later = text({ ...spaced, holes }, { asOf: '2026-07-01T00:00:00Z', baseline: accepted });
    expect(later).toContain(
      '  ran out on 2026-06-30: the acceptance of holes-too-close in "T-1" by Invented Engineers; 2 findings count again\n',
    );
    expect(later).toContain('2 errors, 0 warnings in 1 cause on 2 holes; 0 more findings accepted.');
  });

  it('says what is there no more', () => {
    expect(text({ ...spaced, holes: [holes[0]] }, { asOf, baseline: accepted })).toContain(
      '  stale: 1 of 1 entries of the baseline have no finding left, 0 only some; it can be pruned\n',
    );
  });
});

describe('the two verdicts', () => {
  const good = layoutText();

  it('keep form and site apart', () => {
    expect(verdicts([good])).toEqual(['Valid AHX 0.1.', 'Site checks (for review): 0 errors, 0 warnings on 1 hole.']);
    expect(verdicts([layoutText({ colour: 'red', shape: 1 })])[0]).toBe('Not valid AHX 0.1: 2 errors.');
    expect(verdicts([layoutText({ holes: [hole('A', [0, 0, 0]), hole('B', [0, 0, 0])] })])).toEqual([
      'Valid AHX 0.1.',
      'Site checks (for review): 1 error, 0 warnings in 1 cause on 2 holes.',
    ]);
  });

  it('say what cannot be judged', () => {
    expect(verdicts([layoutText({ ahx: '0.2' })])).toEqual([
      'Cannot judge whether this is valid AHX 0.1.',
      'Site checks (for review): cannot judge all of it; 0 errors, 0 warnings on 1 hole.',
    ]);
    expect(verdicts(['{'])[1]).toContain('cannot judge all of it');
  });

  it('count infos where there are some, and rules that were not run', () => {
    const bar = {
      id: 'B',
      kind: 'bar',
      standoff: 5,
      knownFrom: 'design-drawing',
      shape: { sphere: { centre: [0, 0, 0], radius: 5 } },
    };
    expect(verdicts([layoutText({ keepOuts: [bar], holes: [hole('A', [0, 0, 0], { axis: [0, 0, 1] })] })])[1]).toBe(
      'Site checks (for review): 0 errors, 0 warnings, 1 info in 1 cause on 1 hole.',
    );
  });

  it('count rules that found nothing they could judge, but not those that are off', () => {
    const unplaced = layoutText({ holes: [hole('A', [0, 0, 0], { substrate: undefined })] });
    expect(verdicts([unplaced], { severities: { 'holes-coincide': 'off' } })[1]).toBe(
      'Site checks (for review): 0 errors, 0 warnings on 1 hole; 5 rules not run, 1 rule set otherwise.',
    );
  });

  it('count the rules that were set, and say that a baseline was applied even if it accepts nothing', () => {
    const severities = { 'holes-coincide': 'info' as const, 'off-surface': 'warning' as const };
    const options = { severities, ruleOptions: { 'off-surface': { limit: 20 } } };
    expect(verdicts([good], options)[1]).toBe(
      'Site checks (for review): 0 errors, 0 warnings on 1 hole; 2 rules set otherwise.',
    );
    const counts = { error: 0, warning: 0, info: 0 };
    expect(verdictLines(reportOf({ baseline: { entries: [], counts } }))[1]).toContain('; 0 more findings accepted.');
    expect(verdictLines(reportOf())[1]).not.toContain('accepted');
  });

  it('count rules that judged only a part of their records', () => {
    const placed = hole('A', [0, 0, 0]);
    const unplaced = hole('B', [500, 0, 0], { substrate: undefined });
    expect(verdicts([layoutText({ holes: [placed, unplaced] })])[1]).toBe(
      'Site checks (for review): 0 errors, 0 warnings on 2 holes; 1 rule not run, 4 rules run in part.',
    );
  });

  it('count the holes of all inputs', () => {
    expect(verdicts([good, good, layoutText({ holes: [] })])[1]).toContain(' on 2 holes.');
  });

  it('name the purpose', () => {
    expect(verdicts([good], { purpose: 'for-closeout' })[1]).toMatch(/^Site checks \(for closeout\): /);
  });

  it('never say that a hole may be drilled', () => {
    for (const line of verdicts([good])) expect(line).not.toMatch(/safe|clear|approved|ok\b/i);
  });
});

describe('a place in words', () => {
  it('is line and column, row and column, the byte, or the place in the profile', () => {
    expect(placeInWords({ pointer: '/a', line: 12, column: 5, byte: 99 })).toBe('line 12, column 5');
    expect(placeInWords({ row: 7, column: 3 })).toBe('row 7, column 3');
    expect(placeInWords({ row: 7 })).toBe('row 7');
    expect(placeInWords({ row: 7, column: 3, sheet: 'L3' })).toBe('sheet L3, row 7, column 3');
    expect(placeInWords({ byte: 0 })).toBe('byte 0');
    expect(placeInWords({ pointer: '/layout/frame' })).toBe('profile /layout/frame');
    expect(placeInWords({})).toBe('the profile');
  });
});
