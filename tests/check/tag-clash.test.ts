import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';

interface TaggedHole {
  tag?: string;
  trade: string;
  level: string;
}

/** A layout of holes 1 m apart, each with its own level and trade. */
function layoutOf(holes: readonly TaggedHole[]): string {
  return JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'tags',
    revision: { label: 'A' },
    frame: { name: 'Site grid', heightDatum: 'Top of the ground slab' },
    levels: ['L1', 'L2'].map((id) => ({ id, name: id })),
    trades: ['FP', 'HV'].map((id) => ({ id, name: id })),
    holeTypes: [{ id: 'HT', name: 'Screw', principle: 'screw', form: 'blind', diameter: 10, depth: 60 }],
    holes: holes.map((hole, k) => ({ id: `H-${k}`, ...hole, holeType: 'HT', point: [1000 * k, 0, 3000] })),
  });
}

function found(holes: readonly TaggedHole[]) {
  const { findings, coverage } = check([{ name: 'tags', data: layoutOf(holes) }], { sampleLimit: 1e6 });
  return {
    clashes: findings.flatMap(({ rule, id, data }) => (rule === 'tag-clash' ? [[id, data.other]] : [])),
    coverage: coverage.find(({ rule }) => rule === 'tag-clash'),
  };
}

describe('holes with equal tags', () => {
  it('are those of which an earlier one has the same text, trade and level', () => {
    const hole = fc.record(
      {
        // Two of these have one FNV-1a hash of 32 bits; found by search.
        tag: fc.constantFrom('1', '2', '3/8"', '3/8\u2033', 'S-462789', 'S-679192', 'é'),
        trade: fc.constantFrom('FP', 'HV'),
        level: fc.constantFrom('L1', 'L2'),
      },
      { requiredKeys: ['trade', 'level'] },
    );
    fc.assert(
      fc.property(fc.array(hole, { minLength: 1, maxLength: 40 }), (holes) => {
        const expected = holes.flatMap(({ tag, trade, level }, k) => {
          const first = holes.findIndex((one) => one.tag === tag && one.trade === trade && one.level === level);
          return tag === undefined || first === k ? [] : [[`H-${k}`, `H-${first}`]];
        });
        expect(found(holes).clashes).toEqual(expected);
      }),
      { numRuns: 50 },
    );
  });

  it('are counted as not judged where there are more than are read again', () => {
    const { clashes, coverage } = found(new Array(20_010).fill({ tag: '1', trade: 'FP', level: 'L1' }));
    expect(coverage?.of).toBe(20_010);
    expect(coverage?.judged).toBe(clashes.length + 1);
    expect(clashes.length).toBeGreaterThan(19_000);
    expect(coverage?.reason).toBe(
      `${20_010 - clashes.length - 1} left out: more equal tags than are compared letter by letter`,
    );
  });
});
