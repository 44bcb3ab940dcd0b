import { describe, expect, it } from 'vitest';
import { ControlLimits } from '../../src/check/control-limits.js';
import { controlSets } from '../../src/check/control-sets.js';
import { HoleLevels } from '../../src/check/hole-levels.js';
import { kindsOf } from '../../src/check/kinds.js';
import { Site } from '../../src/check/site.js';
import type { ControlPoint } from '../../src/generated/layout.js';
import { check } from '../../src/jobs/check.js';
import type { LayoutModel } from '../../src/model/layout-model.js';
import { LayoutReader } from '../../src/read/layout-reader.js';
import { seeded } from '../bench/make-layout.js';

/** An invented layout with a hole on each level and one that names none. */
function textOf(control: readonly ControlPoint[], levels: readonly string[]): string {
  return JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'control',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'floor' },
    control,
    trades: [{ id: 'A', name: 'A' }],
    levels: levels.map((id) => ({ id, name: id })),
    holeTypes: [{ id: 'T', name: 'T', principle: 'screw', form: 'blind', diameter: 10, depth: 60 }],
    substrates: [],
    holes: [undefined, ...levels].map((level, k) => ({
      id: `H-${k}`,
      trade: 'A',
      holeType: 'T',
      point: [100 * k, 5],
      ...(level !== undefined && { level }),
    })),
  });
}

function read(text: string): LayoutModel {
  const reader = new LayoutReader(() => {});
  reader.write(new TextEncoder().encode(text));
  reader.end();
  return reader.model;
}

function named(count: number): string[] {
  return Array.from({ length: count }, (_, k) => `L${k}`);
}

function limitsOf(layout: LayoutModel) {
  const site = new Site([{ layout, input: 0, name: 'invented', observe: () => {} }]);
  const limits = new ControlLimits(new HoleLevels(site));
  return kindsOf(site).list.map((kind) => limits.of(kind));
}

/** The places of a level by the definition: all points looked at. */
function plainPlaces(control: readonly ControlPoint[], level: string | undefined): string[] {
  const kept: ControlPoint[] = [];
  for (const one of control) {
    if (level !== undefined && one.level !== undefined && one.level !== level) continue;
    const isNear = ({ point: [x, y] }: ControlPoint) => Math.hypot(one.point[0] - x, one.point[1] - y) <= 1.0005;
    if (!kept.some(isNear)) kept.push(one);
  }
  return kept.map(({ id }) => id);
}

function invented(count: number, levelOf: (random: () => number) => string | undefined): ControlPoint[] {
  const random = seeded(4);
  const at = () => Math.floor(random() * 16) / 2;
  return Array.from({ length: count }, (_, k): ControlPoint => {
    const level = levelOf(random);
    const sigma = random() < 0.7 && { sigmaPlan: 1 + Math.floor(random() * 3) };
    return { id: `CP-${k}`, point: [at(), at(), 100 * k], ...sigma, ...(level !== undefined && { level }) };
  });
}

describe('the control of a layout', () => {
  it.each<[string, (random: () => number) => string | undefined]>([
    ['of levels and of none', (random) => (random() < 0.3 ? undefined : `L${Math.floor(random() * 4)}`)],
    ['of levels', (random) => `L${Math.floor(random() * 4)}`],
    ['of no level', () => undefined],
  ])('is sorted into sets as if all points were looked at for each: %s', (_, levelOf) => {
    const control = invented(150, levelOf);
    const sets = controlSets(read(textOf(control, named(4))));
    const levels = [...new Set(control.flatMap(({ level }) => level ?? []))];
    expect(sets.map(({ level }) => level)).toEqual(levels.length === 0 ? [undefined] : levels);
    for (const { level, places, first } of sets) {
      expect(places.map(({ record }) => record.id)).toEqual(plainPlaces(control, level));
      expect(first.record.id).toBe(control.find((one) => one.level === level)?.id);
    }
  });

  it('limits holes by the worst of the points of their level and of none', () => {
    for (const count of [0, 1, 4, 8, 40]) {
      const control = invented(count, (random) => (random() < 0.2 ? undefined : `L${Math.floor(random() * 4)}`));
      const expected = [undefined, ...named(4)].map((level) => {
        const isSeen = (one: ControlPoint) => [undefined, one.level].includes(level) || one.level === undefined;
        const seen = control.filter((one) => isSeen(one) && one.sigmaPlan !== undefined);
        const most = Math.max(...seen.map(({ sigmaPlan }) => sigmaPlan ?? 0));
        const worst = seen.find(({ sigmaPlan }) => sigmaPlan === most);
        return worst && { least: 2.4477 * most, point: worst.id };
      });
      expect(limitsOf(read(textOf(control, named(4))))).toEqual(expected);
    }
  });

  it('is judged on very many levels', () => {
    const levels = named(60_000);
    const control = levels.map(
      (level, k) => ({ id: `CP-${k}`, point: [10 * k, 7], sigmaPlan: 2, level }) as ControlPoint,
    );
    const layout = read(textOf(control, levels));
    expect(controlSets(layout).every(({ places, first }, k) => places.length === 1 && first.index === k)).toBe(true);
    expect(limitsOf(layout).map((limit) => limit?.point)).toEqual(['CP-0', ...control.map(({ id }) => id)]);
  });

  it('is left out and counted where very many points are in the sets of very many levels', () => {
    const of = (inAll: number) => {
      const points = Array.from({ length: inAll + 1000 }, (_, k) => {
        const at = { id: `CP-${k}`, point: [300 * (k % 90), 10 * k, 0] };
        return (k < inAll ? at : { ...at, level: `L${k - inAll}` }) as ControlPoint;
      });
      const { coverage } = check([{ name: 'control', data: textOf(points, named(1000)) }]);
      return coverage.find(({ rule }) => rule === 'control-too-few');
    };
    expect(of(1000)).toMatchObject({ outcome: 'passed', judged: 1000, of: 1000 });
    const left = of(1001);
    expect(left).toMatchObject({ outcome: 'not-run', judged: 0, of: 1000 });
    expect(JSON.stringify(left)).toContain('too many control points without a level for so many levels');
  });
});
