import { describe, expect, it } from 'vitest';
import type { Area } from '../../src/generated/layout.js';
import { type CheckOptions, check } from '../../src/jobs/check.js';
import { seeded } from '../bench/make-layout.js';

interface Hole {
  id: string;
  trade: string;
  holeType: string;
  point: [number, number];
  level?: string;
  area?: string;
}

const LEVELS = ['L1', 'L2'];
const NOW = '2026-03-02T12:00:00Z';
const AFTER = '2026-03-06T18:00:00Z';
const BEFORE = '2026-03-01T18:00:00Z';

/** An invented layout. Holes of type OLD are there already. */
function textOf(areas: readonly Area[], holes: readonly Hole[]): string {
  const type = { name: 'T', principle: 'screw', form: 'blind', diameter: 10, depth: 60 };
  return JSON.stringify({
    ahx: '0.1',
    kind: 'layout',
    id: 'areas',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'floor' },
    areas,
    levels: LEVELS.map((id) => ({ id, name: id })),
    trades: [{ id: 'A', name: 'A' }],
    holeTypes: [
      { id: 'NEW', ...type },
      { id: 'OLD', ...type, purpose: 'existing' },
    ],
    holes,
  });
}

function reportOf(areas: readonly Area[], holes: readonly Hole[], options: CheckOptions = {}) {
  const { findings, coverage } = check([{ name: 'areas', data: textOf(areas, holes) }], {
    purpose: 'for-drilling',
    sampleLimit: 100_000,
    ...options,
  });
  return {
    said: (rule: string) => findings.filter((finding) => finding.rule === rule),
    of: (rule: string) => coverage.find((one) => one.rule === rule),
  };
}

function invented(seed: number): { areas: Area[]; holes: Hole[] } {
  const random = seeded(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  /** A star about a point, which crosses itself nowhere. */
  const star = (): [number, number][] => {
    const [x, y] = [random() * 1000, random() * 1000];
    return Array.from({ length: 5 }, (_, k) => {
      const radius = 50 + random() * 500;
      return [x + radius * Math.cos(k * 1.2), y + radius * Math.sin(k * 1.2)].map(Math.round) as [number, number];
    });
  };
  const areas = Array.from({ length: 7 }, (_, k): Area => {
    const [level, validTo] = [pick([undefined, ...LEVELS]), pick([undefined, BEFORE, AFTER])];
    return {
      id: `A-${k}`,
      name: `A-${k}`,
      kinds: pick([['closed'], ['closed'], ['clean'], ['pour']] as const).slice(),
      ...(k !== 3 && { outline: star() }),
      ...(level !== undefined && { level }),
      ...(validTo !== undefined && { validTo }),
    };
  });
  const holes = Array.from({ length: 200 }, (_, k): Hole => {
    const [level, area] = [pick([undefined, ...LEVELS]), random() < 0.1 ? `A-${Math.floor(random() * 7)}` : undefined];
    const point: [number, number] = [random() * 1000, random() * 1000];
    const holeType = random() < 0.1 ? 'OLD' : 'NEW';
    return { id: `H-${k}`, trade: 'A', holeType, point, ...(level && { level }), ...(area && { area }) };
  });
  return { areas, holes };
}

/** Whether an outline holds a point, by a ray to the right. */
function isInside(outline: readonly (readonly number[])[], [x, y]: readonly number[]): boolean {
  return outline.reduce((isIn, [ax, ay], k) => {
    const [bx, by] = outline[(k + 1) % outline.length];
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !isIn : isIn;
  }, false);
}

function held({ outline, level }: Area, hole: Hole): 'yes' | 'no' | 'perhaps' {
  if (outline === undefined || !isInside(outline, hole.point)) return 'no';
  if (level === undefined || level === hole.level) return 'yes';
  return hole.level === undefined ? 'perhaps' : 'no';
}

/** The closed area that a hole is in by the definition, or that it is not known. */
function plainClosed(areas: readonly Area[], hole: Hole, asOf: string | undefined): string | undefined {
  const closed = areas.filter(({ kinds, validTo }) => kinds?.includes('closed') && !(asOf && validTo === BEFORE));
  const isKnown = ({ validTo }: Area) => asOf !== undefined || validTo === undefined;
  const named = closed.find(({ id }) => id === hole.area);
  if (named && isKnown(named)) return named.id;
  const found = closed.find((area) => isKnown(area) && held(area, hole) === 'yes');
  if (found) return found.id;
  return named || closed.some((area) => held(area, hole) !== 'no') ? 'not known' : undefined;
}

describe('holes in areas', () => {
  it.each([undefined, NOW])('are told as if each were compared with each area, at the time %s', (asOf) => {
    let told = 0;
    for (let seed = 1; seed <= 25; seed++) {
      const { areas, holes } = invented(seed);
      const { said, of } = reportOf(areas, holes, asOf === undefined ? {} : { asOf });
      const toBeMade = holes.filter(({ holeType }) => holeType === 'NEW');
      const closed = toBeMade.map((hole) => [hole.id, plainClosed(areas, hole, asOf)] as const);
      const isFound = (area: string | undefined) => area !== undefined && area !== 'not known';
      expect(said('in-closed-area').map(({ id, data }) => [id, data.area])).toEqual(
        closed.filter(([, area]) => isFound(area)),
      );
      told += said('in-closed-area').length;
      if (areas.some(({ kinds }) => kinds?.includes('closed')))
        expect(of('in-closed-area')).toMatchObject({
          judged: closed.filter(([, area]) => area !== 'not known').length,
          of: toBeMade.length,
        });
      const isHeld = (area: Area) => toBeMade.some((hole) => hole.area === area.id || held(area, hole) === 'yes');
      const conditional = areas.filter(({ kinds }) => !kinds?.includes('pour'));
      expect(said('permit-missing').map(({ data }) => data.area)).toEqual(
        conditional.filter(isHeld).map(({ id }) => id),
      );
    }
    expect(told).toBeGreaterThan(500);
  });

  it('are told where very many areas of a level are about all of very many holes', () => {
    const areas = Array.from({ length: 20_000 }, (_, k): Area => {
      const [low, high] = [-1 - k, 40_001 + k];
      const outline: [number, number][] = [
        [low, low],
        [high, low],
        [high, high],
        [low, high],
      ];
      return { id: `A-${k}`, name: 'A', kinds: ['closed'], level: 'L1', outline };
    });
    const holes = Array.from({ length: 100_000 }, (_, k): Hole => {
      const point: [number, number] = [100 * (k % 400), 100 * Math.floor(k / 400)];
      return { id: `H-${k}`, trade: 'A', holeType: 'NEW', point, ...(k < 10 && { level: k < 5 ? 'L1' : 'L2' }) };
    });
    const { said, of } = reportOf(areas, holes);
    expect(said('in-closed-area').map(({ id, data }) => `${id} ${data.area}`)).toEqual(
      holes.slice(0, 5).map(({ id }) => `${id} A-0`),
    );
    expect(of('in-closed-area')).toMatchObject({ judged: 10, of: 100_000 });
    expect(said('permit-missing')).toHaveLength(20_000);
  });
});
