import { describe, expect, it } from 'vitest';
import { saidPair } from '../../../src/report/html/said-values.js';
import { formatFeetInches } from '../../../src/units/format-feet-inches.js';
import { layoutForm } from '../../../src/write/layout-forms.js';
import { hole, layoutText, smallLayout } from '../../jobs/small-layout.js';
import { pageOf } from './page-of.js';
import { seen } from './seen.js';

const [type] = smallLayout.holeTypes;
const display = { length: 'ft-in', fraction: 2 };
const newer = (members: Record<string, unknown>) =>
  layoutText({ display, revision: { label: 'B' }, parent: { layout: 'T-1', revision: 'A' }, ...members });
const changed = (after: Record<string, unknown>, before: Record<string, unknown> = {}) =>
  seen(pageOf([newer(after)], {}, undefined, [layoutText({ display, ...before })]));

describe('the changes in the report for people', () => {
  it('tell lengths apart that look alike in the unit of the project', () => {
    const holes = (depth: number, x: number) => [hole('H', [x, 0, 0], { depth })];
    const text = changed({ holes: holes(13, 100.3) }, { holes: holes(12.7, 100) });
    expect(text).toContain(`depth: 0'-0 1/2" (12.7 mm) → 0'-0 1/2" (13 mm)`);
    expect(text).toContain(`0'-0" (0.3 mm)`);
    expect(changed({ holes: holes(25.4, 0) }, { holes: holes(12.7, 0) })).toContain(`depth: 0'-0 1/2" → 0'-1"`);
  });

  it('write lengths inside of objects and lists in the unit of the project', () => {
    const typed = (value: number, depthTolerance: number[]) => ({
      holeTypes: [{ ...type, depthTolerance, minSpacing: { value, source: 'invented' } }],
      levels: [{ id: 'L', name: 'L', elevation: 0, soffits: [value * 10] }],
    });
    const text = changed(typed(101.6, [0, 25.4]), typed(76.2, [0, 12.7]));
    expect(text).toContain(`depthTolerance: [0'-0", 0'-0 1/2"] → [0'-0", 0'-1"]`);
    expect(text).toContain(`minSpacing: {value 0'-3"; source "invented"} → {value 0'-4"; source "invented"}`);
    expect(text).toContain(`soffits: [2'-6"] → [3'-4"]`);
    expect(text).toContain('lengths in feet and inches');
  });

  it('show of long values the piece that differs', () => {
    const points = Array.from({ length: 400 }, (_, k) => [k * 304.8, 0, 0]);
    const other = points.map((point, k) => (k === 300 ? [0, 304.8, 0] : point));
    const say = (mm: number) => formatFeetInches(mm, 2);
    const [from, to] = saidPair([points, other], layoutForm.areas, say, 'none');
    const outline = saidPair([{ points }, { points: other }], layoutForm.substrates, say, 'none');
    expect(from).not.toBe(to);
    expect(outline[0]).not.toBe(outline[1]);
    for (const text of [from, to, ...outline]) expect(text.length).toBeLessThanOrEqual(120);
    const said = saidPair([points, other], 'mm', say, 'none');
    expect(said[0]).toContain(`[300'-0", 0'-0", 0'-0"]`);
    expect(said[1]).toContain(`[0'-0", 1'-0", 0'-0"]`);
    const crossing = `${'x'.repeat(200)}\u{1f529}`;
    expect(saidPair([`${crossing}1`, `${crossing}2`], 'plain', say, 'none').join()).not.toMatch(
      /(?<![\ud800-\udbff])[\udc00-\udfff]/,
    );
  });

  it('give the reason and the RFI of what is declared', () => {
    const moved = { holes: [hole('H', [50, 0, 0])] };
    const text = changed(
      { ...moved, changes: [{ kind: 'moved', holes: ['H'], reason: 'A duct came', question: 'RFI-7' }] },
      { holes: [hole('H', [0, 0, 0])] },
    );
    expect(text).toContain('Changes that the layout declares');
    expect(text).toContain('change 1 moved H A duct came RFI-7');
    expect(text).not.toContain('not declared');
  });

  it('are named on the first page where they are not declared, of another parent or of one label', () => {
    const before = { holes: [hole('H', [0, 0, 0]), hole('I', [900, 0, 0])] };
    const first = (text: string) => text.slice(0, text.indexOf(' Changes T-1: revision'));
    const text = first(changed({ holes: [hole('H', [50, 0, 0])], parent: { layout: 'T-1', revision: '0' } }, before));
    expect(text).toContain('T-1: 2 changes since revision A are not declared.');
    expect(text).toContain('T-1: the layout says that it was made from another revision than A');
    expect(text).not.toContain('both revisions');
    const alike = first(changed({ ...before, revision: { label: 'A' } }, before));
    expect(alike).not.toMatch(/both revisions|not declared/);
    const other = first(changed({ holes: [hole('H', [50, 0, 0])], revision: { label: 'A' } }, before));
    expect(other).toContain('T-1: both revisions are labelled A, and they are not alike.');
  });

  it('are not said to lack the revision before where the new one cannot be read', () => {
    const changes = [{ kind: 'moved', holes: ['H'], reason: 'A duct came' }];
    const cut = newer({ changes, holes: [hole('H', [50, 0, 0])] }).slice(0, -1);
    const text = seen(pageOf([cut], {}, undefined, [layoutText()]));
    expect(text).not.toContain('was not at hand');
    expect(text).toContain('T-1 could not be read to its end, so that it is not held against the revision before');
    expect(text).toContain('which could not be held against the revision before');
    expect(text).toContain('A duct came');
  });
});
