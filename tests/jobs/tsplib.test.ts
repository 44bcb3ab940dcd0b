import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import { check } from '../../src/jobs/check.js';
import { hasTsplib, tsplibFolder, tsplibPoints, tsplibTitle } from '../geometry/tsplib-points.js';
import { smallLayout, typeWithSpacing } from './small-layout.js';

const MM_PER_UNIT = 10;

/**
 * Reads a job of TSPLIB: five lines of description and one that begins the points, then number, x and y
 * between blanks, then `EOF`. The files say neither unit nor trade. Centimetres, so that only points at one
 * place lie within a millimetre; trade and type are invented.
 */
function profileWith(spacing: number): ColumnProfile {
  return {
    ahx: '0.1',
    kind: 'column-profile',
    table: { separator: 'blanks', skipRows: 6, header: false, end: 'EOF' },
    columns: [
      { column: '#1', field: 'id' },
      { column: '#2', field: 'x', unit: 'cm' },
      { column: '#3', field: 'y', unit: 'cm' },
    ],
    constants: { trade: 'FP', holeType: 'T', substrate: 'S' },
    layout: {
      id: 'job',
      revision: { label: 'A' },
      frame: smallLayout.frame,
      trades: smallLayout.trades,
      holeTypes: [typeWithSpacing(spacing * MM_PER_UNIT)],
      // The points have no height; holes on one substrate are compared in plan.
      substrates: [{ id: 'S', name: 'Board', kind: 'other' }],
    },
  };
}

function reportOn(name: string, spacing: number) {
  return check([{ name, data: readFileSync(`${tsplibFolder}/${name}.tsp`), profile: profileWith(spacing) }], {
    sampleLimit: 10_000,
  });
}

/** Pairs of points by comparing all with all. */
function pairs(name: string): [i: number, j: number, distance: number][] {
  const points = tsplibPoints(name);
  return points.flatMap(([x, y], i) =>
    points.slice(0, i).map(([u, v], j): [number, number, number] => [i, j, Math.hypot(x - u, y - v)]),
  );
}

const jobs = [
  ['a280', 280],
  ['d198', 198],
  ['u159', 159],
  ['fl417', 417],
] as const;

// Strict counts of pairs, d < s: checks.md D-11, computed with independent code from the files.
const strictPairs = [
  ['a280', 8, 1],
  ['a280', 16, 519],
  ['u159', 100, 0],
  ['u159', 200, 49],
] as const;

describe.skipIf(!hasTsplib)(tsplibTitle('drilling jobs of TSPLIB (G. Reinelt, ORSA J. Computing 3, 1991)'), () => {
  it.each(jobs)('%s becomes a layout of %d holes', (name, count) => {
    const { inputs, findings, verdict } = reportOn(name, 0.2);
    expect(inputs[0]).toMatchObject({ kind: 'layout', format: 'csv', holes: count, judged: count });
    expect(verdict.format).toBe('pass');
    expect(findings.filter(({ rule }) => rule !== 'holes-coincide')).toEqual([]);
  });

  it.each(jobs)('%s has the coincident holes that comparing all with all finds', (name) => {
    const expected = new Set(
      pairs(name)
        .filter(([, , distance]) => distance * MM_PER_UNIT <= 1.0005)
        .map(([i]) => String(i + 1)),
    );
    const found = reportOn(name, 0.2).findings.map(({ id }) => id);
    expect(found).toEqual([...expected]);
  });

  it('a280 has exactly one coincident pair', () => {
    const { findings, counts } = reportOn('a280', 0.2);
    expect(findings.map(({ rule, data }) => [rule, data.distance])).toEqual([['holes-coincide', 0]]);
    expect(counts).toEqual({ error: 1, warning: 0, info: 0 });
  });

  it.each(strictPairs)(
    '%s at a least spacing of %d has a finding at each hole of its %d nearer pairs',
    (name, s, count) => {
      const nearer = pairs(name).filter(([, , distance]) => distance < s);
      expect(nearer).toHaveLength(count);
      const apart = nearer.filter(([, , distance]) => distance > 0);
      const expected = [...new Set([...apart.map(([i]) => i), ...apart.map(([, j]) => j)])].sort((a, b) => a - b);
      const found = reportOn(name, s).findings.filter(({ rule }) => rule === 'holes-too-close');
      expect(found.map(({ id }) => Number(id) - 1)).toEqual(expected);
      for (const { id, data } of found) {
        const own = apart.filter(([i, j]) => i + 1 === Number(id) || j + 1 === Number(id));
        const nearest = Math.min(...own.map(([, , distance]) => distance));
        expect(data.distance).toBeCloseTo(nearest * MM_PER_UNIT, 6);
      }
    },
  );
});
