import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';

const RULES = ['edge-too-close', 'breaks-out-at-edge', 'edge-kind-assumed'] as const;

/** A heap of slabs, each 0.001 mm beside the last, and one away from them; holes 3 mm from an edge of the first and of the one away. */
function coverageOf(slabs: number) {
  const slab = (id: string, x: number, y: number) => ({
    id,
    kind: 'solid-slab',
    face: { point: [0, 0, 3000], inward: [0, 0, 1] },
    outline: {
      points: [
        [x, y, 3000],
        [x + 8000, y, 3000],
        [x + 8000, y + 6000, 3000],
        [x, y + 6000, 3000],
      ],
    },
  });
  const hole = { trade: 'FP', holeType: 'HT' };
  const data = JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'heap',
    revision: { label: 'A' },
    frame: { name: 'Site grid', heightDatum: 'Top of the ground slab' },
    trades: [{ id: 'FP', name: 'FP' }],
    holeTypes: [
      {
        id: 'HT',
        name: 'Screw',
        principle: 'screw',
        form: 'blind',
        diameter: 10,
        depth: 60,
        minEdge: { value: 75, source: 'Invented approval 01, table 2' },
      },
    ],
    substrates: [...Array.from({ length: slabs }, (_, k) => slab(`S-${k}`, 0, k / 1000)), slab('A', 0, 20_000)],
    holes: [
      { id: 'H-1', ...hole, substrate: 'S-0', point: [3, 3000, 3000] },
      { id: 'H-2', ...hole, substrate: 'A', point: [3, 23_000, 3000] },
    ],
  });
  const { coverage, findings } = check([{ name: 'heap', data }]);
  return RULES.map((rule) => {
    const { judged, of, reason } = coverage.find((entry) => entry.rule === rule) ?? {};
    return { judged, of, reason, found: findings.filter((one) => one.rule === rule).map(({ id }) => id) };
  });
}

describe('holes at edges', () => {
  it('are judged where few edges lie at one place', () => {
    expect(coverageOf(20).slice(0, 2)).toEqual([
      { judged: 2, of: 2, reason: undefined, found: ['H-1', 'H-2'] },
      { judged: 2, of: 2, reason: undefined, found: ['H-1', 'H-2'] },
    ]);
  });

  it('are left out and counted, by all rules of edges, where not all edges were compared', () => {
    const reason = '1 left out: more edges at one place than are compared';
    expect(coverageOf(1500)).toEqual([
      { judged: 1, of: 2, reason, found: ['H-2'] },
      { judged: 1, of: 2, reason, found: ['H-2'] },
      { judged: 1, of: 2, reason, found: [] },
    ]);
  });
});
