import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/jobs/check.js';
import { acceptFindings } from '../../../src/policy/accept.js';
import { es } from '../../../src/report/languages/es.js';
import { htmlEs } from '../../../src/report/languages/html-es.js';
import { htmlEnglish } from '../../../src/report/html/phrases-en.js';
import { hole, layoutText, typeWithSpacing } from '../../jobs/small-layout.js';
import { pageOf } from './page-of.js';

const root = join(import.meta.dirname, '../../..');
const example = (name: string) => readFileSync(join(root, `examples/${name}.ahx.json`), 'utf8');
const poor = example('poor/poor');
const [sprinkler, duct] = ['sprinkler', 'duct'].map((name) => example(`ferry-terminal/${name}`));
const asOf = '2026-03-02T07:30:00-05:00';

/** Small words that stand in nearly every English sentence and in no Spanish one. */
const ENGLISH =
  /\b(the|of|is|are|and|or|not|with|from|its|it|has|have|which|where|than|there|here|hole|holes|level|depth|text|more)\b/i;

/** Functions of which one argument is a code: each code that there is. */
const CODES: Readonly<Record<string, readonly unknown[]>> = {
  'first.formOfFiles': ['pass', 'fail', 'cannot-judge'],
  'first.site': ['pass', 'fail', 'cannot-judge'],
  'trades.caption': [false, true],
  'unjudged.severity': ['off'],
  'unsaid.found': [{ error: 1, warning: 2, info: 3, accepted: 4 }],
};
/** Functions that are told by tables of their own, which have tests of their own. */
const TABLES = new Set(['choice', 'reason']);
const SIDES = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW', '+x', '−x', '+y', '−y'];
const [MARK, COUNTS] = ['\u00abx\u00bb', [1, 2, 88_001, 88_002]];

/** All that phrases say, by the path of the member; functions are called, once for one and once for many. */
function saidBy(value: unknown, path = ''): [path: string, said: string][] {
  const name = path.slice(1);
  if (TABLES.has(name)) return [];
  if (typeof value === 'string') return [[name, value]];
  if (typeof value === 'function') {
    const say = value as (...args: unknown[]) => string;
    const sides = name === 'gridDimensions.from' ? SIDES : undefined;
    if (sides) return sides.map((side) => [`${name} ${side}`, say(MARK, side, MARK)]);
    const codes = CODES[name];
    if (codes) return codes.map((code) => [`${name} ${code}`, say(code)]);
    // Counts are numbers for those who count, and texts of the layout for the rest.
    const takesTexts = say(MARK, MARK, MARK, MARK).includes(MARK) && !say(1, 1, 1, 1).match(/^\D*1 \p{L}/u);
    const lists = takesTexts ? [[MARK, MARK, MARK, MARK]] : [[1, 1, 1, 1], COUNTS.slice(2).concat(COUNTS.slice(2))];
    return lists.map((args) => [`${name} ${args[0]}`, say(...args)]);
  }
  return Object.entries(value as object).flatMap(([key, one]) => saidBy(one, `${path}.${key}`));
}

const english = saidBy(htmlEnglish.html);
const spanish = new Map(saidBy(htmlEs.html));

/** Words that are the same in both languages. */
const SAME = /^(mm|m|x|y|Id|RFI|N|Error)?$/;

describe('the Spanish words of the report for people', () => {
  it('are there for all that English says, and for nothing else', () => {
    const { rulesElsewhere, ...own } = Object.fromEntries(spanish);
    expect(Object.keys(own)).toEqual(english.map(([path]) => path));
    expect(rulesElsewhere).toContain('`ahx explain`');
    expect(english.length).toBeGreaterThan(280);
  });

  it('are other words than the English ones', () => {
    const wrong = english.filter(([path, said]) => {
      const own = spanish.get(path) ?? '';
      return (
        ENGLISH.test(own) || own === '' || /undefined|NaN|\[object/.test(own) || (own === said && !SAME.test(said))
      );
    });
    expect(wrong.filter(([path]) => !/^(frame.georeference|first.bytes|accepted.matched)/.test(path))).toEqual([]);
  });

  it('show every text and number that English shows', () => {
    const parts = (said: string) => said.match(/\u00abx\u00bb|\d+/g)?.sort() ?? [];
    for (const [path, said] of english) expect(parts(spanish.get(path) ?? ''), path).toEqual(parts(said));
  });

  it('know every choice of the format that the report shows', () => {
    const schemas = ['layout', 'report'].map((name) =>
      JSON.parse(readFileSync(join(root, `schema/0.1/bundle/${name}.schema.json`), 'utf8')),
    );
    const [{ $defs: layout }, { $defs: report }] = schemas;
    const shown = [
      [layout.change, 'kind'],
      [layout.submittal, 'purpose'],
      [layout.party, 'role'],
      [layout.source, 'kind'],
      [layout.controlPoint, 'class'],
      [layout.group, 'kind'],
      [layout.holeType, 'principle'],
      [layout.holeType, 'made'],
      [layout.holeType, 'form'],
      [report.input, 'kind'],
    ].flatMap(([definition, member]) => definition.properties[member].enum as string[]);
    expect(shown.length).toBeGreaterThan(50);
    const same = shown.filter((choice) => htmlEs.html.choice(choice) === choice);
    expect(same).toEqual(['inspector']);
    expect(htmlEs.html.choice('of-a-later-version')).toBe('of-a-later-version');
    expect(htmlEnglish.html.choice('engineer-of-record')).toBe('engineer of record');
    expect(htmlEnglish.html.choice('torque-controlled')).toBe('torque-controlled');
  });

  it('write west as O', () => {
    const { from } = htmlEs.html.gridDimensions;
    expect(['W', 'SW', 'NW'].map((side) => from('1 m', side as 'W', 'A'))).toEqual([
      '1 m al O de A',
      '1 m al SO de A',
      '1 m al NO de A',
    ]);
  });
});

/** Pieces of English phrases longer than 3 letters that no Spanish phrase has. */
const pieces = [...new Set(english.flatMap(([, said]) => said.split(/\u00abx\u00bb|\d+/)))]
  .map((piece) => piece.replace(/^\P{L}+|\P{L}+$/gu, ''))
  .filter((piece) => piece.length > 3)
  .filter((piece) => ![...spanish.values()].some((own) => hasWords(own, piece)));

/** Whether a text has these words, not as a piece of longer ones. */
function hasWords(text: string, words: string): boolean {
  for (let at = text.indexOf(words); at >= 0; at = text.indexOf(words, at + 1)) {
    const [before, behind] = [text[at - 1] ?? ' ', text[at + words.length] ?? ' '];
    if (!/[\p{L}\p{N}]/u.test(before + behind)) return true;
  }
  return false;
}

/** Texts that stand in the inputs. */
function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

/** What a reader sees of a page in its language, a text of an element each, without what the inputs bring in. */
function ownTexts(page: string, inputs: readonly string[], more: readonly string[] = []): string[] {
  const data = inputs
    .flatMap((text) => textsOf(JSON.parse(text)))
    .concat(more)
    .filter((text) => text.length > 2)
    .sort((a, b) => b.length - a.length);
  return (
    page
      .replace(/<(?!html)(\w+) lang="en">[^]*?<\/\1>/g, '')
      .replace(/<code>[^<]*<\/code>/g, '')
      .replaceAll('<wbr>', '')
      .replace(/counter\(pages?\)/g, '')
      .replace(/<style>[^]*?content: (.*);[^]*?<\/style>/, '<p>$1</p>')
      .split(/<[^>]*>/)
      .map((text) => text.replaceAll('&quot;', '"').replaceAll('&apos;', "'").replaceAll('&amp;', '&').trim())
      .map((text) => data.reduce((rest, one) => rest.replaceAll(one, ''), text))
      // Ids of rules, and names and pointers of members.
      .map((text) => text.replace(/[a-z]+(?:-[a-z0-9]+)+|"\w+"|\/\w+\/\d+|^\w+(?=: .* → )/g, ''))
      .filter((text) => text !== '')
  );
}

function englishLeft(texts: readonly string[]): string[] {
  return texts.filter((text) => ENGLISH.test(text) || pieces.some((piece) => hasWords(text, piece)));
}

/** The duct layout as it may have been before. */
function ductBefore(): string {
  const before = JSON.parse(duct);
  before.revision = { label: 'A' };
  before.parent = undefined;
  before.title = 'Old';
  for (const one of before.holes) if (/^DU-200[56]$/.test(one.id)) one.point[0] += 304.8;
  before.holes[0].tag = 'other';
  before.holes[1].depth = 77;
  before.holes.pop();
  before.holeTypes[0].diameter = 9;
  return JSON.stringify(before);
}

const crowded = layoutText({
  holeTypes: [typeWithSpacing(80)],
  holes: [...[0, 50].map((x, k) => hole(`H-${k}`, [x, 0, 0])), hole('B', [900, 0, 0], { substrate: undefined })],
});
const baseline = acceptFindings(check([{ name: 'a', data: crowded }], { asOf }), {
  reason: 'Calculado como grupo',
  owner: 'Ingenieros Inventados',
  expires: '2026-06-30',
});
const settings = { severities: { 'holes-coincide': 'off' }, ruleOptions: { 'off-surface': { limit: 20 } } } as const;

/** Each page with the inputs that it is made from. */
const PAGES: Readonly<Record<string, () => readonly [page: (language?: typeof htmlEs) => string, inputs: string[]]>> = {
  'of the poor example': () => [(language) => pageOf([poor], { language }), [poor]],
  'of two trades': () => [(language) => pageOf([sprinkler, duct], { language }, 'A4'), [sprinkler, duct]],
  'of what was changed': () => [
    (language) => pageOf([duct], { language }, undefined, [ductBefore()]),
    [duct, ductBefore()],
  ],
  'of what is accepted and set': () => [
    (language) => pageOf([crowded], { language, baseline, ...settings }),
    [crowded],
  ],
  'of part of the findings': () => [(language) => pageOf([crowded], { language, sampleLimit: 1 }), [crowded]],
  'of what cannot be read': () => [(language) => pageOf(['{'], { language }), []],
};

describe('the report for people in Spanish', () => {
  it.each(Object.keys(PAGES))('has no English left on the page %s', (name) => {
    const [page, inputs] = PAGES[name]();
    const text = page(htmlEs);
    expect(text).toContain('<html lang="es">');
    expect(englishLeft(ownTexts(text, inputs))).toEqual([]);
    // The same sieve finds English where there is some.
    expect(englishLeft(ownTexts(page(), inputs)).length).toBeGreaterThan(10);
  });

  it('says the same numbers as the English one', () => {
    for (const name of Object.keys(PAGES)) {
      const [page] = PAGES[name]();
      const [own, other] = [page(htmlEs), page()].map((text) => text.match(/<svg|<tr>|<section|<h[123]/g)?.join());
      expect(own, name).toBe(other);
    }
  });

  it('says once where the texts of the rules are', () => {
    const text = pageOf([poor], { language: htmlEs });
    expect(text.split('<code>ahx explain</code>')).toHaveLength(2);
    expect(text).not.toContain(htmlEs.html.causes.why);
    expect(pageOf([sprinkler], { language: htmlEs })).not.toContain('ahx explain');
  });

  it('gives grid dimensions, plans and page numbers in Spanish', () => {
    const text = pageOf([duct], { language: htmlEs });
    expect(text).toMatch(/ al O de 3, /);
    expect(text).toContain('NP: norte proyecto');
    expect(text).toContain('content: "Página " counter(page) " de " counter(pages)');
  });

  it('cuts no words of its own in the legends of the plans', () => {
    const inputs = [poor, sprinkler, duct, example('workshop-deck/workshop')];
    const names = inputs.flatMap((text) => (JSON.parse(text) as { trades: { name: string }[] }).trades);
    const cut = inputs
      .flatMap((text) => pageOf([text], { language: htmlEs }).match(/>[^<]+…</g) ?? [])
      .filter((text) => !['sprinker', ...names.map(({ name }) => name)].some((name) => text.startsWith(`>${name} (`)));
    expect(cut).toEqual([]);
  });

  it('marks the messages of a report in another language than the page', () => {
    const mixed = (language: typeof es, page: typeof htmlEs) =>
      pageOf([crowded], { language: page }, undefined, [], language);
    const text = mixed(es, htmlEnglish);
    expect(text).toContain('<html lang="en">');
    expect(text).toContain('<span lang="es">Hay perforaciones del tipo');
    expect(text).toContain(`<span lang="es">${es.phrases.caution}</span>`);
    expect(text).toContain('<h2 id="causes">Findings by cause</h2>');
    expect(mixed(htmlEnglish, htmlEs)).toContain('<span lang="en">Holes of type');
    expect(mixed(es, htmlEs)).not.toContain('<span lang=');
  });

  it('lets no words of a language end the style', () => {
    const language = { ...htmlEs, html: { ...htmlEs.html, page: ['"}</style><script>', '\\'] as const } };
    expect(pageOf([], { language })).toContain(
      'content: "\\22 \\7d \\3c \\2f style\\3e \\3c script\\3e  " counter(page)',
    );
  });
});
