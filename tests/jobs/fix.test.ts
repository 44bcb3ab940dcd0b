import { applyPatch as applyDiff } from 'diff';
import fc from 'fast-check';
import jsonpatch from 'fast-json-patch';
import { describe, expect, it } from 'vitest';
import { bases, type DerivedCase } from '../../src/build/derive-cases.js';
import { edited } from '../../src/edit/text-edit.js';
import { unifiedDiff } from '../../src/edit/unified-diff.js';
import { validateWhole } from '../../src/generated/validators.js';
import { check } from '../../src/jobs/check.js';
import { type Fixing, type FixOptions, fix, fixInRounds } from '../../src/jobs/fix.js';
import { manners, parsed, written } from '../edit/random-edits.js';
import { exampleJson, examplePaths, exampleText } from '../examples/example-files.js';
import { applyPatch } from '../conformance/apply-patch.js';
import { corpusBytes, corpusJson, manifest } from '../conformance/corpus-files.js';
import { hole, layoutText, smallLayout } from './small-layout.js';

const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

function fixed(data: string | Uint8Array, options?: FixOptions): Fixing & { text: string; value: unknown } {
  const result = fix({ name: 'file', data }, options);
  return {
    ...result,
    text: decoder.decode(result.bytes),
    get value() {
      return parsed(result.bytes);
    },
  };
}

/** What is said of the same document when it is checked. */
function fixOf(text: string, rule: string) {
  return check([{ name: 'file', data: text }]).findings.find((finding) => finding.rule === rule)?.fix;
}

/** Quicker than an equality that could show a difference. */
function isSame(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.compare(a, b) === 0;
}

/** Holds the promises that any fixing makes; returns how many findings were fixed. */
function holdsPromises(data: Uint8Array, options: FixOptions = {}): number {
  const result = fixed(data, options);
  expect(isSame(edited(data, result.edits), result.bytes)).toBe(true);
  if (result.fixed.length === 0) {
    expect(isSame(result.bytes, data)).toBe(true);
    return 0;
  }
  // A second run finds nothing to do.
  const again = fixed(result.bytes, options);
  expect(again.fixed).toEqual([]);
  expect(isSame(again.bytes, result.bytes)).toBe(true);
  if (!result.isSound) return result.fixed.length;
  // Against the package fast-json-patch 3.1.1.
  const patched = jsonpatch.applyPatch(structuredClone(parsed(data)), result.patch as never, true).newDocument;
  expect(result.value).toEqual(patched);
  // Against the package diff 9.0.0.
  const diff = unifiedDiff('file', data, result.edits);
  const text = decoder.decode(data);
  if (diff !== undefined && diff.length > 0)
    expect(applyDiff(text, diff.join(''), { autoConvertLineEndings: false })).toBe(result.text);
  return result.fixed.length;
}

describe('a fix', () => {
  it('is said of a finding in the report, which holds to its schema', () => {
    const text = layoutText({ holes: [hole('H-1', [1, 2, 3], { depht: 60 })] });
    expect(fixOf(text, 'unknown-member')).toEqual({
      patch: [{ op: 'move', from: '/holes/0/depht', path: '/holes/0/depth' }],
    });
    const report = check([{ name: 'file', data: `\uFEFF${text}` }]);
    expect(report.findings.map(({ fix: one }) => one?.byteOrderMark)).toEqual(['remove', undefined]);
    expect(validateWhole.report(report)).toBe(true);
  });

  it('takes the byte order mark out and leaves all else', () => {
    const text = layoutText();
    const { text: now, patch, fixed: all } = fixed(`\uFEFF${text}\r\n`);
    expect(now).toBe(`${text}\r\n`);
    expect(patch).toEqual([]);
    expect(all.map(({ rule }) => rule)).toEqual(['byte-order-mark']);
  });

  it('takes the byte order mark out of a text that is no JSON, and does no more', () => {
    const { text, isSound, fixed: all } = fixed('\uFEFF{ "kind": "layout", "holes": [');
    expect({ text, isSound, rules: all.map(({ rule }) => rule) }).toEqual({
      text: '{ "kind": "layout", "holes": [',
      isSound: false,
      rules: ['byte-order-mark'],
    });
  });

  it.each(['', 'id,x,y\n1,2,3\n', '{ "kind": "layuot", "id": "x', '[1, 2', '"text', '{} {}', 'null', '\u0000\u0001'])(
    'is none in %j',
    (text) => {
      expect(fixed(text)).toMatchObject({ text, fixed: [] });
    },
  );
});

describe('a text with blanks at its ends', () => {
  const trade = (id: string) => ({ id, name: 'Sprinkler' });

  it('is trimmed, an id together with its references', () => {
    const text = layoutText({
      trades: [trade(' FP\t')],
      holes: [hole('H-1', [1, 2, 3], { trade: ' FP\t', tag: '1 ' })],
    });
    const { value, after } = fixed(text);
    expect(value).toMatchObject({ trades: [{ id: 'FP' }], holes: [{ trade: 'FP', tag: '1' }] });
    expect(after.findings).toEqual([]);
    expect(fixOf(text, 'bad-text')?.patch?.map(({ path }) => path)).toEqual(['/trades/0/id', '/holes/0/trade']);
  });

  it('is trimmed where a reference alone has them', () => {
    expect(fixed(layoutText({ holes: [hole('H-1', [1, 2, 3], { trade: 'FP ' })] })).value).toEqual(smallLayout);
  });

  it.each([
    ['the id without them is there', [trade('FP'), trade('FP ')]],
    ['two ids would be one', [trade('FP '), trade(' FP')]],
  ])('stays where %s', (_, trades) => {
    const text = layoutText({ trades, holes: [hole('H-1', [1, 2, 3], { trade: 'FP ' })] });
    expect(fixed(text).text).toBe(text);
  });

  it('stays where more than blanks is wrong with it', () => {
    const text = layoutText({ title: 'a\u0001b ' });
    expect(fixed(text).text).toBe(text);
  });
});

describe('an id that is not in normalisation form C', () => {
  const [decomposed, composed] = ['Mu\u0308', 'M\u00fc'];

  it('is written in it, together with its references in whole and broken records', () => {
    const text = layoutText({
      trades: [{ id: decomposed, name: 'x' }],
      holes: [hole('H-1', [1, 2, 3], { trade: decomposed }), hole('H-2', [9, 9, 3], { trade: decomposed, wrong: 1 })],
    });
    const { value, after } = fixed(text);
    expect(value).toMatchObject({ trades: [{ id: composed }], holes: [{ trade: composed }, { trade: composed }] });
    expect(after.findings.map(({ rule }) => rule)).toEqual(['unknown-member']);
  });

  it('is meant by a reference that differs in the form only', () => {
    const text = layoutText({
      trades: [{ id: composed, name: 'x' }],
      holes: [hole('H-1', [1, 2, 3], { trade: decomposed })],
    });
    expect(fixOf(text, 'unknown-reference')?.patch).toHaveLength(1);
    expect(fixed(text).after.findings).toEqual([]);
  });

  it('is written in it where the name of the member that refers to it was wrong', () => {
    const { trade, ...rest } = hole('H-1', [1, 2, 3], { tarde: decomposed });
    const { value, after, cameToLight } = fixed(
      layoutText({
        trades: [{ id: decomposed, name: 'x' }],
        holes: [hole('H-0', [9000, 9, 3], { trade: decomposed }), rest],
      }),
    );
    expect(value).toMatchObject({ trades: [{ id: composed }], holes: [{ trade: composed }, { trade: composed }] });
    expect([after.findings, cameToLight]).toEqual([[], []]);
  });

  it('is no answer where nothing has the composed id', () => {
    const text = layoutText({ holes: [hole('H-1', [1, 2, 3], { trade: decomposed })] });
    expect(fixed(text).text).toBe(text);
  });
});

describe('a misspelt member', () => {
  it.each([
    ['depht', 60, 'depth'],
    ['Depth', 60, 'depth'],
    ['diamter', 12, 'diameter'],
    ['positionTolerence', { radius: 3 }, 'positionTolerance'],
  ])('%s gets the name that it can only have', (name, value, meant) => {
    const text = layoutText({ holes: [hole('H-1', [1, 2, 3], { [name]: value })] });
    expect(fixed(text).value).toMatchObject({ holes: [{ [meant]: value }] });
  });

  it('of the root is read with all that it holds, which then has its own findings', () => {
    const { holes, ...rest } = smallLayout;
    const { value, cameToLight, after } = fixed(
      JSON.stringify({ ...rest, hoels: [hole('H-1', [1, 2, 3]), hole('H-2', [9, 9, 3], { trade: 'XX', deph: 60 })] }),
    );
    expect(value).toMatchObject({ holes: [{ id: 'H-1' }, { id: 'H-2', depth: 60 }] });
    expect(cameToLight.map(({ rule }) => rule)).toEqual(['unknown-reference']);
    expect(after.findings.map(({ rule }) => rule)).toEqual(['unknown-reference']);
  });

  it.each([
    ['the right name is there too', { depht: 60, depth: 60 }],
    ['two misspell one name', { depht: 60, deptj: 60 }],
    ['the value does not fit the name', { depht: 'deep' }],
    ['it is another word', { weight: 60, bote: 'x' }],
    ['it has a digit more', { diameter2: 22, depth_2: 15 }],
    ['it is a size and may be another word', { axes: [0, 1, 1], dept: 60, diamiter: 12 }],
    ['it is an addition', { ext: { 'https://example.org/x': { depht: 60 } } }],
  ])('stays where %s', (_, members) => {
    const text = layoutText({ holes: [hole('H-1', [1, 2, 3], members)] });
    expect(fixed(text).text).toBe(text);
  });

  it('of a size that may be another word is renamed for who asks for fixes of geometry', () => {
    const text = layoutText({ holes: [hole('H-1', [1, 2, 3], { axes: [0, 1, 1], dept: 60 })] });
    expect(fixOf(text, 'unknown-member')).toMatchObject({ geometry: true });
    expect(fixed(text, { geometry: true }).value).toMatchObject({ holes: [{ axis: [0, 1, 1], depth: 60 }] });
  });

  it('is no mistake in a later version', () => {
    const text = layoutText({ ahx: '0.2', holes: [hole('H-1', [1, 2, 3], { depht: 60 })] });
    expect(fixed(text).text).toBe(text);
  });

  it('with an escape in its name is found', () => {
    const text = layoutText({ holes: [hole('H-1', [1, 2, 3], { depht: 60 })] }).replace('"depht"', '"d\\u0065pht"');
    expect(fixed(text).text).toBe(text.replace('"d\\u0065pht"', '"depth"'));
  });
});

describe('the layout in a column profile', () => {
  const profile = exampleJson('ferry-terminal/sprinkler.profile.json') as {
    columns: Record<string, unknown>[];
    layout: Record<string, Record<string, unknown>[]> & { display: { length: string } };
  };
  /** The profile with something done to it. */
  const profileWith = (change: (copy: typeof profile) => void) => {
    const copy = structuredClone(profile);
    change(copy);
    return JSON.stringify(copy);
  };
  const rename = (holder: Record<string, unknown>, from: string, to: string) => {
    holder[to] = holder[from];
    delete holder[from];
  };

  it('has the same fixes as any layout', () => {
    const text = profileWith(({ layout }) => {
      layout.display.length = 'feet';
      rename(layout.levels[0], 'elevation', 'elevaton');
      rename(layout, 'trades', 'traeds');
      (layout.holeTypes[0] as { diameter: unknown }).diameter = String(layout.holeTypes[0].diameter);
    });
    const { value, after } = fixed(text);
    expect(value).toEqual(JSON.parse(profileWith(({ layout }) => Object.assign(layout.display, { length: 'ft' }))));
    expect(after.findings).toEqual([]);
  });

  it('is looked at when the profile around it has been mended', () => {
    const text = profileWith(({ columns, layout }) => {
      rename(columns[0], 'field', 'filed');
      layout.sources[0].kind = null;
      rename(layout.levels[0], 'elevation', 'elevaton');
    });
    const { fixed: all, cameToLight } = fixed(text);
    expect(all.map(({ place }) => place.pointer)).toEqual(['/columns/0/filed', '/layout/levels/0/elevaton']);
    expect(cameToLight.map(({ place }) => place.pointer)).toEqual(['/layout/sources/0/kind']);
  });

  it.each<[string, (copy: typeof profile) => void]>([
    ['what must be there is null', ({ layout }) => Object.assign(layout.sources[0], { kind: null })],
    ['all of a kind is null', ({ layout }) => Object.assign(layout, { holeTypes: null })],
    ['a number refers to what the columns may name', ({ layout }) => Object.assign(layout.levels[0], { building: 7 })],
    ['a member goes with the table', ({ layout }) => Object.assign(layout, { hoels: [] })],
    ['no value of that name fits', ({ layout }) => Object.assign(layout, { bores: undefined, boers: 'x' })],
  ])('stays where %s', (_, change) => {
    const text = profileWith(change);
    expect(fixed(text)).toMatchObject({ text, fixed: [] });
    expect(fixed(text).after.findings).not.toEqual([]);
  });
});

describe('a word that is none of the choices', () => {
  const type = (members: object) => layoutText({ holeTypes: [{ ...smallLayout.holeTypes[0], ...members }] });

  it.each([
    ['Blind', 'blind'],
    ['blnid', 'blind'],
    ['trough', 'through'],
  ])('%s is the choice that it can only mean', (form, meant) => {
    expect(fixed(type({ form })).value).toMatchObject({ holeTypes: [{ form: meant }] });
  });

  it.each(['bored', 'in', 'drilling', 'x'])('%s stays', (made) => {
    expect(fixed(type({ made })).fixed).toEqual([]);
  });

  it.each([
    ['feet', 'ft'],
    ['"', 'in'],
    ['\u2032', 'ft'],
    ['Inches', 'in'],
    ['millimeters', 'mm'],
    ['MM', 'mm'],
    ['Meter', 'm'],
    ['ft.', 'ft'],
    ['feet-inches', 'ft-in'],
  ])('%s is another spelling of the unit %s', (length, meant) => {
    expect(fixed(layoutText({ display: { length } })).value).toMatchObject({ display: { length: meant } });
  });

  it('is not the foot where there are two of them', () => {
    const profile = exampleJson('poor/survey-list.profile.json') as { columns: { field?: string; unit?: string }[] };
    const withUnit = (unit: string) => ({
      ...profile,
      columns: profile.columns.map((column) => (column.field === 'x' ? { ...column, unit } : column)),
    });
    expect(fixed(JSON.stringify(withUnit('feet'))).fixed).toEqual([]);
    expect(fixed(JSON.stringify(withUnit('US survey feet'))).value).toEqual(withUnit('us-ft'));
    expect(fixed(JSON.stringify(withUnit('metre'))).value).toEqual(withUnit('m'));
  });

  it('as the kind of a document lets the document be read', () => {
    const { after, value } = fixed(layoutText({ kind: 'Layout', holes: [hole('H-1', [1, 2, 3], { depht: 60 })] }));
    expect(value).toMatchObject({ kind: 'layout', holes: [{ depth: 60 }] });
    expect(after.findings).toEqual([]);
  });
});

describe('a value of the wrong JSON type', () => {
  it.each([
    [{ depth: '60.50' }, { depth: 60.5 }],
    [{ point: ['1', '-2', '0.25'] }, { point: [1, -2, 0.25] }],
    [
      { tag: null, area: null, group: null, note: null, origin: { row: 3, code: null } },
      { tag: undefined, area: undefined, group: undefined, note: undefined, origin: { row: 3 } },
    ],
    [{ tag: 7 }, { tag: '7' }],
  ])('%j is written as what it can only mean', (members, meant) => {
    const { value, after } = fixed(layoutText({ holes: [{ ...hole('H-1', [1, 2, 3]), ...members }] }));
    expect((value as { holes: unknown[] }).holes[0]).toEqual({ ...hole('H-1', [1, 2, 3]), ...meant });
    expect(after.findings.filter(({ rule }) => rule === 'wrong-type')).toEqual([]);
  });

  it('is put into the list that is meant', () => {
    const areas = [{ id: 'A', name: 'Bay', kinds: 'pour' }];
    expect(fixed(layoutText({ areas })).value).toMatchObject({ areas: [{ kinds: ['pour'] }] });
  });

  it('is the version where that is known', () => {
    expect(fixed(layoutText({ ahx: 0.1 })).value).toMatchObject({ ahx: '0.1' });
    expect(fixed(layoutText({ ahx: 0.2 })).fixed).toEqual([]);
  });

  it.each([
    { depth: '60 mm' },
    { depth: '1,5' },
    { depth: '1e2' },
    { depth: '-60' },
    { depth: '60.00000000000000001' },
    { depth: true },
    { point: null },
    { depth: null, diameter: null, axis: null },
    { moveAllowance: null, positionTolerance: null, depthTolerance: null },
    { level: null },
    { point: [1, 2, null] },
    { id: 7 },
    { trade: 7 },
  ])('%j stays', (members) => {
    const text = layoutText({ holes: [{ ...hole('H-1', [1, 2, 3]), ...members }] });
    expect(fixed(text).text).toBe(text);
  });

  it('that is null stays where nothing means something else, and sizes unless they are asked for', () => {
    const text = layoutText({
      groups: [{ id: 'G', kind: 'plate', movesTogether: null, positionTolerance: null }],
      holeTypes: [{ ...smallLayout.holeTypes[0], made: null, moveAllowance: null, embedment: null }],
      grids: [{ id: 'G', levels: null, lines: [{ name: 'A', from: [0, 0], to: [0, 1] }] }],
    });
    expect(fixed(text).text).toBe(text);
    const { value, fixed: all } = fixed(text, { geometry: true });
    expect(all.map(({ place }) => place.pointer)).toEqual(['/holeTypes/0/embedment', '/holeTypes/0/moveAllowance']);
    const { made } = (value as { holeTypes: { made: unknown }[] }).holeTypes[0];
    expect(made).toBeNull();
  });

  it('keeps the digits of a number that becomes a text', () => {
    const text = layoutText({ revision: { label: 7 } }).replace('"label":7', '"label":7.10');
    expect(fixed(text).value).toMatchObject({ revision: { label: '7.10' } });
  });
});

describe('a number with digits that get lost', () => {
  it('is written as it is read, and other numbers stay as they are written', () => {
    const text = layoutText({ holes: [hole('H-1', [1, 2, 3], { depth: 777 })] })
      .replace('777', '60.10000000000000000055')
      .replace('[1,2,3]', '[1.0,2e0,3.00]');
    expect(fixed(text).text).toBe(text.replace('60.10000000000000000055', '60.1'));
  });

  it('stays where it may be an identifier', () => {
    const text = layoutText({ ext: { 'https://example.org/x': 0.1, 'https://example.org/y': 2 } })
      .replace('0.1,', '0.10000000000000000055,')
      .replace(':2}', ':12345678901234567890}');
    expect(fixed(text).text).toBe(text);
  });
});

describe('a hole that does not lie on its level', () => {
  const levels = [
    { id: 'L1', name: '1', elevation: 0 },
    { id: 'L2', name: '2', elevation: 4000 },
    { id: 'L3', name: '3', elevation: 8000 },
  ];
  const at = (z: number, axis: number[] | undefined, level: string, more: object = {}) => {
    const { substrate, ...rest } = hole('H-1', [1, 2, z], { level, ...(axis && { axis }) });
    return layoutText({ levels, holes: [rest], ...more });
  };

  it.each([
    [3700, [0, 0, 1], 'L3', 'L1'],
    [7600, [0, 0, 1], 'L1', 'L2'],
    [8000, [0, 0, -1], 'L1', 'L3'],
    [-20, [0, 0, -1], 'L3', 'L1'],
    [6000, [1, 0, 0], 'L1', 'L2'],
  ])('at %d mm in the direction %j gets the level that fits', (z, axis, level, meant) => {
    const text = at(z, axis, level);
    expect(fixOf(text, 'level-mismatch')).toEqual({ patch: [{ op: 'replace', path: '/holes/0/level', value: meant }] });
    expect(fixed(text).after.findings.filter(({ rule }) => rule === 'level-mismatch')).toEqual([]);
  });

  it.each([
    ['goes up near a floor', at(8100, [0, 0, 1], 'L1')],
    ['goes down half-way', at(6000, [0, 0, -1], 'L1', { levels: levels.slice(0, 2) })],
    ['goes up above the highest level', at(11_000, [0, 0, 1], 'L1')],
    ['has no direction', at(7600, undefined, 'L1')],
    [
      'may be on a level without elevation',
      at(7600, [0, 0, 1], 'L1', { levels: [...levels, { id: 'L4', name: '4' }] }),
    ],
  ])('keeps its level where it %s', (_, text) => {
    expect(fixed(text).before.findings.map(({ rule }) => rule)).toContain('level-mismatch');
    expect(fixed(text).text).toBe(text);
  });
});

describe('a fix of geometry', () => {
  const levels = [{ id: 'L1', name: '1', elevation: 4000, finishedFloor: 4060, soffits: [7000] }];
  const standIns = [1, 2, 3].map((k) => {
    const { substrate, ...rest } = hole(`H-${k}`, [1000 * k, 0, 4060], { level: 'L1', axis: [0, 0, 1] });
    return rest;
  });
  const text = layoutText({ levels, holes: standIns });

  it('is made only for who asks for it', () => {
    expect(fixOf(text, 'height-stand-in')).toEqual({
      geometry: true,
      patch: [{ op: 'remove', path: '/holes/0/point/2' }],
    });
    expect(fixed(text).text).toBe(text);
    const { value, after } = fixed(text, { geometry: true });
    expect((value as typeof smallLayout).holes.map(({ point }) => point)).toEqual([
      [1000, 0],
      [2000, 0],
      [3000, 0],
    ]);
    expect(after.findings.filter(({ rule }) => rule === 'height-stand-in')).toEqual([]);
  });

  it('is not made where the rule is off', () => {
    expect(fixed(text, { geometry: true, severities: { 'height-stand-in': 'off' } }).text).toBe(text);
  });

  it('leaves out a height that is another one of the layout, and no other', () => {
    const slab = smallLayout.substrates[0];
    const off = (z: number) =>
      layoutText({
        levels: [{ id: 'L1', name: '1', elevation: -3000 }],
        substrates: [{ ...slab, level: 'L1' }],
        holes: [1, 2, 3].map((k) => hole(`H-${k}`, [1000 * k, 0, z], { level: 'L1' })),
      });
    expect(fixOf(off(-3000), 'off-surface')).toMatchObject({ geometry: true });
    expect(fixed(off(-3000), { geometry: true }).fixed).toHaveLength(3);
    expect(fixOf(off(-2345), 'off-surface')).toBeUndefined();
  });

  it('is not made of what the project has accepted', () => {
    const baseline = {
      ahx: '0.1',
      kind: 'baseline',
      id: 'B',
      entries: [
        {
          ...{ rule: 'height-stand-in', layout: 'T-1', reason: 'underside of a stair', owner: 'J. Doe' },
          expires: '2026-12-31',
          findings: fixed(text).before.findings.flatMap(({ rule, id, data }) =>
            rule === 'height-stand-in' && id === 'H-1' ? [{ hole: id, data }] : [],
          ),
        },
      ],
    } as FixOptions['baseline'];
    const result = fixed(text, { geometry: true, baseline, asOf: '2026-03-02T00:00:00Z' });
    expect(result.fixed.map(({ id }) => id)).toEqual(['H-2', 'H-3']);
  });
});

describe('fixing', () => {
  const text = layoutText({ display: { length: 'feet' }, holes: [hole('H-1', [1, 2, 3], { depht: 60 })] });

  it('can be kept to some rules', () => {
    expect(fixed(text, { rules: ['not-a-choice'] }).fixed.map(({ rule }) => rule)).toEqual(['not-a-choice']);
  });

  it('goes on where fixes bring further findings to light', () => {
    const holes = [hole('H-1', [1, 2, 3], { levle: 'L1' })].map(({ substrate, ...rest }) => rest);
    const levels = [0, 4000, 8000].map((elevation, k) => ({ id: `L${k + 1}`, name: String(k), elevation }));
    const { fixed: all, value } = fixed(
      layoutText({ levels, holes: [{ ...holes[0], point: [1, 2, 7600], axis: [0, 0, 1] }] }),
    );
    expect(all.map(({ rule }) => rule)).toEqual(['unknown-member', 'level-mismatch']);
    expect(value).toMatchObject({ holes: [{ level: 'L2' }] });
  });

  it('leaves a record alone in which a name comes twice', () => {
    const twice = text.replace('"display"', '"display":{"length":"mm"},"display"');
    const result = fixed(twice);
    expect(result.text).toBe(twice.replace('depht', 'depth'));
    expect(result.after.findings.map(({ rule }) => rule)).toEqual(['duplicate-name']);
  });

  it('refuses what lies under a name that comes twice, and says so', () => {
    const twice = text.replace(/"holes".*/, (holes) => `${holes.slice(0, -1)},"holes":[]}`);
    const result = fixed(twice);
    expect(result.text).toBe(twice.replace('feet', 'ft'));
    expect(result.refused.map(({ finding, reason }) => [finding.rule, reason])).toEqual([
      ['unknown-member', 'a name on the way to "/holes/0/depht" comes twice'],
    ]);
  });

  it('keeps bytes that are no UTF-8', () => {
    const bytes = new TextEncoder().encode(text.replace('"H-1"', '"H-1","note":"?"'));
    bytes[bytes.lastIndexOf(63)] = 0xff;
    const { bytes: now, fixed: all } = fixed(bytes);
    expect(all.map(({ rule }) => rule)).toEqual(['not-a-choice']);
    expect(now.indexOf(0xff)).toBe(bytes.indexOf(0xff));
    expect(now).toHaveLength(bytes.length - 2);
  });

  it('stops after each check for who has to listen', () => {
    const rounds = fixInRounds({ name: 'file', data: text });
    expect([rounds.next().done, rounds.next().done]).toEqual([false, false]);
    expect(rounds.next().value?.fixedCount).toBe(2);
  });
});

describe('every document of the corpus', () => {
  const files = [...new Set(manifest.cases.flatMap((one) => one.files))].filter((name) => name.endsWith('.json'));

  it('keeps what fixing promises', () => {
    let count = 0;
    for (const name of files) {
      count += holdsPromises(corpusBytes(name));
      holdsPromises(corpusBytes(name), { geometry: true });
    }
    expect(files.length).toBeGreaterThan(100);
    expect(count).toBeGreaterThan(10);
  }, 120_000);

  it.each(examplePaths('.json'))('is like the example %s in that', (path) => {
    holdsPromises(new TextEncoder().encode(exampleText(path)), { geometry: true });
  });

  // Of the layout, which has most cases, each fifth one: a check of it takes its time.
  it.each(Object.entries(bases))(
    'with a fault from the schema of a %s keeps it too',
    (kind, base) => {
      const document = corpusJson(base);
      const all = (corpusJson(`derived/${kind}.json`) as DerivedCase[]).filter(
        (_, k) => kind !== 'layout' || k % 5 === 0,
      );
      let count = 0;
      for (const { patch } of all)
        count += holdsPromises(new TextEncoder().encode(JSON.stringify(applyPatch(document, patch), undefined, 2)));
      expect(all.length).toBeGreaterThan(50);
      expect(count).toBeGreaterThan(10);
    },
    300_000,
  );
});

describe('any layout with planted faults, in any manner of writing', () => {
  const member = fc.constantFrom(
    { depht: 60 },
    { depth: '60.5' },
    { depth: null },
    { area: null },
    { group: null },
    { ID: 'H-0' },
    { axes: [0, 0, 1] },
    { axis: ['0', '0', '0'] },
    { tag: 'T ' },
    { trade: 'FP ' },
    { trade: 'Mu\u0308' },
    { level: ' L1' },
    { levle: 'L1' },
    { id: 'H-1 ' },
    { id: 'H-1' },
    { point: ['1', 2] },
    { weight: 3 },
    { depht: 1, deph: 2 },
    {},
  );
  const layouts = fc.record({
    members: fc.array(fc.tuple(member, member), { maxLength: 6 }),
    trades: fc.subarray(['FP', 'FP ', ' FP', 'Mu\u0308', 'M\u00fc'], { minLength: 1 }),
    length: fc.constantFrom('mm', 'feet', '"', 'furlong', 'Inch'),
    kind: fc.constantFrom('layout', 'layout', 'Layout', 'layuot'),
  });

  it('keeps what fixing promises', () => {
    let count = 0;
    fc.assert(
      fc.property(layouts, manners, ({ members, trades, length, kind }, manner) => {
        const layout = {
          ...smallLayout,
          kind,
          display: { length },
          levels: [{ id: 'L1', name: '1' }],
          trades: trades.map((id) => ({ id, name: 'x' })),
          holes: members.map(([one, other], k) => hole(`H-${k}`, [1000 * k, 0, 0], { ...one, ...other })),
        };
        count += holdsPromises(written(layout, manner));
      }),
      { numRuns: 150, seed: 5 },
    );
    expect(count).toBeGreaterThan(300);
  }, 120_000);
});
