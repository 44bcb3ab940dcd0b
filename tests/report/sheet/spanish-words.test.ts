import { describe, expect, it } from 'vitest';
import { ENGLISH_SHEET_WORDS } from '../../../src/report/sheet/english-sheet-words.js';
import { es } from '../../../src/report/languages/es.js';
import { sheetWords } from '../../../src/report/languages/es/sheet.js';
import { hole, typeWithSpacing } from '../../jobs/small-layout.js';
import { checkedSheets, drawnText, layoutOf } from './checked-sheets.js';
import { exampleSource } from './sheet-source.js';
import { sheetsOf } from '../../../src/jobs/sheet.js';

/** Small words that stand in nearly every English sentence and in no Spanish one. */
const ENGLISH =
  /\b(the|of|is|are|and|or|not|with|from|its|it|has|have|which|where|than|there|here|hole|holes|level|depth|text|more|ask)\b/i;
/** Words with tests of their own: those of plans, of grid dimensions and of the check. */
const ELSEWHERE = new Set(['plan', 'grid', 'phrases']);
/** A text of a layout, in which no word of either language stands. */
const MARK = '«x»';

/** What functions are called with that take other things than texts and counts, one call each. */
const PARTS: Readonly<Record<string, readonly unknown[][]>> = {
  supersedes: [[MARK], [undefined]],
  withUnit: [[MARK, MARK]],
  allowance: [
    [{ along: '«a»', across: '«b»', run: '«c»', isTogether: true, ask: 'ask-first' }],
    [{ along: '«a»', across: '«b»', isTogether: false, ask: 'tell-after' }],
  ],
  controlHead: [
    [MARK, MARK],
    [MARK, undefined],
  ],
  throughNote: [
    [MARK, MARK, MARK],
    [undefined, undefined, undefined],
  ],
  keepOut: [[{ name: '«a»', kind: '«b»', standoff: '«c»', off: '«d»', from: '«e»', number: 7, distance: '«f»' }]],
  bore: [[{ id: '«a»', end: '«b»', diameter: '«c»', depth: '«d»', number: 7, distance: '«e»' }]],
  validity: [[MARK, MARK]],
  finding: [
    ['error', MARK],
    ['warning', MARK],
  ],
  changeTag: [[MARK], [undefined]],
  changesOfSheet: [
    [MARK, MARK],
    [MARK, ''],
  ],
  takenOut: [
    [MARK, MARK, 0],
    [MARK, MARK, 12],
  ],
  heightAsFound: [[''], [MARK]],
  otherHoles: [
    [1, MARK],
    [12, MARK],
  ],
  holesWithFindings: [
    [0, 12],
    [2, 12],
  ],
  ...Object.fromEntries(
    [
      'moreControl',
      'moreKeepOuts',
      'moreParties',
      'castIn',
      'broken',
      'labelsLeftOut',
      'shapesLeftOut',
      'slantNote',
      'moreGeneral',
      'notKept',
      'findingsNotShown',
      'moreBores',
    ].map((name) => [name, [[1], [12]]]),
  ),
  sheetOf: [[7, 12]],
};

/** All that words say, by the path of the member. */
function saidBy(value: unknown, path = ''): [path: string, said: string][] {
  const name = path.slice(1);
  if (ELSEWHERE.has(name)) return [];
  if (typeof value === 'string') return [[name, value]];
  if (typeof value === 'function') {
    const say = value as (...args: unknown[]) => string;
    return (PARTS[name] ?? [[MARK, MARK, MARK]]).map((args, k) => [`${name} ${k}`, say(...args)]);
  }
  return Object.entries(value as object).flatMap(([key, one]) => saidBy(one, `${path}.${key}`));
}

const english = saidBy(ENGLISH_SHEET_WORDS);
const spanish = new Map(saidBy(sheetWords));
/** The same in both languages. */
const SAME = /^(mm|m|N–S|Control)$|^$|^«x» \(«x»\): «x»\.$|^«x»: «x»$|^«x» \(No\. «x»\)$|^Error: «x»$|^«x» \(«x»\)$/;

describe('the Spanish words of crew sheets', () => {
  it('are there for all that English says, and for nothing else', () => {
    expect([...spanish.keys()].sort()).toEqual(english.map(([path]) => path).sort());
    expect(english.length).toBeGreaterThan(150);
  });

  it('are other words than the English ones', () => {
    const wrong = english.filter(([path, said]) => {
      const own = spanish.get(path) ?? '';
      const isOther = own !== said || SAME.test(said);
      return !isOther || ENGLISH.test(own) || /undefined|NaN|\[object/.test(own);
    });
    expect(wrong).toEqual([]);
  });

  it('show every text and number that English shows', () => {
    const parts = (said: string) => said.match(/«\w»|\d+/g)?.sort() ?? [];
    for (const [path, said] of english) expect(parts(spanish.get(path) ?? ''), path).toEqual(parts(said));
  });

  it('write west as O', () => {
    expect(sheetWords.compass).toEqual(['N–S', 'NE–SO', 'E–O', 'NO–SE']);
    const sides = ['W', 'SW', 'NW'] as const;
    expect(sides.map((side) => sheetWords.grid.from('1 m', side, 'A'))).toEqual([
      '1 m O de A',
      '1 m SO de A',
      '1 m NO de A',
    ]);
  });

  it('say nothing that lets people think that drilling was allowed', () => {
    const all = [...spanish.values()].filter((said) => said !== sheetWords.caution).join(' ');
    expect(all).not.toMatch(/\b(seguro|segura|aprobad[oa]|libre|autorizad[oa])\b/i);
  });
});

describe('a sheet in Spanish', () => {
  it('has the messages of the check in Spanish too', () => {
    const layout = layoutOf([hole('a', [0, 0, 0]), hole('b', [50, 0, 0])], { holeTypes: [typeWithSpacing(200)] });
    const [sheet] = checkedSheets(layout, { options: { language: es }, words: sheetWords }).sheets;
    const text = drawnText(sheet);
    expect(text).toContain('No perforar antes de que la oficina haya resuelto esto. Error: La perforación');
    expect(text).toContain('Comprobado solo');
    expect(text.replace(/Monday|Slab|Sprinkler|Corner/g, '')).not.toMatch(ENGLISH);
  });

  it('names the language of the page, and cuts no head of the list', () => {
    const set = sheetsOf(
      exampleSource('workshop-deck/workshop.ahx.json'),
      { package: 'shift-2' },
      { words: sheetWords },
    );
    expect([...set.html()].join('')).toContain('<html lang="es">');
    expect(drawnText(set.sheets[0])).toContain('Hoja 1 de');
    expect(drawnText(set.sheets[0])).toMatch(/Sig\. Broca Prof\. tope \(mm\) Desde los ejes \(mm\) Cl\./);
  });
});
