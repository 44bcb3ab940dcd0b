import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/jobs/check.js';
import { acceptFindings } from '../../../src/policy/accept.js';
import { htmlEnglish } from '../../../src/report/html/phrases-en.js';
import { htmlEs } from '../../../src/report/languages/html-es.js';
import { hole, layoutText, smallLayout, typeWithSpacing } from '../../jobs/small-layout.js';
import { manyFindings } from './many-findings.js';
import { pageOf as page } from './page-of.js';
import { seen } from './seen.js';

const asOf = '2026-03-02T07:30:00-05:00';
const examples = join(import.meta.dirname, '../../../examples');
const ferry = ['sprinkler', 'duct'].map((name) =>
  readFileSync(join(examples, `ferry-terminal/${name}.ahx.json`), 'utf8'),
);

describe('the report for people', () => {
  it('says on its first page who hands over what, under which revision', () => {
    const text = seen(page(ferry));
    for (const said of [
      'Ferry terminal, Sample Bay (invented)',
      'Project number SB-100',
      'Submittal SB-FP-014',
      'Spec section 21 05 29',
      'Revision B Supersedes A',
      'Valid AHX 0.1.',
      'Site checks (for review): 0 errors, 0 warnings on 60 holes.',
      'Level 1, waiting hall 60',
      'Heights count from Quay datum',
    ])
      expect(text).toContain(said);
  });

  it('is the same for the same inputs', () => {
    expect(page(ferry)).toBe(page(ferry));
  });

  it('has no script and nothing from outside', () => {
    const text = page(ferry);
    expect(text).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
    expect(text).not.toMatch(/<script|<link|<img|<iframe|\son[a-z]+=|javascript:|@import|url\((?!#)/i);
    expect(text.match(/(?:href|src)="[^"#][^"]*"/g)).toBeNull();
    expect(new Set(text.match(/https?:\/\/[^"\s]*/g))).toEqual(new Set(['http://www.w3.org/2000/svg']));
  });

  it('says that nothing was found by the rules that ran', () => {
    expect(seen(page([layoutText({ holes: [hole('H', [0, 0, 0])] })]))).toContain(
      'Nothing was found by the rules that ran.',
    );
  });

  it('lists every cause with its holes, why it matters and what mends it', () => {
    const holes = [0, 50].map((x, k) => hole(`H-${k}`, [x, 0, 0], { tag: `T${k}` }));
    const text = seen(page([layoutText({ holeTypes: [typeWithSpacing(80)], holes })]));
    expect(text).toContain('Holes of type "T" lie closer than 80 mm');
    expect(text).toContain('Holes: H-0 (tag T0), H-1 (tag T1)');
    expect(text).toContain('Why it matters:');
    expect(text).toContain('What mends it:');
  });

  it('shows what is accepted, by whom and until when, apart from what is found', () => {
    const holes = [0, 50].map((x, k) => hole(`H-${k}`, [x, 0, 0]));
    const layout = layoutText({ holeTypes: [typeWithSpacing(80)], holes });
    const baseline = acceptFindings(check([{ name: 'a', data: layout }], { asOf }), {
      reason: 'Calculated as a group',
      owner: 'Invented Engineers',
      expires: '2026-06-30',
    });
    const text = seen(page([layout], { baseline }));
    expect(text).toContain('Nothing that is not accepted was found; 2 findings are accepted, see below.');
    expect(text).toMatch(
      /holes-too-close .* H-0, H-1 2 of 2 Calculated as a group Invented Engineers 2026-06-30 in force/,
    );
  });

  it('says what was not judged and what was set', () => {
    const text = seen(
      page([layoutText({ holes: [hole('A', [0, 0, 0]), hole('B', [900, 0, 0], { substrate: undefined })] })], {
        severities: { 'holes-coincide': 'off' },
        ruleOptions: { 'off-surface': { limit: 20 } },
      }),
    );
    expect(text).toContain('off-surface The height of a hole is not that of the face that is drilled. 1 of 2');
    expect(text).toContain('off unless asked for, or were switched off:');
    expect(text).toContain('holes-coincide severity off');
    expect(text).toContain('off-surface limit = 20');
  });

  it('names the pairs of trades that have to talk', () => {
    const two = ['A', 'B'].map((id, k) =>
      layoutText({
        id,
        trades: [{ id: `T${k}`, name: `Trade ${k}` }],
        holes: [hole('H', [0, 0, 0], { trade: `T${k}` })],
      }),
    );
    expect(seen(page(two))).toMatch(/Between trades .*T1 T0 holes-coincide 1/);
    const inputs = two.map((data, k) => ({ name: `file ${k + 1}`, data }));
    const baseline = acceptFindings(check(inputs, { asOf }), {
      reason: 'One rod for both',
      owner: 'Invented Engineers',
      expires: '2026-06-30',
    });
    const accepted = seen(page(two, { baseline }));
    expect(accepted).toMatch(/holes-coincide .* One rod for both/);
    expect(accepted).not.toContain('Between trades');
    const unkept = seen(page(two, { sampleLimit: 0 }));
    expect(unkept).toMatch(/Between trades Only 0 of \d+ findings? were kept one by one\./);
  });

  it('shows what was changed against the revision before, or what is declared where that is not at hand', () => {
    expect(seen(page([ferry[1]]))).toMatch(
      /Changes that a layout declares; .* SB-100-DU moved DU-2005, DU-2006 The lighting conduit/,
    );
    const before = JSON.parse(ferry[1]) as {
      holes: { id: string; point: number[] }[];
      revision: unknown;
      parent?: unknown;
    };
    before.revision = { label: 'A' };
    before.parent = undefined;
    for (const one of before.holes) if (/^DU-200[56]$/.test(one.id)) one.point[0] += 304.8;
    const text = seen(page([ferry[1]], {}, undefined, [JSON.stringify(before)]));
    expect(text).toContain('SB-100-DU: revision A to B 24 holes before, 24 now; 24 are in both, 22 of them unchanged.');
    expect(text).toContain('The layout names the revision before as the one it was made from.');
    expect(text).toContain('D3R (DU-2005)');
    expect(text).not.toContain('Changes that a layout declares');
  });

  it('gives the grid dimensions, the height and its reference of each hole', () => {
    const text = seen(page([ferry[0]]));
    expect(text).toContain('Heights above Quay datum');
    expect(text.match(/ [NESW] of [0-9A-Z]+, /g)?.length).toBeGreaterThanOrEqual(36);
  });

  it('counts holes on the level of their substrate, and tells levels of two buildings apart', () => {
    const [slab] = smallLayout.substrates;
    const text = layoutText({
      buildings: ['Tower', 'Hall'].map((name, k) => ({ id: `B${k}`, name })),
      levels: [0, 1].map((k) => ({ id: `L${k}`, name: 'Level 1', building: `B${k}` })),
      substrates: [0, 1].map((k) => ({ ...slab, id: `S${k}`, level: `L${k}` })),
      holes: [0, 1, 2].map((k) => hole(`H${k}`, [k * 900, 0, 0], { substrate: `S${k % 2}` })),
    });
    const said = seen(page([text]));
    expect(said).toContain('Holes by level Level Holes Level 1, Tower 2 Level 1, Hall 1');
    expect(said).not.toContain('No level given');
    expect(said).toContain('Level Building Level 1 Tower Level 1 Hall');
    for (const caption of ['T-1: Level 1, Tower Tag', 'T-1: Level 1, Hall Tag', 'Tower · Level 1', 'Hall · Level 1'])
      expect(said).toContain(caption);
    const alike = layoutText({
      levels: [0, 1].map((k) => ({ id: `L${k}`, name: 'Level 1' })),
      holes: [0, 1].map((k) => hole(`H${k}`, [k * 900, 0, 0], { level: `L${k}` })),
    });
    expect(seen(page([alike]))).toContain('Level 1 (L0) 1 Level 1 (L1) 1');
  });

  it('is made of what can be read where files are broken, and of nothing at all', () => {
    for (const text of [
      '',
      '{',
      '[]',
      '{"ahx":"0.1","kind":"layout","holes":[{},7,null,{"id":"H"}]}',
      layoutText({ levels: 7, trades: [{}] }),
    ])
      expect(page([text])).toMatch(/^<!doctype html>[^]*<\/html>\n$/);
    expect(page([])).toContain('</html>');
  });

  it('tells the paper on request', () => {
    expect(page([ferry[0]], {}, 'A4')).toContain('@page { size: A4; }');
    expect(page([ferry[0]])).not.toContain('@page { size');
  });

  it.each([htmlEnglish, htmlEs])('lets no string of a file become markup in $tag', (language) => {
    const evil = '"><script>alert(1)</script><img src=x onerror=alert(1)>&lt;\u0000\u202e{{x}}`';
    const before = JSON.parse(ferry[1]) as { holes: { tag?: string; point: number[] }[] };
    before.holes[0].point[0] += 100;
    before.holes[1].tag = 'other';
    before.holes.pop();
    const inputs = [spoil(JSON.parse(ferry[1]), evil), spoil(smallLayout, evil)].map((one) => JSON.stringify(one));
    const text = page(inputs, { language }, undefined, [JSON.stringify(spoil(before, evil))]);
    expect(text).not.toMatch(/<script|<img|\u202e/);
    expect(text).not.toContain('\u0000');
    expect(text).toContain('&lt;script&gt;alert(1)');
    expect(text).toContain('id="changes"');
    expect(tagsOf(text).filter((tag) => /\son[a-z]+=/.test(tag.replace(/"[^"]*"/g, '')))).toEqual([]);
    expect(balance(text)).toEqual([]);
  });

  it('stays well-formed whatever the strings are', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (any) => {
        for (const language of [undefined, htmlEs])
          expect(balance(page([JSON.stringify(spoil(smallLayout, any))], { language }))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('of 10,000 holes and 500 findings has at most 3 MB, and lists no more holes than it says', () => {
    const layouts = manyFindings();
    const checker = page(layouts.map((layout) => JSON.stringify(layout)));
    expect(checker.length).toBeLessThan(3_000_000);
    expect(seen(checker)).toMatch(/ 4\d\d errors, 0 warnings, 1\d\d info/);
    expect(checker.split('<tr><th scope="row">').length).toBeGreaterThan(10_000);
    layouts[0].holes.push({ ...layouts[0].holes[0], id: 'one more' });
    expect(seen(page(layouts.map((layout) => JSON.stringify(layout))))).toContain('1 more hole is not listed here');
  });
});

/** The same with a string added to every string that is no enum, id reference or version. */
function spoil(value: unknown, by: string): unknown {
  if (Array.isArray(value)) return value.map((one) => spoil(one, by));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, member]) => [
      name,
      typeof member === 'string' &&
      /^(id|title|name|note|label|firm|person|contact|tag|source|number|system|place|reason|rod|trade|holeType|substrate|level)$/.test(
        name,
      )
        ? `${member}${by}`
        : spoil(member, by),
    ]),
  );
}

function tagsOf(text: string): string[] {
  return text.match(/<[a-z][^>]*>/g) ?? [];
}

const VOID = new Set(['meta', 'br', 'wbr', 'path', 'rect', 'circle', 'use', 'line']);

/** Elements that are left open or closed twice. */
function balance(text: string): string[] {
  const open: string[] = [];
  for (const [, slash, name, end] of text
    .replace(/<style>[^]*?<\/style>/, '')
    .matchAll(/<(\/?)([a-zA-Z][a-zA-Z0-9]*)\b[^>]*?(\/?)>/g)) {
    if (slash === '/') {
      if (open.pop() !== name) return [`</${name}>`];
    } else if (end !== '/' && !VOID.has(name)) open.push(name);
  }
  return open;
}
