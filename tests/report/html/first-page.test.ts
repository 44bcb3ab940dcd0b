import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/jobs/check.js';
import { acceptFindings } from '../../../src/policy/accept.js';
import { hole, layoutText, typeWithSpacing } from '../../jobs/small-layout.js';
import { pageOf } from './page-of.js';
import { seen } from './seen.js';

const asOf = '2026-03-02T07:30:00-05:00';
const ferry = ['sprinkler', 'duct'].map((name) =>
  readFileSync(join(import.meta.dirname, `../../../examples/ferry-terminal/${name}.ahx.json`), 'utf8'),
);
const crowded = layoutText({
  holeTypes: [typeWithSpacing(80)],
  holes: [hole('A', [0, 0, 0]), hole('B', [50, 0, 0]), hole('C', [900, 0, 0], { substrate: undefined })],
});
/** The box of the first page, as a reader sees it. */
const box = (...args: Parameters<typeof pageOf>) => seen(/<aside[^]*?<\/aside>/.exec(pageOf(...args))?.[0] ?? '');

describe('the first page of the report for people', () => {
  it('comes before changes, findings and plans, and these before what is looked up', () => {
    const baseline = acceptFindings(check([{ name: 'file 1', data: crowded }], { asOf }), {
      reason: 'Calculated as a group',
      owner: 'Invented Engineers',
      expires: '2026-06-30',
    });
    const ids = pageOf([crowded, ...ferry], { baseline }).match(/(?<=<h2 id=")[a-z]+/g);
    expect(ids?.join(' ')).toBe(
      'documents verdict changes causes accepted trades plans holes sources frame unjudged schedule review',
    );
  });

  it('counts findings and the rules that did not judge all, and says where these are', () => {
    const text = box([crowded]);
    expect(text).toMatch(/Findings: 2 errors, 0 warnings, 0 info\. What no rule is about is not found\./);
    const inPart = Number(/(\d+) rules? judged a part of what (?:it is|they are) about: see/.exec(text)?.[1]);
    const { coverage } = check([{ name: 'file 1', data: crowded }], { asOf });
    expect(inPart).toBe(coverage.filter(({ judged = 0, of = 0 }) => judged > 0 && judged < of).length);
    expect(inPart).toBeGreaterThan(0);
    expect(box([layoutText({ holes: [hole('H', [0, 0, 0])] })])).not.toContain('judged a part');
  });

  it('says that there was nothing to cross, or how much, and whether scans were looked for', () => {
    const none = 'No tendons, bars or services are in these files: nothing was there to cross.';
    const keepOut = {
      id: 'K',
      kind: 'tendon',
      shape: { sphere: { centre: [5000, 0, 50], radius: 10 } },
      standoff: 50,
      positionTolerance: 5,
      knownFrom: 'scan',
      substrate: 'S',
    };
    expect(box([layoutText()])).toContain(none);
    const text = box([layoutText({ keepOuts: [keepOut] })]);
    expect(text).toContain('judged against the 1 keep-out in these files;');
    expect(text).not.toContain(none);
    const off = { severities: { 'crosses-keep-out': 'off' } } as const;
    expect(box([layoutText({ keepOuts: [keepOut] })], off)).toContain(
      '1 keep-out is in these files; whether holes cross it was not judged.',
    );
    const scans = 'Whether the concrete was scanned was not looked at';
    expect(text).toContain(scans);
    expect(box([layoutText()], { purpose: 'for-drilling' })).not.toContain(scans);
    expect(box(['{'])).not.toContain(none);
  });

  it('names inputs whose messages are in another unit than the page', () => {
    const feet = { length: 'ft-in', fraction: 16 };
    const metric = layoutText({ id: 'T-2' });
    expect(box([layoutText({ display: feet }), metric])).toContain(
      'file 2 reads lengths in mm: messages about it are in that unit, the tables of this page in feet and inches.',
    );
    expect(box([layoutText({ display: feet }), layoutText({ id: 'T-2', display: feet })])).not.toContain(
      'in that unit',
    );
  });

  it('does not sound like leave to drill', () => {
    const text = seen(pageOf([layoutText({ holes: [hole('H', [0, 0, 0])] })]));
    expect(text).toContain('Site: no errors found by these checks.');
    expect(text).not.toMatch(/may stay|\bapproved\b|\bOK\b|\bsafe\b/);
  });
});

describe('each printed page of the report for people', () => {
  const footer = (text: string) => {
    const content = /@bottom-left \{ content: "([^"]*)"/.exec(text)?.[1] ?? '';
    return content.replace(/\\([0-9a-f]+) /g, (_, code) => String.fromCodePoint(Number.parseInt(code, 16)));
  };

  it('names title, layouts with their revisions and the time', () => {
    const labels = ferry.map((text) => (JSON.parse(text) as { revision: { label: string } }).revision.label);
    expect(footer(pageOf(ferry))).toBe(
      `Ferry terminal, Sample Bay (invented) · revision ${labels[0]} of SB-100-FP · revision ${labels[1]} of SB-100-DU\nAs of ${asOf}`,
    );
    expect(footer(pageOf([ferry[0]], { asOf: undefined }))).toMatch(/\nIssued 20\d\d-/);
  });

  it('names some of many layouts', () => {
    const many = Array.from({ length: 7 }, (_, k) => layoutText({ id: `T-${k}` }));
    expect(footer(pageOf(many))).toContain('revision A of T-3 · and 3 more\nAs of');
  });

  it('lets no title end the style or turn the text', () => {
    const evil = '"}</style><script>\\\u202e';
    const text = pageOf([layoutText({ id: `I${evil}`, revision: { label: evil }, project: { name: evil } })]);
    expect(text.match(/<\/style>/g)).toHaveLength(1);
    expect(text).not.toMatch(/<script|\\202e /);
    expect(footer(text)).toContain('"}</style><script>\\\\u202e\n');
  });
});

describe('the hole types of the report for people', () => {
  it('come with the spacings that were designed for groups', () => {
    const designed = (value: number, source: string) => ({ kind: 'plate', designSpacing: { value, source } });
    const groups = [
      ...Array.from({ length: 10 }, (_, k) => ({ id: `G${k}`, ...designed(60, 'Calculation 7') })),
      { id: 'X', ...designed(70, 'Calculation 8') },
      { id: 'none', kind: 'plate' },
    ];
    const text = seen(pageOf([layoutText({ groups })]));
    expect(text).toContain('plate 10 60 Calculation 7 G0, G1, G2, G3, G4, G5, G6, G7, … plate 1 70 Calculation 8 X');
    const many = Array.from({ length: 103 }, (_, k) => ({ id: `G${k}`, ...designed(60, `Calculation ${k}`) }));
    expect(seen(pageOf([layoutText({ groups: many })]))).toContain('And 3 more spacings of groups.');
  });
});
