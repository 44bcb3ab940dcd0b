import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bases, CORPUS, type DerivedCase } from '../../src/build/derive-cases.js';
import { rules } from '../../src/check/list.js';
import { validateWhole } from '../../src/generated/validators.js';
import { check } from '../../src/jobs/check.js';
import { causeMessage } from '../../src/jobs/findings.js';
import { CAUTION, SHORT_CAUTION } from '../../src/model/caution.js';
import type { Language, RuleWords } from '../../src/model/language.js';
import { OFF } from '../../src/model/report-words.js';
import type { RuleInfo, Say } from '../../src/model/rule.js';
import { english } from '../../src/report/languages/en.js';
import { es } from '../../src/report/languages/es.js';
import { englishForms } from '../../src/report/languages/forms-en.js';
import { printable } from '../../src/model/printable.js';
import { sayAs } from '../../src/report/say.js';
import { textReport, verdictLines } from '../../src/report/text.js';
import { prose } from '../../src/report/languages/es/prose.js';
import { reason } from '../../src/report/languages/es/reason.js';
import { words } from '../../src/report/languages/es/word.js';
import { applyPatch } from '../conformance/apply-patch.js';
import { corpusJson, manifest, reportOf, root } from '../conformance/corpus-files.js';
import { hole, layoutText, typeWithSpacing } from '../jobs/small-layout.js';
import { readPhrases } from './read-phrases.js';
import { HOSTILE } from './synthetic-report.js';

type Data = Record<string, unknown>;

/** Small words that stand in nearly every English message and in no Spanish one. */
const ENGLISH =
  /\b(the|of|is|are|and|or|not|with|from|its|it|has|have|which|where|than|there|here|hole|holes|level|depth|text|at least|at most|more than)\b/i;

const infoOf = new Map<string, RuleInfo>(rules.map((rule) => [rule.id, rule]));
const inFeet = sayAs({ length: 'ft-in' });
/** Takes what no length is too, which changed data can have. */
const asIs: Say = { length: (mm) => `${mm} mm` };

/** What our checker says of each case of the corpus, in English. */
const reports = manifest.cases.map((one) => reportOf(one));

/** All data, each once, that the rules put into their findings on the corpus: the cases of it, and those derived. */
const dataOf = corpusData();
const samples = [...dataOf].flatMap(([rule, list]) => list.map((data) => [rule, data] as const));

function corpusData(): Map<string, Data[]> {
  const found = new Map<string, Map<string, Data>>();
  const take = (rule: string, data: Data) => {
    const ofRule = found.get(rule) ?? new Map<string, Data>();
    found.set(rule, ofRule.set(JSON.stringify(data), data));
  };
  for (const { findings } of reports) for (const { rule, data } of findings) take(rule, data);
  for (const [kind, base] of Object.entries(bases)) {
    const document = corpusJson(base);
    const derived = JSON.parse(readFileSync(join(root, CORPUS, `derived/${kind}.json`), 'utf8')) as DerivedCase[];
    for (const { id, patch } of derived) {
      const report = check([{ name: id, data: JSON.stringify(applyPatch(document, patch)) }]);
      for (const { rule, data } of report.findings) take(rule, data);
    }
  }
  return new Map([...found].map(([rule, list]) => [rule, [...list.values()]]));
}

type Teller = 'message' | 'causeMessage';

/** What a rule says of data, and the keys that it looked at. */
function told(words: RuleInfo | RuleWords, teller: Teller, data: Data, say: Say) {
  const keys = new Set<string>();
  const watched = new Proxy(data, {
    get(target, key) {
      keys.add(String(key));
      return Reflect.get(target, key);
    },
  });
  return { text: words[teller]?.(watched, say), keys: [...keys].sort() };
}

/**
 * Keys whose values a sentence spells out by its grammar. That each value is told apart is for the test of
 * equal and different messages.
 */
const SPELT_OUT = new Set(
  'about at differs edge evidence fault flute in looksLike missing phaseFrom ring side what where'.split(' '),
);

/** The texts by which the values of data may show in a message: as they are, as lengths, or each of a list. */
function shownValues(data: Data, say: Say): string[] {
  const texts = Object.entries(data).flatMap(([key, value]): string[] => {
    if (typeof value === 'number') return [say.length(value), say.length(Math.abs(value)), String(value)];
    // Choices are many words, one of which may stand in a sentence by chance.
    if (key === 'choices') return [(value as unknown[]).join(', ')];
    if (Array.isArray(value)) return value.flatMap((one) => (typeof one === 'object' ? [] : [String(one)]));
    return typeof value === 'string' && value !== '' && !SPELT_OUT.has(key) ? [value] : [];
  });
  return [...new Set(texts)];
}

/** Whether a text stands in a message by itself, not as a piece of a longer word or number. */
function standsIn(message: string, text: string): boolean {
  const escaped = text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
  return new RegExp(`(?<![\\w.-])${escaped}(?![\\w-]|\\.\\d)`).test(message);
}

/** What English shows of the data and Spanish shows neither as it is nor in its own words. */
function valuesLost(english: string, spanish: string, data: Data, say: Say): string[] {
  return shownValues(data, say).filter((value) => {
    if (!standsIn(english, value) || standsIn(spanish, value)) return false;
    const own = [words(value), prose(value)].filter((said) => said !== undefined && said !== value);
    return !own.some((said) => spanish.includes(said as string));
  });
}

const MOST_SAMPLES = 40;
const MOST_VALUES = 8;

/** Data of the corpus, each key in turn with what it holds in other findings of the rule. */
function* variantsOf(list: readonly Data[]): Generator<Data> {
  const seen = new Map<string, Map<string, unknown>>();
  for (const data of list)
    for (const [key, value] of Object.entries(data))
      seen.set(key, (seen.get(key) ?? new Map()).set(JSON.stringify(value), value));
  // An index into the list that spreads over all of it.
  const step = Math.max(1, Math.floor(list.length / MOST_SAMPLES));
  for (const data of list.filter((_, index) => index % step === 0))
    for (const [key, values] of seen)
      for (const value of [...values.values()].slice(0, MOST_VALUES)) yield { ...data, [key]: value };
}

describe('the language es', () => {
  it('has words for every rule, and for no other one', () => {
    expect(Object.keys(es.rules).sort()).toEqual(rules.map(({ id }) => id).sort());
  });

  it('has a sentence for the cause exactly where English has one', () => {
    const withOne = Object.entries(es.rules).filter(([, { causeMessage }]) => causeMessage !== undefined);
    const inEnglish = rules.filter(({ causeMessage }) => causeMessage !== undefined);
    expect(withOne.map(([id]) => id).sort()).toEqual(inEnglish.map(({ id }) => id).sort());
  });

  it('has titles that are sentences and not those of English', () => {
    for (const [id, { title }] of Object.entries(es.rules)) {
      expect(title, id).toMatch(/^\p{Lu}.{10,}\.$/u);
      expect(title, id).not.toMatch(ENGLISH);
      expect(title, id).not.toBe(infoOf.get(id)?.title);
    }
  });

  it('is tried on data of every rule', () => {
    expect([...dataOf.keys()].sort()).toEqual(rules.map(({ id }) => id).sort());
    expect(samples.length).toBeGreaterThan(500);
  });

  it.each(['message', 'causeMessage'] as const)('reads the same data as English for the %s', (teller) => {
    const different = samples.flatMap(([rule, data]) => {
      const english = told(infoOf.get(rule) as RuleInfo, teller, data, inFeet);
      const spanish = told(es.rules[rule], teller, data, inFeet);
      return spanish.keys.join() === english.keys.join()
        ? []
        : [{ rule, english: english.keys, spanish: spanish.keys }];
    });
    expect(different).toEqual([]);
  });

  it.each(['message', 'causeMessage'] as const)('shows every value that English shows in the %s', (teller) => {
    const lost = samples.flatMap(([rule, data]) => {
      const english = told(infoOf.get(rule) as RuleInfo, teller, data, inFeet).text;
      const spanish = told(es.rules[rule], teller, data, inFeet).text;
      if (english === undefined && spanish === undefined) return [];
      const values = valuesLost(english ?? '', spanish ?? '', data, inFeet);
      return values.length === 0 ? [] : [{ rule, values, english, spanish }];
    });
    expect(lost).toEqual([]);
  });

  it.each(['message', 'causeMessage'] as const)('says each %s in sentences of its own', (teller) => {
    const wrong = samples.flatMap(([rule, data]) => {
      const english = told(infoOf.get(rule) as RuleInfo, teller, data, inFeet).text;
      if (english === undefined) return [];
      const text = told(es.rules[rule], teller, data, inFeet).text ?? '';
      const isSound = /^[^\s].{10,}[.?]$/s.test(text) && !/undefined|NaN|\[object/.test(text) && text !== english;
      return isSound && !ENGLISH.test(withoutValues(text, data)) ? [] : [{ rule, text }];
    });
    expect(wrong).toEqual([]);
  });

  it.each(['message', 'causeMessage'] as const)('tells apart in the %s exactly what English tells apart', (teller) => {
    let compared = 0;
    const wrong = [...dataOf].flatMap(([rule, list]) => {
      const [inEnglish, inSpanish] = [new Map<string, string>(), new Map<string, string>()];
      return [...variantsOf(list)].flatMap((data) => {
        const english = infoOf.get(rule)?.[teller]?.(data, asIs) ?? '';
        const spanish = es.rules[rule][teller]?.(data, asIs) ?? '';
        compared++;
        const [first, other] = [inSpanish.get(english) ?? spanish, inEnglish.get(spanish) ?? english];
        inSpanish.set(english, first);
        inEnglish.set(spanish, other);
        return first === spanish && other === english ? [] : [{ rule, english, other, spanish, first }];
      });
    });
    expect(wrong).toEqual([]);
    expect(compared).toBeGreaterThan(10_000);
  });

  it('knows every reason for which something was not judged', () => {
    const reasons = reports.flatMap(({ coverage }) =>
      coverage.flatMap(({ reason: why, outcome }) =>
        why === undefined || why === OFF || outcome === 'not-applicable' ? [] : why.split('; '),
      ),
    );
    const distinct = [...new Set(reasons)];
    expect(distinct.filter((why) => reason(why) === why || ENGLISH.test(reason(why)))).toEqual([]);
    expect(distinct.length).toBeGreaterThan(50);
  });

  it('has every fixed sentence, with the same parts as English, and in the width that there is', () => {
    const { severity, accepted, place, site, forms: _, ...others } = es.phrases;
    expect(Object.values(severity).every((label) => label.length <= 7)).toBe(true);
    expect(accepted.length).toBeLessThanOrEqual(8);
    for (const [key, phrase] of Object.entries(others)) {
      const inEnglish = english[key as keyof typeof others];
      if (typeof phrase === 'string') {
        expect(phrase, key).not.toMatch(ENGLISH);
        expect(phrase, key).not.toBe(inEnglish);
        continue;
      }
      const list: unknown[] =
        key === 'notJudged' ? ['record broken', ['r-1', 'r-2'], 34] : ['error', 12, 34, 'd-4', 56];
      for (const parts of [list, list.map((part) => (typeof part === 'number' ? 1 : part))]) {
        const [own, other] = [phrase, inEnglish as typeof phrase].map((say) =>
          (say as (...args: unknown[]) => string)(...parts),
        );
        expect(own, key).not.toMatch(ENGLISH);
        expect(own, key).not.toMatch(/undefined|NaN|\[object/);
        for (const part of parts.flat().map(String))
          if (standsIn(other, part))
            expect(own, `${key} ${other}`).toContain(part === 'record broken' ? 'registro dañado' : part);
      }
    }
    const numbers = {
      isPartial: true,
      error: 11,
      warning: 12,
      info: 13,
      causes: 14,
      holes: 16,
      judged: 15,
      accepted: 17,
      notRun: 18,
      inPart: 19,
      set: 20,
    };
    for (const purpose of ['for-review', 'for-drilling', 'for-closeout'] as const) {
      const said = site({ purpose, ...numbers });
      expect(said.match(/\d+/g)?.sort()).toEqual(
        english
          .site({ purpose, ...numbers })
          .match(/\d+/g)
          ?.sort(),
      );
      expect(said).not.toMatch(ENGLISH);
    }
    const places = [
      { line: 3, column: 4 },
      { row: 5, column: 6 },
      { row: 7, sheet: 'S' },
      { byte: 8 },
      { pointer: '/x' },
      {},
    ];
    for (const one of places) {
      expect(place(one)).not.toMatch(ENGLISH);
      expect(place(one).match(/\d+/g)).toEqual(english.place(one).match(/\d+/g));
    }
  });

  it('has every sentence that other forms say of themselves, with the same parts as English', () => {
    const { forms } = es.phrases;
    if (forms === undefined) throw new Error('There are none.');
    const { kind, reason: why, csv, markdown, ...own } = forms;
    expect(kind('layout')).not.toBe('layout');
    expect(why(OFF)).not.toMatch(ENGLISH);
    const { csv: csvEnglish, markdown: markdownEnglish, ...ownEnglish } = englishForms;
    const parts: [Data, Data][] = [
      [own, ownEnglish],
      [{ ...csv }, { ...csvEnglish }],
      [{ ...markdown }, { ...markdownEnglish }],
    ];
    let count = 0;
    for (const [spanish, inEnglish] of parts)
      for (const [key, phrase] of Object.entries(spanish)) {
        const [said, other] = [phrase, inEnglish[key]].map(saidWithNumbers);
        expect(said.length, key).toBe(other.length);
        said.forEach((text, k) => {
          expect(text.replace('--format text', ''), key).not.toMatch(ENGLISH);
          expect(text, key).not.toMatch(/undefined|NaN|\[object/);
          expect(text.match(/\d+/g)?.sort(), `${key}: ${text}`).toEqual(other[k].match(/\d+/g)?.sort());
          if (key !== 'causeHeads') expect(text, key).not.toBe(other[k]);
          count++;
        });
      }
    expect(count).toBeGreaterThan(50);
  });

  it('says of numbers what goes with them', () => {
    const { ranOut, notJudged } = es.phrases;
    const said = [1, 2].map((count) => ranOut('r', 'L', 'EC', '2026-01-01', count));
    expect(said.map((line) => line.split('; ')[1])).toEqual([
      'vuelve a contar 1 hallazgo',
      'vuelven a contar 2 hallazgos',
    ]);
    expect([1, 2].map((count) => english.ranOut('r', 'L', 'EC', '2026-01-01', count).split('; ')[1])).toEqual([
      '1 finding counts again',
      '2 findings count again',
    ]);
    expect([1, 2].map((count) => notJudged(`${count} left out: depth not known`, ['r'], 0))).toEqual([
      'sin juzgar: se omite 1: profundidad desconocida (r)',
      'sin juzgar: se omiten 2: profundidad desconocida (r)',
    ]);
  });

  it('has words for every text of its own that reading puts into a finding', () => {
    const texts = readPhrases(join(root, 'src'));
    expect(texts.filter((text) => prose(text) === undefined)).toEqual([]);
    expect(texts.length).toBeGreaterThan(70);
  });

  it('escapes what a file brings in as English does, whatever it is', () => {
    const texts = fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'binary', maxLength: 40 }));
    const wrong = samples.filter((_, index) => index % 7 === 0);
    const property = fc.property(fc.constantFrom(...wrong), texts, ([rule, data], text) => {
      const hostile = Object.fromEntries(
        Object.entries(data).map(([key, value]) => [key, typeof value === 'string' && isFree(key) ? text : value]),
      );
      const english = printable((infoOf.get(rule) as RuleInfo).message(hostile, inFeet));
      const said = es.rules[rule].message(hostile, inFeet);
      // Without words for the data the finding is told in English.
      if (said === undefined) return;
      const spanish = printable(said);
      expect(spanish).not.toMatch(/[\p{Cc}\p{Cs}\p{Bidi_Control}]/u);
      const shown = printable(text);
      // Both show the text equally often, whole, where it is long enough to be known again.
      if (shown.length > 8) expect(spanish.split(shown).length).toBe(english.split(shown).length);
    });
    fc.assert(property, { numRuns: 1000, seed: 44 });
  });
});

/** The texts of a phrase: as it is, or with numbers, many and one, for all that is handed in. */
function saidWithNumbers(phrase: unknown): string[] {
  if (Array.isArray(phrase)) return phrase.map(String);
  if (typeof phrase !== 'function') return [String(phrase)];
  const say = phrase as (...args: number[]) => string;
  return [say(12, 34, 56), say(1, 1, 1)];
}

/** Keys whose values come from the file; others hold codes of ours. */
function isFree(key: string): boolean {
  return !SPELT_OUT.has(key) && !CODED.has(key);
}

const CODED = new Set(
  'kind knownFrom end principle unit reading standIn lacks collection target expected problem'.split(' '),
);

describe('a report in another language', () => {
  const members = { holeTypes: [typeWithSpacing(80)], holes: [hole('H-1', [0, 0, 0]), hole('H-2', [10, 0, 0])] };
  const inputs = [{ name: 'level 3', data: layoutText(members) }];

  it('names its language, has its messages and its caution, and is sound', () => {
    const report = check(inputs, { language: es });
    expect(report.language).toBe('es');
    expect(report.caution).toBe(es.phrases.caution);
    expect(report.causes.map(({ message }) => message)).toEqual([expect.stringContaining('perforaci')]);
    expect(validateWhole.report(report), JSON.stringify(validateWhole.report.errors)).toBe(true);
  });

  it('differs from the English one in language, messages and caution alone', () => {
    const plain = check(inputs);
    const { language, ...rest } = check(inputs, { language: es });
    const withoutMessages = (list: { message: string }[]) => list.map(({ message, ...others }) => others);
    const bare = ({ findings, causes, ...others }: typeof plain) => ({
      ...others,
      caution: CAUTION,
      findings: withoutMessages(findings),
      causes: withoutMessages(causes),
    });
    expect(plain).not.toHaveProperty('language');
    expect(language).toBe('es');
    expect(bare(rest)).toEqual(bare(plain));
  });

  it('is told in English, finding by finding, where the language lacks words', () => {
    const partly: Language = {
      tag: 'x-part',
      rules: { 'holes-too-close': { title: 'T', message: () => 'M.' } },
      phrases: es.phrases,
    };
    const [finding] = check(inputs, { language: partly }).findings;
    expect(finding.message).toBe('M.');
    // English has a sentence for the cause, the language has not; a message of one finding does not stand in for it.
    expect(check(inputs, { language: partly }).causes[0].message).toBe(check(inputs).causes[0].message);
    const none: Language = { ...partly, rules: { 'holes-too-close': { title: 'T', message: () => undefined } } };
    expect(check(inputs, { language: none }).findings[0].message).toBe(check(inputs).findings[0].message);
    expect(check(inputs, { language: { ...partly, rules: {} } }).findings[0].message).toBe(
      check(inputs).findings[0].message,
    );
  });

  it('says in one language which causes were not told apart', () => {
    const info = infoOf.get('bad-text') as RuleInfo;
    const first = { rule: 'bad-text', severity: 'error', at: {}, data: {}, cause: '' } as const;
    const rest = (language?: Language) => causeMessage(info, { first, count: 9, isRest: true }, inFeet, language);
    expect(rest(es)).toBe(`${es.rules['bad-text'].title} ${es.phrases.restOfCauses}`);
    expect(rest({ ...es, rules: {} })).toBe(rest());
    expect(rest()).toBe(`${info.title} ${english.restOfCauses}`);
  });

  it('is written with the sentences of the language', () => {
    const report = check(inputs, { language: es });
    expect(textReport(report, { colour: false, findingsOfCause: 5, phrases: es.phrases })).toMatchInlineSnapshot(`
      "level 3
        error   Hay perforaciones del tipo "T" a menos de 80 mm de perforaciones del tipo "T" (invented). [holes-too-close]
                2 hallazgos, el primero en línea 1, columna 608; perforaciones H-1, H-2
                - perforación H-1: La perforación está a 10 mm de la perforación "H-2"; se necesitan al menos 80 mm (invented). (línea 1, columna 608)
                - perforación H-2: La perforación está a 10 mm de la perforación "H-1"; se necesitan al menos 80 mm (invented). (línea 1, columna 681)

      AHX 0.1 válido.
      Comprobación de los datos para la obra (finalidad: revisar): 2 errores, 0 avisos por 1 causa en 2 perforaciones.

      Solo datos de trazo. No es un diseño ni un permiso para perforar. Siga las aprobaciones de los productos, la ley local y las reglas de la obra; el escaneo y el permiso siguen siendo necesarios.
      "
    `);
    expect(verdictLines(report, es.phrases)).toHaveLength(2);
  });

  it('has no English left in every third text report of the corpus', () => {
    const left = manifest.cases.flatMap((one, index) => {
      if (index % 3 !== 0) return [];
      const text = textReport(reportOf(one, { language: es }), {
        colour: false,
        findingsOfCause: 5,
        phrases: es.phrases,
      });
      expect(text).not.toContain(SHORT_CAUTION);
      const values = reports[index].findings.map(({ data }) => data);
      const own = text
        .replaceAll(/cases\/\S+|--format json|[a-z]+(?:-[a-z0-9]+)+/g, '')
        .split('\n')
        .map((line) => values.reduce<string>(withoutValues, line));
      return own.filter((line) => ENGLISH.test(line));
    });
    expect([...new Set(left)]).toEqual([]);
  });
});

/** A message without the texts that come from the file, which may be in English. */
function withoutValues(text: string, data: Data): string {
  const quoted = text.replace(/"[^"]*"/g, '""');
  return [
    'otherName',
    'first',
    'source',
    'choices',
    'found',
    'mark',
    'members',
    'collection',
    'member',
    'column',
    'header',
  ]
    .flatMap((key) => data[key] ?? [])
    .flat()
    .map(String)
    .sort((a, b) => b.length - a.length)
    .reduce((rest, value) => (value.length < 2 ? rest : rest.replaceAll(value, '')), quoted);
}
