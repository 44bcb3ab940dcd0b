import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';
import { FixFault, type Mended, verifyFixes } from '../../src/jobs/verify-fixes.js';
import { hole, layoutText } from './small-layout.js';

/** Reports on a layout before and after, where the fixes are those of the first that are named. */
function mended(
  before: string,
  after: string,
  patch: Mended['patch'],
  rules: readonly string[],
  sampleLimit = 1000,
): Mended {
  const [one, other] = [before, after].map((data) => check([{ name: 'file', data }], { sampleLimit }));
  return { before: one, fixed: one.findings.filter(({ rule }) => rules.includes(rule)), patch, after: other };
}

function faultOf(given: Mended): FixFault {
  try {
    verifyFixes(given);
  } catch (error) {
    if (error instanceof FixFault) return error;
    throw error;
  }
  throw new Error('no fault was seen');
}

const withHoles = (...members: object[]) =>
  layoutText({ holes: members.map((one, k) => hole(`H-${k + 1}`, [1000 * k, 0, 3], one as Record<string, unknown>)) });
const rename = [{ op: 'move', from: '/holes/0/depht', path: '/holes/0/depth' }] as const;

describe('fixes that are looked at again', () => {
  it('are in order where their findings are gone and nothing came', () => {
    const given = mended(withHoles({ depht: 60 }), withHoles({ depth: 60 }), rename, ['unknown-member']);
    expect(given.fixed).toHaveLength(1);
    expect(verifyFixes(given)).toEqual([]);
  });

  it('are at fault where a finding is still there, at the new name too', () => {
    const before = withHoles({ depht: 60 });
    const { notGone, appeared } = faultOf(mended(before, before, [], ['unknown-member']));
    expect([notGone.length, appeared.length]).toEqual([1, 0]);
    const moved = [{ op: 'move', from: '/holes/0/depht', path: '/holes/0/deth' }] as const;
    expect(faultOf(mended(before, withHoles({ deth: 60 }), moved, ['unknown-member'])).notGone).toHaveLength(1);
  });

  it.each([
    ['in another record', withHoles({ depth: 60 }, { trade: 'XX' }), 'unknown-reference'],
    ['of the schema in the same record', withHoles({ depth: 'deep' }, {}), 'wrong-type'],
  ])('are at fault where an error came %s', (_, after, rule) => {
    const fault = faultOf(mended(withHoles({ depht: 60 }, {}), after, rename, ['unknown-member']));
    expect(fault.appeared.map((finding) => finding.rule)).toEqual([rule]);
    expect(fault.message).toBe('0 findings are still there after their fix, 1 errors came with it.');
  });

  it('bring to light what could not be judged in a broken record', () => {
    const given = mended(withHoles({ depht: 60, trade: 'XX' }), withHoles({ depth: 60, trade: 'XX' }), rename, [
      'unknown-member',
    ]);
    expect(verifyFixes(given).map(({ rule }) => rule)).toEqual(['unknown-reference']);
  });

  const group = {
    id: 'G',
    kind: 'hanger',
    pattern: [
      [0, 0],
      [1000, 0],
    ],
  };
  const grouped = (...members: object[]) =>
    layoutText({ groups: [group], holes: members.map((one, k) => hole(`H-${k + 1}`, [1000 * k, 0, 3], { ...one })) });

  it('bring to light what a rule could not say of a group while one of its holes may have been broken', () => {
    const patch = [{ op: 'remove', path: '/holes/1/group' }] as const;
    const given = mended(grouped({ group: 'G' }, { group: null }), grouped({ group: 'G' }, {}), patch, ['wrong-type']);
    expect(verifyFixes(given).map(({ rule }) => rule)).toEqual(['pattern-count']);
    const same = { ...given, before: { ...given.before, findings: [] }, fixed: [] };
    expect(faultOf(same).appeared.map(({ rule }) => rule)).toEqual(['pattern-count']);
  });

  it('bring an id to light that was not seen under a wrong name, and are at fault where they wrote it twice', () => {
    const { id, ...rest } = hole('H-1', [1, 2, 3]);
    const twice = layoutText({ holes: [hole('H-1', [1, 2, 3]), hole('H-1', [9, 9, 3])] });
    const patch = [{ op: 'move', from: '/holes/0/ID', path: '/holes/0/id' }] as const;
    const before = layoutText({ holes: [{ ...rest, ID: id }, hole('H-1', [9, 9, 3])] });
    expect(verifyFixes(mended(before, twice, patch, ['unknown-member'])).map(({ rule }) => rule)).toEqual([
      'duplicate-id',
    ]);
    const untidy = layoutText({ holes: [hole('H-1 ', [1, 2, 3]), hole('H-1', [9, 9, 3])] });
    const written = [{ op: 'replace', path: '/holes/0/id', value: 'H-1' }] as const;
    const fault = faultOf(mended(untidy, twice, written, ['bad-text']));
    expect(fault.appeared.map(({ rule }) => rule)).toEqual(['duplicate-id']);
  });

  it('are at fault where an id changed without a reference to it', () => {
    const withTrade = (trade: string, ...used: string[]) =>
      layoutText({
        trades: [{ id: trade, name: 'x' }],
        holes: used.map((one, k) => hole(`H-${k}`, [1000 * k, 0, 3], { trade: one, tag: 'T' })),
      });
    const [decomposed, composed] = ['Mu\u0308', 'M\u00fc'];
    const patch = [{ op: 'replace', path: '/trades/0/id', value: composed }] as const;
    const before = withTrade(decomposed, decomposed, 'XX');
    const forgotten = faultOf(mended(before, withTrade(composed, decomposed, 'XX'), patch, ['bad-text']));
    expect(forgotten.appeared.map(({ rule, data }) => [rule, data.id])).toEqual([['unknown-reference', decomposed]]);
    const broken = layoutText({
      trades: [{ id: decomposed, name: 'x' }],
      holes: [hole('H', [1, 2, 3], { trade: 'XX', depht: 6 })],
    });
    const mendedToo = layoutText({
      trades: [{ id: composed, name: 'x' }],
      holes: [hole('H', [1, 2, 3], { trade: 'XX', depth: 6 })],
    });
    const found = verifyFixes(mended(broken, mendedToo, [...patch, ...rename], ['bad-text', 'unknown-member']));
    expect(found.map(({ rule, data }) => [rule, data.id])).toEqual([['unknown-reference', 'XX']]);
  });

  it('bring to light what is wrong with a value as a whole while its parts were wrong', () => {
    const axis = ['0', '0', '0'];
    const patch = axis.map((_, k) => ({ op: 'replace' as const, path: `/holes/0/axis/${k}`, value: 0 }));
    const given = mended(withHoles({ axis }), withHoles({ axis: [0, 0, 0] }), patch, ['wrong-type']);
    expect(verifyFixes(given).map(({ rule }) => rule)).toEqual(['out-of-range']);
  });

  it('are not at fault for findings that were not listed before', () => {
    const before = withHoles({ depht: 60 }, { depht: 60, tag: 7 }, { tag: 7 });
    const after = withHoles({ depth: 60 }, { depht: 60, tag: 7 }, { tag: 7 });
    const given = mended(before, after, rename, ['unknown-member'], 1);
    expect(given.fixed).toHaveLength(1);
    expect(verifyFixes({ ...given, after: check([{ name: 'file', data: after }]) })).toEqual([]);
    const worse = check([
      { name: 'file', data: withHoles({ depth: 60 }, { depht: 60, tag: 7 }, { tag: 7, depth: 'x' }) },
    ]);
    expect(faultOf({ ...given, after: worse }).appeared.map(({ rule }) => rule)).toContain('wrong-type');
  });
});
