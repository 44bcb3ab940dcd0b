import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';

/** A layout of two trades and two types whose holes stand at few places, many at each. */
function crowded(points: readonly (readonly number[])[]): string {
  const holes = points.map((point, k) => ({
    id: `H-${k}`,
    trade: k % 3 === 0 ? 'A' : 'B',
    holeType: k % 2 === 0 ? 'near' : 'far',
    substrate: 'S',
    point,
  }));
  const type = (id: string, value: number) => ({
    id,
    name: id,
    principle: 'screw',
    form: 'blind',
    diameter: 10,
    minSpacing: { value, source: 'invented' },
  });
  return JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'crowded',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'floor' },
    trades: [
      { id: 'A', name: 'A' },
      { id: 'B', name: 'B' },
    ],
    holeTypes: [type('near', 50), type('far', 100)],
    substrates: [{ id: 'S', kind: 'solid-slab', face: { point: [0, 0, 3000], inward: [0, 0, 1] } }],
    holes,
  });
}

/** What the rules about two holes say, by their definition: every pair looked at. */
function expected(points: readonly (readonly number[])[]): string[] {
  const lines: string[] = [];
  const distance = (i: number, j: number) => Math.hypot(...points[i].map((value, k) => value - points[j][k]));
  const trade = (k: number) => (k % 3 === 0 ? 'A' : 'B');
  const limit = (i: number, j: number) => (i % 2 === 0 && j % 2 === 0 ? 50 : 100);
  for (let i = 0; i < points.length; i++) {
    const earlier = [...points.keys()].filter((j) => j < i && distance(i, j) <= 1.0005);
    const same = earlier.filter((j) => trade(j) === trade(i));
    const pick = (from: number[]) => from.reduce((a, b) => (distance(i, b) < distance(i, a) ? b : a));
    if (earlier.length > 0) {
      const other = pick(same.length > 0 ? same : earlier);
      lines.push(`holes-coincide ${same.length > 0 ? 'error' : 'warning'} H-${i} H-${other}`);
    }
    const close = [...points.keys()].filter(
      (j) => j !== i && distance(i, j) > 1.0005 && distance(i, j) < limit(i, j) - 0.0005,
    );
    if (close.length > 0) lines.push(`holes-too-close error H-${i} H-${pick(close)}`);
  }
  return lines.sort();
}

describe('holes that crowd at few places', () => {
  it.each([
    ['with heights', (k: number) => [0, 40 * (k % 3), 3000]],
    ['without heights', (k: number) => [0.4 * (k % 2), 70 * (k % 4)]],
  ])('are told as if every pair were looked at, %s', (_, place) => {
    const points = Array.from({ length: 300 }, (_unused, k) => place(k));
    const report = check([{ name: 'crowded', data: crowded(points) }]);
    const found = report.findings.map(({ rule, severity, id, data }) => `${rule} ${severity} ${id} ${data.other}`);
    expect(found.sort()).toEqual(expected(points));
  });

  it('cost no more than their number', () => {
    const report = check([{ name: 'crowded', data: crowded(Array.from({ length: 60_000 }, () => [0, 0, 3000])) }]);
    expect(report.counts.error + report.counts.warning).toBe(59_999);
  });
});
